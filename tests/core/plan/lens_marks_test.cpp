#include "core/plan/lens_marks.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace wend::plan {
namespace {

IrisMark iris(double stop, double deg) {
  return {stop, deg, {}};
}

TEST(LensMarks, MayRunEitherWay) {
  std::vector<IrisMark> marks{iris(2, 0), iris(4, 30), iris(8, 55)};
  EXPECT_EQ(firstTurningBack(marks), marks.size());
  std::reverse(marks.begin(), marks.end());
  EXPECT_EQ(firstTurningBack(marks), marks.size());
  EXPECT_EQ(firstTurningBack(std::vector<IrisMark>{iris(2, 30), iris(4, 10)}), 2u);
  EXPECT_EQ(firstTurningBack(std::vector<IrisMark>{iris(2, 30)}), 1u);
}

TEST(LensMarks, AreRefusedFromTheFirstRowThatTurnsBack) {
  EXPECT_EQ(firstTurningBack(std::vector<IrisMark>{iris(2, 0), iris(4, 30), iris(8, 20), iris(11, 10)}), 2u);
  EXPECT_EQ(firstTurningBack(std::vector<IrisMark>{iris(2, 0), iris(4, 30), iris(2.8, 40)}), 2u);
  EXPECT_EQ(firstTurningBack(std::vector<IrisMark>{iris(2, 0), iris(2, 30)}), 1u);
  EXPECT_EQ(firstTurningBack(std::vector<ZoomMark>{{24, 10, {}}, {70, 10, {}}}), 1u);
}

TEST(LensMarks, HaveInfinityBeyondEveryDistance) {
  const FocusMark far{std::nullopt, 0};
  EXPECT_EQ(firstTurningBack(std::vector<FocusMark>{far, {3.0, 40}, {1.0, 90}}), 3u);
  EXPECT_EQ(firstTurningBack(std::vector<FocusMark>{{3.0, 40}, far, {1.0, 90}}), 2u);
}

}  // namespace
}  // namespace wend::plan
