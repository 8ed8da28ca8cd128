#include "core/crew/cell_times.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::crew {
namespace {

TEST(CellTimes, HoldsABitForEveryCellAndStep) {
  CellTimes times(3, 130, false);
  times.set(1, {60, 129}, true);
  for (std::size_t step = 0; step < 130; ++step) {
    EXPECT_EQ(times.at(1, step), step >= 60 && step < 129) << step;
    EXPECT_FALSE(times.at(0, step) || times.at(2, step));
  }
}

TEST(CellTimes, NothingIsSetPastTheLastStep) {
  CellTimes times(1, 70, true);
  times.set(0, {10, 500}, true);
  EXPECT_EQ(times.of(0)[1], std::uint64_t{63});
  EXPECT_EQ(times.runs(0, true), (std::vector<Steps>{{0, 70}}));
  EXPECT_TRUE(times.runs(0, false).empty());
}

TEST(CellTimes, KeepsWhatBothHave) {
  CellTimes a(1, 20, true), b(1, 20, false);
  b.set(0, {5, 9}, true);
  a.set(0, {7, 8}, false);
  a.keepOnly(b);
  EXPECT_EQ(a.runs(0, true), (std::vector<Steps>{{5, 7}, {8, 9}}));
}

TEST(CellTimes, AddsWhatTheOtherHas) {
  CellTimes a(1, 20, false), b(1, 20, false);
  a.set(0, {2, 4}, true);
  b.set(0, {3, 9}, true);
  a.addFrom(b);
  EXPECT_EQ(a.runs(0, true), (std::vector<Steps>{{2, 9}}));
}

TEST(CellTimes, MovedBarsStretchAndShrink) {
  CellTimes times(1, 100, true);
  times.set(0, {20, 30}, false);
  times.set(0, {60, 63}, false);
  EXPECT_EQ(times.withBarsMoved(2, 5).runs(0, false), (std::vector<Steps>{{18, 35}, {58, 68}}));
  EXPECT_EQ(times.withBarsMoved(-2, -1).runs(0, false), (std::vector<Steps>{{22, 29}})) << "three steps are used up";
  EXPECT_EQ(times.withBarsMoved(30, 30).runs(0, false), (std::vector<Steps>{{0, 93}}));
}

TEST(CellTimes, BarsThatMeetTheTakesEndsStayThere) {
  CellTimes times(1, 100, true);
  times.set(0, {0, 10}, false);
  times.set(0, {90, 100}, false);
  EXPECT_EQ(times.withBarsMoved(-3, -3).runs(0, false), (std::vector<Steps>{{0, 7}, {93, 100}}));
}

TEST(CellTimes, RoomIsTheMostThatBarsMayBeMovedBy) {
  std::mt19937_64 random(32);
  CellTimes times(20, 90, true);
  for (std::size_t cell = 1; cell < 20; ++cell)
    for (int i = 0; i < 3; ++i) times.set(cell, {random() % 90, random() % 90}, false);
  EXPECT_GT(times.roomAt(0, 40).value(), 1000u) << "no bars";
  std::vector<CellTimes> moved;
  for (long by = 0; by < 91; ++by) moved.push_back(times.withBarsMoved(by, by));
  for (std::size_t cell = 1; cell < 20; ++cell)
    for (std::size_t step = 0; step < 90; ++step) {
      const auto room = times.roomAt(cell, step);
      ASSERT_EQ(room.has_value(), times.at(cell, step));
      for (std::size_t by = 0; by < 91; ++by)
        ASSERT_EQ(moved[by].at(cell, step), room && by <= *room) << cell << " " << step << " " << by;
    }
}

TEST(CellTimes, IsWithinWhatIsYesWhereverItIs) {
  CellTimes a(2, 90, false), b(2, 90, false);
  a.set(1, {70, 80}, true);
  b.set(1, {69, 80}, true);
  EXPECT_TRUE(a.isWithin(a));
  EXPECT_TRUE(a.isWithin(b));
  EXPECT_FALSE(b.isWithin(a));
}

TEST(CellTimes, RunsAreTheSameAsLookingAtEveryStep) {
  std::mt19937_64 random(31);
  for (int i = 0; i < 200; ++i) {
    const std::size_t steps = 1 + random() % 200;
    CellTimes times(1, steps, true);
    std::vector<bool> expected(steps, true);
    for (int k = 0; k < 12; ++k) {
      const std::size_t from = random() % steps, until = from + random() % 40;
      const bool value = random() % 2;
      times.set(0, {from, until}, value);
      for (std::size_t s = from; s < std::min(until, steps); ++s) expected[s] = value;
    }
    std::vector<bool> seen(steps, false);
    for (const Steps& run : times.runs(0, true)) {
      ASSERT_LT(run.from, run.until);
      ASSERT_TRUE(run.until == steps || !expected[run.until]) << "maximal";
      for (std::size_t s = run.from; s < run.until; ++s) seen[s] = true;
    }
    ASSERT_EQ(seen, expected);
  }
}

}  // namespace
}  // namespace wend::crew
