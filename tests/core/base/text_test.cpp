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

}  // namespace
}  // namespace wend::base
