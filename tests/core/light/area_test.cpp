#include "core/light/area.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

bool noWall(Point, Point) {
  return false;
}

/// A wall along x = 0 with a doorway from y = 2 to y = 3.
bool wallOnTheLeft(Point a, Point b) {
  if ((a.x < 0) == (b.x < 0)) return false;
  const double y = a.y + (b.y - a.y) * (0 - a.x) / (b.x - a.x);
  return y < 2 || y > 3;
}

Area steady(AreaShape shape, std::vector<Reading> readings) {
  return {std::move(shape), {{{}, std::move(readings)}}, {}};
}

Outline box(double x0, double y0, double x1, double y1) {
  return {{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}};
}

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (double(random() >> 11) / 9007199254740992.0);
}

TEST(EdgeWeight, FadesFromAQuarterMetreInsideToAQuarterOutside) {
  const AreaShape room = box(0, 0, 9, 8);
  const auto at = [&](double x) { return edgeWeight(room, {x, 4}, noWall); };
  EXPECT_EQ(at(1), 1);
  EXPECT_EQ(at(0.25), 1);
  EXPECT_DOUBLE_EQ(at(0), 0.5);
  EXPECT_DOUBLE_EQ(at(0.125), 0.84375);
  EXPECT_DOUBLE_EQ(at(-0.125), 0.15625);
  EXPECT_EQ(at(-0.25), 0);
  EXPECT_EQ(at(-3), 0);
}

TEST(EdgeWeight, OfADiscFollowsItsRadius) {
  const AreaShape pool = Disc{{4.5, 3.7}, 2.1};
  EXPECT_EQ(edgeWeight(pool, {4.5, 3.7}, noWall), 1);
  EXPECT_NEAR(edgeWeight(pool, {4.5, 5.8}, noWall), 0.5, 1e-12);
  EXPECT_EQ(edgeWeight(pool, {4.5, 6.06}, noWall), 0);
}

TEST(EdgeWeight, DoesNotPassThroughAWallButThroughItsOpening) {
  const AreaShape room = box(0.1, 0, 9, 8);
  EXPECT_EQ(edgeWeight(room, {-0.05, 4}, wallOnTheLeft), 0);
  EXPECT_GT(edgeWeight(room, {-0.05, 2.5}, wallOnTheLeft), 0);
  EXPECT_EQ(edgeWeight(room, {-0.05, 2.5}, wallOnTheLeft), edgeWeight(room, {-0.05, 2.5}, noWall));
}

TEST(EdgeWeight, InsideIsNotCutByAWall) {
  EXPECT_DOUBLE_EQ(edgeWeight(box(-0.1, 0, 9, 8), {0.05, 4}, wallOnTheLeft),
                   edgeWeight(box(-0.1, 0, 9, 8), {0.05, 4}, noWall));
}

TEST(BlendOfReadings, IsTheReadingAtItsOwnPlace) {
  const std::vector<Reading> readings{{{0, 0}, 2}, {{2, 0}, 8}, {{5, 5}, 1.4}};
  for (const Reading& r : readings) EXPECT_EQ(blendOfReadings(readings, r.at), r.stop);
}

TEST(BlendOfReadings, HalfwayIsHalfwayInStops) {
  EXPECT_DOUBLE_EQ(blendOfReadings({{{0, 0}, 2}, {{2, 0}, 8}}, {1, 0}), 4);
  // Twice as near counts four times: a fifth of the two stops between them.
  EXPECT_NEAR(units::stopsBetween(2, blendOfReadings({{{0, 0}, 2}, {{3, 0}, 4}}, {1, 0})), 0.4, 1e-12);
}

TEST(BlendOfReadings, OneReadingIsUniform) {
  EXPECT_EQ(blendOfReadings({{{0, 0}, 4.49}}, {7, -3}), 4.49);
}

