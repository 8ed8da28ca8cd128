// The lens near a performer, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// From 3 s to 4 s the lens is so high and the performer so far off it on the floor.
Snags near(double height, double metres) {
  return during(3, 4, [&](Instant& sample) {
    sample.camera.pupil.at = {0, 0, height};
    sample.performers[0].pos = {0, metres};
  });
}

TEST(LensNear, CountsUnderNineTenthsOfAMetre) {
  const Snags snags = near(1.5, 0.8);
  expectOne(snags, "lens-near", Severity::risks);
  EXPECT_EQ(snags[0].who, "ilse");
  EXPECT_NE(snags[0].text.find("0.80 m"), std::string::npos) << snags[0].text;
  EXPECT_TRUE(near(1.5, 0.91).empty());
}

TEST(LensNear, HoldsTheKneesAsDearAsTheFace) {
  expectOne(near(0.3, 0.8), "lens-near", Severity::risks);
  EXPECT_TRUE(near(2.5, 0.7).empty()) << "0.8 m over the crown and 0.7 m aside";
}

}  // namespace
}  // namespace wend::snags
