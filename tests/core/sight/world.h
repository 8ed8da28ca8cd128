/// Small scenes for the tests of sight, and an independent answer by brute force: no half planes, no corners, only
/// straight segments of space against boxes, as densely as asked.
#pragma once

#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include "core/sight/body.h"
#include "core/sight/ray.h"

namespace wend::sight::world {

/// A uniform number in [low, high), the same on every machine.
inline double uniform(std::mt19937_64& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1.0p-53;
}

inline Eye eyeAt(Point3 at, double bearing, double tilt = 0, double halfWidthDeg = 30, double halfHeightDeg = 20) {
  Eye eye;
  eye.pupil = {at, bearing, tilt};
  eye.tanHalfWidth = std::tan(geometry::radians(halfWidthDeg));
  eye.tanHalfHeight = std::tan(geometry::radians(halfHeightDeg));
  return eye;
}

inline PieceIn box(Point low, Point high, double bottom, double top, int tag = 0, Surface surface = Surface::solid) {
  PieceIn piece;
  piece.shape = OutlineShape{{low, {high.x, low.y}, high, {low.x, high.y}}};
  piece.bottom = bottom;
  piece.top = top;
  piece.surface = surface;
  piece.tag = tag;
  return piece;
}

inline PieceIn disc(Point centre, double radius, double bottom, double top, int tag = 0) {
  PieceIn piece;
  piece.shape = DiscShape{centre, radius};
  piece.bottom = bottom;
  piece.top = top;
  piece.tag = tag;
  return piece;
}

inline PieceIn mirrorLine(Point a, Point b, double bottom, double top, Side reflects, int tag = 0) {
  PieceIn piece;
  piece.shape = LineShape{{a, b}};
  piece.bottom = bottom;
  piece.top = top;
  piece.surface = Surface::mirror;
  piece.reflects = reflects;
  piece.tag = tag;
  return piece;
}

inline WallBand wall(std::vector<Point> points, double thickness = 0.2, double top = 3, int tag = 0) {
  return {std::move(points), thickness, 0, top, tag, std::nullopt};
}

/// True when the open segment from a to b passes through the inside of the box that the prism is.
inline bool segmentMeets(const Scene& scene, const Prism& prism, Point3 a, Point3 b) {
  double from = 0, until = 1;
  const auto keep = [&](double offset, double rate) {  // offset + rate * s > 0
    if (rate > 0) from = std::max(from, -offset / rate);
    if (rate < 0) until = std::min(until, -offset / rate);
    if (rate == 0 && offset <= 0) until = -1;
  };
  keep(a.z - prism.bottom, b.z - a.z);
  keep(prism.top - a.z, a.z - b.z);
  const Point p{a.x, a.y};
  const Vec way{b.x - a.x, b.y - a.y};
  if (prism.form == Prism::Form::disc) {
    const Vec d = p - prism.centre;
    const double qa = dot(way, way), qb = dot(d, way), qc = dot(d, d) - prism.radius * prism.radius;
    const double root = qb * qb - qa * qc;
    if (root <= 0) return false;
    from = std::max(from, (-qb - std::sqrt(root)) / qa);
    until = std::min(until, (-qb + std::sqrt(root)) / qa);
    return until - from > 1e-12;
  }
  if (prism.form == Prism::Form::sheet) {
    const auto share = geometry::whereMeet({p, p + way}, prism.sheet);
    return share && *share > from && *share < until;
  }
  const auto corners = scene.corners(prism);  // convex in these tests
  for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
    keep(cross(corners[i] - corners[j], p - corners[j]), cross(corners[i] - corners[j], way));
  return until - from > 1e-12;
}

inline bool segmentOpen(const SceneAt& now, Point3 a, Point3 b) {
  for (std::size_t i = 0; i < now.size(); ++i)
    if (segmentMeets(now.scene(), now.prism(i), a, b)) return false;
  return true;
}

/// Upright lines on `rings` rings of the body's disc and one in the middle, `heights` places on each.
inline bool seenByBruteForce(const SceneAt& now, const Eye& eye, const Body& body, int rings, int around, int heights) {
  const Frame frame(eye);
  for (int ring = 0; ring <= rings; ++ring) {
    for (int i = 0; i < (ring == 0 ? 1 : around); ++i) {
      const Vec off =
          geometry::turned(Vec{body.radius * ring / rings * 0.999999, 0}, 2 * std::numbers::pi * i / around);
      const Point p = body.centre + off;
      if (crossesWall(now.scene(), body.centre, p)) continue;
      for (int k = 0; k <= heights; ++k) {
        const Point3 at3 = geometry::at(p, body.floor + (body.top - body.floor) * k / heights);
        if (frame.holds(at3) && segmentOpen(now, eye.pupil.at, at3)) return true;
      }
    }
  }
  return false;
}

}  // namespace wend::sight::world
