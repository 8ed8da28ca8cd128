#include "core/geometry/runs.h"

#include <gtest/gtest.h>

#include <string>

namespace wend::geometry {
namespace {

Runs runsOfOnes(const std::string& samples) {
  return runsWhere(samples.size(), [&](std::size_t i) { return samples[i] == '1'; });
}

Runs runsOfEqual(const std::string& samples) {
  return runsAlike(samples.size(), [&](std::size_t a, std::size_t b) { return samples[a] == samples[b]; });
}

TEST(RunsWhere, ReachFromTheFirstSampleThatHoldsToTheLast) {
  EXPECT_EQ(runsOfOnes("0011101"), (Runs{{2, 4}, {6, 6}}));
}

TEST(RunsWhere, StartAndEndWithTheList) {
  EXPECT_EQ(runsOfOnes("11011"), (Runs{{0, 1}, {3, 4}}));
  EXPECT_EQ(runsOfOnes("111"), (Runs{{0, 2}}));
  EXPECT_EQ(runsOfOnes("1"), (Runs{{0, 0}}));
}

TEST(RunsWhere, AreNoneWhereNothingHolds) {
  EXPECT_TRUE(runsOfOnes("").empty());
  EXPECT_TRUE(runsOfOnes("000").empty());
}

TEST(RunsWhere, AskOfEverySampleOnceInOrder) {
  std::vector<std::size_t> asked;
  runsWhere(4, [&](std::size_t i) { return asked.push_back(i), i % 2 == 0; });
  EXPECT_EQ(asked, (std::vector<std::size_t>{0, 1, 2, 3}));
}

TEST(RunsAlike, CutTheListWhereNeighboursDiffer) {
  EXPECT_EQ(runsOfEqual("aabccc"), (Runs{{0, 1}, {2, 2}, {3, 5}}));
  EXPECT_EQ(runsOfEqual("abab").size(), 4u);
}

TEST(RunsAlike, OfOneSampleIsThatSampleAndOfNoneNothing) {
  EXPECT_EQ(runsOfEqual("a"), (Runs{{0, 0}}));
  EXPECT_TRUE(runsOfEqual("").empty());
}

TEST(RunsAlike, CompareNeighboursAndNotEnds) {
  const std::vector<int> steps = {3, 4, 5, 9, 10, 2};
  const auto runs = runsAlike(steps.size(), [&](std::size_t a, std::size_t b) { return steps[b] == steps[a] + 1; });
  EXPECT_EQ(runs, (Runs{{0, 2}, {3, 4}, {5, 5}}));
}

}  // namespace
}  // namespace wend::geometry
