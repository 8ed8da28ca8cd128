// Stepping over edges on a way that was found for somebody.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

TEST(StepOnAFoundRoute, SaysSo) {
  const Snags snags = with([](Evidence& evidence) {
    evidence.routed = {"ac1"};
    evidence.crossings = {{4, "ac1", "kerb", 0.1, false, 0, {1, 1}}};
  });
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_EQ(snags[0].text, "first assistant camera crosses kerb, 0.10 m high, on the route found");
}

}  // namespace
}  // namespace wend::snags
