#include "tests/bench/reference_view.h"

#include <CGAL/Arr_naive_point_location.h>
#include <CGAL/Arr_segment_traits_2.h>
#include <CGAL/Arrangement_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Triangular_expansion_visibility_2.h>
#include <geos_c.h>

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>
#include <stdexcept>
#include <variant>
#include <vector>

#include "core/geometry/pose.h"

namespace wend::reference {

namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Traits = CGAL::Arr_segment_traits_2<Kernel>;
using Arrangement = CGAL::Arrangement_2<Traits>;
using Expansion = CGAL::Triangular_expansion_visibility_2<Arrangement, CGAL::Tag_true>;
using Place = boost::geometry::model::d2::point_xy<double>;
using Area = boost::geometry::model::polygon<Place, false, true>;
using Areas = boost::geometry::model::multi_polygon<Area>;
using geometry::Point;

Kernel::Point_2 exact(Point p) {
  return {p.x, p.y};
}

Area outlineOf(const Arrangement& seen) {
  Area area;
  for (auto face = seen.faces_begin(); face != seen.faces_end(); ++face) {
    if (face->is_unbounded() || !face->has_outer_ccb()) continue;
    const auto first = face->outer_ccb();
    auto edge = first;
    do {
      const auto& p = edge->source()->point();
      area.outer().emplace_back(CGAL::to_double(p.x()), CGAL::to_double(p.y()));
    } while (++edge != first);
  }
  boost::geometry::correct(area);
  return area;
}

Area frameOf(Point lens, double bearing, double halfAngle, double far) {
  Area area;
  const double reach = far / std::cos(geometry::radians(halfAngle));
  area.outer().emplace_back(lens.x, lens.y);
  for (const double side : {halfAngle, -halfAngle}) {
    const double angle = geometry::radians(bearing + side);
    area.outer().emplace_back(lens.x + reach * std::sin(angle), lens.y + reach * std::cos(angle));
  }
  boost::geometry::correct(area);
  return area;
}

using Outline = std::vector<Point>;

/// Fills by parity the cells whose centres the outlines hold.
void fill(const std::vector<Outline>& outlines, sight::CellBits& out) {
  const geometry::Grid& grid = out.grid();
  std::vector<std::vector<double>> crossings(static_cast<std::size_t>(grid.ny));
  for (const Outline& outline : outlines)
    for (std::size_t i = 0; i + 1 < outline.size(); ++i) {
      Point a = outline[i], b = outline[i + 1];
      if (a.y > b.y) std::swap(a, b);
      const double low = (a.y - grid.origin.y) / grid.cell - 0.5, high = (b.y - grid.origin.y) / grid.cell - 0.5;
      const int until = std::min(grid.ny, static_cast<int>(std::ceil(std::max(high, 0.0))));
      for (int row = static_cast<int>(std::ceil(std::max(low, 0.0))); row < until; ++row)
        crossings[static_cast<std::size_t>(row)].push_back(a.x + (b.x - a.x) * (row - low) / (high - low));
    }
  for (int row = 0; row < grid.ny; ++row) {
    auto& at = crossings[static_cast<std::size_t>(row)];
    std::sort(at.begin(), at.end());
    for (std::size_t i = 0; i + 1 < at.size(); i += 2) {
      const auto column = [&](double x) { return static_cast<int>(std::ceil((x - grid.origin.x) / grid.cell - 0.5)); };
      for (int c = std::max(0, column(at[i])), end = std::min(grid.nx, column(at[i + 1])); c < end; ++c)
        out.set(c, row);
    }
  }
}

/// Geometry of the GEOS library, grown.
class Growth {
 public:
  Growth() : geos_(GEOS_init_r()) {}
  ~Growth() { GEOS_finish_r(geos_); }
  Growth(const Growth&) = delete;
  Growth& operator=(const Growth&) = delete;

