/// The map of what is ever seen, with whole stretches of steps passed over at once, against single lines of sight at
/// random instants: whoever such a line meets stands on a cell the map holds.
#include "core/sight/ever_seen.h"

#include <gtest/gtest.h>

#include <atomic>
#include <cstdio>

#include "tests/core/sight/swept_reference.h"

namespace wend::sight {
namespace {

using geometry::Segment;
using reference::uniform;

constexpr double kRadius = 0.237;

struct Plan {
  std::vector<Segment> walls;
  std::vector<SweptPose> poses;
};

/// Walls on whole metres or anywhere; a lens that goes, stands, pans and now and then whips round among them.
Plan randomPlan(std::mt19937_64& random, std::size_t steps) {
  Plan plan;
  const bool lattice = random() % 2;
  const auto anywhere = [&] {
    const Point p{uniform(random, 0, 8), uniform(random, 0, 8)};
    return lattice ? Point{std::round(p.x), std::round(p.y)} : p;
  };
  for (std::size_t i = 0, n = 2 + random() % 14; i < n; ++i) plan.walls.push_back({anywhere(), anywhere()});
  SweptPose pose{lerp(anywhere(), anywhere(), 0.5), 15.0 * static_cast<double>(random() % 24), uniform(random, 8, 40)};
  Vec speed{0, 0};
  double pan = 0;
  for (std::size_t i = 0; i <= steps; ++i) {
    plan.poses.push_back(pose);
    if (random() % 12 == 0)
      speed = random() % 4 ? geometry::turned({uniform(random, 0, 0.07), 0}, uniform(random, 0, 6.29)) : Vec{0, 0};
    if (random() % 12 == 0) pan = random() % 4 ? uniform(random, -4, 4) : uniform(random, -20, 20);
    pose.pupil = {std::clamp(pose.pupil.x + speed.x, 0.0, 8.0), std::clamp(pose.pupil.y + speed.y, 0.0, 8.0)};
    pose.bearing += pan;
    pose.halfAngle = std::clamp(pose.halfAngle + uniform(random, -0.5, 0.5), 3.0, 50.0);
  }
  return plan;
}

/// The ground of a plan's steps; `over` offers stretches of them.
class PlanGround : public GroundOfSteps {
 public:
  PlanGround(const Plan& plan, const Triangulation& triangles, bool over, std::atomic<long>& found)
      : plan_(plan), view_(triangles), over_(over), found_(found) {}
  void find(std::size_t step, StepGround& ground) override {
    ++found_;
    view_.of({plan_.poses[step], plan_.poses[step + 1]}, ground.addLayer().region);
  }
  bool findOver(StepRange steps, StepGround& ground) override {
    if (!over_) return false;
    view_.of(stepOver({plan_.poses.data() + steps.from, plan_.poses.data() + steps.until + 1}),
             ground.addLayer().region);
    return true;
  }

 private:
  const Plan& plan_;
  SweptView view_;
  bool over_;
  std::atomic<long>& found_;
};

struct Tally {
  long looked = 0, seen = 0, missed = 0, more = 0, fewer = 0, steps = 0;
  std::atomic<long> found = 0;
};

void judge(std::mt19937_64& random, Tally& tally) {
  constexpr std::uint32_t kSteps = 150;
  const Plan plan = randomPlan(random, kSteps);
  const Triangulation triangles(plan.walls, {{-1, -1}, {9, 9}});
  const auto walls = reference::wallsOf(triangles);
  const geometry::Grid grid = geometry::gridOver({{0, 0}, {8, 8}}, 0.1);
  std::atomic<long> all = 0;
  const auto ever = [&](bool over, int threads, std::atomic<long>& found) {
    return *everSeen(
        grid, kRadius, {0, kSteps}, [&, over] { return std::make_unique<PlanGround>(plan, triangles, over, found); },
        threads);
  };
  const CellBits map = ever(true, 1, tally.found), stepwise = ever(false, 1, all);
  std::atomic<long> again = 0;
  EXPECT_EQ(ever(true, 2, again), map);
  tally.steps += all;
  for (std::size_t cell = 0; cell < grid.cells(); ++cell)
    tally.more += map.at(cell) && !stepwise.at(cell), tally.fewer += !map.at(cell) && stepwise.at(cell);
  for (int i = 0; i < 6000; ++i) {
    const std::size_t step = random() % kSteps;
    const SweptPose pose = reference::poseAt({plan.poses[step], plan.poses[step + 1]}, uniform(random, 0, 1));
    const double far = uniform(random, 0.1, 8), off = uniform(random, -1, 1) * pose.halfAngle;
    const Point q = pose.pupil + geometry::direction(pose.bearing + off) * far;
    const auto cell = grid.cellAt(q + geometry::turned({uniform(random, 0, kRadius), 0}, uniform(random, 0, 6.29)));
    ++tally.looked;
    if (!cell || geometry::distance(grid.centre(*cell), q) > kRadius - 1e-6) continue;
    if (!reference::inFrame(pose, q) || !reference::open(walls, pose.pupil, q)) continue;
    ++tally.seen;
    tally.missed += !map.at(*cell);
  }
}

TEST(EverSeenProperty, MissesNothingSeenAtAnyInstantOfStretchesPassedOver) {
  for (const std::uint64_t seed : {20291u, 20292u, 20293u}) {
    std::mt19937_64 random(seed);
    Tally tally;
    for (int i = 0; i < 150; ++i) judge(random, tally);
    std::printf(
        "ever seen: seed %llu, %ld lines, %ld meet a body, %ld false clear; %ld of %ld steps found, %ld cells more and "
        "%ld fewer than step by step\n",
        static_cast<unsigned long long>(seed), tally.looked, tally.seen, tally.missed, tally.found.load(), tally.steps,
        tally.more, tally.fewer);
    EXPECT_EQ(tally.missed, 0);
    EXPECT_EQ(tally.more, 0) << "what is found is found step by step";
    EXPECT_GT(tally.seen, 50000);
    EXPECT_LT(tally.found, tally.steps * 3 / 4) << "stretches are passed over";
  }
}

}  // namespace
}  // namespace wend::sight