TEST(BlendOfReadings, LiesBetweenItsReadings) {
  std::mt19937_64 random(5);
  for (int i = 0; i < 500; ++i) {
    std::vector<Reading> readings;
    for (int k = 0; k < 4; ++k)
      readings.push_back({{uniform(random, 0, 9), uniform(random, 0, 8)}, uniform(random, 1.4, 16)});
    double low = 99, high = 0;
    for (const Reading& r : readings) low = std::min(low, r.stop), high = std::max(high, r.stop);
    const double stop = blendOfReadings(readings, {uniform(random, -9, 18), uniform(random, -8, 16)});
    ASSERT_GE(stop, low * (1 - 1e-12));
    ASSERT_LE(stop, high * (1 + 1e-12));
  }
}

TEST(StopByClock, IsLinearInStopsAndUnknownOutsideItsList) {
  const std::vector<ClockReading> dawn{{21000, 2.828}, {21600, 5.657}, {22440, 11.314}};
  EXPECT_EQ(stopByClock(dawn, 21000), 2.828);
  EXPECT_EQ(stopByClock(dawn, 22440), 11.314);
  EXPECT_NEAR(stopByClock(dawn, 21300).value(), 4, 1e-3);
  EXPECT_NEAR(stopByClock(dawn, 22020).value(), 8, 1e-3);
  EXPECT_FALSE(stopByClock(dawn, 20999));
  EXPECT_FALSE(stopByClock(dawn, 22441));
  EXPECT_FALSE(stopByClock({}, 22441));
  EXPECT_EQ(stopByClock({{21000, 4}}, 21000), 4);
  EXPECT_FALSE(stopByClock({{21000, 4}}, 21000.5));
}

TEST(Areas, LaterOnesLieOnTop) {
  const Areas areas({steady(box(0, 0, 9, 8), {{{4, 4}, 2.8}}), steady(Disc{{4.5, 3.7}, 2.1}, {{{4.5, 3.7}, 4.49}})}, {},
                    noWall);
  EXPECT_DOUBLE_EQ(areas.stopAt({4.5, 3.7}, 0).value(), 4.49);
  EXPECT_DOUBLE_EQ(areas.stopAt({8, 7}, 0).value(), 2.8);
  // On the upper edge both count half.
  EXPECT_NEAR(areas.stopAt({4.5, 5.8}, 0).value(), std::sqrt(2.8 * 4.49), 1e-9);
}

TEST(Areas, WeightsAreThoseOfTheirEdgesAndOfWhatLiesOnTop) {
  const std::vector<double> stops{2, 4, 8};
  const std::vector<Outline> boxes{box(0, 0, 3, 3), box(1, 0, 4, 3), box(1.9, -1, 2.2, 2)};
  std::vector<Area> list;
  for (std::size_t i = 0; i < 3; ++i) list.push_back(steady(boxes[i], {{{0, 0}, stops[i]}}));
  const Areas areas(list, {}, noWall);
  for (const Point p : {Point{1.1, 1.5}, Point{1.95, 2.1}, Point{3.1, 1}, Point{2.9, 2.9}, Point{2.3, 0}}) {
    double w[3], s[3], sum = 0, weights = 0;
    for (std::size_t i = 0; i < 3; ++i) s[i] = edgeWeight(boxes[i], p, noWall);
    for (std::size_t i = 0; i < 3; ++i) {
      w[i] = s[i];
      for (std::size_t j = i + 1; j < 3; ++j) w[i] *= 1 - s[j];
      sum += w[i] * 2 * std::log2(stops[i]);
      weights += w[i];
    }
    ASSERT_GT(weights, 0);
    EXPECT_NEAR(2 * std::log2(areas.stopAt(p, 0).value()), sum / weights, 1e-12);
  }
}

TEST(Areas, BeneathAnOpaqueOneChangeNothing) {
  const Area top = steady(box(0, 0, 9, 8), {{{1, 1}, 4}, {{8, 7}, 5.6}});
  const Areas alone({top}, {}, noWall);
  const Areas both({steady(Disc{{4, 4}, 1}, {{{4, 4}, 22}}), top}, {}, noWall);
  EXPECT_EQ(alone.stopAt({4, 4}, 0), both.stopAt({4, 4}, 0));
}

