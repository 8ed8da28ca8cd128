#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// ILSE at T4 and TOM at another stop, both in frame from second 3 until another; no offset of either is told.
Snags together(double stop, double until, optics::Showing showing = optics::Showing::whole) {
  return with([&](Evidence& e) {
    auto plan = std::make_shared<plan::Plan>(*e.plan);
    plan->performers.add({base::Id<plan::Performer>("tom"), "TOM", "B", 1.8, 0.25, {}, {}});
    e.plan = plan;
    for (auto& sample : e.samples) {
      PerformerAt tom = sample.performers[0];
      tom.id = "tom";
      tom.needed = stop;
      const bool there = sample.time >= 3 - 1e-9 && sample.time <= until + 1e-9;
      tom.inFrame = there ? showing : optics::Showing::out;
      sample.performers[0].needed = 4;
      sample.performers.push_back(tom);
    }
  });
}

TEST(FacesApart, CountsBeyondTwoStopsAndFromHalfASecondOn) {
  expectOne(together(8.1, 3.5), "faces-apart", Severity::risks);
  expectOne(together(1.9, 4), "faces-apart", Severity::risks);
  EXPECT_TRUE(together(8, 4).empty()) << "two stops to the digit";
  EXPECT_TRUE(together(8.1, 3.4).empty());
}

TEST(FacesApart, AsksForBothToShow) {
  EXPECT_TRUE(together(11, 6, optics::Showing::hidden).empty());
  expectOne(together(11, 6, optics::Showing::part), "faces-apart", Severity::risks);
}

TEST(FacesApart, NamesBothWithTheirStops) {
  const Snags snags = together(11, 6);
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_EQ(snags[0].key, "faces-apart/ilse/tom/b1/1");
  EXPECT_EQ(snags[0].text, "ILSE (T4) and TOM (T11) are 2.9 stops apart in one frame");
}

}  // namespace
}  // namespace wend::snags
