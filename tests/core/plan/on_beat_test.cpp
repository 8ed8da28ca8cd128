#include "core/plan/on_beat.h"

#include <gtest/gtest.h>

namespace wend::plan {
namespace {

Plan withBeats(std::vector<double> times) {
  Plan plan;
  for (const double time : times) {
    Beat beat;
    beat.id = base::Id<Beat>("b" + std::to_string(plan.beats.size() + 1));
    beat.time = time;
    plan.beats.add(beat);
  }
  return plan;
}

TEST(OnBeat, IsTheLastThatHasBegun) {
  const Plan plan = withBeats({2, 8, 5});
  EXPECT_EQ(onBeat(plan, 6).beat, "b3");
  EXPECT_EQ(onBeat(plan, 6).plus, 1);
  EXPECT_EQ(onBeat(plan, 8).beat, "b2") << "from its first instant on";
}

TEST(OnBeat, IsNoneBeforeTheFirst) {
  EXPECT_EQ(onBeat(withBeats({2}), 1.5).beat, "");
  EXPECT_EQ(onBeat(withBeats({2}), 1.5).plus, 1.5);
}

// A frame's time is its number over the rate: 0.1 + 0.2 falls short of 0.3 as often as not.
TEST(OnBeat, ForgivesRounding) {
  EXPECT_EQ(onBeat(withBeats({2}), 2 - 1e-12).beat, "b1");
  EXPECT_EQ(onBeat(withBeats({2}), 2 - 1e-6).beat, "");
}

}  // namespace
}  // namespace wend::plan
