#include "core/sight/seen_steps.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/sight/regions.h"

namespace wend::sight {
namespace {

using geometry::Vec;

/// A lens that wanders and turns: a ring before it, thin slices beside the ring, now and then a second way of seeing
/// with ground hidden from it. Steps from `edited` on belong to another take.
struct Wandering {
  std::uint64_t seed = 0;
  bool everyEdgeWidened = true;
  std::uint32_t editedFrom = 1000000, editedUntil = 1000000;
  bool rests = false;
  bool onWalls = false;  ///< every other edge of a ring
  bool over = false;     ///< offers the ground of many steps together
};

class WanderingGround : public GroundOfSteps {
 public:
  explicit WanderingGround(const Wandering& w, std::atomic<int>* found = nullptr) : w_(w), found_(found) {}

  void find(std::size_t step, StepGround& ground) override {
    if (found_ != nullptr) ++*found_;
    const auto shown = static_cast<std::uint32_t>(w_.rests ? step / 4 * 4 : step);
    const bool edited = shown >= w_.editedFrom && shown < w_.editedUntil;
    const double t = 0.11 * shown + (edited ? 50 : 0);
    std::mt19937_64 random(w_.seed * 7919 + shown + (edited ? 500000 : 0));
    const Point lens{2.5 + 1.5 * std::sin(t), 2 + 0.8 * std::sin(1.7 * t)};
    addView(lens, 3 * std::sin(0.7 * t), random, ground.addLayer());
    if (shown % 3 != 0) return;
    GroundLayer& mirrored = ground.addLayer();
    addView({5 - lens.x, lens.y}, t, random, mirrored);
    if (shown % 2 == 0) mirrored.hidden.push_back(regions::randomSlice(random, {2.5, 2}, 2.5));
  }
  bool asBefore(std::size_t step) override { return w_.rests && step % 4 != 0; }
  bool findOver(StepRange steps, StepGround& ground) override {
    if (!w_.over) return false;
    StepGround one;
    for (std::uint32_t step = steps.from; step < steps.until; ++step) {
      if (found_ != nullptr) --*found_;
      one.clear();
      find(step, one);
      for (const GroundLayer& layer : one.layers()) ground.addLayer().region = layer.region;
    }
    return true;
  }

 private:
  void addView(Point lens, double turn, std::mt19937_64& random, GroundLayer& layer) const {
    const auto at = [&](double off, double far) { return lens + geometry::turned({far, 0}, turn + off); };
    const std::array<Point, 4> ring{lens, at(-0.4, 2), at(0.05, 3), at(0.4, 1.2)};
    for (std::size_t i = 0; i < 4; ++i)
      layer.region.ring.push_back(
          {ring[i], ring[(i + 1) % 4], w_.everyEdgeWidened || i % 2 == 0, w_.onWalls && i % 2 == 1});
    for (int i = 0; i < 3; ++i) layer.region.slices.push_back(regions::randomSlice(random, at(0.3 * i, 1.5), 0.8));
  }

