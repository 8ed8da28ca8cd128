#include "core/answers/cables.h"

#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

plan::Plan trailing(double length) {
  plan::Plan plan = smallPlan();
  plan.camera.marks = {markAt("c1", {0, 3}), markAt("c2", {4, 3}, 8)};
  plan.camera.cable = plan::TrailingCable{};
  plan.camera.cable->anchor = {0, 0};
  plan.camera.cable->length = length;
  return plan;
}

TEST(CableLength, IsTheWayFromTheAnchorAndThenTheCamerasOwn) {
  const TakePtr take = takeOf(trailing(5));
  const CableLength cable(*take);
  EXPECT_NEAR(*cable.neededAt(0), 3, 1e-9);
  EXPECT_NEAR(*cable.neededAt(4), 5, 1e-9) << "half of four metres gone";
  EXPECT_NEAR(*cable.neededAt(10), 7, 1e-9);
}

TEST(CableLength, TellsFromWhenOnItIsTooShort) {
  const TakePtr take = takeOf(trailing(5));
  const CableLength cable(*take);
  const auto over = cable.over(5.01);
  ASSERT_TRUE(over);
  EXPECT_NEAR(over->from, 4 + 1 / take->rate(), 1e-9) << "a centimetre takes the camera half a frame";
  EXPECT_NEAR(over->most, 7, 1e-9);
  EXPECT_FALSE(cable.over(7.001));
}

TEST(CableLength, IsUnknownWithoutACable) {
  const TakePtr take = takeOf(smallPlan());
  EXPECT_FALSE(CableLength(*take).neededAt(5));
  EXPECT_FALSE(CableLength(*take).over(0));
}

}  // namespace
}  // namespace wend::answers
