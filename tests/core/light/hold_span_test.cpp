#include "core/light/hold_span.h"

#include <gtest/gtest.h>

#include <random>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

using geometry::Span;

constexpr double clock(int hours, int minutes) {
  return hours * 3600 + minutes * 60;
}

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (double(random() >> 11) / 9007199254740992.0);
}

/// Within a third of a stop of `wanted`, unless said otherwise.
ClockNeed needOf(std::vector<ClockReading> readings, double t, double wanted, StopTolerance tolerance = {}) {
  return {std::move(readings), t, allowedReadings(wanted, 0, Exposure{}, tolerance)};
}

TEST(HoldSpans, EndWhereAFaceIsAtItsTolerance) {
  // A stop in ten minutes: a third of a stop either way is 200 s either way.
  const std::vector<ClockReading> dawn{{clock(6, 0), 4}, {clock(6, 20), 8}};
  const auto spans = holdSpans({needOf(dawn, 100, units::closedBy(4, 1))});
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_NEAR(spans[0].from, clock(6, 10) - 200 - 100, 1e-6);
  EXPECT_NEAR(spans[0].until, clock(6, 10) + 200 - 100, 1e-6);
}

TEST(HoldSpans, MayBeWiderOnOneSide) {
  const std::vector<ClockReading> dawn{{clock(6, 0), 4}, {clock(6, 20), 8}};
  const auto spans = holdSpans({needOf(dawn, 0, units::closedBy(4, 1), {.over = 0.5, .under = 0})});
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_NEAR(spans[0].from, clock(6, 10), 1e-6);
  EXPECT_NEAR(spans[0].until, clock(6, 15), 1e-6);
}

TEST(HoldSpans, OfSeveralFacesAreWhatAllOfThemAllow) {
  const std::vector<ClockReading> dawn{{clock(6, 0), 4}, {clock(6, 20), 8}};
  const ClockNeed early = needOf(dawn, 0, units::closedBy(4, 1)), late = needOf(dawn, 168, units::closedBy(4, 1.5));
  const auto spans = holdSpans({early, late});
  ASSERT_EQ(spans.size(), 1u);
  // The late one alone: 06:15 - 168 s, 200 s either way.
  EXPECT_NEAR(spans[0].from, clock(6, 15) - 168 - 200, 1e-6);
  EXPECT_NEAR(spans[0].until, clock(6, 10) + 200, 1e-6);
  EXPECT_TRUE(holdSpans({early, needOf(dawn, 0, 8)}).empty());
}

TEST(HoldSpans, ComeTwiceWhereTheLightComesBack) {
  const std::vector<ClockReading> cloud{{0, 8}, {600, 4}, {1200, 8}};
  const auto spans = holdSpans({needOf(cloud, 0, units::closedBy(4, 1), {.over = 0.25, .under = 0.25})});
  ASSERT_EQ(spans.size(), 2u);
  EXPECT_NEAR(spans[0].from, 225, 1e-6);
  EXPECT_NEAR(spans[0].until, 375, 1e-6);
  EXPECT_NEAR(spans[1].from, 825, 1e-6);
  EXPECT_NEAR(spans[1].until, 975, 1e-6);
}

TEST(HoldSpans, DoNotReachIntoWhatIsUnknown) {
  const std::vector<ClockReading> steady{{1000, 5.6}, {2000, 5.6}};
  const auto spans = holdSpans({needOf(steady, 0, 5.6), needOf(steady, 168, 5.6)});
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_EQ(spans[0], (Span{1000, 1832}));
  EXPECT_TRUE(holdSpans({needOf({}, 0, 5.6)}).empty());
  EXPECT_EQ(holdSpans({needOf({{1000, 5.6}}, 10, 5.6)}), (geometry::Spans{{990, 990}}));
}

TEST(HoldSpans, AgreeWithLookingAtEverySecond) {
  std::mt19937_64 random(31);
  for (int round = 0; round < 50; ++round) {
    std::vector<ClockNeed> needs;
    for (int k = 0; k < 3; ++k) {
      ClockNeed need = needOf({}, uniform(random, 0, 200), uniform(random, 4, 6), {0.7, 0.5});
      for (double time = 0; time < 4000; time += uniform(random, 200, 900))
        need.readings.push_back({time, uniform(random, 3.5, 6.5)});
      needs.push_back(std::move(need));
    }
    const auto spans = holdSpans(needs);
    for (double start = -50; start < 4000; start += 7) {
      bool holds = true, near = false;
      for (const ClockNeed& need : needs) {
        const auto stop = stopByClock(need.readings, start + need.t);
        holds = holds && stop && need.allowed.contains(*stop);
        near = near || (stop && std::abs(*stop - need.allowed.from) < 1e-9) ||
               (stop && std::abs(*stop - need.allowed.until) < 1e-9);
      }
      if (near) continue;
      ASSERT_EQ(geometry::contains(spans, start), holds) << "seed 31, round " << round << ", " << start;
    }
  }
}

TEST(AllowedReadings, AreThoseAtWhichTheNeedStaysWithinTolerance) {
  const Exposure exposure{.index = 1600, .ndStops = 2};
  const double lamp = 400, reading = 4;
  const auto need = [&](double daylight) { return stopFor(luxOfReading(daylight, exposure) + lamp, exposure); };
  const Span allowed = allowedReadings(reading, lamp, exposure, {.over = 0.5, .under = 0.2});
  EXPECT_NEAR(offsetStops(need(allowed.from), need(reading)), -0.2, 1e-9);
  EXPECT_NEAR(offsetStops(need(allowed.until), need(reading)), 0.5, 1e-9);
  const Span alone = allowedReadings(reading, 0, exposure, {.over = 0.5, .under = 0.2});
  EXPECT_NEAR(units::stopsBetween(alone.from, alone.until), 0.7, 1e-12);
  EXPECT_LT(allowed.from, alone.from);
  EXPECT_GT(allowed.until, alone.until);
  // With enough lamps the daylight may go out altogether.
  EXPECT_LT(allowedReadings(reading, 1e6, exposure).from, 1e-3);
  EXPECT_GT(allowedReadings(reading, 1e6, exposure).from, 0);
}

TEST(GoesWithin, CountTheTakesThatEndInTheLight) {
  // Light from 06:06 to 06:24, a take of 168 s, twelve minutes from one start to the next: two goes.
  const Span light{clock(6, 6), clock(6, 24)};
  EXPECT_EQ(goesWithin(light, 168, 720), 2);
  EXPECT_EQ(goesWithin(light, 168, 912), 2) << "the second ends with the light";
  EXPECT_EQ(goesWithin(light, 168, 913), 1);
  EXPECT_EQ(goesWithin(light, 1080, 720), 1);
  EXPECT_EQ(goesWithin(light, 1081, 720), 0);
  EXPECT_EQ(goesFrom({light.from, light.until - 168}, 720), 2);
  EXPECT_EQ(goesFrom({5, 5}, 720), 1);
}

}  // namespace
}  // namespace wend::light