TEST(Areas, NowhereIsUnknownAndNotCovered) {
  const Areas areas({steady(box(0, 0, 9, 8), {{{4, 4}, 2.8}})}, {}, noWall);
  EXPECT_FALSE(areas.stopAt({-5, 4}, 0));
  EXPECT_FALSE(areas.lightAt({-5, 4}, 0).covered);
  EXPECT_TRUE(areas.lightAt({5, 4}, 0).covered);
  EXPECT_FALSE(Areas({}, {}, noWall).stopAt({0, 0}, 0));
}

TEST(Areas, ALoneAreaReadsItselfOnItsSoftEdgeToo) {
  const Areas areas({steady(box(0, 0, 9, 8), {{{4, 4}, 2.8}})}, {}, noWall);
  EXPECT_NEAR(areas.stopAt({-0.2, 4}, 0).value(), 2.8, 1e-12);
}

TEST(Areas, StatesCrossFadeInStops) {
  const Area pool{Disc{{0, 0}, 2}, {{{0, 0, false}, {{{0, 0}, 2}}}, {{34, 4, false}, {{{0, 0}, 8}}}}, {}};
  const Areas areas({pool}, {}, noWall);
  EXPECT_EQ(areas.stopAt({0, 0}, 33.9), 2);
  EXPECT_DOUBLE_EQ(areas.stopAt({0, 0}, 36).value(), 4);
  EXPECT_DOUBLE_EQ(areas.stopAt({0, 0}, 35).value(), std::sqrt(8.0));
  EXPECT_EQ(areas.stopAt({0, 0}, 38), 8);
}

TEST(Areas, ACutActsAtItsInstant) {
  const Area pool{Disc{{0, 0}, 2}, {{{0, 0, false}, {{{0, 0}, 1.4}}}, {{34, 0, false}, {{{0, 0}, 4.49}}}}, {}};
  const Areas areas({pool}, {}, noWall);
  EXPECT_DOUBLE_EQ(areas.stopAt({0, 0}, 33.999).value(), 1.4);
  EXPECT_DOUBLE_EQ(areas.stopAt({0, 0}, 34).value(), 4.49);
}

TEST(Areas, WithoutReadingsShowWhatLiesBeneath) {
  const Area oven{Disc{{0, 0}, 1}, {{{0, 0, false}, {}}, {{74, 2, false}, {{{0, 0}, 8}}}, {{81.5, 0, false}, {}}}, {}};
  const Areas areas({steady(box(-5, -5, 5, 5), {{{0, 0}, 2}}), oven}, {}, noWall);
  EXPECT_EQ(areas.stopAt({0, 0}, 10), 2);
  EXPECT_DOUBLE_EQ(areas.stopAt({0, 0}, 75).value(), 4);
  EXPECT_EQ(areas.stopAt({0, 0}, 78), 8);
  EXPECT_EQ(areas.stopAt({0, 0}, 81.5), 2);
  EXPECT_FALSE(Areas({oven}, {}, noWall).lightAt({0, 0}, 10).covered);
}

TEST(Areas, ByTheClockNeedATimeOfDayWithinTheList) {
  const Area street{box(0, 0, 9, 9), {}, {{22000, 4}, {22400, 8}}};
  const Areas areas({steady(box(-9, 0, 9, 9), {{{0, 0}, 2}}), street}, 21990.0, noWall);
  EXPECT_DOUBLE_EQ(areas.stopAt({5, 5}, 210).value(), std::sqrt(32.0));
  EXPECT_FALSE(areas.stopAt({5, 5}, 5));
  EXPECT_TRUE(areas.lightAt({5, 5}, 5).covered);
  EXPECT_FALSE(areas.stopAt({-0.1, 5}, 5)) << "an unknown area counts on its soft edge as well";
  EXPECT_DOUBLE_EQ(areas.stopAt({-1, 5}, 5).value(), 2);
  EXPECT_FALSE(Areas({street}, {}, noWall).stopAt({5, 5}, 210));
}

