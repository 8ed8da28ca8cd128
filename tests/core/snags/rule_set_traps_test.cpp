// Shadows, cables, exit lanes and ground outside, over takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

TEST(Shadow, CountsFromATenthOfTheLightAndAFifthOfASecondOn) {
  const auto cut = [](double share, double until) {
    return with([&](Evidence& e) { e.shadows = {{{3, until}, "ilse", "f1", "ac1", share, {}}}; });
  };
  expectOne(cut(0.1, 3.2), "shadow", Severity::risks);
  EXPECT_TRUE(cut(0.09, 4).empty());
  EXPECT_TRUE(cut(0.5, 3.1).empty());
  EXPECT_EQ(cut(0.42, 4)[0].text, "first assistant camera takes f1 off ILSE, 42 % of the light on the face");
  EXPECT_EQ(cut(0.42, 4)[0].key, "shadow/ac1/f1/b1/1");
}

TEST(CableShutIn, IsToldWithACaution) {
  const Snags snags = with([](Evidence& e) { e.cablesShutIn = {{3, "k1", "d1", {}}}; });
  expectOne(snags, "cable-shut-in", Severity::risks);
  EXPECT_EQ(snags[0].mend.rfind("caution", 0), 0u);
}

TEST(CableShort, StopsTheTakeBeyondTheCablesLengthOnly) {
  const auto gone = [](double most) {
    return with([&](Evidence& e) {
      auto plan = std::make_shared<plan::Plan>(*e.plan);
      plan->camera.cable = plan::TrailingCable{{0, 0}, 20, {}};
      e.plan = plan;
      e.cameraCableOut = CableOut{6, most, {}};
    });
  };
  expectOne(gone(20.1), "cable-short", Severity::stops);
  EXPECT_TRUE(gone(20).empty());
}

TEST(ExitLane, StopsTheTakeWithACaution) {
  const Snags snags = with([](Evidence& e) { e.lanes = {{{0, 10}, "lane", "ac1", {}}}; });
  expectOne(snags, "exit-lane", Severity::stops);
  EXPECT_EQ(snags[0].mend.rfind("caution", 0), 0u);
}

TEST(LockUp, CountsFromHalfASecondOn) {
  expectOne(with([](Evidence& e) { e.outside = {{{3, 3.5}, "street"}}; }), "lock-up", Severity::note);
  EXPECT_TRUE(with([](Evidence& e) { e.outside = {{{3, 3.4}, "street"}}; }).empty());
}

}  // namespace
}  // namespace wend::snags
