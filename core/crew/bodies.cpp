#include "core/crew/bodies.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/geometry/nearest.h"
#include "core/geometry/polygon.h"
#include "core/geometry/tolerance.h"

namespace wend::crew {
namespace {

bool heightsMeet(const Body& body, const Obstacle& obstacle) {
  return std::min(body.top, obstacle.top) - std::max(body.bottom, obstacle.bottom) > geometry::kTouch;
}

/// At most the distance from p to any of the points' lines.
double wayToExtent(Point p, const std::vector<Point>& points) {
  const geometry::Extent extent = geometry::extentOf(points);
  const double dx = std::max({extent.low.x - p.x, 0.0, p.x - extent.high.x});
  const double dy = std::max({extent.low.y - p.y, 0.0, p.y - extent.high.y});
  return std::hypot(dx, dy);
}

void keepNarrower(std::optional<Gap>& kept, const Gap& gap) {
  if (!kept || gap.metres < kept->metres) kept = gap;
}

/// One body among obstacles: where it goes and what it has met so far.
class Passage {
 public:
  Passage(const Body& body, double travel, double told)
      : body_(body), ahead_(geometry::direction(travel)), told_(told) {}

  void meet(std::size_t index, const Obstacle& obstacle) {
    WEND_CHECK(!obstacle.points.empty());
    if (!heightsMeet(body_, obstacle)) return;
    const double reach = body_.radius + obstacle.radius;
    if (wayToExtent(body_.at, obstacle.points) - reach > told_) return;
    const auto& points = obstacle.points;
    if (obstacle.closed && geometry::contains(points, body_.at)) {
      const geometry::Nearest out = geometry::nearestOnRing(body_.at, points);
      return keep({index, -out.distance - reach, out.point, false});
    }
    const std::size_t pieces = points.size() - (obstacle.closed ? 0 : 1);
    if (pieces == 0) return meetAt(index, points.front(), reach);
    for (std::size_t i = 0; i < pieces; ++i)
      meetAt(index, geometry::nearestOnSegment(body_.at, points[i], points[(i + 1) % points.size()]), reach);
  }

  const Clearance& met() const { return met_; }

 private:
  void meetAt(std::size_t index, Point near, double reach) {
    keep({index, geometry::distance(body_.at, near) - reach, near, false});
  }

  void keep(Gap gap) {
    if (gap.metres > told_) return;
    gap.onLeft = geometry::cross(ahead_, gap.near - body_.at) >= 0;
    keepNarrower(gap.onLeft ? met_.left : met_.right, gap);
  }

  const Body& body_;
  geometry::Vec ahead_;
  double told_;
  Clearance met_;
};

}  // namespace

std::vector<Body> bodiesAlong(const geometry::Pose& sensor, const Rig& rig, const std::vector<Carried>& carried,
                              const FloorAt& floorAt) {
  const Point at = flat(sensor.at);
  const geometry::Vec ahead = geometry::direction(sensor.bearing);
  std::vector<Body> bodies{{rig.id, at, rig.radius, floorAt(at), sensor.at.z + rig.radius}};
  for (const Carried& person : carried) {
    const Point place = at - ahead * person.behind - geometry::left(ahead) * person.right;
    const double floor = floorAt(place);
    bodies.push_back({person.id, place, person.radius, floor, floor + person.height});
  }
  return bodies;
}

Obstacle obstacleOf(const Body& body) {
  return {body.id, {body.at}, false, body.radius, body.bottom, body.top, false, true};
}

Clearance clearanceAt(const Body& body, double travel, std::span<const Obstacle> obstacles, double told) {
  Passage passage(body, travel, told);
  for (std::size_t i = 0; i < obstacles.size(); ++i) passage.meet(i, obstacles[i]);
  return passage.met();
}

Clearance narrower(const Clearance& first, Clearance second, std::size_t offset) {
  Clearance both = first;
  for (auto side : {&Clearance::left, &Clearance::right}) {
    if (!(second.*side)) continue;
    (second.*side)->obstacle += offset;
    keepNarrower(both.*side, *(second.*side));
  }
  return both;
}

}  // namespace wend::crew
