// A tape reads another distance than the focus goes by.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// From 3 to 5 s ILSE is at 2 m along the lens and at `slant` on the slant; 0.2 m nearer and 0.3 m further is sharp.
Snags offAxis(double slant, plan::DistanceKind kind = plan::DistanceKind::flat, double floor = 2) {
  return with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan->focus.distance = kind;
    evidence.plan = plan;
    for (auto& sample : evidence.samples) {
      const bool apart = sample.time > 2.95 && sample.time < 5.05;
      sample.focus.wanted = {apart ? slant : 2, 2, apart ? floor : 2};
      sample.focus.wantedDistance = kind == plan::DistanceKind::slant ? sample.focus.wanted.slant : 2;
      sample.focus.wantedBand = {sample.focus.wantedDistance - 0.2, sample.focus.wantedDistance + 0.3};
    }
  });
}

TEST(DistancesApart, CountWhereTheyDifferByMoreThanHalfOfTheBandsNearerHalf) {
  const Snags snags = offAxis(2.12);
  expectOne(snags, "distances-apart", Severity::note);
  EXPECT_NEAR(snags[0].from, 3, 1e-9);
  EXPECT_NEAR(snags[0].until, 5, 1e-9);
  EXPECT_EQ(snags[0].text,
            "ILSE at 2.00 m flat, which the focus goes by, is at 2.12 m slant: 0.6 of the sharp band's nearer half "
            "apart");
  EXPECT_TRUE(offAxis(2.09).empty());
}

TEST(DistancesApart, SayWhichOneIsUsed) {
  const Snags slant = offAxis(2.2, plan::DistanceKind::slant);
  expectOne(slant, "distances-apart", Severity::note);
  EXPECT_EQ(slant[0].text.substr(0, 44), "ILSE at 2.20 m slant, which the focus goes b");
  // By the floor it is held against whichever of the other two is further off.
  expectOne(offAxis(2, plan::DistanceKind::floor, 1.85), "distances-apart", Severity::note);
  EXPECT_TRUE(offAxis(2, plan::DistanceKind::floor, 1.95).empty());
}

TEST(DistancesApart, SayNothingOfWhoIsOutOfFrame) {
  const auto beside = [](optics::Showing showing) {
    return during(3, 5, [&](Instant& sample) {
      sample.focus.wanted = {0.9, 0.05, 0.9};
      sample.focus.wantedBand = {1.8, 2.3};
      sample.performers[0].inFrame = showing;
    });
  };
  expectOne(beside(optics::Showing::part), "distances-apart", Severity::note);
  for (const auto& snag : beside(optics::Showing::out)) EXPECT_NE(snag.rule, "distances-apart");
}

TEST(DistancesApart, SayNothingOfAFlatDistanceWhereTheFloorAloneDiffers) {
  EXPECT_TRUE(offAxis(2, plan::DistanceKind::flat, 1.5).empty());
}

}  // namespace
}  // namespace wend::snags
