#include "core/units/stop.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/text.h"

namespace wend::units {
namespace {

double read(const std::string& text) {
  const auto stop = stopFrom(text);
  EXPECT_TRUE(stop.ok()) << text;
  return stop.ok() ? *stop : std::nan("");
}

TEST(StopText, PutsThirdsUnderTheFullMark) {
  EXPECT_EQ(stopText(6.3), "T5.6\u2153");
  EXPECT_EQ(stopText(4.49), "T4\u2153");
  EXPECT_EQ(stopText(3.14), "T2.8\u2153");
  EXPECT_EQ(stopText(7.1), "T5.6\u2154");
  EXPECT_EQ(stopText(0.5), "T0.5");
  EXPECT_EQ(stopText(128), "T128");
}

TEST(StopText, GoesOnBeyondTheEngravedMarks) {
  EXPECT_EQ(stopText(181), "T181");
  EXPECT_EQ(stopText(1024 * std::exp2(1.0 / 6)), "T1024\u2153");
  EXPECT_EQ(stopText(0.354), "T0.35");
  EXPECT_EQ(stopText(0.45), "T0.35\u2154");
}

TEST(StopText, ReadsEngravedFullMarksAsThemselves) {
  for (const char* mark : {"1", "1.4", "2", "2.8", "4", "5.6", "8", "11", "16", "22", "32"})
    EXPECT_EQ(stopText(*base::readNumber(mark)), std::string("T") + mark);
}

TEST(StopFrom, MultipliesATypedThird) {
  EXPECT_EQ(read("5.6"), 5.6);
  EXPECT_EQ(read("6.3"), 6.3);
  EXPECT_DOUBLE_EQ(read("5.6 1/3"), 5.6 * std::exp2(1.0 / 6));
  EXPECT_DOUBLE_EQ(read("T4 1/3"), 4 * std::exp2(1.0 / 6));
  EXPECT_DOUBLE_EQ(read("t2,8 2/3"), 2.8 * std::exp2(1.0 / 3));
  EXPECT_DOUBLE_EQ(read("T5.6\u2153"), 5.6 * std::exp2(1.0 / 6));
  EXPECT_DOUBLE_EQ(read("T 8 \u2154"), 8 * std::exp2(1.0 / 3));
}

TEST(StopFrom, ReadsEveryPrintedThirdBack) {
  for (int thirds = -6; thirds <= 42; ++thirds) {
    const std::string text = stopText(exactStop(thirds));
    EXPECT_EQ(stopText(read(text)), text);
    EXPECT_NEAR(stopsBetween(exactStop(thirds), read(text)), 0, 0.09) << text;
  }
}

TEST(StopFrom, SaysWhatIsWrong) {
  for (const char* bad : {"", "T", "f/4", "41/3", "4 1/2", "four", "4 1/3 1/3", "nan", "1,234.5"}) {
    const auto stop = stopFrom(bad);
    ASSERT_FALSE(stop.ok()) << bad;
    EXPECT_EQ(stop.problems().front().code, "bad-stop") << bad;
  }
  for (const char* far : {"0.4", "129", "-4", "128 1/3", "0"})
    EXPECT_EQ(stopFrom(far).problems().front().code, "out-of-range") << far;
}

TEST(Stops, AreCountedFromT1AndBack) {
  EXPECT_EQ(stopsOf(1), 0);
  EXPECT_DOUBLE_EQ(stopsOf(8), 6);
  EXPECT_DOUBLE_EQ(tNumberOf(-2), 0.5);
  for (const double stop : {0.5, 1.0, 2.8, 6.3, 128.0}) EXPECT_DOUBLE_EQ(tNumberOf(stopsOf(stop)), stop);
}

TEST(Stops, AreCountedBetweenTNumbers) {
  EXPECT_DOUBLE_EQ(stopsBetween(2, 4), 2);
  EXPECT_DOUBLE_EQ(stopsBetween(4, 2.8284271247461903), -1);
  EXPECT_DOUBLE_EQ(stopsBetweenMarks(4, 6.3), 4.0 / 3) << "T6.3 is engraved for 6.35";
  EXPECT_DOUBLE_EQ(stopsBetweenMarks(11, 2.8), -4);
  EXPECT_DOUBLE_EQ(stopsBetweenMarks(4, 6), stopsBetween(4, 6)) << "T6 is between two marks";
  EXPECT_DOUBLE_EQ(stopsBetweenMarks(2.8 * exactStop(1), 8), 8.0 / 3) << "T2.8 1/3 as typed";
  EXPECT_DOUBLE_EQ(stopsBetweenMarks(exactStop(10), 8), 8.0 / 3) << "a typed third on an exact mark";
  EXPECT_DOUBLE_EQ(stopsBetweenMarks(3.0885, 3.2657), stopsBetween(3.0885, 3.2657)) << "no ring carries these";
  EXPECT_DOUBLE_EQ(closedBy(2.8, 2), 5.6);
  EXPECT_DOUBLE_EQ(closedBy(5.6, -2), 2.8);
  EXPECT_EQ(stopsText(4.0 / 3), "+1\u2153");
  EXPECT_EQ(stopsText(-0.7), "-\u2154");
  EXPECT_EQ(stopsText(-2), "-2");
  EXPECT_EQ(stopsText(0.1), "0");
}

}  // namespace
}  // namespace wend::units
