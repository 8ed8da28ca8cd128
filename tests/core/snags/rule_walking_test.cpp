// How fast somebody goes a way that was found for them.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// At 2 m/s from 3 to 5 s.
Snags hurrying(bool found) {
  return with([&](Evidence& evidence) {
    if (found) evidence.routed = {"ac1"};
    for (auto& sample : evidence.samples) sample.crew[0].pos = {2 * std::clamp(sample.time - 3, 0.0, 2.0), 5};
  });
}

TEST(CrewSpeedOnAFoundRoute, SaysSoAndThatNoSlowerOneWasFound) {
  const Snags snags = hurrying(true);
  expectOne(snags, "speed", Severity::note);
  EXPECT_TRUE(snags[0].text.ends_with(", on the route found")) << snags[0].text;
  EXPECT_EQ(snags[0].mend, "no slower way was found: give them more time, or accept the noise");
  const Snags drawn = hurrying(false);
  expectOne(drawn, "speed", Severity::note);
  EXPECT_EQ(drawn[0].mend, "leave earlier, or accept the noise");
}

}  // namespace
}  // namespace wend::snags
