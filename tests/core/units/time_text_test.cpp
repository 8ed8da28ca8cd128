#include "core/units/time_text.h"

#include <gtest/gtest.h>

namespace wend::units {
namespace {

const TakeTimecode kTake{{{24, 1}, false}, 86400};  // starts at 01:00:00:00

TypedTime read(const char* text) {
  const auto time = timeFrom(text, kTake);
  EXPECT_TRUE(time.ok()) << text;
  return time.ok() ? *time : TypedTime{"nothing", 0};
}

TEST(TimeFrom, TakesSeconds) {
  EXPECT_EQ(read("34"), (TypedTime{"", 34}));
  EXPECT_EQ(read(" 34.5 "), (TypedTime{"", 34.5}));
  EXPECT_EQ(read("-2"), (TypedTime{"", -2}));
}

TEST(TimeFrom, TakesMinutesAndSeconds) {
  EXPECT_EQ(read("1:34.5"), (TypedTime{"", 94.5}));
  EXPECT_EQ(read("0:09"), (TypedTime{"", 9}));
}

TEST(TimeFrom, TakesTimecodeLessTheStart) {
  EXPECT_EQ(read("01:00:34:00"), (TypedTime{"", 34}));
  EXPECT_EQ(read("00:59:59:12"), (TypedTime{"", -0.5}));
}

TEST(TimeFrom, TakesABeatWithAnOffset) {
  EXPECT_EQ(read("b12"), (TypedTime{"b12", 0}));
  EXPECT_EQ(read("b12+1.5"), (TypedTime{"b12", 1.5}));
  EXPECT_EQ(read("end - 0.5"), (TypedTime{"end", -0.5}));
}

TEST(TimeFrom, RefusesTheRest) {
  for (const char* bad : {"", "b12+", "b12++1", "b12+-1", "b 12", "1:60", "1:", ":1", "1:-2", "b-1-2", "\u221e"})
    EXPECT_EQ(timeFrom(bad, kTake).problems().front().code, "bad-time") << bad;
  EXPECT_EQ(timeFrom("01:00:00;00", kTake).problems().front().code, "bad-timecode");
  EXPECT_EQ(timeFrom("86401", kTake).problems().front().code, "out-of-range");
}

}  // namespace
}  // namespace wend::units