TEST(KelvinByClock, RunsEvenlyInMiredBetweenTheReadingsThatTellOne) {
  // 10000 K is 100 mired and 5000 K is 200: halfway is 150 mired, 6666.7 K, and not 7500 K.
  const std::vector<ClockReading> dusk = {{100, 8, 5000}, {150, 5.6}, {300, 2.8, 10000}};
  EXPECT_EQ(kelvinByClock(dusk, 100), 5000);
  EXPECT_EQ(kelvinByClock(dusk, 300), 10000);
  EXPECT_NEAR(kelvinByClock(dusk, 200).value(), 1e6 / 150, 1e-9);
  EXPECT_NEAR(kelvinByClock(dusk, 150).value(), 1e6 / 175, 1e-9) << "a reading without a colour is passed over";
}

TEST(KelvinByClock, IsUnknownOutsideOfWhatWasMetered) {
  const std::vector<ClockReading> dusk = {{50, 8}, {100, 8, 5000}, {300, 2.8, 10000}, {400, 2}};
  EXPECT_FALSE(kelvinByClock(dusk, 99.9));
  EXPECT_FALSE(kelvinByClock(dusk, 300.1));
  EXPECT_EQ(kelvinByClock({{100, 8, 5000}}, 100), 5000);
  EXPECT_FALSE(kelvinByClock({{100, 8}, {200, 4}}, 150));
  EXPECT_FALSE(kelvinByClock({}, 150));
}

TEST(AreasByClock, FollowTheCourseOfTheDayThroughAllThatCounts) {
  const Area street{box(0, 0, 9, 9), {}, {{22000, 4}, {22400, 8}, {23000, 11}}};
  const Area yard{box(-9, 0, 9, 9), {}, {{21000, 2}, {22600, 2.8}}};
  const Area lamp{Disc{{5, 5}, 2}, {{{0, 0, false}, {}}, {{30, 4, false}, {{{5, 5}, 5.6}}}}, {}};
  const Point deep{2, 8}, edge{0.1, 5}, lit{5, 6.9};
  for (const double t : {0.0, 32.0, 60.0})
    for (const Point p : {deep, edge, lit}) {
      const auto course = Areas({yard, street, lamp}, std::nullopt, noWall).byClockAt(p, t);
      ASSERT_GE(course.size(), 2u);
      for (double now = course.front().timeOfDay; now <= course.back().timeOfDay; now += 37) {
        const Areas then({yard, street, lamp}, now - t, noWall);
        EXPECT_NEAR(stopByClock(course, now).value(), then.stopAt(p, t).value(), 1e-9) << now;
      }
    }
}

TEST(AreasByClock, AreEmptyWhereNothingGoesByIt) {
  const Area street{box(0, 0, 9, 9), {}, {{22000, 4}, {22400, 8}}};
  const Areas areas({street, steady(box(-9, 0, -1, 9), {{{-5, 5}, 2}})}, 22000, noWall);
  EXPECT_TRUE(areas.byClockAt({-5, 5}, 0).empty());
  EXPECT_TRUE(areas.byClockAt({50, 5}, 0).empty());
  ASSERT_EQ(areas.byClockAt({5, 5}, 0).size(), 2u);
  EXPECT_EQ(areas.byClockAt({5, 5}, 0)[1].stop, 8);
  // Two lists that never hold at once are never known together.
  const Areas apart({street, Area{box(0, 0, 9, 9), {}, {{1000, 4}, {2000, 8}}}}, 22000, noWall);
  EXPECT_EQ(apart.byClockAt({5, 5}, 0).front().timeOfDay, 1000) << "the topmost alone counts";
  EXPECT_TRUE(
      Areas({street, Area{box(5, 0, 9, 9), {}, {{1000, 4}, {2000, 8}}}}, 22000, noWall).byClockAt({5.1, 5}, 0).empty());
}

TEST(Areas, ReadContinuouslyAcrossAnEdgeWithoutAWall) {
  const Areas areas({steady(box(-5, -5, 5, 5), {{{0, 0}, 2}}), steady(box(0, -5, 9, 5), {{{0, 0}, 11}})}, {}, noWall);
  double before = areas.stopAt({-1, 0}, 0).value();
  for (double x = -1; x <= 1; x += 1e-3) {
    const double stop = areas.stopAt({x, 0}, 0).value();
    ASSERT_LT(std::abs(units::stopsBetween(before, stop)), 0.02) << x;
    before = stop;
  }
}

}  // namespace
}  // namespace wend::light
