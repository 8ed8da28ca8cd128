#include "core/sight/frame_sides.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <functional>

#include "core/sight/eye_step.h"
#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

constexpr double kReach = 40;

std::optional<EyeStep> stepOf(const EyeAt& eye) {
  return eyeStep(eye, {0, 1.0 / 24});
}

geometry::Convex below(const EyeStep& step, Heights body) {
  return groundBeyond(step.sides, step.sides.lower, body, kReach);
}

geometry::Convex above(const EyeStep& step, Heights body) {
  return groundBeyond(step.sides, step.sides.upper, body, kReach);
}

TEST(FrameSides, WhoCrouchesNearALensHeldHighIsBelowTheFrame) {
  const auto step = stepOf([](double) { return world::eyeAt({0, 0, 1.5}, 0, 0, 30, 20); });
  // The lower side comes down to 1.1 m at 0.4 / tan(20 degrees) in front.
  const double edge = 0.4 / std::tan(geometry::radians(20));
  const geometry::Convex area = below(*step, {0, 1.1});
  EXPECT_TRUE(geometry::holds(area, {{0, edge - 0.31}, {0, edge - 0.31}}, 0.3));
  EXPECT_FALSE(geometry::holds(area, {{0, edge - 0.29}, {0, edge - 0.29}}, 0.3));
  EXPECT_TRUE(below(*step, {0, 1.8}).empty()) << "whoever is taller than the lens is not";
  EXPECT_TRUE(above(*step, {0, 1.1}).empty());
}

TEST(FrameSides, WhoStandsFarOffIsAboveALensThatLooksDown) {
  const auto step = stepOf([](double) { return world::eyeAt({0, 0, 3}, 90, -50, 30, 20); });
  // The upper side looks 30 degrees down and meets the floor at 3 / tan(30 degrees).
  const double edge = 3 / std::tan(geometry::radians(30));
  const geometry::Convex area = above(*step, {0, 1.8});
  EXPECT_TRUE(geometry::holds(area, {{edge + 0.31, 1}, {edge + 4, 1}}, 0.3));
  EXPECT_FALSE(geometry::holds(area, {{edge + 0.29, 1}, {edge + 4, 1}}, 0.3));
}

TEST(FrameSides, TellNothingOfAnEyeThatWhirlsOrIsNotThereAllAlong) {
  const auto whirl = stepOf([](double t) { return world::eyeAt({0, 0, 1.5}, 24 * 125 * t); });
  EXPECT_TRUE(below(*whirl, {0, 0.5}).empty());
  const auto gone = stepOf([](double t) -> std::optional<Eye> {
    if (t > 0.02) return std::nullopt;
    return world::eyeAt({0, 0, 1.5}, 0);
  });
  EXPECT_TRUE(below(*gone, {0, 0.5}).empty());
}

TEST(FrameSides, HoldNoGroundFromWhichABodyComesIntoTheFrameAtAnyInstant) {
  const std::uint64_t seed = 7741;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  const auto between = [&](double low, double high) { return world::uniform(random, low, high); };
  int held = 0;
  for (int trial = 0; trial < 3000; ++trial) {
    const Point3 at{between(-3, 3), between(-3, 3), between(0.2, 4)};
    const geometry::Vec3 pace{between(-2, 2), between(-2, 2), between(-1, 1)};
    const double bearing = between(0, 360), pan = between(-400, 400), whip = between(-2000, 2000);
    const double tilt = between(-85, 85), tip = between(-60, 60), wide = between(5, 70), tall = between(4, 60);
    const EyeAt eye = [&](double t) {
      return world::eyeAt(at + pace * t, bearing + pan * t + whip * t * t, tilt + tip * t, wide, tall + 20 * t);
    };
    const auto step = stepOf(eye);
    const double floor = between(-1, 1);
    const Heights body{floor, floor + between(0.1, 2)};
    for (const geometry::Convex& area : {below(*step, body), above(*step, body)}) {
      for (int n = 0; n < (area.empty() ? 0 : 30); ++n) {
        const Point p = geometry::lerp(geometry::lerp(area[0], area[1], between(0, 1)),
                                       geometry::lerp(area[2], area.back(), between(0, 1)), between(0, 1));
        const double z = n % 2 == 0 ? body.top : body.bottom, t = between(0, 1.0 / 24);
        ++held;
        ASSERT_FALSE(Frame(*eye(t)).holds(geometry::at(p, z))) << "trial " << trial << " t " << t << " z " << z;
      }
    }
  }
  std::printf("%d places held\n", held);
  EXPECT_GT(held, 30000);
}

TEST(FrameSides, OfTheImageBehindAMirrorLieWhereTheImageLooks) {
  const auto step = stepOf([](double) { return world::eyeAt({1, 2, 1.5}, 30, 0, 30, 20); });
  const geometry::Segment mirror{{0, 5}, {5, 5}};
  const StepSides image = imageOf(step->sides, mirror);
  const geometry::Convex own = below(*step, {0, 1.1}), seen = groundBeyond(image, image.lower, {0, 1.1}, kReach);
  const Point p = Point{1, 2} + geometry::direction(30) * 0.5;
  EXPECT_TRUE(geometry::holds(own, {p, p}, 0.01));
  const Point q = geometry::reflected(p, mirror);
  EXPECT_TRUE(geometry::holds(seen, {q, q}, 0.01));
  const Point off = geometry::reflected(Point{1, 2} + geometry::direction(30) * 3, mirror);
  EXPECT_FALSE(geometry::holds(seen, {off, off}, 0.01));
}

TEST(Frame, IsAHalfSpaceAtMost) {
  Eye eye = world::eyeAt({0, 0, 1.5}, 0, 0, 60, 20);
  eye.marginDegrees = 40;
  const Frame frame(eye);
  EXPECT_TRUE(frame.holds({100, 0.01, 1.5})) << "a hundredth of a degree before square to the axis";
  EXPECT_FALSE(frame.holds({100, -0.01, 1.5}));
  EXPECT_FALSE(frame.slopes(geometry::direction(89.99)).empty());
  EXPECT_TRUE(frame.slopes(geometry::direction(90.01)).empty());
  EXPECT_NEAR(frame.turns().until, std::numbers::pi / 2, 1e-12);
}

}  // namespace
}  // namespace wend::sight
