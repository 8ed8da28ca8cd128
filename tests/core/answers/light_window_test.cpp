#include "core/answers/light_window.h"

#include <gtest/gtest.h>

#include "core/answers/answers.h"
#include "core/units/stop.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

TakePtr takeOf(const plan::Plan& plan) {
  return *Take::of(std::make_shared<const plan::Plan>(plan));
}

/// The sample's only light goes by the clock: a stop in ten minutes, and the plan is for the middle.
plan::Plan dawn() {
  plan::Plan plan = samplePlan("one-room.wend");
  plan.clock.timeOfDay = 22200 - plan.clock.length / 2;
  for (std::size_t i = 0; i < plan.set.areas.size(); ++i) {
    plan::Area area = plan.set.areas[i];
    area.states.clear();
    area.byClock = {{21600, 4}, {22800, 8}};
    plan.set.areas.replace(i, area);
  }
  return plan;
}

TEST(LightWindow, IsTheToleranceEitherSideOfThePlansOwnTime) {
  const auto spans = lightWindow(*takeOf(dawn()));
  ASSERT_TRUE(spans.has_value());
  ASSERT_EQ(spans->size(), 1u);
  // Every face is the same third of a stop off 200 s before and after, wherever in the take it stands.
  const double own = *dawn().clock.timeOfDay;
  EXPECT_NEAR(spans->front().from, own - 200, 1e-6);
  EXPECT_NEAR(spans->front().until, own + 200, 1e-6);
  EXPECT_EQ(light::goesFrom(spans->front(), 180), 3);
}

TEST(LightWindow, AgreesWithStartingTheTakeAtAnotherTime) {
  plan::Plan plan = dawn();
  const auto before = takeOf(plan);
  const auto spans = *lightWindow(*before, 0.5, {.over = 0.25, .under = 0.1});
  for (const double start :
       {spans.front().from - 5, spans.front().from + 5, spans.front().until - 5, spans.front().until + 5}) {
    plan.clock.timeOfDay = start;
    const auto then = takeOf(plan);
    bool holds = true;
    for (double t = 0; t <= plan.clock.length; t += 0.5) {
      const Instant was = sampleAt(*before, t), is = sampleAt(*then, t);
      for (std::size_t i = 0; i < was.performers.size(); ++i) {
        const auto shows = was.performers[i].inFrame;
        if (shows == optics::Showing::out || shows == optics::Showing::hidden) continue;
        const double off = light::offsetStops(is.performers[i].needed.value(), was.performers[i].needed.value());
        holds = holds && off <= 0.25 && off >= -0.1;
      }
    }
    EXPECT_EQ(holds, geometry::contains(spans, start)) << start;
  }
}

// First Batch ends on a street at dawn that is read from 05:50 to 06:18; its plan is for 06:14. At its end, 168 s on,
// the street is 0.7 of the way from T11 to T12.35, and a third of a stop less than that is 71 s before 06:14; later the
// readings end before a third of a stop is reached. Worked out by hand. The course is nearly as steep on both sides of
// 06:14, so that people who show earlier bind the start by nearly as much: hence 0.2 s.
TEST(LightWindow, OfFirstBatchIsFiveMinutes) {
  const auto take = takeOf(samplePlan("first-batch.wend"));
  const auto spans = lightWindow(*take, 1);
  ASSERT_TRUE(spans.has_value());
  ASSERT_EQ(spans->size(), 1u);
  const double own = *take->plan().clock.timeOfDay;
  const double ahead = 0.7 * units::stopsBetween(11, 12.35);
  EXPECT_NEAR(spans->front().from - own, -168 - (1.0 / 3 - ahead) / (units::stopsBetween(8.98, 11) / 420), 0.2);
  EXPECT_NEAR(spans->front().until, 6 * 3600 + 18 * 60 - 168, 1e-6);
}

TEST(LightWindow, IsNothingWhereTheClockDoesNotMatter) {
  EXPECT_FALSE(lightWindow(*takeOf(samplePlan("one-room.wend"))).has_value()) << "its light is steady";
  plan::Plan timeless = dawn();
  timeless.clock.timeOfDay.reset();
  EXPECT_FALSE(lightWindow(*takeOf(timeless)).has_value());
  plan::Plan blind = dawn();
  blind.lens.reset();
  EXPECT_FALSE(lightWindow(*takeOf(blind)).has_value());
}

TEST(LightWindow, IsEmptyWhereThePlansOwnLightIsUnknown) {
  plan::Plan late = dawn();
  late.clock.timeOfDay = 30000;
  const auto spans = lightWindow(*takeOf(late));
  ASSERT_TRUE(spans.has_value());
  EXPECT_TRUE(spans->empty());
}

}  // namespace
}  // namespace wend::answers
