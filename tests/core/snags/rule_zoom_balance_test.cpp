// Zooms that move the balance of the rig, in takes written by hand.
#include <algorithm>
#include <cmath>

#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// A zoom from 25 to 100 mm between seconds 3 and 7, even in the logarithm, while the camera walks until `stands`.
Snags zooming(double stands, double shift, plan::RigKind rig = plan::RigKind::stabilised, double kg = 0) {
  return with([&](Evidence& e) {
    auto plan = std::make_shared<plan::Plan>(*e.plan);
    plan->lens->focal = {25, 100};
    plan->lens->balance = plan::OverFocal({{25, 0}, {100, shift}});
    plan->camera.rig.kind = rig;
    if (kg > 0) plan->camera.rig.items = {{"all of it", kg, {}}};
    e.plan = plan;
    Move move;
    move.axis = Move::Axis::zoom;
    move.from = 3, move.until = 7, move.valueBefore = 25, move.valueAfter = 100;
    e.moves = {move};
    for (auto& sample : e.samples) {
      sample.lens->focal = 25 * std::pow(4.0, std::clamp((sample.time - 3) / 4, 0.0, 1.0));
      sample.camera.moving = sample.time < stands;
    }
  });
}

TEST(ZoomBalance, CountsWhatMovesWhileTheCameraStands) {
  expectOne(zooming(0, 0.004), "zoom-balance", Severity::note);
  EXPECT_TRUE(zooming(0, 0.0029).empty());
  EXPECT_TRUE(zooming(8, 0.02).empty()) << "all of it while walking";
  EXPECT_TRUE(zooming(5, 0.005).empty()) << "half of it while walking";
  expectOne(zooming(5, 0.007), "zoom-balance", Severity::note);
}

TEST(ZoomBalance, IsNoMatterForADollyOrACrane) {
  EXPECT_TRUE(zooming(0, 0.02, plan::RigKind::dolly).empty());
  EXPECT_TRUE(zooming(0, 0.02, plan::RigKind::crane).empty());
  expectOne(zooming(0, 0.02, plan::RigKind::handheld), "zoom-balance", Severity::note);
}

TEST(ZoomBalance, SaysHowFarWhichWayAndWhereToBalance) {
  const Snags back = zooming(5, -0.008, plan::RigKind::stabilised, 8);
  ASSERT_EQ(back.size(), 1u);
  EXPECT_NEAR(back[0].from, 5, 1e-9);
  EXPECT_NEAR(back[0].until, 7, 1e-9);
  EXPECT_EQ(back[0].text,
            "the zoom from 25 to 100 mm moves the rig's balance 4.0 mm back while the camera stands, 0.31 N\u00b7m to "
            "hold");
  EXPECT_EQ(back[0].mend,
            "zoom while the camera walks, or balance the rig at 50 mm: never further off than 4.0 mm then");
}

}  // namespace
}  // namespace wend::snags
