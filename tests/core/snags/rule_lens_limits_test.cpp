// What is asked of a lens beyond its rings, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// A lens of 24 to 70 mm, T2.8 to T22, that focuses from 0.6 m on.
Snags asked(double focal, double stop, double distance, bool byHand = true) {
  return with([&](Evidence& e) {
    auto plan = std::make_shared<plan::Plan>(*e.plan);
    plan->lens->focal = {24, 70};
    if (byHand) plan->focus.pulls.push_back({});
    e.plan = plan;
    for (auto& sample : e.samples) {
      const bool now = sample.time > 2.95 && sample.time < 6.05;
      sample.lens->focal = now ? focal : 35;
      sample.iris.set = now ? stop : 4;
      sample.focus.setDistance = now ? distance : 3;
    }
  });
}

TEST(LensLimits, AreItsEnds) {
  EXPECT_TRUE(asked(24, 2.8, 0.6).empty());
  EXPECT_TRUE(asked(70, 22, kInfinity).empty());
  expectOne(asked(23.5, 4, 3), "lens-limits", Severity::stops);
  expectOne(asked(71, 4, 3), "lens-limits", Severity::stops);
  expectOne(asked(35, 2.5, 3), "lens-limits", Severity::stops);
  expectOne(asked(35, 25, 3), "lens-limits", Severity::stops);
  expectOne(asked(35, 4, 0.5), "lens-limits", Severity::stops);
  EXPECT_TRUE(asked(35, 4, 0.5, false).empty()) << "a planned focus keeps to the scale by itself";
}

TEST(LensLimits, SayWhatIsAskedAndWhatThereIs) {
  const Snags wide = asked(35, 1.4, 3);
  ASSERT_EQ(wide.size(), 1u);
  EXPECT_EQ(wide[0].text, "the iris is asked for T1.4, and the lens begins at T2.8");
  EXPECT_NEAR(wide[0].from, 3, 1e-9);
  EXPECT_NEAR(wide[0].until, 6, 1e-9);
  EXPECT_EQ(asked(200, 4, 3)[0].text, "the zoom is asked for 200 mm, and the lens ends at 70 mm");
}

}  // namespace
}  // namespace wend::snags
