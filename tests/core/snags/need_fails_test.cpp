#include "core/snags/need_fails.h"

#include <gtest/gtest.h>

namespace wend::snags {
namespace {

TEST(NeedFailsWords, StandInTheOrderOfTheEnum) {
  EXPECT_STREQ(wordOf(NeedFails::far), "far");
  EXPECT_STREQ(wordOf(NeedFails::away), "away");
  EXPECT_STREQ(wordOf(NeedFails::blind), "blind");
  EXPECT_STREQ(wordOf(NeedFails::link), "link");
  EXPECT_STREQ(wordOf(NeedFails::reach), "reach");
  EXPECT_STREQ(wordOf(NeedFails::gap), "gap");
}

TEST(NeedFailsWords, NameOneEach) {
  EXPECT_TRUE(NeedFails::blind == "blind");
  EXPECT_TRUE(NeedFails::blind != "far");
  EXPECT_TRUE(NeedFails::blind != "");
}

}  // namespace
}  // namespace wend::snags
