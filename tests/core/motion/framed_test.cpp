#include "core/motion/framed.h"

#include <gtest/gtest.h>

#include <random>

#include "core/geometry/pose.h"

namespace wend::motion {
namespace {

using geometry::Point3;
using Outcome = Framed::Outcome;

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

/// The place of the frame a target falls on, drawn through the pinhole.
FramePlace seenAt(Point3 sensor, Point3 target, Orientation way, const View& view) {
  const geometry::Pose pupil = geometry::Pose{sensor, way.bearing, way.tilt}.advanced(view.pupilAhead);
  const geometry::InView in = pupil.view(target);
  EXPECT_GT(in.ahead, 0);
  return {in.right / in.ahead / view.tanHalfWidth, in.up / in.ahead / view.tanHalfHeight};
}

TEST(Framed, PutsTheTargetExactlyAtItsPlace) {
  std::mt19937_64 random(31);
  int found = 0;
  for (int run = 0; run < 20000; ++run) {
    const Point3 sensor{uniform(random, -9, 9), uniform(random, -9, 9), uniform(random, 0.3, 3)};
    const Point3 target{uniform(random, -9, 9), uniform(random, -9, 9), uniform(random, 0, 4)};
    const View view{uniform(random, 0.1, 1.2), uniform(random, 0.1, 0.8), uniform(random, -0.1, 0.25)};
    const FramePlace place{uniform(random, -1, 1), uniform(random, -1, 1)};
    const Framed result = framed(sensor, target, place, view);
    if (result.outcome != Outcome::found) continue;
    ++found;
    const FramePlace seen = seenAt(sensor, target, result.way, view);
    EXPECT_NEAR(seen.x, place.x, 1e-9) << run;
    EXPECT_NEAR(seen.y, place.y, 1e-9) << run;
  }
  EXPECT_GT(found, 19000);
}

TEST(Framed, MiddleOfTheFrameLooksStraightAtTheTarget) {
  const Framed result = framed({0, 0, 1.5}, {3, 3, 1.5 + std::sqrt(18.0)}, {}, {0.5, 0.3, 0.1});
  EXPECT_NEAR(result.way.bearing, 45, 1e-12);
  EXPECT_NEAR(result.way.tilt, 45, 1e-12);
}

TEST(Framed, ATargetOnTheRightNeedsTheLensToTurnLeftOfIt) {
  const Framed result = framed({0, 0, 1}, {0, 5, 1}, {1, 0}, {0.5, 0.3, 0});
  EXPECT_NEAR(result.way.bearing, -geometry::degrees(std::atan(0.5)), 1e-12);
  const Framed high = framed({0, 0, 1}, {0, 5, 1}, {0, 1}, {0.5, 0.3, 0});
  EXPECT_NEAR(high.way.tilt, -geometry::degrees(std::atan(0.3)), 1e-12);
}

TEST(Framed, StraightOverHasNoBearing) {
  const Framed above = framed({1, 1, 1}, {1, 1, 3}, {}, {0.5, 0.3, 0.2}), below = framed({1, 1, 3}, {1, 1, 1}, {}, {});
  EXPECT_EQ(above.outcome, Outcome::straightOver);
  EXPECT_NEAR(above.way.tilt, 90, 1e-6);
  EXPECT_EQ(below.outcome, Outcome::straightOver);
  EXPECT_NEAR(below.way.tilt, -90, 1e-6);
}

TEST(Framed, RefusesWhatNoTiltCanGive) {
  EXPECT_EQ(framed({0, 0, 1}, {0.001, 0.1, 5}, {1, 0}, {0.6, 0.3, 0}).outcome, Outcome::outOfReach);
  EXPECT_EQ(framed({0, 0, 1}, {0.1, 0, 1}, {}, {0.6, 0.3, 0.15}).outcome, Outcome::tooNear);
  EXPECT_EQ(framed({0, 0, 1}, {0, 0, 1}, {}, {0.6, 0.3, 0}).outcome, Outcome::tooNear);
}

}  // namespace
}  // namespace wend::motion
