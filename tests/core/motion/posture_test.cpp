#include "core/motion/posture.h"

#include <gtest/gtest.h>

namespace wend::motion {
namespace {

TEST(Posture, EyesByPostureForAStatureOfOneSeventy) {
  EXPECT_NEAR(eyeHeight(Posture::stand, 1.70), 1.5895, 1e-12);
  EXPECT_NEAR(eyeHeight(Posture::kneel, 1.70), 1.1169, 1e-12);
  EXPECT_NEAR(eyeHeight(Posture::sit, 1.70), 1.2286, 1e-12);
  EXPECT_NEAR(eyeHeight(Posture::lie, 1.70), 0.15, 1e-12);
}

TEST(Posture, BlendsLinearlyAndEndsOnBothPostures) {
  const double stand = eyeHeight(Posture::stand, 1.8), sit = eyeHeight(Posture::sit, 1.8);
  EXPECT_DOUBLE_EQ(eyeHeight(Posture::stand, Posture::sit, 0, 1.8), stand);
  EXPECT_DOUBLE_EQ(eyeHeight(Posture::stand, Posture::sit, 1, 1.8), sit);
  EXPECT_DOUBLE_EQ(eyeHeight(Posture::stand, Posture::sit, 0.25, 1.8), 0.75 * stand + 0.25 * sit);
}

TEST(Posture, AStandingBodyIsAsTallAsItsStature) {
  EXPECT_NEAR(bodyTop(eyeHeight(Posture::stand, 1.62), 1.62), 1.62, 1e-12);
}

}  // namespace
}  // namespace wend::motion
