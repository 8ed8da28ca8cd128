// What glossy things may show, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags gloss(double until) {
  return with([&](Evidence& e) { e.glints = {{{3, until}, "w1", {"ac1", "camera"}, 7, {}}}; });
}

TEST(Gloss, IsANoteWithWhoAndHowFarOff) {
  const Snags snags = gloss(4);
  expectOne(snags, "gloss", Severity::note);
  EXPECT_EQ(snags[0].text,
            "w1 is glossy and may show first assistant camera, the camera: 7\u00b0 off a mirror that would");
  EXPECT_TRUE(gloss(3.2).empty()) << "for a blink only";
}

}  // namespace
}  // namespace wend::snags
