#include "core/light/shadow.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "core/geometry/convex.h"
#include "core/geometry/tolerance.h"

namespace wend::light {
namespace {

using geometry::Ring;
using geometry::Span;

constexpr double kFarLight = 1e4;  // metres; a direction as a line long enough for any set

Vec3 unit(Vec3 v) {
  return v * (1 / geometry::length(v));
}

/// The shares of the line from a to b, 0 to 1, at which a coordinate that goes from `p` to `q` lies within a span.
std::optional<Span> shareWithin(double p, double q, Span span) {
  if (p == q) return span.from < p && p < span.until ? std::optional(Span{0, 1}) : std::nullopt;
  const double one = (span.from - p) / (q - p), other = (span.until - p) / (q - p);
  const Span share{std::max(0.0, std::min(one, other)), std::min(1.0, std::max(one, other))};
  return share.from < share.until ? std::optional(share) : std::nullopt;
}

bool cutsUpright(const UprightBody& body, Point3 a, Point3 b) {
  const auto heights = shareWithin(a.z, b.z, {body.bottom, body.top});
  if (!heights) return false;
  const Vec3 way = b - a;
  const geometry::Point from = flat(a + way * heights->from), until = flat(a + way * heights->until);
  return geometry::distance(body.centre, geometry::Segment{from, until}) < body.radius;
}

/// The shortest way between two straight lines of finite length (Christer Ericson, "Real-Time Collision Detection",
/// section 5.1.9, for the order in which the shares are clamped).
double distanceBetween(Point3 a, Point3 b, Point3 c, Point3 d) {
  const Vec3 first = b - a, second = d - c, apart = a - c;
  const double aa = dot(first, first), ee = dot(second, second), f = dot(second, apart), g = dot(first, apart),
               across = dot(first, second), room = aa * ee - across * across;
  double s = 0, t = 0;
  if (aa > 0 && ee > 0) {
    s = room > 0 ? std::clamp((across * f - g * ee) / room, 0.0, 1.0) : 0.0;
    t = (across * s + f) / ee;
    if (t < 0 || t > 1) s = std::clamp(((t < 0 ? 0 : across) - g) / aa, 0.0, 1.0);
    t = std::clamp(t, 0.0, 1.0);
  } else if (aa > 0) {
    s = std::clamp(-g / aa, 0.0, 1.0);
  } else if (ee > 0) {
    t = std::clamp(f / ee, 0.0, 1.0);
  }
  return geometry::distance(a + first * s, c + second * t);
}

/// Corners of a convex body around the true one: prisms over rings that touch the circle from outside.
using Corners = std::vector<Point3>;
constexpr int kSides = 32;

Corners cornersOf(const UprightBody& body) {
  const double radius = body.radius / std::cos(std::numbers::pi / kSides);
  Corners corners;
  for (int i = 0; i < kSides; ++i) {
    const geometry::Point p = body.centre + geometry::direction(i * 360.0 / kSides) * radius;
    corners.push_back(geometry::at(p, body.bottom));
    corners.push_back(geometry::at(p, body.top));
  }
  return corners;
}

/// A rod's ends in a box of its radius each: the rod is thin, and its shadow is asked for to keep clear of it.
Corners cornersOf(const Rod& rod) {
  Corners corners;
  for (const Point3& end : {rod.from, rod.until})
    for (int i = 0; i < 8; ++i)
      corners.push_back(end + Vec3{i & 1 ? rod.radius : -rod.radius, i & 2 ? rod.radius : -rod.radius,
                                   i & 4 ? rod.radius : -rod.radius});
  return corners;
}

/// A plane that catches shadows, seen from the side of its normal.
struct Screen {
  Point3 origin;
  Vec3 normal, right, up;  ///< of length 1

