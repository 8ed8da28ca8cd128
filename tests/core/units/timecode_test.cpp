#include "core/units/timecode.h"

#include <gtest/gtest.h>

namespace wend::units {
namespace {

TEST(Timecode, TellsWhichFramesASecondHas) {
  const auto typed = framesFrom("01:00:34:24", {{24, 1}, false});
  ASSERT_FALSE(typed.ok());
  EXPECT_EQ(typed.problems().front().expected, "frames from 00 to 23 in a second");
}

constexpr TimecodeKind k24{{24, 1}, false};
constexpr TimecodeKind k2997{{30000, 1001}, true};
constexpr TimecodeKind k5994{{60000, 1001}, true};

TEST(FrameAt, CoversFromTheFrameStartOn) {
  EXPECT_EQ(frameAt(0, {24, 1}), 0);
  EXPECT_EQ(frameAt(34.0, {24, 1}), 816);
  EXPECT_EQ(frameAt(0.041, {24, 1}), 1);   // printed to the millisecond, still its own frame
  EXPECT_EQ(frameAt(0.0395, {24, 1}), 0);  // more than a twentieth of a frame early
  EXPECT_EQ(frameAt(-0.041, {24, 1}), -1);
  EXPECT_EQ(frameAt(600, {24000, 1001}), 14385);
}

TEST(FrameAt, IsTheInverseOfSecondsAt) {
  for (const FrameRate rate : {FrameRate{24, 1}, FrameRate{24000, 1001}, FrameRate{25, 1}, FrameRate{30000, 1001}})
    for (std::int64_t frame = 0; frame < 100000; frame += 7) ASSERT_EQ(frameAt(secondsAt(frame, rate), rate), frame);
}

TEST(Timecode, IsReadBackForEveryFrameOfADay) {
  for (const TimecodeKind kind : {k24, k2997})
    for (std::int64_t frame = 0; frame < labelsPerDay(kind); ++frame) {
      const auto back = framesFrom(timecodeText(frame, kind), kind);
      ASSERT_TRUE(back.ok() && *back == frame) << frame;
    }
  for (std::int64_t frame = 0; frame < labelsPerDay(k5994); frame += 11)
    ASSERT_EQ(*framesFrom(timecodeText(frame, k5994), k5994), frame);
}

TEST(Timecode, WrapsAtADayBothWays) {
  EXPECT_EQ(timecodeText(labelsPerDay(k24), k24), "00:00:00:00");
  EXPECT_EQ(timecodeText(-1, k24), "23:59:59:23");
  EXPECT_EQ(timecodeText(-1, k2997), "23:59:59;29");
}

TEST(Timecode, WidensItsFramesAboveAHundred) {
  EXPECT_EQ(timecodeText(119, {{120, 1}, false}), "00:00:00:119");
  EXPECT_EQ(*framesFrom("00:00:01:005", {{120, 1}, false}), 125);
}

TEST(Timecode, RefusesWhatIsNoLabel) {
  for (const char* bad :
       {"", "1:2:3:4", "00:00:00", "24:00:00:00", "00:60:00:00", "00:00:60:00", "00:00:00:24", "00:00:00;00",
        "00:00;00:00", "aa:00:00:00", "-1:00:00:00", "0000:00:00:00", "00:00:00:00:00"})
    EXPECT_FALSE(framesFrom(bad, k24).ok()) << bad;
}

TEST(Timecode, TakesEitherSeparatorInDropFrame) {
  EXPECT_EQ(*framesFrom("00:01:00;02", k2997), 1800);
  EXPECT_EQ(*framesFrom("00:01:00:02", k2997), 1800);
  EXPECT_FALSE(framesFrom("00;01:00:02", k2997).ok());
}

TEST(SecondsFrom, CountsFromTheTakesStartOverMidnight) {
  const std::int64_t start = *framesFrom("23:59:00:00", k24);
  EXPECT_DOUBLE_EQ(*secondsFrom("00:00:10:00", k24, start), 70);
  EXPECT_DOUBLE_EQ(*secondsFrom("23:58:59:12", k24, start), -0.5);
  EXPECT_FALSE(secondsFrom("x", k24, start).ok());
}

TEST(DropFrame, HasNoMeaningAtOtherRates) {
  EXPECT_EQ((FrameRate{24000, 1001}.droppedPerMinute()), 0);
  EXPECT_EQ((FrameRate{30, 1}.droppedPerMinute()), 0);
  EXPECT_EQ((FrameRate{24000, 1001}.labelsPerSecond()), 24);
}

}  // namespace
}  // namespace wend::units
