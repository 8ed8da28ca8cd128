#include "core/crew/route.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace wend::crew {
namespace {

/// From x = 0 to x = 8 in 8 s, standing before and after.
DrawnRoute hop(Span first, Span second) {
  return {[=](double t) {
            const double share = (t - first.until) / (second.from - first.until);
            return Point{8 * std::clamp(share, 0.0, 1.0), 0};
          },
          {first, second}};
}

const GroundAt kFree = [](Point, double) { return Ground::free; };

/// Seen within the box of places and times.
GroundAt seenIn(Span x, Span t) {
  return [=](Point p, double now) { return x.contains(p.x) && t.contains(now) ? Ground::seen : Ground::free; };
}

TEST(ReportOf, MeasuresItsWalks) {
  const RouteReport report = reportOf(hop({0, 10}, {18, 40}), {}, kFree);
  ASSERT_EQ(report.walks.size(), 1u);
  EXPECT_EQ(report.walks[0].span, (Span{10, 18}));
  EXPECT_NEAR(report.walks[0].metres, 8, 1e-9);
  EXPECT_NEAR(report.walks[0].meanSpeed, 1, 1e-9);
  EXPECT_NEAR(report.walks[0].peakSpeed, 1, 1e-9);
  EXPECT_TRUE(report.holds());
}

TEST(ReportOf, TellsThePeakTheWayKnowsAndForgivesHalfOfTheLastDigitTold) {
  DrawnRoute route = hop({0, 10}, {18, 40});
  route.peak = [](Span span) { return span == Span{10, 18} ? 1.104 : 0; };
  const RouteReport under = reportOf(route, {}, kFree);
  EXPECT_DOUBLE_EQ(under.walks.at(0).peakSpeed, 1.104);
  EXPECT_TRUE(under.holds()) << "printed as 1.10, which is allowed";
  EXPECT_TRUE(under.walks[0].latestLeave.has_value());
  route.peak = [](Span) { return 1.106; };
  EXPECT_FALSE(reportOf(route, {}, kFree).holds());
}

TEST(ReportOf, OnFreeGroundAWalkSlidesBetweenItsNeighbours) {
  const Walk walk = reportOf(hop({0, 10}, {18, 40}), {}, kFree).walks[0];
  EXPECT_DOUBLE_EQ(walk.latestLeave.value(), 32);
  EXPECT_DOUBLE_EQ(walk.earliestArrive.value(), 8);
  EXPECT_DOUBLE_EQ(walk.slack(), 32);
}

TEST(ReportOf, TheLatestLeaveWaitsUntilJustBeforeTheShelterIsSeen) {
  // The start is seen from 20 s on: whoever waits there must have left.
  const Walk walk = reportOf(hop({0, 10}, {18, 60}), {}, seenIn({-1, 0.5}, {20, 30})).walks[0];
  // Half a metre away half a second after leaving.
  EXPECT_NEAR(walk.latestLeave.value(), 19.5, 0.02);
  EXPECT_LE(walk.latestLeave.value(), 19.5);
}

TEST(ReportOf, WhoStandsMayBeOnOtherGroundThanWhoWalks) {
  // The start is seen from 20 s on, unless one crouches there; the walk itself would still be seen setting off.
  const GroundAt upright = seenIn({-1, 0.5}, {20, 60});
  const RouteReport crouching = reportOf(hop({0, 30}, {38, 60}), {}, upright, kFree);
  ASSERT_EQ(crouching.breaks.size(), 1u);
  EXPECT_NEAR(crouching.breaks[0].span.from, 30, 0.11) << "up and away";
  EXPECT_NEAR(crouching.breaks[0].span.until, 30.5, 0.11);
  EXPECT_NEAR(reportOf(hop({0, 30}, {38, 60}), {}, upright).breaks[0].span.from, 20, 0.11);
  // One who walks before that and is there still to crouch keeps their slack.
  const RouteReport early = reportOf(hop({0, 10}, {18, 60}), {}, seenIn({7.5, 9}, {25, 60}), kFree);
  EXPECT_TRUE(early.holds());
  EXPECT_NEAR(early.walks[0].latestLeave.value(), 17, 0.12) << "half a metre before the end at 25 s";
}

TEST(ReportOf, AWalkMustPassBeforeItsWayIsSeen) {
  // The middle of the way is seen from 20 to 22 s. It is left behind 5 s after the start.
  const Walk walk = reportOf(hop({0, 10}, {18, 60}), {}, seenIn({4, 5}, {20, 22})).walks[0];
  EXPECT_NEAR(walk.latestLeave.value(), 15, 0.12);
  EXPECT_LT(walk.latestLeave.value(), 15.11);
}

TEST(ReportOf, TheEarliestArrivalFindsItsShelterUnseen) {
  // The far end is seen until 12 s; the last half metre too.
  const Walk walk = reportOf(hop({0, 10}, {18, 60}), {}, seenIn({7.5, 9}, {0, 12})).walks[0];
  EXPECT_NEAR(walk.earliestArrive.value(), 12.5, 0.12);
  EXPECT_GT(walk.earliestArrive.value(), 12.4);
}

TEST(ReportOf, ShiftsDoNotLeapOverABar) {
  // Once 20 s have passed the way is free again, but the wait at the start from 14 to 16 s is not.
  const Walk walk = reportOf(hop({0, 10}, {18, 60}), {}, seenIn({-1, 0.1}, {14, 16})).walks[0];
  EXPECT_LT(walk.latestLeave.value(), 14);
  EXPECT_GT(walk.latestLeave.value(), 13.8);
}

TEST(ReportOf, BreaksNameTheirSpanReasonAndPlace) {
  const RouteReport report = reportOf(hop({0, 10}, {18, 40}), {}, seenIn({4, 6}, {0, 100}));
  ASSERT_EQ(report.breaks.size(), 1u);
  EXPECT_EQ(report.breaks[0].why, Break::Why::seen);
  EXPECT_NEAR(report.breaks[0].span.from, 14, 0.002);
  EXPECT_NEAR(report.breaks[0].span.until, 16, 0.002);
  EXPECT_NEAR(report.breaks[0].at.x, 4, 0.002);
  EXPECT_FALSE(report.walks[0].latestLeave);
  EXPECT_FALSE(report.walks[0].earliestArrive);
  EXPECT_EQ(report.walks[0].slack(), 0);
  EXPECT_FALSE(report.holds());
}

TEST(ReportOf, AStandBreaksToo) {
  const RouteReport report = reportOf(hop({0, 10}, {18, 60}), {}, seenIn({7, 9}, {49.8, 54.5}));
  ASSERT_EQ(report.breaks.size(), 1u);
  EXPECT_NEAR(report.breaks[0].span.from, 49.8, 0.002);
  EXPECT_NEAR(report.breaks[0].span.until, 54.5, 0.002);
  EXPECT_TRUE(report.walks[0].latestLeave) << "the walk itself holds";
}

TEST(ReportOf, TakenGroundAndHasteBreakARoute) {
  const GroundAt crate = [](Point p, double) { return std::abs(p.x - 3) < 0.5 ? Ground::taken : Ground::free; };
  const RouteReport report = reportOf(hop({0, 10}, {15, 40}), {.speed = 1.1}, crate);
  ASSERT_EQ(report.breaks.size(), 2u);
  EXPECT_EQ(report.breaks[0].why, Break::Why::fast);
  EXPECT_EQ(report.breaks[0].span, (Span{10, 15}));
  EXPECT_EQ(report.breaks[1].why, Break::Why::taken);
  EXPECT_FALSE(report.walks[0].latestLeave);
}

TEST(ReportOf, AtTheLimitIsNotTooFast) {
  EXPECT_TRUE(reportOf(hop({0, 10}, {10 + 8 / 1.1, 40}), {.speed = 1.1}, kFree).holds());
}

TEST(ReportOf, AJumpBetweenStandsIsTooFast) {
  DrawnRoute jump{[](double t) { return Point{t < 10 ? 0.0 : 8.0, 0}; }, {{0, 9.99}, {10, 20}}};
  EXPECT_EQ(reportOf(jump, {}, kFree).breaks.at(0).why, Break::Why::fast);
}

TEST(ReportOf, OneStandHasNoWalks) {
  const DrawnRoute still{[](double) { return Point{1, 1}; }, {{5, 50}}};
  const RouteReport report = reportOf(still, {}, seenIn({0, 2}, {0, 3}));
  EXPECT_TRUE(report.walks.empty());
  EXPECT_TRUE(report.holds()) << "seen before it was there";
}

TEST(ReportOf, AFocusPullersWayThroughABakery) {
  struct Mark {
    double at, until;
    Point pos;
  };
  const std::vector<Mark> marks{{0, 10, {-3, -4.8}},         {20, 32, {-3.3, -0.6}},     {36.2, 36.2, {-1, 2.45}},
                                {37.6, 37.6, {0.35, 2.5}},   {39.6, 44, {0.6, 0.7}},     {50, 50, {6.95, 0.55}},
                                {52, 100.5, {7.2, -1.2}},    {102.3, 102.3, {7.2, 0.6}}, {105.5, 105.5, {8.5, 3.3}},
                                {106.2, 106.2, {9.1, 3.68}}, {107.2, 107.2, {9.6, 3.1}}, {108.9, 132.5, {9.6, 1.5}}};
  DrawnRoute route;
  for (const Mark& m : marks)
    if (m.until > m.at) route.stands.push_back({m.at, m.until});
  route.at = [&](double t) {
    std::size_t i = 0;
    while (i + 1 < marks.size() && marks[i + 1].at <= t) ++i;
    if (i + 1 == marks.size() || t <= marks[i].until) return marks[i].pos;
    return geometry::lerp(marks[i].pos, marks[i + 1].pos, (t - marks[i].until) / (marks[i + 1].at - marks[i].until));
  };
  const RouteReport report = reportOf(route, {.speed = 1.1}, kFree);
  EXPECT_TRUE(report.holds());
  ASSERT_EQ(report.walks.size(), 4u);
  // By hand from the marks: hypot(0.3, 4.2) in 10 s.
  EXPECT_NEAR(report.walks[0].metres, std::hypot(0.3, 4.2), 1e-9);
  EXPECT_NEAR(report.walks[0].meanSpeed, 0.421, 5e-4);
  double fastest = 0;
  for (const Walk& walk : report.walks) fastest = std::max(fastest, walk.peakSpeed);
  EXPECT_NEAR(fastest, 1.06, 0.01);
  EXPECT_DOUBLE_EQ(report.walks[0].latestLeave.value(), 22);
  EXPECT_DOUBLE_EQ(report.walks[3].earliestArrive.value(), 60.4);
  EXPECT_EQ(reportOf(route, {.speed = 1.0}, kFree).breaks.size(), 2u);
}

TEST(ReportOf, EveryShiftUpToTheLatestMeetsFreeGround) {
  std::mt19937_64 random(23);
  const auto uniform = [&](double a, double b) { return a + (b - a) * (double(random() >> 11) / 9007199254740992.0); };
  int limited = 0;
  for (int i = 0; i < 40; ++i) {
    std::vector<std::pair<Span, Span>> bars;
    for (int k = 0; k < 3; ++k) {
      const double x = uniform(-1, 8), t = uniform(0, 50);
      bars.push_back({{x, x + uniform(0.5, 3)}, {t, t + uniform(1, 6)}});
    }
    const GroundAt ground = [&](Point p, double t) {
      for (const auto& [x, time] : bars)
        if (x.contains(p.x) && time.contains(t)) return Ground::seen;
      return Ground::free;
    };
    const DrawnRoute route = hop({0, 20}, {28, 50});
    const Walk walk = reportOf(route, {}, ground).walks[0];
    if (!walk.latestLeave) continue;
    limited += *walk.latestLeave < 41.9;
    for (double leave = 20; leave <= *walk.latestLeave; leave += 0.17)
      for (double s = 0; s <= 8; s += 0.1) ASSERT_NE(ground({s, 0}, leave + s), Ground::seen) << i << ' ' << leave;
  }
  EXPECT_GT(limited, 5);
}

}  // namespace
}  // namespace wend::crew
