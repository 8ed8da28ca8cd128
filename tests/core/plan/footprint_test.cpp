#include "core/plan/footprint.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::plan {
namespace {

using geometry::Vec;

const Footprint kVan = Outline{{{0, 0}, {4, 0}, {4, 2}, {0, 2}}};
const Footprint kLadder = Line{{{1, 1}, {3, 1}, {3, 5}}};

const std::vector<Point>& pointsOf(const Footprint& shape) {
  const auto* outline = std::get_if<Outline>(&shape);
  return outline ? outline->points : std::get<Line>(shape).points;
}

void expectNear(Point a, Point b) {
  EXPECT_NEAR(a.x, b.x, 1e-12);
  EXPECT_NEAR(a.y, b.y, 1e-12);
}

TEST(CentreOf, IsTheDiscsOrTheMiddleOfTheBox) {
  EXPECT_EQ(centreOf(Disc{{3, 4}, 1}), (Point{3, 4}));
  EXPECT_EQ(centreOf(kVan), (Point{2, 1}));
  EXPECT_EQ(centreOf(kLadder), (Point{2, 3}));
  // A corner more inside the box leaves it where it is; the centre of mass would have moved.
  EXPECT_EQ(centreOf(Outline{{{0, 0}, {4, 0}, {4, 2}, {1, 1}, {0, 2}}}), (Point{2, 1}));
}

TEST(Placed, LeavesWhatDoesNotMoveToTheBit) {
  for (const Footprint& shape : {kVan, kLadder, Footprint(Disc{{0.1, 0.2}, 0.3})})
    EXPECT_EQ(placed(shape, {}, 0), shape);
}

TEST(Placed, ShiftsByTheOffset) {
  EXPECT_EQ(placed(Disc{{1, 2}, 0.5}, {3, -1}, 45), Footprint(Disc{{4, 1}, 0.5}));
  EXPECT_EQ(placed(kVan, {10, 1}, 0), Footprint(Outline{{{10, 1}, {14, 1}, {14, 3}, {10, 3}}}));
}

// Seen from above, what lies north of the centre lies east of it after a quarter turn clockwise.
TEST(Placed, TurnsClockwise) {
  const auto turned = placed(Outline{{{-1, -1}, {1, -1}, {0, 1}}}, {}, 90);
  EXPECT_EQ(pointsOf(turned)[2], (Point{1, 0}));
  expectNear(pointsOf(placed(kVan, {}, 30))[1],
             {2 + 2 * std::cos(geometry::radians(30)) - std::sin(geometry::radians(30)),
              1 - 2 * std::sin(geometry::radians(30)) - std::cos(geometry::radians(30))});
}

TEST(Placed, TurnsByQuartersExactly) {
  EXPECT_EQ(placed(kVan, {}, 90), Footprint(Outline{{{1, 3}, {1, -1}, {3, -1}, {3, 3}}}));
  EXPECT_EQ(placed(kVan, {}, -270), placed(kVan, {}, 90));
  EXPECT_EQ(placed(kVan, {}, 180), Footprint(Outline{{{4, 2}, {0, 2}, {0, 0}, {4, 0}}}));
  EXPECT_EQ(placed(kVan, {}, 720), kVan);
}

TEST(Placed, KeepsLengthsAndTheTurnsBetweenThem) {
  const unsigned seed = 11;
  std::mt19937_64 random(seed);
  const auto uniform = [&](double most) { return most * (static_cast<double>(random() >> 11) * 0x1.0p-53); };
  for (int i = 0; i < 500; ++i) {
    Outline outline;
    for (int k = 0; k < 5; ++k) outline.points.push_back({uniform(20) - 10, uniform(20) - 10});
    const Vec offset{uniform(40) - 20, uniform(40) - 20};
    const double turn = uniform(1440) - 720;
    const auto moved = pointsOf(placed(outline, offset, turn));
    const Point centre = centreOf(outline);
    for (std::size_t k = 0; k < moved.size(); ++k) {
      const Vec before = outline.points[k] - centre, after = moved[k] - (centre + offset);
      ASSERT_NEAR(length(after), length(before), 1e-10) << "seed " << seed;
      ASSERT_NEAR(geometry::turn(bearingOf(before) + turn, bearingOf(after)), 0, 1e-8) << "seed " << seed;
    }
  }
}

}  // namespace
}  // namespace wend::plan
