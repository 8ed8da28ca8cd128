// Drawn routes that fail a need, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags failing(NeedFails why, double seconds) {
  return with([&](Evidence& e) { e.unmetNeeds = {{"ac1", {3, 3 + seconds}, {1, 2}, why}}; });
}

TEST(NeedUnmet, CountsFromHalfASecondOn) {
  expectOne(failing(NeedFails::far, 0.5), "need-unmet", Severity::note);
  EXPECT_TRUE(failing(NeedFails::far, 0.4).empty());
}

TEST(NeedUnmet, SaysWhichNeedFails) {
  EXPECT_EQ(failing(NeedFails::far, 2)[0].text,
            "first assistant camera is farther from the camera than the plan says they may be for 2.0 s");
  EXPECT_NE(failing(NeedFails::away, 2)[0].text.find("shelter"), std::string::npos);
  EXPECT_NE(failing(NeedFails::blind, 2)[0].text.find("cannot see"), std::string::npos);
}

TEST(NeedUnmet, LeavesLinksAndPolesToTheirOwnRules) {
  for (const NeedFails why : {NeedFails::link, NeedFails::gap, NeedFails::reach})
    EXPECT_TRUE(failing(why, 5).empty()) << wordOf(why);
}

}  // namespace
}  // namespace wend::snags
