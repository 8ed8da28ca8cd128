#include "core/units/clock_time.h"

#include <gtest/gtest.h>

namespace wend::units {
namespace {

TEST(TakeTimeText, CarriesTenthsIntoMinutes) {
  EXPECT_EQ(takeTimeText(60), "1:00.0");
  EXPECT_EQ(takeTimeText(59.96), "1:00.0");
  EXPECT_EQ(takeTimeText(9.04), "0:09.0");
  EXPECT_EQ(takeTimeText(-2.5), "-0:02.5");
  EXPECT_EQ(takeTimeText(-0.01), "0:00.0");
  EXPECT_EQ(takeTimeText(3725.3), "62:05.3");
  EXPECT_EQ(secondsText(34), "34.0");
}

TEST(TimeOfDay, ReadsBackEveryMillisecondOfSomeMinutes) {
  for (int ms = 0; ms < 120000; ++ms) {
    const double seconds = (22440000 + ms) / 1000.0;
    const auto back = timeOfDayFrom(timeOfDayText(seconds));
    ASSERT_TRUE(back.ok());
    ASSERT_EQ(*back, seconds);
  }
}

TEST(TimeOfDay, ReadsWhatIsWrittenOnACallSheet) {
  EXPECT_EQ(*timeOfDayFrom("06:14:00"), 22440);
  EXPECT_EQ(*timeOfDayFrom("05:50"), 21000);
  EXPECT_EQ(*timeOfDayFrom("23:59:59.5"), 86399.5);
  EXPECT_EQ(timeOfDayText(22440), "06:14:00");
  EXPECT_EQ(timeOfDayText(22440.25), "06:14:00.250");
}

TEST(TimeOfDay, RefusesTheRest) {
  for (const char* bad : {"", "6:14", "24:00", "06:60", "06:14:60", "06:14:00:00", "06:14:00.", "06:14:00.1234",
                          "ab:cd", "06:14:0x", "-6:14", "06:14:00.1x"})
    EXPECT_FALSE(timeOfDayFrom(bad).ok()) << bad;
}

}  // namespace
}  // namespace wend::units
