#include "core/pulls/zoom_cover.h"

#include <cmath>
#include <optional>

#include "core/base/check.h"

namespace wend::pulls {

using geometry::Point;
using geometry::Point3;
using geometry::Pose;
using geometry::Vec3;

namespace {

/// Where a ray of `pose` through tangents `place`, `distance` long, ends up in the view of `other`, in tangents.
std::optional<Point> seenFrom(const Pose& other, const Pose& pose, Point place, double distance) {
  const Vec3 ray = pose.forward() + pose.rightward() * place.x + pose.upward() * place.y;
  // What is infinitely far is seen in the same direction from everywhere.
  const Point3 target = std::isinf(distance) ? other.at + ray : pose.at + ray * (distance / geometry::length(ray));
  const geometry::InView v = other.view(target);
  if (!(v.ahead > 0)) return std::nullopt;
  return Point{v.right / v.ahead, v.up / v.ahead};
}

}  // namespace

Point coverPoint(std::size_t i) {
  WEND_CHECK(i < kCoverColumns * kCoverRows);
  const std::size_t fromTop = i / kCoverColumns;
  const double column = static_cast<double>(i % kCoverColumns), row = static_cast<double>(fromTop);
  return {(2 * column + 1) / kCoverColumns - 1, 1 - (2 * row + 1) / kCoverRows};
}

ZoomCover zoomCover(const ZoomInstant& now) {
  WEND_CHECK(now.seconds > 0 && now.halfTangentH > 0 && now.halfTangentV > 0);
  double zoom = 0, other = 0;
  for (std::size_t i = 0; i < now.distance.size(); ++i) {
    WEND_CHECK(now.distance[i] > 0);
    const Point grid = coverPoint(i), place{grid.x * now.halfTangentH, grid.y * now.halfTangentV};
    const auto moved = seenFrom(now.after, now.before, place, now.distance[i]);
    if (!moved) continue;
    zoom += std::hypot(place.x, place.y) * std::abs(now.focalPerSecond);
    other += geometry::distance(place, *moved) / now.seconds;
  }
  ZoomCover cover;
  cover.share = zoom > 0 ? zoom / (zoom + other) : 0;
  cover.slow = std::abs(now.focalPerSecond) < kSlowZoom;
  cover.covered = cover.slow || cover.share <= kCoveredShare;
  return cover;
}

}  // namespace wend::pulls