  Wandering w_;
  std::atomic<int>* found_;
};

GroundMaker makerOf(const Wandering& w, std::atomic<int>* found = nullptr) {
  return [w, found] { return std::make_unique<WanderingGround>(w, found); };
}

SeenSpec specOf(std::uint32_t steps) {
  SeenSpec spec;
  spec.grid.cell = 0.1, spec.grid.nx = 101, spec.grid.ny = 49, spec.grid.origin = {-0.5, 0};
  spec.radius = 0.22;
  spec.from = 3;
  spec.steps = steps;
  return spec;
}

/// Step by step, with nothing left out and nothing shared.
std::vector<CellBits> cubeOf(const SeenSpec& spec, const Wandering& w) {
  std::vector<CellBits> cube;
  RegionRaster raster(spec.grid, spec.radius);
  WanderingGround source(w);
  for (std::uint32_t step = 0; step < spec.steps; ++step) {
    StepGround ground;
    source.find(step, ground);
    CellBits all(spec.grid);
    for (const GroundLayer& layer : ground.layers()) {
      CellBits bits(spec.grid);
      raster.add(layer.region, bits);
      for (const RegionSlice& area : layer.hidden) raster.erase(area, bits);
      all.add(bits, all.box());
    }
    cube.push_back(all);
  }
  return cube;
}

SeenSteps seenOver(const SeenSpec& spec, const Wandering& w, int threads = 1) {
  auto seen = SeenSteps::over(spec, makerOf(w), threads);
  EXPECT_TRUE(seen);
  return *std::move(seen);
}

/// Four a cell, rows filled up to whole words, and four for the end of each column of words.
std::size_t bytesOfCells(const geometry::Grid& grid) {
  return 4 * static_cast<std::size_t>(grid.nx / 64 + 1) * (64 * static_cast<std::size_t>(grid.ny) + 1);
}

TEST(SeenSteps, RunsHoldExactlyTheStepsThatSeeTheCell) {
  for (const bool rests : {false, true}) {
    const SeenSpec spec = specOf(150);
    const Wandering w{.seed = 71, .rests = rests};
    const auto cube = cubeOf(spec, w);
    const SeenSteps seen = seenOver(spec, w);
    std::size_t runs = 0;
    for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell) {
      std::vector<StepRange> naive;
      for (std::uint32_t step = 0; step < spec.steps; ++step) {
        const bool now = cube[step].at(cell);
        if (now && (step == 0 || !cube[step - 1].at(cell))) naive.push_back({step, spec.steps});
        if (!now && step > 0 && cube[step - 1].at(cell)) naive.back().until = step;
        ASSERT_EQ(seen.seenIn(cell, step), now) << "cell " << cell << " step " << step;
      }
      ASSERT_TRUE(std::ranges::equal(seen.runs(cell), naive)) << "cell " << cell;
      runs += naive.size();
    }
    EXPECT_GT(runs, spec.grid.cells());
    EXPECT_EQ(seen.runs(), runs);
    EXPECT_EQ(seen.bytes(), 4 * runs + bytesOfCells(spec.grid));
  }
}

/// Sees a hand's breadth that steps aside once in a thousand steps, in takes longer than 16 bits count.
class SlowGround : public GroundOfSteps {
 public:
  void find(std::size_t step, StepGround& ground) override {
    const Point at{0.2 + 0.05 * static_cast<double>(step / 1000), 2};
    const std::array<Point, 3> ring{at, at + Vec{0.4, 0}, at + Vec{0.2, 0.4}};
    GroundLayer& layer = ground.addLayer();
    for (std::size_t i = 0; i < 3; ++i) layer.region.ring.push_back({ring[i], ring[(i + 1) % 3], true, false});
  }
  bool asBefore(std::size_t step) override { return step % 1000 != 0; }
};

TEST(SeenSteps, RunsCountPastSixteenBits) {
  const SeenSpec spec = specOf(70000);
  const GroundMaker maker = [] { return std::make_unique<SlowGround>(); };
  const auto seen = SeenSteps::over(spec, maker);
  ASSERT_TRUE(seen);
  EXPECT_EQ(seen->bytes(), 8 * seen->runs() + bytesOfCells(spec.grid));
  SlowGround ground;
  RegionRaster raster(spec.grid, spec.radius);
  for (const std::uint32_t step : {0u, 999u, 1000u, 64999u, 65000u, 65535u, 65536u, 65999u, 66000u, 69999u}) {
    StepGround found;
    ground.find(step, found);
    CellBits bits(spec.grid);
    raster.add(found.layers()[0].region, bits);
    for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell)
      ASSERT_EQ(seen->seenIn(cell, step), bits.at(cell)) << "cell " << cell << " step " << step;
  }
  EXPECT_EQ(seen->withFound({65000, 67000}, maker), *seen);
}

TEST(SeenSteps, AreTheSameBytesOnAnyNumberOfThreads) {
  const SeenSpec spec = specOf(400);
  const SeenSteps one = seenOver(spec, {.seed = 72});
  for (const int threads : {2, 3, 5}) EXPECT_EQ(seenOver(spec, {.seed = 72}, threads), one) << threads;
  EXPECT_FALSE(one == seenOver(spec, {.seed = 73}));
}

TEST(SeenSteps, FindAnewOnlyTheStepsOfARange) {
  const SeenSpec spec = specOf(300);
  const SeenSteps old = seenOver(spec, {.seed = 74});
  for (const StepRange range : {StepRange{0, 40}, {100, 230}, {180, 300}, {0, 300}, {77, 78}, {50, 50}}) {
    const Wandering edited{.seed = 74, .editedFrom = range.from, .editedUntil = range.until};
    std::atomic<int> found = 0;
    for (const int threads : {1, 2}) {
      const auto anew = old.withFound(range, makerOf(edited, &found), threads);
      ASSERT_TRUE(anew);
      EXPECT_EQ(*anew, seenOver(spec, edited));
      EXPECT_EQ(*anew == old, range.from == range.until);
    }
    EXPECT_EQ(found, static_cast<int>(2 * (range.until - range.from)));
  }
}

TEST(SeenSteps, DoNotFindAStepThatSeesWhatTheLastOneDid) {
  const SeenSpec spec = specOf(100);
  std::atomic<int> found = 0;
  const auto seen = SeenSteps::over(spec, makerOf({.seed = 75, .rests = true}, &found));
  ASSERT_TRUE(seen);
  EXPECT_EQ(found, 25);
  found = 0;
  ASSERT_TRUE(everSeen(spec.grid, spec.radius, {0, 100}, makerOf({.seed = 75, .rests = true}, &found)));
  EXPECT_EQ(found, 25);
}