  double off(Point3 p) const { return dot(p - origin, normal); }
  geometry::Point on(Point3 p) const { return {dot(p - origin, right), dot(p - origin, up)}; }
};

/// How far before the screen a body can throw a shadow: between it and a lamp, anywhere for a light without a place.
/// Nothing when the light comes from behind. Just beside a lamp the shadow has no end; there it starts a thousandth
/// off.
std::optional<Span> throwing(const Screen& screen, const Source& source) {
  if (const auto* towards = std::get_if<Vec3>(&source))
    return dot(unit(*towards), screen.normal) > 1e-9 ? std::optional(Span{0, kFarLight}) : std::nullopt;
  const double lamp = screen.off(std::get<Point3>(source));
  return lamp > geometry::kTouch ? std::optional(Span{0, lamp * 0.999}) : std::nullopt;
}

geometry::Point thrown(const Screen& screen, const Source& source, Point3 p) {
  if (const auto* towards = std::get_if<Vec3>(&source))
    return screen.on(p + *towards * (-screen.off(p) / dot(*towards, screen.normal)));
  const Point3 lamp = std::get<Point3>(source);
  const double away = screen.off(lamp);
  return screen.on(lamp + (p - lamp) * (away / (away - screen.off(p))));
}

/// Where the lines between all corners enter and leave the part of space that throws: its corners, and points of it.
Corners between(const Screen& screen, const Corners& corners, Span part) {
  Corners kept;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const double from = screen.off(corners[i]);
    if (from >= part.from && from <= part.until) kept.push_back(corners[i]);
    for (std::size_t k = i + 1; k < corners.size(); ++k) {
      const double until = screen.off(corners[k]);
      for (const double edge : {part.from, part.until})
        if ((from < edge) != (until < edge))
          kept.push_back(corners[i] + (corners[k] - corners[i]) * ((edge - from) / (until - from)));
    }
  }
  return kept;
}

/// The convex ring around points, counter-clockwise (A. M. Andrew, "Another efficient algorithm for convex hulls in two
/// dimensions", 1979). Empty when they have no area.
Ring hullOf(std::vector<geometry::Point> points) {
  std::sort(points.begin(), points.end(), [](auto a, auto b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  Ring ring;
  const auto add = [&ring](geometry::Point p, std::size_t floor) {
    while (ring.size() >= floor + 2 && cross(ring.back() - ring[ring.size() - 2], p - ring.back()) <= 0)
      ring.pop_back();
    ring.push_back(p);
  };
  for (const auto& p : points) add(p, 0);
  const std::size_t lower = ring.empty() ? 0 : ring.size() - 1;
  for (auto p = points.rbegin(); p != points.rend(); ++p) add(*p, lower);
  if (!ring.empty()) ring.pop_back();
  return ring.size() < 3 ? Ring{} : ring;
}

Ring shadowOn(const Screen& screen, const Source& source, const Blocker& body, const geometry::Extent& part) {
  const auto span = throwing(screen, source);
  if (!span) return {};
  const Corners corners = std::visit([](const auto& one) { return cornersOf(one); }, body);
  std::vector<geometry::Point> points;
  for (const Point3& corner : between(screen, corners, *span)) points.push_back(thrown(screen, source, corner));
  const geometry::Point low = part.low, high = part.high;
  return geometry::common(hullOf(std::move(points)), {low, {high.x, low.y}, high, {low.x, high.y}});
}

geometry::Point middleOf(const Blocker& body) {
  if (const auto* upright = std::get_if<UprightBody>(&body)) return upright->centre;
  const auto& rod = std::get<Rod>(body);
  return geometry::lerp(flat(rod.from), flat(rod.until), 0.5);
}

}  // namespace

Vec3 towardsLight(double bearing, double elevation) {
  return geometry::Pose{{}, bearing, elevation}.forward();
}

double shadowLength(double height, double elevation) {
  if (elevation <= 0) return std::numeric_limits<double>::infinity();
  return height / std::tan(geometry::radians(elevation));
}

bool cuts(const Blocker& body, Point3 a, Point3 b) {
  if (const auto* upright = std::get_if<UprightBody>(&body)) return cutsUpright(*upright, a, b);
  const auto& rod = std::get<Rod>(body);
  return distanceBetween(a, b, rod.from, rod.until) < rod.radius;
}

bool cutsLight(const Blocker& body, const Source& source, Point3 point) {
  if (const auto* lamp = std::get_if<Point3>(&source)) return cuts(body, *lamp, point);
  return cuts(body, point + unit(std::get<Vec3>(source)) * kFarLight, point);
}

std::vector<LampCut> lampCuts(const Lighting& lighting, const Face& face, const FaceLight& light,
                              std::span<const Blocker> bodies, double least) {
  std::vector<LampCut> found;
  for (std::size_t i = 0; i < lighting.fixtures.size(); ++i) {
    const auto share = shareOfFixture(light, i);
    if (!share || *share <= 0 || *share < least) continue;
    for (std::size_t k = 0; k < bodies.size(); ++k)
      if (cuts(bodies[k], lighting.fixtures[i].pose.at, face.at)) found.push_back({i, k, *share});
  }
  return found;
}

Ring shadowOnFloor(const Source& source, const Blocker& body, double floor, double reach) {
  const geometry::Point middle = middleOf(body);
  const geometry::Vec room{reach, reach};
  return shadowOn({{0, 0, floor}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}}, source, body, {middle - room, middle + room});
}

}  // namespace wend::light
