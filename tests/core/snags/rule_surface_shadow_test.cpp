#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags shadow(const std::string& on, double share, double until) {
  return with([&](Evidence& e) { e.surfaceShadows = {{{3, until}, "", "ac1", on, share, {}}}; });
}

TEST(SurfaceShadow, CountsFromATenthOfTheLightAndAFifthOfASecondOn) {
  expectOne(shadow("", 0.1, 3.2), "surface-shadow", Severity::risks);
  EXPECT_TRUE(shadow("", 0.09, 4).empty());
  EXPECT_TRUE(shadow("", 0.5, 3.1).empty());
  EXPECT_NE(shadow("", 0.5, 4)[0].text.find("falls on the ground in frame, 50 % of the light there"),
            std::string::npos);
}

TEST(SurfaceShadow, SaysThatWhoThrowsItGoesARouteFound) {
  const Snags snags = with([&](Evidence& e) {
    e.surfaceShadows = {{{3, 4}, "", "ac1", "", 0.5, {}}};
    e.routed = {"ac1"};
  });
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_TRUE(snags[0].text.ends_with(", on the route found")) << snags[0].text;
}

}  // namespace
}  // namespace wend::snags
