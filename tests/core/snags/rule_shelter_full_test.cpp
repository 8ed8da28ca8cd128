// Shelters with more people in them than they hold, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// Two people, the second of them at a place from 3 s until `until`, and a shelter about the origin that holds one.
Snags withSecondAt(Point place, double until, bool walking = false) {
  return with([&](Evidence& e) {
    auto plan = std::make_shared<plan::Plan>(*e.plan);
    plan->crew.add({base::Id<plan::Crew>("ac2"), "second assistant camera", 0.28, 1.8, 1.1, 1.1, {}, {}, {}});
    plan::Shelter shelter;
    shelter.id = base::Id<plan::Shelter>("ka");
    shelter.name = "the niche";
    shelter.pos = {0, 0};
    shelter.radius = 0.6;
    shelter.holds = 1;
    plan->shelters.add(shelter);
    e.plan = plan;
    for (auto& sample : e.samples) {
      CrewAt second = sample.crew[0];
      second.id = "ac2";
      second.present = sample.time > 3 - 1e-9 && sample.time < until + 1e-9;
      second.pos = place;
      second.walking = walking;
      sample.crew.push_back(second);
    }
  });
}

TEST(ShelterFull, CountsTwoWhereOneIsHeld) {
  const Snags snags = withSecondAt({0.5, 0}, 8);
  expectOne(snags, "shelter-full", Severity::risks);
  EXPECT_EQ(snags[0].text, "2 people are in the niche, which holds 1");
  EXPECT_NEAR(snags[0].from, 3, 1e-9);
  EXPECT_NEAR(snags[0].until, 8, 1e-9);
  EXPECT_TRUE(withSecondAt({0.7, 0}, 8).empty()) << "beside it";
}

TEST(ShelterFull, CountsWhoWalksToAndFroInItButNotWhoPasses) {
  expectOne(withSecondAt({0.5, 0}, 8, true), "shelter-full", Severity::risks);
  EXPECT_TRUE(withSecondAt({0.5, 0}, 4.5, true).empty());
}

}  // namespace
}  // namespace wend::snags
