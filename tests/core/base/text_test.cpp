#include "core/base/text.h"

#include <gtest/gtest.h>

#include <limits>

namespace wend::base {
namespace {

TEST(ReadNumber, TakesWholeFiniteDecimalsOnly) {
  EXPECT_EQ(readNumber("-1.5"), -1.5);
  EXPECT_EQ(readNumber("+2e3"), 2000.0);
  EXPECT_EQ(readNumber(".5"), 0.5);
  for (const char* bad : {"", " 1", "1 ", "1x", "nan", "inf", "1e999", "--1", "+", "0x10", "1,5"})
    EXPECT_FALSE(readNumber(bad)) << bad;
}

TEST(Fixed, NeverPrintsANegativeZero) {
  EXPECT_EQ(fixed(-0.001, 2), "0.00");
  EXPECT_EQ(fixed(1.005, 1), "1.0");
  EXPECT_EQ(fixed(-2.25, 2), "-2.25");
  EXPECT_EQ(fixed(std::numeric_limits<double>::infinity(), 2), "\u221e");
}

TEST(Shortest, ReadsBackExactly) {
  for (const double value : {0.1, 1.0 / 3, 1e-300, 12345678.9}) EXPECT_EQ(readNumber(shortest(value)), value);
}

TEST(Columns, CountsCodePointsNotBytes) {
  EXPECT_EQ(columns("T4\u2153"), 3u);
  EXPECT_EQ(padLeft("\u221e", 3), "  \u221e");
  EXPECT_EQ(padRight("ab", 3), "ab ");
}

TEST(Utf8, RefusesOverlongFormsSurrogatesAndCuts) {
  EXPECT_TRUE(isUtf8("caf\u00e9 \u221e \U0001F600"));
  for (const char* bad : {"\xC0\xAF", "\xED\xA0\x80", "\xE2\x82", "\x80", "\xF5\x80\x80\x80"})
    EXPECT_FALSE(isUtf8(bad));
}

TEST(NearestWord, SuggestsOnlyWhatIsNear) {
  EXPECT_EQ(nearestWord("fcoal", {"focal", "stop"}), "focal");
  EXPECT_FALSE(nearestWord("banana", {"focal", "stop"}));
}

TEST(FixedUpAndDown, NeverPassTheOtherWay) {
  EXPECT_EQ(fixedUp(14.5494, 1), "14.6");
  EXPECT_EQ(fixedUp(14.5, 1), "14.5");
  EXPECT_EQ(fixedUp(0.1 + 0.2, 1), "0.3") << "rounding is no more";
  EXPECT_EQ(fixedDown(14.99, 0), "14");
  EXPECT_EQ(fixedDown(15, 0), "15");
  EXPECT_EQ(fixedDown(0.7 * 10, 0), "7");
  EXPECT_EQ(fixedUp(std::numeric_limits<double>::infinity(), 1), "\u221e");
}

}  // namespace
}  // namespace wend::base
