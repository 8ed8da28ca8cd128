#include "core/units/angle.h"

#include <gtest/gtest.h>

namespace wend::units {
namespace {

TEST(AngleFrom, TakesDegreesInEitherSpelling) {
  for (const char* text : {"12.5", "12,5", "12.5\u00b0", "12.5 deg", " 12.5 degrees "}) {
    const auto angle = angleFrom(text);
    ASSERT_TRUE(angle.ok()) << text;
    EXPECT_EQ(*angle, 12.5) << text;
  }
}

TEST(AngleFrom, WrapsNothing) {
  EXPECT_EQ(*angleFrom("-306"), -306);
  EXPECT_EQ(*angleFrom("36000"), 36000);
}

TEST(AngleFrom, SaysWhatIsWrong) {
  for (const char* bad : {"", "north", "1,2,3", "1,234.5", "nan", "12\u00b030'", "1.5 rad"}) {
    const auto angle = angleFrom(bad);
    ASSERT_FALSE(angle.ok()) << bad;
    EXPECT_EQ(angle.problems().front().code, "bad-angle") << bad;
  }
  EXPECT_EQ(angleFrom("36001").problems().front().code, "out-of-range");
}

}  // namespace
}  // namespace wend::units
