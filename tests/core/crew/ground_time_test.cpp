#include "core/crew/ground_time.h"

#include <gtest/gtest.h>

#include "core/geometry/segment.h"

namespace wend::crew {
namespace {

const geometry::Grid kGrid{{-1, -2}, 0.1, 40, 30};
const StepClock kClock{5, 0.5, 20};

TEST(StepClock, NamesTheStepsASpanMeets) {
  EXPECT_EQ(kClock.meeting({6.1, 6.9}), (Steps{2, 4}));
  EXPECT_EQ(kClock.meeting({6.1, 6.2}), (Steps{2, 3}));
  EXPECT_EQ(kClock.meeting({6.0, 6.5}), (Steps{1, 4})) << "ends belong to both their steps";
  EXPECT_EQ(kClock.meeting({0, 5.2}), (Steps{0, 1}));
  EXPECT_EQ(kClock.meeting({14.9, 99}), (Steps{19, 20}));
  EXPECT_EQ(kClock.meeting({1, 2}).count(), 0u);
  EXPECT_EQ(kClock.meeting({30, 40}).count(), 0u);
}

TEST(StepClock, NamesTheStepsWithinASpan) {
  EXPECT_EQ(kClock.within({6.1, 7.9}), (Steps{3, 5}));
  EXPECT_EQ(kClock.within({6.0, 6.5}), (Steps{2, 3}));
  EXPECT_EQ(kClock.within({6.1, 6.4}).count(), 0u);
  EXPECT_EQ(kClock.wholeSteps(1.9), 3u);
  EXPECT_EQ(kClock.wholeSteps(0.3 * 5), 3u) << "rounding loses no step";
}

TEST(ClockFor, AStepIsAsLongAsItsCellsTake) {
  const StepClock clock = clockFor({0, 180}, 1.1, 0.1, 5);
  EXPECT_DOUBLE_EQ(clock.step * 1.1, 0.5);
  EXPECT_EQ(clock.steps, 396u);
  EXPECT_EQ(clockFor({0, 10}, 1, 0.1, 10).steps, 10u);
}

TEST(GroundTime, BarsEveryStepASightMeets) {
  GroundTime ground(kGrid, kClock, 0.28);
  ground.barSeen(7, {6.1, 6.9});
  EXPECT_EQ(ground.clear().runs(7, false), (std::vector<Steps>{{2, 4}}));
  EXPECT_TRUE(ground.clear().runs(8, false).empty());
  EXPECT_TRUE(ground.stand().runs(7, false).empty()) << "seen, not taken";
}

TEST(GroundTime, IsFreeForOneWhoCrouchesWhereTheLensLooksOver) {
  GroundTime ground(kGrid, kClock, 0.28);
  ground.barSeen(7, {6.1, 6.9});
  EXPECT_EQ(&ground.low(), &ground.clear()) << "nobody crouches until somebody says where";
  CellTimes low(kGrid.cells(), kClock.steps, false);
  low.set(7, {2, 3}, true);
  ground.setLow(low);
  EXPECT_EQ(ground.low().runs(7, false), (std::vector<Steps>{{3, 4}})) << "and wherever one may stand upright";
  EXPECT_TRUE(ground.low().runs(8, false).empty());
  const double inside = kClock.at(2) + kClock.step / 2;
  EXPECT_EQ(ground.at()(kGrid.centre(std::size_t{7}), inside), Ground::seen);
  EXPECT_EQ(ground.atStill()(kGrid.centre(std::size_t{7}), inside), Ground::free);
  ground.moveBars(1, 0);
  EXPECT_EQ(ground.clear().runs(7, false), (std::vector<Steps>{{1, 4}}));
  EXPECT_EQ(ground.low().runs(7, false), (std::vector<Steps>{{2, 4}}));
  CellTimes met(kGrid.cells(), kClock.steps, true);
  met.set(7, {8, 9}, false);
  ground.keepClearOnly(met);
  EXPECT_EQ(ground.low().runs(7, false), (std::vector<Steps>{{2, 4}, {8, 9}}));
}

TEST(GroundTime, TakesADiscForStandingAndHalfADiagonalMoreForMoving) {
  GroundTime ground(kGrid, kClock, 0.28);
  const Point centre{0.33, -0.41};
  ground.take(Obstacle{"post", {centre}, false, 0.2, 0, 2});
  for (std::size_t cell = 0; cell < kGrid.cells(); ++cell) {
    const double metres = geometry::distance(kGrid.centre(cell), centre);
    ASSERT_EQ(ground.stand().at(cell, 9), metres >= 0.48) << cell;
    ASSERT_EQ(ground.move().at(cell, 9), metres >= 0.48 + kGrid.reach()) << cell;
  }
}

TEST(GroundTime, AnOutlinesInsideIsTaken) {
  GroundTime ground(kGrid, kClock, 0.1);
  ground.take(Obstacle{"table", {{0, -1}, {2, -1}, {2, 0.5}, {0, 0.5}}, true, 0, 0, 1});
  EXPECT_FALSE(ground.stand().at(*kGrid.cellAt({1, -0.3}), 0));
  EXPECT_TRUE(ground.stand().at(*kGrid.cellAt({-0.5, -0.3}), 0));
}

TEST(GroundTime, AnObstacleOfAFewStepsLeavesTheOthers) {
  GroundTime ground(kGrid, kClock, 0.1);
  ground.take(Obstacle{"door", {{0, -1}, {1, -1}}, false, 0, 0, 2}, {3, 5});
  EXPECT_EQ(ground.move().runs(*kGrid.cellAt({0.5, -1}), false), (std::vector<Steps>{{3, 5}}));
}

/// A mover that turns sharply between two looks is met all the way.
TEST(GroundTime, AMoverTakesWhateverItPasses) {
  const auto at = [](double t) { return Point{t < 7.3 ? (t - 5) : 2.3 - (t - 7.3), -1 + 0.1 * t}; };
  GroundTime ground(kGrid, kClock, 0.28);
  ground.take(Mover{at, 0.25, {}, {7.3}});
  for (double t = 5; t <= 15; t += 0.013) {
    for (std::size_t cell = 0; cell < kGrid.cells(); cell += 3) {
      const Steps steps = kClock.meeting({t, t});
      if (geometry::distance(kGrid.centre(cell), at(t)) >= 0.53 - 1e-6) continue;
      ASSERT_FALSE(ground.stand().at(cell, steps.from)) << t << ' ' << cell;
      ASSERT_FALSE(ground.move().at(cell, steps.from));
    }
  }
  const std::size_t far = *kGrid.cellAt({2.9, 0.9});
  EXPECT_TRUE(ground.move().at(far, 19)) << "and no more than that";
}

TEST(GroundTime, AMoverThatIsNotThereTakesNothing) {
  GroundTime ground(kGrid, kClock, 0.28);
  ground.take(Mover{[](double) { return Point{1, -1}; }, 0.25, [](double t) { return t > 7 && t < 8; }, {7, 8}});
  EXPECT_EQ(ground.move().runs(*kGrid.cellAt({1, -1}), false), (std::vector<Steps>{{4, 6}}));
}

/// A leaf that swings at ninety degrees a second, its end at 1.4 m/s.
TEST(GroundTime, ALeafTakesWhatItSweeps) {
  const auto tip = [](double t) { return Point{0.5, -1} + geometry::direction(90 * (t - 6)) * 0.9; };
  GroundTime ground(kGrid, kClock, 0.28);
  ground.take([&](double t) { return std::vector{Obstacle{"leaf", {{0.5, -1}, tip(t)}, false, 0, 0, 2}}; }, {2, 4});
  int met = 0;
  for (double t = 6; t < 7; t += 0.007) {
    for (std::size_t cell = 0; cell < kGrid.cells(); ++cell) {
      const double metres = geometry::distance(kGrid.centre(cell), geometry::Segment{{0.5, -1}, tip(t)});
      const std::size_t step = t < 6.5 ? 2 : 3;
      ASSERT_FALSE(metres < 0.28 && ground.stand().at(cell, step)) << t << ' ' << cell;
      ASSERT_FALSE(metres < 0.28 + kGrid.reach() && ground.move().at(cell, step)) << t << ' ' << cell;
      met += metres < 0.28;
    }
  }
  EXPECT_GT(met, 1000);
  EXPECT_TRUE(ground.move().at(*kGrid.cellAt({0.55, -0.5}), 4)) << "only in its steps";
  EXPECT_TRUE(ground.stand().at(*kGrid.cellAt({0, -1.5}), 3)) << "and not behind it";
}

TEST(GroundTime, TellsWhatIsMetAtAPlaceAndTime) {
  GroundTime ground(kGrid, kClock, 0.28);
  const std::size_t cell = *kGrid.cellAt({1, -1});
  const Point centre = kGrid.centre(cell);
  ground.barSeen(cell, {6.1, 6.4});
  ground.take(cell, {10, 12});
  const GroundAt at = ground.at();
  EXPECT_EQ(at(centre, 6.2), Ground::seen);
  EXPECT_EQ(at(centre, 5.7), Ground::free);
  EXPECT_EQ(at(centre, 10.7), Ground::taken);
  EXPECT_EQ(at({-5, 0}, 6), Ground::taken) << "off the grid";
  EXPECT_EQ(at(centre + geometry::Vec{0.05, 0}, 10.7), Ground::free) << "the border is the neighbour's too";
  EXPECT_EQ(at(centre, 10.0), Ground::free) << "and an instant the step's before";
}

TEST(OnlyAt, IsYesAtItsCellsAndAtAllOtherTimes) {
  const CellTimes only = onlyAt({3}, {4, 6}, kGrid, kClock);
  EXPECT_TRUE(only.runs(3, false).empty());
  EXPECT_EQ(only.runs(4, false), (std::vector<Steps>{{4, 6}}));
}

TEST(NearTo, HoldsForEveryPointOfTheCellAllThroughTheStep) {
  const auto place = [](double t) { return Point{(t - 5) * 0.3 - 1, 0.2}; };
  const CellTimes near = nearTo(place, 1.2, {2, 18}, kGrid, kClock);
  std::size_t yes = 0;
  for (std::size_t cell = 0; cell < kGrid.cells(); ++cell) {
    ASSERT_TRUE(near.at(cell, 0) && near.at(cell, 19));
    for (std::size_t step = 2; step < 18; ++step) {
      double furthest = 0;
      for (const double t : {kClock.at(step), kClock.at(step + 1)})
        furthest = std::max(furthest, geometry::distance(place(t), kGrid.centre(cell)) + kGrid.reach());
      if (std::abs(furthest - 1.2) < 1e-9) continue;
      ASSERT_EQ(near.at(cell, step), furthest < 1.2) << cell << ' ' << step;
      yes += near.at(cell, step);
    }
  }
  EXPECT_GT(yes, 1000u);
}

}  // namespace
}  // namespace wend::crew
