// What glossy things may show, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags gloss(double until) {
  return with([&](Evidence& e) { e.glints = {{{3, until}, "w1", "ac1", 7, {}}}; });
}

TEST(Gloss, IsANoteWithWhoAndHowFarOff) {
  const Snags snags = gloss(4);
  expectOne(snags, "gloss", Severity::note);
  EXPECT_EQ(snags[0].text.rfind("first assistant camera may show in w1", 0), 0u);
  EXPECT_NE(snags[0].text.find("7\u00b0"), std::string::npos);
  EXPECT_TRUE(gloss(3.2).empty()) << "for a blink only";
}

}  // namespace
}  // namespace wend::snags
