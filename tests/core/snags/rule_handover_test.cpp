// Handovers in takes written by hand: the windows are given.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// The focus may change hands from 2 until 4 and from 7 on.
Snags handedOver(const std::string& what, double at, double over) {
  return with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan->handovers.push_back({what, "ac1", "ac2", {"", at}, over, {}});
    evidence.plan = plan;
    evidence.handWindows = {{"focus", {{2, 4}, {7, 10}}}};
  });
}

TEST(HandoverHot, CountsWhatLeavesTheQuietStretch) {
  EXPECT_TRUE(handedOver("focus", 2, 2).empty()) << "exactly inside";
  const Snags snags = handedOver("focus", 3, 2);
  expectOne(snags, "handover-hot", Severity::risks);
  EXPECT_EQ(snags[0].mend, "hand over within 2.0 to 4.0 s, or 7.0 to 10.0 s");
}

TEST(HandoverHot, NamesOnlyWhatIsLongEnough) {
  EXPECT_EQ(handedOver("focus", 4, 2.5)[0].mend, "hand over within 7.0 to 10.0 s");
  EXPECT_NE(handedOver("focus", 1, 5)[0].mend.find("shorter"), std::string::npos);
}

TEST(HandoverHot, SaysNothingOfThingsWithoutWindows) {
  EXPECT_TRUE(handedOver("boom", 5, 1).empty());
}

}  // namespace
}  // namespace wend::snags
