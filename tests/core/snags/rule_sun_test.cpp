#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags glare(double offFrame, double until) {
  return with([&](Evidence& e) { e.sunInLens = {{{3, until}, offFrame, 30, {}}}; });
}

TEST(SunInLens, IsARiskInTheFrameAndANoteBesideItWithACaution) {
  expectOne(glare(-2, 4), "sun-in-lens", Severity::risks);
  expectOne(glare(10, 4), "sun-in-lens", Severity::note);
  EXPECT_TRUE(glare(10.1, 4).empty());
  EXPECT_TRUE(glare(-2, 3.1).empty());
  EXPECT_EQ(glare(-2, 4)[0].mend.rfind("caution", 0), 0u);
}

Snags shadow(const std::string& on, bool face, double until) {
  return with([&](Evidence& e) { e.sunShadows = {{{3, until}, "ac1", on, face, {}}}; });
}

TEST(SunShadow, CountsFromAFifthOfASecondOn) {
  expectOne(shadow("ilse", true, 3.2), "sun-shadow", Severity::risks);
  EXPECT_TRUE(shadow("ilse", true, 3.1).empty());
  EXPECT_EQ(shadow("ilse", true, 4)[0].text, "the sun throws the shadow of first assistant camera on ILSE's face");
  EXPECT_EQ(shadow("", false, 4)[0].text, "the sun throws the shadow of first assistant camera on the ground in frame");
}

}  // namespace
}  // namespace wend::snags
