/// Found routes on random floors, walked again by the checker of drawn routes against the floor's own geometry: discs
/// and lines at their places in continuous time, and a lens that looks about.
#include <gtest/gtest.h>

#include <cstdio>
#include <memory>
#include <random>

#include "core/crew/found_route.h"
#include "core/crew/route_stuck.h"
#include "core/crew/routes_together.h"
#include "core/geometry/segment.h"

namespace wend::crew {
namespace {

using Random = std::mt19937_64;

double uniform(Random& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

/// A floor with walls, a lens that travels and pans, and somebody who walks to and fro.
class Floor {
 public:
  explicit Floor(Random& random) {
    wide_ = uniform(random, 5, 8);
    deep_ = uniform(random, 4, 6);
    for (int i = 0; i < 3; ++i) {
      const Point a{uniform(random, 0, wide_), uniform(random, 0, deep_)};
      walls_.push_back({a, a + geometry::direction(uniform(random, 0, 360)) * uniform(random, 0.3, 2.5)});
    }
    for (double* value : {&phase_, &pan_, &sway_}) *value = uniform(random, -1, 1);
    actor_ = {uniform(random, 0, wide_), uniform(random, 0, deep_)};
    stride_ = geometry::direction(uniform(random, 0, 360)) * uniform(random, 0.2, 1.5);
  }

  Point camera(double t) const {
    return {wide_ * (0.5 + 0.3 * std::sin(0.21 * t + 3 * phase_)), deep_ * (0.5 + 0.3 * std::cos(0.17 * t))};
  }
  Point actor(double t) const { return actor_ + stride_ * std::sin(0.5 * t + phase_); }
  double bearing(double t) const { return 200 * phase_ + 25 * pan_ * t + 60 * std::sin(0.4 * sway_ * t); }
  /// Within eighteen degrees of the lens' axis and seven metres.
  bool isSeen(Point p, double t) const {
    const auto way = p - camera(t);
    const double metres = geometry::length(way);
    return metres < 7 && (metres < 0.5 || std::abs(geometry::turn(bearing(t), geometry::bearingOf(way))) < 18);
  }

  /// What somebody of a radius meets, exactly; and seen within the allowances at the very place.
  GroundAt exactly(double radius) const {
    return [this, radius](Point p, double t) {
      for (const geometry::Segment& wall : walls_)
        if (geometry::distance(p, wall) < radius + 0.05 - 1e-9) return Ground::taken;
      // The camera and the actor bend between looks: 4 mm.
      if (geometry::distance(p, camera(t)) < radius + 0.35 - 0.004) return Ground::taken;
      if (geometry::distance(p, actor(t)) < radius + 0.25 - 0.004) return Ground::taken;
      for (double look = t - late; look <= t + early; look += 0.05)
        if (isSeen(p, look)) return Ground::seen;
      return Ground::free;
    };
  }

  GroundTime ground(double speed, double radius, double cell = 0.2, double cells = 3) const {
    const geometry::Grid grid = geometry::gridOver({{0, 0}, {wide_, deep_}}, cell);
    GroundTime ground(grid, clockFor({0, length}, speed, cell, cells), radius);
    for (const geometry::Segment& wall : walls_) ground.take(Obstacle{"wall", {wall.a, wall.b}, false, 0.05, 0, 2.5});
    ground.take(Mover{[this](double t) { return camera(t); }, 0.35});
    ground.take(Mover{[this](double t) { return actor(t); }, 0.25});
    for (double t = -2; t <= length + 3; t += 0.05) barSeenAt(ground, t);
    return ground;
  }

  Point anywhere(Random& random) const { return {uniform(random, 0, wide_), uniform(random, 0, deep_)}; }

  static constexpr double length = 30, early = 1, late = 0.5;

 private:
  /// A cell is seen where a point of it is: five degrees and a decimetre more than its centre.
  void barSeenAt(GroundTime& ground, double t) const {
    const geometry::Grid& grid = ground.grid();
    for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
      const auto way = grid.centre(cell) - camera(t);
      const double metres = geometry::length(way), reach = grid.reach();
      if (metres > 7 + reach) continue;
      const double more = metres > reach ? geometry::degrees(std::asin(reach / metres)) : 180;
      if (metres >= 0.5 + reach && std::abs(geometry::turn(bearing(t), geometry::bearingOf(way))) > 18 + more) continue;
      ground.barSeen(cell, {t - early - 0.05, t + late + 0.05});
    }
  }

  double wide_ = 0, deep_ = 0, phase_ = 0, pan_ = 0, sway_ = 0;
  std::vector<geometry::Segment> walls_;
  Point actor_;
  geometry::Vec stride_;
};

std::vector<std::size_t> freeStart(const GroundTime& ground, Point near) {
  const auto cell = ground.grid().cellAt(near);
  if (!cell || !ground.stand().at(*cell, 0) || !ground.clear().at(*cell, 0)) return {};
  return {*cell};
}

TEST(RouteHoldsProperty, FoundRoutesPassTheCheckerOnTheFloorItself) {
  const std::uint64_t seed = 4201;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  int found = 0, walked = 0;
  for (int i = 0; i < 60; ++i) {
    const Floor floor(random);
    const GroundTime ground = floor.ground(1.1, 0.28);
    RouteTask task;
    task.ground = &ground;
    task.starts = freeStart(ground, floor.anywhere(random));
    if (task.starts.empty()) continue;
    const auto answer = cheapestRoute(task);
    if (!answer->route) continue;
    ++found;
    walked += answer->route->walks > 0;
    const DrawnRoute drawn = drawnRoute(*answer->route, ground.grid(), ground.clock());
    const RouteReport exact = reportOf(drawn, {.speed = 1.1, .step = 0.05}, floor.exactly(0.28));
    ASSERT_TRUE(exact.holds()) << "floor " << i << ", break at " << exact.breaks[0].span.from;
    const RouteReport planned = reportOf(*answer->route, ground, 1.1, 0.02);
    ASSERT_TRUE(planned.holds()) << i;
    ASSERT_EQ(static_cast<int>(planned.walks.size()), answer->route->walks);
    for (std::size_t w = 0; w < planned.walks.size(); ++w) {
      // What the planner's ground allows, the floor allows: it bars more. Looks a fiftieth apart miss no more than
      // that.
      ASSERT_TRUE(planned.walks[w].latestLeave && planned.walks[w].earliestArrive);
      ASSERT_GE(*planned.walks[w].latestLeave, planned.walks[w].span.from - 1e-9);
      ASSERT_LE(*planned.walks[w].latestLeave, *exact.walks[w].latestLeave + 0.02) << i;
      ASSERT_GE(*planned.walks[w].earliestArrive, *exact.walks[w].earliestArrive - 0.02) << i;
    }
  }
  std::printf("%d routes, %d with walks\n", found, walked);
  EXPECT_GT(found, 15);
  EXPECT_GT(walked, 8);
}

TEST(RouteHoldsProperty, NoTwoPeopleMeet) {
  const std::uint64_t seed = 4202;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  int pairs = 0, close = 0;
  for (int i = 0; i < 25; ++i) {
    const Floor floor(random);
    const std::vector<double> speeds{1.1, 0.8, 1.3}, radii{0.28, 0.32, 0.25};
    std::vector<GroundTime> grounds;
    for (std::size_t k = 0; k < 3; ++k) grounds.push_back(floor.ground(speeds[k], radii[k]));
    std::vector<RouteTask> tasks(3);
    for (std::size_t k = 0; k < 3; ++k) {
      tasks[k].ground = &grounds[k];
      tasks[k].speed = speeds[k];
      const auto& grid = grounds[k].grid();
      for (int tries = 0; tries < 50 && tasks[k].starts.empty(); ++tries)
        tasks[k].starts = freeStart(grounds[k], floor.anywhere(random));
      if (tasks[k].starts.empty()) tasks[k].starts = {0};
      for (int e = 0; e < 40; ++e) tasks[k].ends.push_back(*grid.cellAt(floor.anywhere(random)));
    }
    const auto routes = routesTogether(tasks, {}, {.margin = 0});
    for (std::size_t a = 0; a < 3; ++a) {
      if (!routes->people[a].route) continue;
      const DrawnRoute one = drawnRoute(*routes->people[a].route, grounds[a].grid(), grounds[a].clock());
      ASSERT_TRUE(reportOf(one, {.speed = speeds[a], .step = 0.1}, floor.exactly(radii[a])).holds()) << i;
      for (std::size_t b = 0; b < a; ++b) {
        if (!routes->people[b].route) continue;
        const DrawnRoute two = drawnRoute(*routes->people[b].route, grounds[b].grid(), grounds[b].clock());
        double least = 1e9;
        for (double t = 0; t < Floor::length; t += 0.02)
          least = std::min(least, geometry::distance(one.at(t), two.at(t)));
        ASSERT_GE(least, radii[a] + radii[b] - 1e-6) << "floor " << i;
        ++pairs;
        close += least < radii[a] + radii[b] + 0.5;
      }
    }
  }
  std::printf("%d pairs, %d of them near each other\n", pairs, close);
  EXPECT_GT(pairs, 15);
  EXPECT_GT(close, 2);
}

TEST(RouteHoldsProperty, WhatIsSaidToFreeFrees) {
  const std::uint64_t seed = 4203;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  int stuck = 0, early = 0, speed = 0, exposed = 0;
  for (int i = 0; i < 60; ++i) {
    const Floor floor(random);
    const GroundTime ground = floor.ground(1.1, 0.28, 0.3, 2);
    RouteTask task;
    task.ground = &ground;
    task.starts = freeStart(ground, floor.anywhere(random));
    if (task.starts.empty()) continue;
    task.ends = {*ground.grid().cellAt(floor.anywhere(random))};
    if (cheapestRoute(task, {.margin = 0})->route) continue;
    const Stuck why = *whyStuck(task, {.speed = 2, .early = Floor::early, .late = Floor::late});
    ++stuck;
    if (why.least) {
      exposed += !why.exposures.empty();
      double seconds = 0;
      for (const Exposure& e : why.exposures) seconds += e.span.length();
      ASSERT_NEAR(seconds, why.least->seconds, 1e-9);
      // Every bar later by the most of what its stretches ask for: the route itself is then clear.
      std::size_t most = 0;
      bool can = true;
      for (const Exposure& e : why.exposures) {
        can = can && e.laterBy;
        if (e.laterBy) most = std::max(most, ground.clock().wholeSteps(*e.laterBy));
      }
      GroundTime later = ground;
      later.moveBars(-static_cast<long>(most), 0);
      ASSERT_TRUE(!can || seenSteps(why.least->route, later).empty()) << i;
    }
    if (why.speed) {
      ++speed;
      RouteTask faster = task;
      faster.speed = *why.speed;
      ASSERT_TRUE(cheapestRoute(faster, {.margin = 0})->route);
    }
    if (why.early) {
      ++early;
      const long steps = static_cast<long>(ground.clock().wholeSteps(*why.early));
      for (const long n : {steps, steps - 1}) {
        GroundTime less = ground;
        less.moveBars(-n, 0);
        RouteTask other = task;
        other.ground = &less;
        ASSERT_EQ(cheapestRoute(other, {.margin = 0})->route.has_value(), n == steps) << i;
      }
    }
  }
  std::printf("%d stuck, %d exposed, %d freed by speed, %d by early\n", stuck, exposed, speed, early);
  EXPECT_GT(stuck, 10);
  EXPECT_GT(exposed, 5);
  EXPECT_GT(speed + early, 2);
}

}  // namespace
}  // namespace wend::crew
