// Passing things narrowly on a way found for somebody: no way to move is drawn there.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags passing(bool person, double metres, bool found) {
  return with([&](Evidence& evidence) {
    if (found) evidence.routed = {"ac1"};
    for (int i = 0; i <= 10; ++i)
      evidence.clearances.push_back({3 + i * 0.1, "ac1", "flat", person, false, metres, true, {}});
  });
}

TEST(ClearanceOnAFoundRoute, SaysSoAndMendsWhatARouteIsFoundPast) {
  const Snags snags = passing(false, 0.11, true);
  expectOne(snags, "clearance", Severity::stops);
  EXPECT_EQ(snags[0].text, "first assistant camera passes 0.11 m from flat on the left, on the route found");
  EXPECT_EQ(snags[0].mend,
            "free 0.19 m more beside flat, give first assistant camera more time or pace for a wider way, or draw one");
  const Snags drawn = passing(false, 0.11, false);
  expectOne(drawn, "clearance", Severity::stops);
  EXPECT_EQ(drawn[0].mend, "move the way 0.19 m to the right, or rehearse it slowly with the spotter");
}

TEST(BodiesMeetOnAFoundRoute, SaysSo) {
  const Snags snags = passing(true, -0.1, true);
  expectOne(snags, "bodies-meet", Severity::stops);
  EXPECT_TRUE(snags[0].text.ends_with(", on the route found")) << snags[0].text;
}

}  // namespace
}  // namespace wend::snags
