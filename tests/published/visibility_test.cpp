/// Seen ground behind full-height walls against an exact general library: CGAL's triangular expansion.
///
/// Source  CGAL 5.5, "2D Visibility Computation", class Triangular_expansion_visibility_2, doc.cgal.org; the algorithm
///         is by Bungiu, Hemmer, Hershberger, Huang, Kroeller, "Efficient computation of visibility polygons" (2014).
#include <CGAL/Arr_naive_point_location.h>
#include <CGAL/Arr_segment_traits_2.h>
#include <CGAL/Arrangement_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Triangular_expansion_visibility_2.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>

#include "core/sight/wedge.h"
#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Traits = CGAL::Arr_segment_traits_2<Kernel>;
using Arrangement = CGAL::Arrangement_2<Traits>;
using Visibility = CGAL::Triangular_expansion_visibility_2<Arrangement, CGAL::Tag_true>;

double exactArea(const std::vector<Segment>& walls, Point viewer) {
  std::vector<Kernel::Segment_2> segments;
  for (const Segment& s : walls) segments.push_back({{s.a.x, s.a.y}, {s.b.x, s.b.y}});
  Arrangement room;
  CGAL::insert(room, segments.begin(), segments.end());
  const Kernel::Point_2 q(viewer.x, viewer.y);
  CGAL::Arr_naive_point_location<Arrangement> location(room);
  const auto found = location.locate(q);
  const auto* face = boost::get<Arrangement::Face_const_handle>(&found);
  if (!face) return -1;
  Arrangement seen;
  const auto region = Visibility(room).compute_visibility(q, *face, seen);
  geometry::Ring ring;
  auto edge = region->outer_ccb();
  const auto first = edge;
  do {
    ring.push_back({CGAL::to_double(edge->source()->point().x()), CGAL::to_double(edge->source()->point().y())});
  } while (++edge != first);
  return area(ring);
}

/// Sheets of full height along the walls, and a frame that looks straight down and so all round. A person as tall as
/// the walls behind it is wholly hidden by them.
double wedgeArea(const std::vector<Segment>& walls, Point viewer) {
  SceneInput input;
  for (const Segment& s : walls) {
    PieceIn sheet;
    sheet.shape = LineShape{{s.a, s.b}};
    sheet.bottom = -50;
    sheet.top = 50;
    input.pieces.push_back(sheet);
  }
  const Scene scene(input);
  const Eye eye = world::eyeAt(geometry::at(viewer, 1.5), 0, -90, 89, 89);
  return area(seenWedge(scene.at(0), eye, {0, 1.8, 1000}).direct);
}

std::vector<Segment> edgesOf(const geometry::Ring& ring) {
  std::vector<Segment> edges;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) edges.push_back({ring[j], ring[i]});
  return edges;
}

TEST(SeenWedgePublished, OfAnLShapedRoomIsTenOfTwelve) {
  const auto walls = edgesOf({{0, 0}, {4, 0}, {4, 2}, {2, 2}, {2, 4}, {0, 4}});
  EXPECT_NEAR(exactArea(walls, {1, 3}), 10, 1e-12);
  EXPECT_NEAR(wedgeArea(walls, {1, 3}), 10, 1e-4);
}

TEST(SeenWedgePublished, AgreesWithTriangularExpansionInRandomRooms) {
  const std::uint64_t seed = 20269;
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  std::mt19937_64 random(seed);
  for (int trial = 0; trial < 60; ++trial) {
    auto walls = edgesOf({{-5, -5}, {5, -5}, {5, 5}, {-5, 5}});
    while (walls.size() < 14) {
      const Point a{world::uniform(random, -4.9, 4.9), world::uniform(random, -4.9, 4.9)};
      const Vec d = geometry::turned({world::uniform(random, 0.3, 3), 0}, world::uniform(random, -3, 3));
      const Point b{std::clamp(a.x + d.x, -4.9, 4.9), std::clamp(a.y + d.y, -4.9, 4.9)};
      // Walls that cross have a corner the wedge does not look for (see its contract).
      const auto meets = [&](const Segment& other) { return geometry::whereMeet({a, b}, other).has_value(); };
      if (std::none_of(walls.begin(), walls.end(), meets)) walls.push_back({a, b});
    }
    const Point viewer{world::uniform(random, -4, 4), world::uniform(random, -4, 4)};
    const double exact = exactArea(walls, viewer);
    // Rays pass corners at 1e-7 radians: ten metres long and thirty corners make well under this.
    EXPECT_NEAR(wedgeArea(walls, viewer), exact, 1e-4) << "seed " << seed << " trial " << trial;
  }
}

}  // namespace
}  // namespace wend::sight