  std::vector<Outline> of(const Areas& areas, double radius) const {
    std::vector<GEOSGeometry*> parts;
    for (const Area& area : areas) {
      std::vector<GEOSGeometry*> holes;
      for (const auto& hole : area.inners()) holes.push_back(ring(hole));
      parts.push_back(
          GEOSGeom_createPolygon_r(geos_, ring(area.outer()), holes.data(), static_cast<unsigned>(holes.size())));
    }
    GEOSGeometry* all =
        GEOSGeom_createCollection_r(geos_, GEOS_MULTIPOLYGON, parts.data(), static_cast<unsigned>(parts.size()));
    GEOSGeometry* grown = GEOSBuffer_r(geos_, all, radius, 8);
    if (grown == nullptr) throw std::runtime_error("GEOS could not grow a polygon");
    std::vector<Outline> outlines;
    for (int i = 0, n = GEOSGetNumGeometries_r(geos_, grown); i < n; ++i) {
      const GEOSGeometry* polygon = GEOSGetGeometryN_r(geos_, grown, i);
      if (GEOSisEmpty_r(geos_, polygon) != 0) continue;
      outlines.push_back(outline(GEOSGetExteriorRing_r(geos_, polygon)));
      for (int k = 0, holes = GEOSGetNumInteriorRings_r(geos_, polygon); k < holes; ++k)
        outlines.push_back(outline(GEOSGetInteriorRingN_r(geos_, polygon, k)));
    }
    GEOSGeom_destroy_r(geos_, grown);
    GEOSGeom_destroy_r(geos_, all);
    return outlines;
  }

 private:
  template <class Ring>
  GEOSGeometry* ring(const Ring& places) const {
    GEOSCoordSequence* at = GEOSCoordSeq_create_r(geos_, static_cast<unsigned>(places.size()), 2);
    for (std::size_t i = 0; i < places.size(); ++i)
      GEOSCoordSeq_setXY_r(geos_, at, static_cast<unsigned>(i), places[i].x(), places[i].y());
    return GEOSGeom_createLinearRing_r(geos_, at);
  }
  Outline outline(const GEOSGeometry* ring) const {
    const GEOSCoordSequence* at = GEOSGeom_getCoordSeq_r(geos_, ring);
    unsigned count = 0;
    GEOSCoordSeq_getSize_r(geos_, at, &count);
    Outline places(count);
    for (unsigned i = 0; i < count; ++i) GEOSCoordSeq_getXY_r(geos_, at, i, &places[i].x, &places[i].y);
    return places;
  }

  GEOSContextHandle_t geos_;
};

}  // namespace

struct ReferenceView::Inside {
  Arrangement walls;
  Expansion expansion;
  Arrangement::Face_const_handle face;
  Point lens;
  double far = 0;
  Growth growth;
};

ReferenceView::ReferenceView(std::span<const geometry::Segment> walls, const geometry::Extent& extent)
    : inside_(std::make_unique<Inside>()) {
  const Point low{extent.low.x - 1, extent.low.y - 1}, high{extent.high.x + 1, extent.high.y + 1};
  const Outline box{low, {high.x, low.y}, high, {low.x, high.y}};
  std::vector<Traits::Curve_2> curves;
  for (std::size_t i = 0; i < 4; ++i) curves.emplace_back(exact(box[i]), exact(box[(i + 1) % 4]));
  for (const geometry::Segment& wall : walls) curves.emplace_back(exact(wall.a), exact(wall.b));
  CGAL::insert(inside_->walls, curves.begin(), curves.end());
  inside_->expansion.attach(inside_->walls);
  inside_->far = 2 * geometry::distance(low, high);
}

ReferenceView::~ReferenceView() = default;

void ReferenceView::standAt(Point lens) {
  const CGAL::Arr_naive_point_location<Arrangement> where(inside_->walls);
  const auto found = where.locate(exact(lens));
  const auto* face = boost::get<Arrangement::Face_const_handle>(&found);
  if (face == nullptr) throw std::runtime_error("the lens stands on a wall");
  inside_->face = *face, inside_->lens = lens;
}

void ReferenceView::add(double bearing, double halfAngle, double radius, sight::CellBits& out) {
  Arrangement seen;
  inside_->expansion.compute_visibility(exact(inside_->lens), inside_->face, seen);
  Areas areas;
  boost::geometry::intersection(outlineOf(seen), frameOf(inside_->lens, bearing, halfAngle, inside_->far), areas);
  fill(inside_->growth.of(areas, radius), out);
}

}  // namespace wend::reference
