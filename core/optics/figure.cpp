#include "core/optics/figure.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/check.h"

namespace wend::optics {

using geometry::InView;
using geometry::Point;
using geometry::Point3;
using geometry::Pose;
using geometry::Vec;

namespace {

constexpr double kCrownAboveEyes = 0.065;  // share of stature
constexpr double kPointsOut = 0.9;         // share of the radius

/// Unit vector to the right of someone at `pupil` looking at the figure; east when they stand in one spot.
Vec acrossFrom(const Figure& figure, Point pupil) {
  const Vec towards = geometry::flat(figure.foot) - pupil;
  if (geometry::length(towards) < 1e-9) return {1, 0};
  return -geometry::left(geometry::unit(towards));
}

Point3 beside(const Figure& figure, Vec across, double offset, double height) {
  return {figure.foot.x + across.x * offset, figure.foot.y + across.y * offset, figure.foot.z + height};
}

Point project(const InView& v, HalfTangents half) {
  return {v.right / v.ahead / half.h, v.up / v.ahead / half.v};
}

/// The corners of a convex ring that lie at least kNearest ahead, with the points where its sides cross that depth.
std::vector<InView> aheadOnly(const std::array<InView, 4>& ring) {
  std::vector<InView> kept;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const InView &a = ring[i], &b = ring[(i + 1) % ring.size()];
    if (a.ahead >= kNearest) kept.push_back(a);
    if ((a.ahead >= kNearest) == (b.ahead >= kNearest)) continue;
    const double share = (kNearest - a.ahead) / (b.ahead - a.ahead);
    kept.push_back({geometry::lerp(a.right, b.right, share), geometry::lerp(a.up, b.up, share), kNearest});
  }
  return kept;
}

/// Shares of the way at which a line is inside the circle in plan; nothing when it misses.
std::optional<geometry::Span> sharesInCircle(Point from, Vec way, Point centre, double radius) {
  const Vec d = from - centre;
  const double a = geometry::dot(way, way), b = geometry::dot(d, way);
  const double c = geometry::dot(d, d) - radius * radius;
  if (a == 0) return c <= 0 ? std::optional(geometry::Span{0, 1}) : std::nullopt;
  const double inside = b * b - a * c;
  if (inside < 0) return std::nullopt;
  const double root = std::sqrt(inside);
  const geometry::Span span{std::max(0.0, (-b - root) / a), std::min(1.0, (-b + root) / a)};
  if (span.from > span.until) return std::nullopt;
  return span;
}

}  // namespace

Figure figureOf(Point3 foot, double radius, double eyesAbove, double stature) {
  return {foot, radius, eyesAbove, eyesAbove + kCrownAboveEyes * stature};
}

Point3 eyesOf(const Figure& figure) {
  return {figure.foot.x, figure.foot.y, figure.foot.z + figure.eyes};
}

FigurePoints figurePoints(const Figure& figure, Point pupil) {
  const Vec across = acrossFrom(figure, pupil);
  FigurePoints points;
  std::size_t next = 0;
  points[next++] = eyesOf(figure);
  for (int k = 0; k < 8; ++k)
    for (const double side : {-kPointsOut, 0.0, kPointsOut})
      points[next++] = beside(figure, across, side * figure.radius, figure.top * (2 * k + 1) / 16);
  return points;
}

std::optional<Point> placeInFrame(Point3 point, const Pose& pupil, HalfTangents half) {
  const InView v = pupil.view(point);
  if (!(v.ahead > 0)) return std::nullopt;
  return project(v, half);
}

bool inFrame(Point3 point, const Pose& pupil, HalfTangents half) {
  const InView v = pupil.view(point);
  return v.ahead > 0 && std::abs(v.right) <= half.h * v.ahead && std::abs(v.up) <= half.v * v.ahead;
}

Showing showing(const Figure& figure, const Pose& pupil, HalfTangents half, const std::function<bool(Point3)>& hides) {
  const FigurePoints points = figurePoints(figure, geometry::flat(pupil.at));
  int within = 0, seen = 0;
  bool eyesIn = false;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!inFrame(points[i], pupil, half)) continue;
    ++within;
    if (i == 0) eyesIn = true;
    if (!hides(points[i])) ++seen;
  }
  if (within == 0) return Showing::out;
  if (seen == 0) return Showing::hidden;
  return eyesIn && seen == within ? Showing::whole : Showing::part;
}

bool standsBetween(const Figure& figure, Point3 from, Point3 to) {
  const auto span = sharesInCircle(geometry::flat(from), geometry::flat(to) - geometry::flat(from),
                                   geometry::flat(figure.foot), figure.radius);
  if (!span) return false;
  const double a = geometry::lerp(from.z, to.z, span->from), b = geometry::lerp(from.z, to.z, span->until);
  return std::max(a, b) >= figure.foot.z && std::min(a, b) <= figure.foot.z + figure.top;
}

std::optional<FrameBox> boxInFrame(const Figure& figure, const Pose& pupil, HalfTangents half) {
  const Vec across = acrossFrom(figure, geometry::flat(pupil.at));
  const double r = figure.radius;
  const auto corner = [&](double offset, double height) { return pupil.view(beside(figure, across, offset, height)); };
  const auto ring = aheadOnly({corner(-r, 0), corner(r, 0), corner(r, figure.top), corner(-r, figure.top)});
  if (ring.empty()) return std::nullopt;
  const Point first = project(ring.front(), half);
  FrameBox box{first.x, first.x, first.y, first.y};
  for (const InView& v : ring) {
    const Point p = project(v, half);
    box = {std::min(box.left, p.x), std::max(box.right, p.x), std::min(box.bottom, p.y), std::max(box.top, p.y)};
  }
  return box;
}

std::optional<FrameBox> cutToFrame(const FrameBox& box) {
  const FrameBox cut{std::max(box.left, -1.0), std::min(box.right, 1.0), std::max(box.bottom, -1.0),
                     std::min(box.top, 1.0)};
  if (cut.left >= cut.right || cut.bottom >= cut.top) return std::nullopt;
  return cut;
}

}  // namespace wend::optics
