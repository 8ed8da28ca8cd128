#include "core/units/typed.h"

#include <gtest/gtest.h>

#include "core/base/text.h"

namespace wend::units {
namespace {

TEST(TypedNumber, HasOneDecimalMark) {
  EXPECT_EQ(typedNumber(" 3,2 "), 3.2);
  EXPECT_EQ(typedNumber("-3.2"), -3.2);
  for (const char* bad : {"1,2,3", "1.2,3", "", ","}) EXPECT_FALSE(typedNumber(bad)) << bad;
}

TEST(AsTyped, IsShortAndAlwaysUtf8) {
  EXPECT_EQ(asTyped("10 6"), "\"10 6\"");
  const std::string cut = asTyped(std::string(39, 'a') + "\u221e\u221e");
  EXPECT_EQ(cut, "\"" + std::string(39, 'a') + "\u221e\u2026\"");
  EXPECT_EQ(asTyped("\xff"
                    "a\xe2\x82"),
            "\"?a?\"");
  EXPECT_TRUE(base::isUtf8(asTyped("\xf0\x9f\x98\xf0\x9f\x98\x80")));
}

}  // namespace
}  // namespace wend::units
