// Steps on noisy ground, in takes written by hand: a line from 3 until 5, cobbles two metres about the origin.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags walking(geometry::Point pos, double from, double until, plan::AreaUse use = plan::AreaUse::noisy,
              bool found = false) {
  return with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan::Area cobbles;
    cobbles.id = base::Id<plan::Area>("cobbles");
    cobbles.name = "the cobbles";
    cobbles.shape = plan::Disc{{0, 0}, 2};
    cobbles.use = {use};
    plan->set.areas.add(cobbles);
    plan::Speech line;
    line.who = "ilse";
    line.from = {"", 3};
    line.until = {"", 5};
    plan->speech = {line};
    evidence.plan = plan;
    if (found) evidence.routed = {"ac1"};
    for (auto& sample : evidence.samples) {
      sample.crew[0].pos = pos;
      sample.crew[0].walking = sample.time > from - 1e-9 && sample.time < until + 1e-9;
    }
  });
}

TEST(NoisyStep, CountsUnderALineOnly) {
  const Snags snags = walking({1, 1}, 2, 6);
  expectOne(snags, "noisy-step", Severity::note);
  EXPECT_NEAR(snags[0].from, 3, 1e-9);
  EXPECT_NEAR(snags[0].until, 5, 1e-9);
  EXPECT_EQ(snags[0].text, "first assistant camera walks on the cobbles, which is noisy, while ILSE speaks");
  EXPECT_TRUE(walking({1, 1}, 5.5, 8).empty()) << "nobody speaks any more";
  EXPECT_TRUE(walking({1, 1}, 4.8, 8).empty()) << "a step";
}

TEST(NoisyStep, SaysWhoWalksOnARouteFound) {
  const Snags snags = walking({1, 1}, 2, 6, plan::AreaUse::noisy, true);
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_TRUE(snags[0].text.ends_with(", on the route found")) << snags[0].text;
}

TEST(NoisyStep, CountsOnNoisyGroundOnly) {
  EXPECT_TRUE(walking({3, 1}, 2, 6).empty());
  EXPECT_TRUE(walking({1, 1}, 2, 6, plan::AreaUse::light).empty());
}

}  // namespace
}  // namespace wend::snags
