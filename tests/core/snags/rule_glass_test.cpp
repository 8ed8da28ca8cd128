// Glass by the light on its two sides, in takes written by hand.
#include <cmath>

#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// Looked at 12 degrees off square, where it returns about what it does square on.
Snags glass(const std::string& who, double darker, double until) {
  const double returned = 0.0834 * std::exp2(darker);
  return with([&](Evidence& e) { e.panes = {{{3, until}, "w1", who, returned, darker, 12, {}}}; });
}

// Square on clear glass returns 7.7 % and lets 92.3 % through (Fresnel, n = 1.5): half of what comes through when the
// far side is 2.58 stops darker.
TEST(GlassMirror, IsANoteFromHalfTheBrightnessOn) {
  expectOne(glass("", 2.6, 3.2), "glass-mirror", Severity::note);
  EXPECT_TRUE(glass("", 2.55, 4).empty());
  EXPECT_TRUE(glass("", 4, 3.1).empty()) << "for a blink only";
  EXPECT_EQ(glass("", 4.3, 4)[0].key, "glass-mirror/camera/w1/b1/1");
  EXPECT_NE(glass("", 4.3, 4)[0].text.find("4.3 stops darker"), std::string::npos);
}

TEST(GlassMirror, SaysNothingOfASlantAlone) {
  const Snags slant = with([&](Evidence& e) { e.panes = {{{3, 5}, "w1", "", 0.7, 0.8, 71, {}}}; });
  EXPECT_TRUE(slant.empty()) << "any pane returns much at 71 degrees";
}

TEST(GlassShows, IsARiskAsSoonAsItShowsSomebody) {
  const Snags snags = glass("ac1", 4, 4);
  expectOne(snags, "glass-shows", Severity::risks);
  EXPECT_EQ(snags[0].key, "glass-shows/ac1/w1/b1/1");
  EXPECT_EQ(snags[0].text.rfind("first assistant camera shows in w1", 0), 0u);
  EXPECT_TRUE(glass("ac1", 4, 3.1).empty());
}

}  // namespace
}  // namespace wend::snags
