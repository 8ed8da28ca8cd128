// Lines of speech over takes written by hand: what the pole has to do at every sample is given.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// A line from 3 to 5 s under a pole that reaches 3 m and wants its microphone within 0.9 m of the mouth; `at` from 3
/// to `until`, and well within everything after that.
Snags line(const BoomAt& at, double until = 5) {
  return with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan::Pole pole;
    pole.id = base::Id<plan::Pole>("p1");
    pole.name = "BOOM";
    plan->poles.add(pole);
    plan::Fixture lamp;
    lamp.id = base::Id<plan::Fixture>("f1");
    lamp.name = "pendant";
    plan->fixtures.add(lamp);
    evidence.plan = plan;
    BoomLine spoken{0, "p1", "ilse", {3, 5}, {}};
    for (int i = 0; i <= 20; ++i) {
      const double t = 3 + i * 0.1;
      spoken.at.push_back(t < until + 1e-9 ? at : BoomAt{0, 2.0, 0.5, 1.0, "f1", 2, false, {}, {}});
      spoken.at.back().time = t;
    }
    evidence.boom = {spoken};
  });
}

TEST(Boom, IsQuietWithinItsReachAndItsGap) {
  EXPECT_TRUE(line({0, 2.0, 0.9, 3.0, "f1", 0.3, false, {}, {}}).empty()) << "exactly at every limit";
}

// A pole is leaned until the gap is its longest: that comes out a rounding over as often as not.
TEST(Boom, IsQuietARoundingOverItsLimits) {
  const double rounded = 0.9 + 4e-16, reached = 3 + 9e-16;
  ASSERT_GT(rounded, 0.9);
  ASSERT_GT(reached, 3);
  EXPECT_TRUE(line({0, 2.0, rounded, reached, "f1", 0.3, false, {}, {}}).empty());
}

TEST(BoomGap, CountsOverThePolesLongestGap) {
  const BoomAt wide{0, 2.3, 0.95, 2, "", 0, false, {1, 2}, {}};
  expectOne(line(wide), "boom-gap", Severity::risks);
  const Snags snags = line(wide, 4);
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_EQ(snags[0].key, "boom-gap/ilse/p1/b1/1");
  EXPECT_NEAR(snags[0].until, 4, 1e-9);
  EXPECT_EQ(snags[0].text,
            "BOOM over ILSE comes no nearer to the mouth than 0.95 m, the top of the frame being at 2.30 m");
  EXPECT_TRUE(line(wide, 3.2).empty()) << "two tenths of a second are a breath";
}

TEST(BoomGap, SaysThatTheHolderGoesARouteFound) {
  const Snags snags = with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan::Pole pole;
    pole.id = base::Id<plan::Pole>("p1");
    pole.crew = "ac1";
    plan->poles.add(pole);
    evidence.plan = plan;
    evidence.routed = {"ac1"};
    BoomAt wide{0, 2.3, 0.95, 2, "", 0, false, {1, 2}, {}};
    BoomLine spoken{0, "p1", "ilse", {3, 4}, {}};
    for (wide.time = 3; wide.time < 4.01; wide.time += 0.1) spoken.at.push_back(wide);
    evidence.boom = {spoken};
  });
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_TRUE(snags[0].text.ends_with(", on the route found")) << snags[0].text;
}

TEST(BoomGap, SaysNothingOfWhoIsOutOfThePicture) {
  EXPECT_TRUE(line({0, std::nullopt, 0.95, 2, "", 0, false, {}, {}}).empty());
}

TEST(BoomReach, CountsOverThePolesReachAndThroughTheSet) {
  expectOne(line({0, 2.0, 0.5, 3.05, "", 0, false, {}, {}}), "boom-reach", Severity::risks);
  const Snags walled = line({0, 2.0, 0.5, 2, "", 0, true, {}, {}});
  expectOne(walled, "boom-reach", Severity::risks);
  EXPECT_EQ(walled[0].text, "BOOM over ILSE would pass through the set");
  EXPECT_TRUE(line({0, 2.0, 0.5, std::nullopt, "", 0, false, {}, {}}).empty()) << "nobody knows where the holder is";
}

TEST(BoomLamp, CountsWithinThirtyCentimetresAtOnceAndWithACaution) {
  const Snags near = line({0, 2.0, 0.5, 2, "f1", 0.29, false, {}, {}}, 3);
  expectOne(near, "boom-lamp", Severity::risks);
  EXPECT_EQ(near[0].text, "BOOM over ILSE passes pendant at 0.29 m");
  EXPECT_EQ(near[0].mend.rfind("caution", 0), 0u) << near[0].mend;
}

}  // namespace
}  // namespace wend::snags
