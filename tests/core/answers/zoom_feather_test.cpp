#include "core/answers/zoom_feather.h"

#include "core/answers/covers.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

std::array<double, 2> featherOf(plan::Pace pace) {
  plan::Plan plan = smallPlan();
  plan.lens->focal = {20, 60};
  plan.zoom.keys.resize(2);
  plan.zoom.keys[0].focal = 20;
  plan.zoom.keys[1] = {{{"", 2}, 5, pace}, 60, "", plan::OnPerformer{}, {}};
  const auto take = takeOf(plan);
  const auto samples = samplesOf(*take);
  for (const auto& move : movesOf(*take, samples, coversOf(*take, samples)))
    if (move.axis == snags::Move::Axis::zoom) return zoomFeather(plan, move);
  ADD_FAILURE() << "no zoom";
  return {};
}

TEST(ZoomFeather, IsHalfOfAnEasedKeyAndNoneOfAnEvenOne) {
  EXPECT_EQ(featherOf(plan::Pace::eased), (std::array{2.5, 2.5}));
  EXPECT_EQ(featherOf(plan::Pace::even), (std::array{0.0, 0.0}));
}

TEST(ZoomFeather, OfAPlannedZoomIsItsEase) {
  snags::Move zoom;
  zoom.axis = snags::Move::Axis::zoom;
  zoom.ease = {0.4, 0.7};
  EXPECT_EQ(zoomFeather(smallPlan(), zoom), (std::array{0.4, 0.7}));
}

}  // namespace
}  // namespace wend::answers
