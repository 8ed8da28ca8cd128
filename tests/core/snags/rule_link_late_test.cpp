// A picture that is late against a subject that comes nearer.
#include <algorithm>

#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// ILSE comes 1 m/s nearer from 3 to 5 s; the band reaches 0.1 m nearer and 0.2 m further than where she is.
Snags comingWith(double delay, plan::LinkKind kind = plan::LinkKind::picture, bool changing = false) {
  return with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan::Link link;
    link.id = base::Id<plan::Link>("l1");
    link.name = "picture";
    link.kind = kind;
    link.delay = delay;
    plan->links.add(link);
    evidence.plan = plan;
    for (auto& sample : evidence.samples) {
      const double distance = 5 - std::clamp(sample.time - 3, 0.0, 2.0);
      sample.focus.wantedDistance = distance;
      sample.focus.wantedBand = {distance - 0.1, distance + 0.2};
      sample.focus.changing = changing;
    }
  });
}

TEST(LinkLate, CountsWhereTheWayMeanwhileIsMoreThanTheBandHolds) {
  const Snags snags = comingWith(0.12);
  expectOne(snags, "link-late", Severity::note);
  EXPECT_NEAR(snags[0].from, 3.1, 1e-9);
  EXPECT_NEAR(snags[0].until, 5, 1e-9);
  EXPECT_EQ(snags[0].text, "picture shows ILSE 0.12 s late: 0.12 m of way, and the sharp band holds 0.10 m");
  EXPECT_TRUE(comingWith(0.09).empty());
}

TEST(LinkLate, IsOfPicturesAndOfOneSubject) {
  EXPECT_TRUE(comingWith(0.5, plan::LinkKind::sound).empty());
  EXPECT_TRUE(comingWith(0.5, plan::LinkKind::picture, true).empty());
}

}  // namespace
}  // namespace wend::snags
