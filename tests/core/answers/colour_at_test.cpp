// The colour of the light somebody stands in, by states and by the clock.
#include "core/answers/colour_at.h"

#include <gtest/gtest.h>

#include "core/answers/answers.h"
#include "core/answers/set_scene.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

/// A street at dusk, 5000 to 10000 K in 200 s, and a lamp's pool in it that comes up at 10 s.
plan::Plan dusk() {
  plan::Plan plan;
  plan.clock.length = 100;
  plan.clock.timeOfDay = 70000;
  plan::Area street;
  street.id = base::Id<plan::Area>("street");
  street.shape = plan::Disc{{0, 0}, 20};
  street.byClock = {{70000, 8, 5000}, {70200, 4, 10000}};
  plan.set.areas.add(street);
  plan::Area pool;
  pool.id = base::Id<plan::Area>("pool");
  pool.shape = plan::Disc{{0, 0}, 2};
  pool.states.resize(2);
  pool.states[1].time.at.seconds = 10;
  pool.states[1].readings = {{{0, 0}, 4, {}}};
  pool.states[1].kelvin = 3200;
  plan.set.areas.add(pool);
  return plan;
}

TEST(ColourAt, IsThatOfTheClockAtThatMomentOfTheTake) {
  const plan::Plan plan = dusk();
  EXPECT_EQ(colourAt(plan, {5, 0}, 0)->area, "street");
  EXPECT_EQ(colourAt(plan, {5, 0}, 0)->kelvin, 5000);
  EXPECT_NEAR(colourAt(plan, {5, 0}, 100)->kelvin, 1e6 / 150, 1e-9);
  EXPECT_FALSE(colourAt(plan, {30, 0}, 0)) << "nobody knows what lies outside";
  EXPECT_FALSE(colourAt(plan, {5, 0}, 201)) << "later than the last reading";
}

TEST(ColourAt, IsThatOfTheTopmostLight) {
  const plan::Plan plan = dusk();
  EXPECT_EQ(colourAt(plan, {1, 0}, 9.9)->area, "street") << "a pool that is not lit yet lets the street through";
  EXPECT_EQ(colourAt(plan, {1, 0}, 10)->area, "pool");
  EXPECT_EQ(colourAt(plan, {1, 0}, 10)->kelvin, 3200);
}

TEST(ColourAt, OfDaylightIsUnknownWithoutATimeOfDay) {
  plan::Plan plan = dusk();
  plan.clock.timeOfDay.reset();
  EXPECT_FALSE(colourAt(plan, {5, 0}, 0));
  EXPECT_EQ(colourAt(plan, {1, 0}, 10)->kelvin, 3200);
}

TEST(ColourAt, IsWhatAnInstantTellsOfPerformers) {
  plan::Plan plan = samplePlan("one-room.wend");
  plan.clock.timeOfDay = 70000;
  plan::Area day;
  day.id = base::Id<plan::Area>("day");
  day.shape = plan::Disc{{0, 0}, 1000};
  day.byClock = {{69000, 4, 4000}, {71000, 4, 5000}};
  plan.set.areas.add(day);
  const auto take = *Take::of(std::make_shared<const plan::Plan>(plan));
  std::size_t told = 0;
  for (const double t : {0.0, plan.clock.length})
    for (const auto& at : sampleAt(*take, t).performers) {
      if (!at.present) continue;
      ++told;
      EXPECT_EQ(at.litBy, "day");
      EXPECT_EQ(at.kelvin, light::kelvinByClock(clockReadingsOf(day), 70000 + t));
    }
  EXPECT_GT(told, 0u);
}

}  // namespace
}  // namespace wend::answers
