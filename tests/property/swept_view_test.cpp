// The ground seen during a step against brute force: every line from a hundred instants, on thousands of plans drawn
// to be awkward.
#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/sight/swept_reference.h"
#include "tests/support/sight_scenarios.h"

namespace wend::sight {
namespace {

using geometry::Segment;
using reference::uniform;

constexpr double kRadius = 0.237;

struct Trial {
  std::vector<Segment> walls;
  SweptStep step;
};

Point latticePoint(std::mt19937_64& random) {
  return {static_cast<double>(random() % 9), static_cast<double>(random() % 9)};
}

/// Crossing, overlapping, repeated and touching walls on whole metres; the lens on whole or half ones, by fifteens.
Trial latticeTrial(std::mt19937_64& random) {
  Trial trial;
  for (std::size_t i = 0, n = 1 + random() % 9; i < n; ++i)
    trial.walls.push_back({latticePoint(random), latticePoint(random)});
  if (random() % 2) trial.walls.push_back(trial.walls[random() % trial.walls.size()]);
  const Point at = lerp(latticePoint(random), latticePoint(random), 0.5);
  const double bearing = 15.0 * static_cast<double>(random() % 24), half = 7.5 * static_cast<double>(1 + random() % 9);
  trial.step.from = trial.step.until = {at, bearing, half};
  if (random() % 3)
    trial.step.until.pupil =
        at + Vec{0.25 * static_cast<double>(random() % 3) - 0.25, 0.25 * static_cast<double>(random() % 3) - 0.25};
  if (random() % 2) trial.step.until.bearing += 15.0 * static_cast<double>(random() % 4);
  return trial;
}

/// Walls anywhere, some of whose ends nearly meet others; the lens sometimes a hair from a wall, or whipping round.
Trial looseTrial(std::mt19937_64& random) {
  Trial trial;
  const auto anywhere = [&] { return Point{uniform(random, 0, 8), uniform(random, 0, 8)}; };
  for (std::size_t i = 0, n = 1 + random() % 9; i < n; ++i) {
    Point a = anywhere();
    if (!trial.walls.empty() && random() % 3 == 0) {
      const Segment& other = trial.walls[random() % trial.walls.size()];
      const double gap = std::pow(10, uniform(random, -5, -1));
      a = lerp(other.a, other.b, random() % 2 ? 1.0 : uniform(random, 0, 1)) + Vec{gap, -gap};
    }
    trial.walls.push_back({a, random() % 2 ? anywhere() : a + Vec{uniform(random, -1, 1), uniform(random, -1, 1)}});
  }
  Point at = anywhere();
  if (random() % 4 == 0) {
    const Segment& wall = trial.walls[random() % trial.walls.size()];
    at = lerp(wall.a, wall.b, uniform(random, 0, 1)) +
         Vec{uniform(random, -1, 1), uniform(random, -1, 1)} * std::pow(10, uniform(random, -6, -1));
  }
  const double move = random() % 4 ? uniform(random, 0, 0.1) : uniform(random, 0, 1.5);
  trial.step.from = {at, uniform(random, 0, 360), uniform(random, 3, random() % 5 ? 40 : 179)};
  trial.step.until = trial.step.from;
  trial.step.until.pupil = at + geometry::turned({move, 0}, uniform(random, 0, 6.28));
  trial.step.until.bearing += random() % 8 ? uniform(random, -20, 20) : uniform(random, -700, 700);
  trial.step.until.halfAngle *= uniform(random, 0.9, 1.1);
  return trial;
}

/// Many short walls, one or two together; half of the plans on quarter metres.
Trial denseTrial(std::mt19937_64& random) {
  Trial trial;
  const bool lattice = random() % 2;
  const auto rounded = [&](Vec v) { return lattice ? Vec{std::round(v.x * 4) / 4, std::round(v.y * 4) / 4} : v; };
  const auto anywhere = [&] { return Point{0, 0} + rounded({uniform(random, 0, 8), uniform(random, 0, 8)}); };
  const double most = random() % 2 ? 0.2 : 0.8;
  for (std::size_t i = 0, n = 20 + random() % 30; i < n; ++i) {
    const Point a = anywhere();
    const Vec d = rounded(geometry::turned({uniform(random, 0.05, most), 0}, uniform(random, 0, 6.29)));
    trial.walls.push_back({a, a + d});
    if (random() % 2) trial.walls.push_back({a + d, a + d + geometry::left(d)});
  }
  const double move = random() % 2 ? 0.1 : 0.8, half = 7.5 * static_cast<double>(1 + random() % 9);
  trial.step.from = trial.step.until = {anywhere(), 15.0 * static_cast<double>(random() % 24), half};
  trial.step.until.pupil =
      trial.step.from.pupil + rounded({uniform(random, -move, move), uniform(random, -move, move)});
  trial.step.until.bearing += random() % 2 ? 15.0 * static_cast<double>(random() % 3) : uniform(random, -10, 10);
  return trial;
}

/// Points worth a look: anywhere, and a millimetre and a hair to either side of what bounds the ground.
std::vector<Point> pointsFor(std::mt19937_64& random, const SweptRegion& region) {
  std::vector<Point> points;
  for (int i = 0; i < 12; ++i) points.push_back({uniform(random, -0.9, 8.9), uniform(random, -0.9, 8.9)});
  const auto beside = [&](Point a, Point b) {
    if (geometry::distance(a, b) < 1e-6) return;
    const Point on = lerp(a, b, uniform(random, 0, 1));
    const Vec off = geometry::left(geometry::unit(b - a)) * (random() % 2 ? 1e-3 : 3e-6);
    points.push_back(on + off);
    points.push_back(on - off);
  };
  for (const RegionEdge& edge : region.ring) beside(edge.a, edge.b);
  for (const RegionSlice& slice : region.slices)
    beside(slice.corner[0], slice.corner[1 + random() % static_cast<std::size_t>(slice.corners - 1)]);
  return points;
}

struct Tally {
  long plans = 0, looked = 0, seen = 0, falseClear = 0, falseSeen = 0, rings = 0, slices = 0;
};

void judge(std::mt19937_64& random, const Trial& trial, Tally& tally, std::size_t number) {
  const Triangulation triangles(trial.walls, {{-1, -1}, {9, 9}});
  const auto walls = reference::wallsOf(triangles);
  SweptView view(triangles);
  SweptRegion region;
  view.of(trial.step, region);
  ++tally.plans;
  (region.ring.empty() ? tally.slices : tally.rings) += 1;
  const geometry::Extent& box = triangles.box();
  for (const Point q : pointsFor(random, region)) {
    if (q.x <= box.low.x || q.y <= box.low.y || q.x >= box.high.x || q.y >= box.high.y) continue;
    ++tally.looked;
    const bool seen = reference::seenDuring(walls, trial.step, q);
    const double away = distance(region, {q, q});
    if (!seen) {
      if (away == 0) ++tally.falseSeen;
      continue;
    }
    ++tally.seen;
    // Whoever stands within the radius of what is seen is seen: the point itself is where the ring's parity counts, the
    // body where edges are not widened.
    const Point body = q + geometry::turned({uniform(random, 0, kRadius), 0}, uniform(random, 0, 6.29));
    const bool clear = away > 1e-6 || !meets(region, {body, body}, kRadius + 1e-6);
    if (clear && tally.falseClear++ < 5)
      ADD_FAILURE() << "plan " << number << " at " << q.x << " " << q.y << " missed by " << away << " of ring "
                    << region.ring.size() << " slices " << region.slices.size();
  }
}

void run(const char* name, std::uint64_t seed, int plans, Trial (*make)(std::mt19937_64&)) {
  std::mt19937_64 random(seed);
  Tally tally;
  for (int i = 0; i < plans; ++i) judge(random, make(random), tally, static_cast<std::size_t>(i));
  std::printf(
      "%s: seed %llu, %ld plans (%ld rings, %ld in slices only), %ld points, %ld seen, %ld false clear, "
      "%ld unseen of those looked at in the ground\n",
      name, static_cast<unsigned long long>(seed), tally.plans, tally.rings, tally.slices, tally.looked, tally.seen,
      tally.falseClear, tally.falseSeen);
  EXPECT_EQ(tally.falseClear, 0);
  EXPECT_GT(tally.seen, plans);
}

TEST(SweptViewProperty, MissesNothingOnLatticePlans) {
  run("lattice", 20271, 8000, latticeTrial);
}

TEST(SweptViewProperty, MissesNothingOnLoosePlans) {
  run("loose", 20272, 8000, looseTrial);
}

TEST(SweptViewProperty, MissesNothingAmongManyWalls) {
  run("dense", 20284, 1500, denseTrial);
}

/// A lens anywhere within `sway` of the straight way and its sides anywhere within `turn`. Some ways are straight but
/// for rounding.
TEST(SweptViewProperty, HoldsWaysThatSwayAndSidesThatTurn) {
  const std::uint64_t seed = 20278;
  std::mt19937_64 random(seed);
  long seen = 0, missed = 0;
  for (int i = 0; i < 5000; ++i) {
    Trial trial = i % 2 ? latticeTrial(random) : looseTrial(random);
    trial.step.sway = std::pow(10, i % 5 < 2 ? uniform(random, -18, -4) : uniform(random, -4, -0.5));
    trial.step.turn = uniform(random, 0, 5);
    const Triangulation triangles(trial.walls, {{-1, -1}, {9, 9}});
    const auto walls = reference::wallsOf(triangles);
    SweptView view(triangles);
    SweptRegion region;
    view.of(trial.step, region);
    for (int k = 0; k < 400; ++k) {
      const Point q{uniform(random, -0.9, 8.9), uniform(random, -0.9, 8.9)};
      SweptPose pose = reference::poseAt(trial.step, uniform(random, 0, 1));
      pose.pupil = pose.pupil + geometry::turned({trial.step.sway, 0}, uniform(random, 0, 6.29));
      pose.halfAngle += trial.step.turn;
      if (!reference::inFrame(pose, q) || !reference::open(walls, pose.pupil, q)) continue;
      ++seen;
      const Point body = q + geometry::turned({uniform(random, 0, kRadius), 0}, uniform(random, 0, 6.29));
      missed += distance(region, {q, q}) > 1e-6 || !meets(region, {body, body}, kRadius + 1e-6);
    }
  }
  std::printf("swaying: seed %llu, %ld seen, %ld false clear\n", static_cast<unsigned long long>(seed), seen, missed);
  EXPECT_EQ(missed, 0);
  EXPECT_GT(seen, 100000);
}

/// What the price is: bodies that count as seen during a step and are seen at none of 64 instants of it, in percent.
/// The instants are a lower bound of what is seen, so this is an upper bound of the price.
double falseSeenPercent(const scenarios::ScenarioSpec& spec, std::uint64_t seed, int steps) {
  std::mt19937_64 random(seed);
  const scenarios::SightScenario take = scenarios::sightScenario(spec);
  const Triangulation triangles(take.walls, take.extent);
  SweptView view(triangles);
  SweptRegion region, instant;
  long seen = 0, unseen = 0;
  for (int i = 0; i < steps; ++i) {
    const std::size_t frame = random() % take.frames();
    const auto pose = [&](std::size_t k) {
      return SweptPose{take.poses[k].pupil, take.poses[k].bearing, take.poses[k].halfAngle};
    };
    const SweptStep step{pose(frame), pose(frame + 1)};
    view.of(step, region);
    std::vector<Point> bodies;
    for (int k = 0; k < 4000; ++k) {
      const Point p{uniform(random, 0, spec.width), uniform(random, 0, spec.height)};
      if (meets(region, {p, p}, kRadius)) bodies.push_back(p);
    }
    seen += static_cast<long>(bodies.size());
    for (int k = 0; k <= 64 && !bodies.empty(); ++k) {
      const SweptPose at = reference::poseAt(step, k / 64.0);
      view.of({at, at}, instant);
      std::erase_if(bodies, [&](Point p) { return meets(instant, {p, p}, kRadius); });
    }
    unseen += static_cast<long>(bodies.size());
  }
  const double percent = 100.0 * static_cast<double>(unseen) / static_cast<double>(seen);
  std::printf("%s: seed %llu, %d steps, %ld bodies seen, %.2f %% of them at no instant\n", spec.name.c_str(),
              static_cast<unsigned long long>(seed), steps, seen, percent);
  return percent;
}

TEST(SweptViewProperty, CallsLittleSeenThatIsNot) {
  const auto specs = scenarios::scenarioSpecs();
  EXPECT_LE(falseSeenPercent(specs[0], 20281, 150), 2) << "rooms";
  EXPECT_LE(falseSeenPercent(specs[1], 20282, 400), 2) << "many rooms";
  EXPECT_LE(falseSeenPercent(specs[2], 20283, 120), 5) << "a hall";
}

}  // namespace
}  // namespace wend::sight
