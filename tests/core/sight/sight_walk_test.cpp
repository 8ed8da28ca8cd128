#include "core/sight/sight_walk.h"

#include <gtest/gtest.h>

#include "core/sight/region_query.h"
#include "tests/core/sight/swept_reference.h"

namespace wend::sight {
namespace {

using geometry::Segment;

constexpr geometry::Extent kBox{{0, 0}, {10, 10}};

SightWalk::Source stillSource(Point at) {
  SightWalk::Source source{at, at, 0, {1, 0}, {0, 1}, at, at, at, at, at, false};
  source.still = true;
  return source;
}

/// Walks out of the triangle that holds the source's apex through all three of its sides.
SweptRegion allRound(const std::vector<Segment>& walls, const SightWalk::Source& source) {
  const Triangulation triangles(walls, kBox);
  SightWalk walk(triangles);
  SweptRegion region;
  walk.begin(source, region);
  const int first = 3 * triangles.triangleAt(source.apex);
  for (int s = first; s < first + 3; ++s) {
    const Triangulation::Side& side = triangles.sides()[s];
    walk.addToRing(s, triangles.corners()[side.origin] - source.apex, triangles.corners()[side.end] - source.apex, true,
                   true);
  }
  walk.closeRing(true);
  walk.addSlices();
  return region;
}

double areaOf(const SweptRegion& region) {
  double sum = 0;
  for (const RegionEdge& edge : region.ring) sum += cross(edge.a - Point{0, 0}, edge.b - Point{0, 0}) / 2;
  return sum;
}

TEST(SightWalk, SeesAnEmptyBoxWhole) {
  EXPECT_NEAR(areaOf(allRound({}, stillSource({3.3, 7.1}))), 100, 1e-9);
}

TEST(SightWalk, LeavesOutWhatACrossOfWallsHides) {
  // An upright cross of arms of one metre, seen from (5, 2): what is hidden is what lies beyond its lower arm's foot or
  // its level arms. The level arms hide a trapezoid from their height to the top of the box.
  const std::vector<Segment> cross{{{4, 6}, {6, 6}}, {{5, 5}, {5, 7}}};
  const double topWidth = 2.0 * 8 / 4;
  EXPECT_NEAR(areaOf(allRound(cross, stillSource({5, 2}))), 100 - 4 * (2 + topWidth) / 2, 1e-9)
      << "the arm that points at the lens hides nothing";
}

TEST(SightWalk, GivesLeavesCounterClockwiseAndClosed) {
  const std::vector<Segment> walls{{{2, 2}, {4, 3}}, {{6, 1}, {7, 8}}, {{1, 8}, {5, 7}}};
  const auto region = allRound(walls, stillSource({5, 5}));
  for (std::size_t i = 0, n = region.ring.size(); i < n; ++i) {
    EXPECT_EQ(region.ring[i].b, region.ring[(i + 1) % n].a);
    EXPECT_GE(cross(region.ring[i].a - Point{5, 5}, region.ring[i].b - Point{5, 5}), -1e-12);
    EXPECT_TRUE(region.ring[i].widened);
  }
}

TEST(SightWalk, GivesAStraightWallAsOneEdge) {
  // Three walls that abut the middle one from behind give it corners, not edges.
  const std::vector<Segment> walls{{{2, 8}, {8, 8}}, {{4, 8}, {4, 9}}, {{5, 8}, {5, 9}}, {{6, 8}, {6, 9}}};
  int onWall = 0;
  for (const RegionEdge& edge : allRound(walls, stillSource({5.1, 5.2})).ring) onWall += edge.a.y == 8 && edge.b.y == 8;
  EXPECT_LE(onWall, 2) << "two where the walk began on it";
  EXPECT_GE(onWall, 1);
}

TEST(SightWalk, PutsTheTipOfASliceOnTheCornerItPeersPast) {
  // A wall from the west ends at (5, 6); the lens goes east from under its end.
  SightWalk::Source source = stillSource({5.2, 5});
  source.from = {5.1, 5}, source.until = {5.4, 5};
  source.right = geometry::direction(60), source.left = geometry::direction(-60);
  source.still = false;
  const auto region = allRound({{{1, 6}, {5, 6}}}, source);
  double leftmost = 10;
  for (const RegionSlice& slice : region.slices) {
    if (slice.corner[0] != Point{5, 6}) continue;
    for (int i = 0; i < slice.corners; ++i) leftmost = std::min(leftmost, slice.corner[static_cast<std::size_t>(i)].x);
  }
  EXPECT_NEAR(leftmost, 5 - 0.4 * 4, 1e-12) << "the line from the far end of the way, at the top of the box";
}

TEST(SightWalk, CountsNoCornersTwiceInAPiece) {
  const Triangulation triangles({}, kBox);
  SightWalk walk(triangles);
  SweptRegion region;
  walk.begin(stillSource({5, 5}), region);
  walk.addPiece(std::array{Point{1, 1}, Point{1, 1}, Point{2, 1}, Point{2, 2}, Point{1, 1 + 1e-12}});
  walk.addPiece(std::array{Point{1, 1}, Point{2, 1}, Point{1, 1}});
  ASSERT_EQ(region.slices.size(), 1u);
  EXPECT_EQ(region.slices[0].corners, 3);
}

}  // namespace
}  // namespace wend::sight