TEST(SeenSteps, PublishNothingWhenCancelledAtAnyPoll) {
  const SeenSpec spec = specOf(90);
  const GroundMaker maker = makerOf({.seed = 76});
  const base::Cancel never;
  const auto whole = SeenSteps::over(spec, maker, 1, never);
  ASSERT_TRUE(whole);
  ASSERT_GE(never.polls(), 90);
  for (std::int64_t k = 1; k <= never.polls(); ++k) {
    EXPECT_FALSE(SeenSteps::over(spec, maker, 1, base::Cancel::atPoll(k))) << k;
    EXPECT_FALSE(SeenSteps::over(spec, maker, 2, base::Cancel::atPoll(k))) << k;
  }
  for (std::int64_t k = 1; k <= 40; ++k) EXPECT_FALSE(whole->withFound({30, 70}, maker, 1, base::Cancel::atPoll(k)));
  EXPECT_EQ(SeenSteps::over(spec, maker, 1, base::Cancel::atPoll(never.polls() + 1)), whole);
}

TEST(EverSeen, PublishesNothingWhenCancelledAtAnyPoll) {
  const SeenSpec spec = specOf(90);
  const GroundMaker maker = makerOf({.seed = 76});
  const base::Cancel never;
  const auto whole = everSeen(spec.grid, spec.radius, {0, 90}, maker, 1, never);
  ASSERT_GE(never.polls(), 20);
  for (std::int64_t k = 1; k <= never.polls(); ++k) {
    EXPECT_FALSE(everSeen(spec.grid, spec.radius, {0, 90}, maker, 1, base::Cancel::atPoll(k))) << k;
    EXPECT_FALSE(everSeen(spec.grid, spec.radius, {0, 90}, maker, 2, base::Cancel::atPoll(k))) << k;
  }
  EXPECT_EQ(everSeen(spec.grid, spec.radius, {0, 90}, maker, 1, base::Cancel::atPoll(never.polls() + 1)), whole);
}

TEST(EverSeen, IsWhatTheStepsSeeTogether) {
  for (const std::uint32_t steps : {1u, 40u, 700u}) {
    const SeenSpec spec = specOf(steps);
    const Wandering w{.seed = 77 + steps};
    CellBits together(spec.grid);
    for (const CellBits& bits : cubeOf(spec, w)) together.add(bits, together.box());
    for (const int threads : {1, 2, 3})
      EXPECT_EQ(everSeen(spec.grid, spec.radius, {0, steps}, makerOf(w), threads), together) << steps;
    EXPECT_GT(together.count(), spec.grid.cells() / 20);
    EXPECT_LT(together.count(), spec.grid.cells());
  }
}

TEST(EverSeen, IsTheSameWhereStretchesThatSeeNothingNewArePassedOver) {
  for (const bool rests : {false, true}) {
    const SeenSpec spec = specOf(1500);
    const Wandering w{.seed = 84, .rests = rests, .over = true};
    CellBits settled(spec.grid);
    std::mt19937_64 random(840);
    for (int row = 0; row < spec.grid.ny; ++row)
      for (int column = 0; column < spec.grid.nx; ++column)
        if (random() % 200 != 0) settled.set(column, row);
    CellBits together = settled;
    for (const CellBits& bits : cubeOf(spec, w)) together.add(bits, together.box());
    EXPECT_FALSE(together == settled);
    for (const int threads : {1, 2, 3}) {
      std::atomic<int> found = 0;
      EXPECT_EQ(everSeen(spec.grid, spec.radius, {0, 1500}, makerOf(w, &found), threads, {}, spec.bodies, &settled),
                together)
          << threads;
      EXPECT_LT(found, rests ? 300 : 1200) << "of 375 and of 1500";
    }
  }
}

TEST(EverSeen, AddsNoCellFarFromTheGroundWhereEdgesAreNotWidened) {
  const SeenSpec spec = specOf(60);
  const Wandering w{.seed = 78, .everyEdgeWidened = false}, wide{.seed = 78};
  CellBits least(spec.grid), most(spec.grid);
  for (const CellBits& bits : cubeOf(spec, w)) least.add(bits, least.box());
  for (const CellBits& bits : cubeOf(spec, wide)) most.add(bits, most.box());
  const auto ever = everSeen(spec.grid, spec.radius, {0, 60}, makerOf(w));
  ASSERT_TRUE(ever);
  for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell) {
    EXPECT_TRUE(ever->at(cell) || !least.at(cell));
    EXPECT_TRUE(!ever->at(cell) || most.at(cell));
  }
}

