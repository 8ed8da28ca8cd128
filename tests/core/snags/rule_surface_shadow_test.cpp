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

}  // namespace
}  // namespace wend::snags
