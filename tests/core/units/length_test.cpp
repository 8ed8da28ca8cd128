#include "core/units/length.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/base/text.h"

namespace wend::units {
namespace {

double read(const char* text, LengthUnit assumed = LengthUnit::metres) {
  const auto length = lengthFrom(text, assumed);
  EXPECT_TRUE(length.ok()) << text;
  return length.ok() ? *length : std::nan("");
}

std::string codeOf(const char* text, LengthUnit assumed = LengthUnit::metres) {
  const auto length = lengthFrom(text, assumed);
  return length.ok() ? "fine" : length.problems().front().code;
}

TEST(LengthFrom, TakesPointAndCommaAlike) {
  EXPECT_EQ(read("3.2"), 3.2);
  EXPECT_EQ(read("3,2"), 3.2);
  EXPECT_EQ(read("1,234"), 1.234);
  EXPECT_EQ(read(" -0,12 m "), -0.12);
}

TEST(LengthFrom, TakesMetricSuffixesWhateverIsAssumed) {
  for (const auto unit : {LengthUnit::metres, LengthUnit::feet}) {
    EXPECT_DOUBLE_EQ(read("3.2 m", unit), 3.2);
    EXPECT_DOUBLE_EQ(read("320cm", unit), 3.2);
    EXPECT_DOUBLE_EQ(read("3200 MM", unit), 3.2);
    EXPECT_DOUBLE_EQ(read("2 metres", unit), 2);
  }
}

TEST(LengthFrom, TakesFeetAndInches) {
  EXPECT_NEAR(read("29'6\""), 8.9916, 1e-12);
  EXPECT_NEAR(read("10'6\""), 3.2004, 1e-12);
  EXPECT_NEAR(read("10'6"), 3.2004, 1e-12);
  EXPECT_NEAR(read("10' 6 1/2\""), 126.5 * 0.0254, 1e-12);
  EXPECT_NEAR(read("10' 6\u00bd\""), 126.5 * 0.0254, 1e-12);
  EXPECT_NEAR(read("10\u2032 6\u2033"), 3.2004, 1e-12);
  EXPECT_NEAR(read("4'-2\""), 1.27, 1e-12);
  EXPECT_NEAR(read("-4'-2\""), -1.27, 1e-12);
  EXPECT_NEAR(read("10.5ft"), 3.2004, 1e-12);
  EXPECT_NEAR(read("10.5'"), 3.2004, 1e-12);
  EXPECT_NEAR(read("6 1/2 in"), 6.5 * 0.0254, 1e-12);
  EXPECT_NEAR(read("1/2\""), 0.0127, 1e-12);
}

TEST(LengthFrom, CountsBareNumbersInTheAssumedUnit) {
  EXPECT_EQ(read("10", LengthUnit::metres), 10);
  EXPECT_NEAR(read("10", LengthUnit::feet), 3.048, 1e-12);
}

TEST(LengthFrom, RefusesAmbiguousTextWithBothReadings) {
  const auto marks = lengthFrom("1,234.5", LengthUnit::metres);
  ASSERT_FALSE(marks.ok());
  EXPECT_EQ(marks.problems().front().code, "ambiguous-length");
  EXPECT_EQ(marks.problems().front().expected, "1234.5 m or 1.2345 m");
  const auto feet = lengthFrom("10 6", LengthUnit::feet);
  ASSERT_FALSE(feet.ok());
  EXPECT_EQ(feet.problems().front().expected, "10'6\" or 10.6 ft");
  const auto half = lengthFrom("12 1/2", LengthUnit::feet);
  ASSERT_FALSE(half.ok());
  EXPECT_EQ(half.problems().front().expected, "12 1/2 ft or 12 1/2\"");
}

TEST(LengthFrom, RefusesWhatIsNoLength) {
  for (const char* bad : {"", "-", "m", "3.2.m", "--3", "3 x", "10'13\"", "10.5'6\"", "6/2\"", "1/0\"", "nan", "1e5",
                          "3m20", "10''6'", "\xff\xfe", "3,2,1 m x"})
    EXPECT_EQ(codeOf(bad), "bad-length") << bad;
}

TEST(LengthFrom, RefusesMoreThanTenKilometres) {
  EXPECT_EQ(read("10000"), 10000);
  EXPECT_EQ(codeOf("10000.1"), "out-of-range");
  EXPECT_EQ(codeOf("-10000.1"), "out-of-range");
  EXPECT_EQ(codeOf("40000", LengthUnit::feet), "out-of-range");
}

TEST(LengthText, PrintsMetresToTheCentimetre) {
  EXPECT_EQ(lengthText(1.27, LengthUnit::metres), "1.27 m");
  EXPECT_EQ(lengthText(read("29'6\""), LengthUnit::metres), "8.99 m");
  EXPECT_EQ(lengthText(-0.001, LengthUnit::metres), "0.00 m");
  EXPECT_EQ(lengthText(std::numeric_limits<double>::infinity(), LengthUnit::feet), "\u221e");
}

TEST(LengthText, PrintsFeetAndHalfInches) {
  EXPECT_EQ(lengthText(1.27, LengthUnit::feet), "4'-2\"");
  EXPECT_EQ(lengthText(1.283, LengthUnit::feet), "4'-2\u00bd\"");
  EXPECT_EQ(lengthText(0.2, LengthUnit::feet), "0'-8\"");
  EXPECT_EQ(lengthText(0.0127, LengthUnit::feet), "0'-0\u00bd\"");
  EXPECT_EQ(lengthText(3.6575, LengthUnit::feet), "12'-0\"");
  EXPECT_EQ(lengthText(-1.27, LengthUnit::feet), "-4'-2\"");
  EXPECT_EQ(lengthText(-0.001, LengthUnit::feet), "0'-0\"");
}

TEST(LengthText, RoundsToWhatATapeCanShowThere) {
  EXPECT_EQ(lengthText(0.873, LengthUnit::metres, LengthStep::tape), "0.87 m");
  EXPECT_EQ(lengthText(2.31, LengthUnit::metres, LengthStep::tape), "2.32 m");
  EXPECT_EQ(lengthText(4.47, LengthUnit::metres, LengthStep::tape), "4.45 m");
  EXPECT_EQ(lengthText(9.4, LengthUnit::metres, LengthStep::tape), "9.50 m");
  EXPECT_EQ(lengthText(21.7, LengthUnit::metres, LengthStep::tape), "21.50 m");
  EXPECT_EQ(lengthText(2.31, LengthUnit::feet, LengthStep::tape), "7'-7\"");
  EXPECT_EQ(lengthText(9.4, LengthUnit::feet, LengthStep::tape), "31'-0\"");
}

TEST(LengthText, ReadsBackAsWhatItPrinted) {
  for (int halfInches = -400; halfInches <= 400; ++halfInches) {
    const double metres = halfInches * 0.0127;
    const std::string text = lengthText(metres, LengthUnit::feet);
    EXPECT_NEAR(read(text.c_str()), metres, 1e-9) << text;
  }
  for (int cm = -500; cm <= 500; ++cm) {
    const std::string text = lengthText(cm / 100.0, LengthUnit::metres);
    EXPECT_NEAR(read(text.c_str(), LengthUnit::feet), cm / 100.0, 1e-12) << text;
  }
}

}  // namespace
}  // namespace wend::units