TEST(EverSeen, HoldsSettledCellsAndIsOtherwiseTheSame) {
  const SeenSpec spec = specOf(1100);
  const Wandering w{.seed = 83};
  const CellBits plain = *everSeen(spec.grid, spec.radius, {0, spec.steps}, makerOf(w));
  // All but a few cells, so that most steps have nothing to add, and some have.
  std::mt19937_64 random(830);
  for (const std::uint64_t rare : {2u, 300u, 4000u}) {
    CellBits settled(spec.grid), expected = plain;
    for (int row = 0; row < spec.grid.ny; ++row)
      for (int column = 0; column < spec.grid.nx; ++column)
        if (random() % rare != 0) settled.set(column, row);
    expected.add(settled, settled.box());
    EXPECT_NE(expected.count(), settled.count()) << rare;
    for (const int threads : {1, 2})
      EXPECT_EQ(everSeen(spec.grid, spec.radius, {0, spec.steps}, makerOf(w), threads, {}, spec.bodies, &settled),
                expected)
          << rare;
  }
}

TEST(EverSeen, OfBodiesClearOfWallsLeavesOutOnlyWhatIsNearEdgesOnWalls) {
  SeenSpec spec = specOf(60);
  const Wandering w{.seed = 82, .onWalls = true};
  const CellBits most = *everSeen(spec.grid, spec.radius, {0, 60}, makerOf(w));
  const CellBits least = *everSeen(spec.grid, spec.radius, {0, 60}, makerOf({.seed = 82, .everyEdgeWidened = false}));
  spec.bodies = Bodies::clearOfWalls;
  const SeenSteps seen = seenOver(spec, w);
  for (const int threads : {1, 2}) {
    const CellBits ever = *everSeen(spec.grid, spec.radius, {0, 60}, makerOf(w), threads, {}, spec.bodies);
    EXPECT_EQ(ever, least) << "an edge on a wall is as one that is not widened";
    EXPECT_FALSE(ever == most);
    for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell)
      ASSERT_TRUE(ever.at(cell) || seen.runs(cell).empty()) << cell;
  }
}

TEST(ClearOver, HoldsTheCellsNoRunBars) {
  const SeenSpec spec = specOf(200);
  const SeenSteps seen = seenOver(spec, {.seed = 79});
  std::mt19937_64 random(790);
  for (int trial = 0; trial < 40; ++trial) {
    const double from = world::uniform(random, 2, 12);
    const Span span{from, from + world::uniform(random, 0, 2)};
    const double early = trial % 3 == 0 ? 0 : 0.5, late = trial % 2 == 0 ? 0 : 0.25;
    const CellBits clear = seen.clearOver(span, early, late);
    for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell) {
      bool barred = false;
      for (std::uint32_t step = 0; step < spec.steps; ++step)
        barred = barred || (seen.seenIn(cell, step) && seen.timeOf(step) - early <= span.until &&
                            seen.timeOf(step + 1) + late >= span.from);
      ASSERT_EQ(clear.at(cell), !barred) << "trial " << trial << " cell " << cell;
    }
  }
}

TEST(ClearOver, OfTheWholeTakeIsWhatIsNeverSeen) {
  const SeenSpec spec = specOf(200);
  const CellBits clear = seenOver(spec, {.seed = 80}).clearOver({3, 3 + 200 / 24.0});
  const auto ever = everSeen(spec.grid, spec.radius, {0, 200}, makerOf({.seed = 80}));
  ASSERT_TRUE(ever);
  for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell) EXPECT_NE(clear.at(cell), ever->at(cell));
}

TEST(UntilSeen, AgreesWithSteppingForwardWhereverTheTimeGoes) {
  const SeenSpec spec = specOf(150);
  const SeenSteps seen = seenOver(spec, {.seed = 81});
  UntilSeen until(seen);
  std::mt19937_64 random(810);
  double t = spec.from;
  for (int ask = 0; ask < 120; ++ask) {
    // Played forward, then dragged to and fro, on the starts of steps too.
    t = ask < 60 ? t + 1 / 60.0 : world::uniform(random, 2.5, 10);
    if (ask % 5 == 0) t = seen.timeOf(static_cast<std::uint32_t>(random() % 150));
    const auto seconds = until.secondsFrom(t);
    for (std::size_t cell = 0; cell < spec.grid.cells(); ++cell) {
      float naive = std::numeric_limits<float>::infinity();
      for (std::uint32_t step = 0; step < spec.steps; ++step) {
        if (!seen.seenIn(cell, step) || seen.timeOf(step + 1) < t) continue;
        naive = static_cast<float>(std::max(0.0, seen.timeOf(step) - t));
        break;
      }
      ASSERT_EQ(seconds[cell], naive) << "t " << t << " cell " << cell;
    }
  }
}

}  // namespace
}  // namespace wend::sight
