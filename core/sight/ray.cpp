#include "core/sight/ray.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wend::sight {

namespace {

void appendOutline(std::span<const Point> ring, const Crossing& like, Point origin, Vec direction,
                   std::vector<Crossing>& crossings) {
  std::array<double, 16> few;
  std::vector<double> many;
  std::size_t count = 0;
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Vec a = ring[j] - origin, b = ring[i] - origin;
    const bool aLeft = geometry::cross(direction, a) >= 0;
    if (aLeft == (geometry::cross(direction, b) >= 0)) continue;
    const double r = geometry::cross(a, b - a) / geometry::cross(direction, b - a);
    if (r <= 0) {
      inside = !inside;  // an odd number of edges behind the origin: it stands inside
    } else if (count < few.size()) {
      few[count++] = r;
    } else {
      many.push_back(r);
    }
  }
  std::span<double> at(few.data(), count);
  if (!many.empty()) {
    many.insert(many.end(), few.begin(), few.end());
    at = many;
  }
  std::sort(at.begin(), at.end());
  Crossing crossing = like;
  crossing.box.near = 0;
  for (const double r : at) {
    if (inside) {
      crossing.box.far = r;
      crossings.push_back(crossing);
    }
    crossing.box.near = r;
    inside = !inside;
  }
}

Crossing boxOf(const Prism& prism) {
  return {{0, 0, prism.bottom, prism.top}, prism.source, prism.surface};
}

}  // namespace

void appendCrossings(const SceneAt& now, const Prism& prism, Point origin, Vec direction,
                     std::vector<Crossing>& crossings) {
  const Vec to = prism.centre - origin;
  if (std::abs(geometry::cross(direction, to)) > prism.radius || geometry::dot(direction, to) < -prism.radius) return;
  Crossing like = boxOf(prism);
  if (prism.form == Prism::Form::outline) {
    appendOutline(now.corners(prism), like, origin, direction, crossings);
    return;
  }
  std::optional<Span> part;
  if (prism.form == Prism::Form::disc) {
    part = geometry::chord(origin, direction, prism.centre, prism.radius);
  } else if (const auto r = geometry::whereRayMeets(origin, direction, prism.sheet)) {
    part = Span{*r, *r};
  }
  if (!part) return;
  like.box.near = part->from;
  like.box.far = part->until;
  crossings.push_back(like);
}

namespace {

/// What is passed over unasked is this much further off than it has to be: far more than rounding takes.
constexpr double kHair = 1e-6;

bool beginsBeyond(const Prism& prism, Point origin, Vec direction, double upTo) {
  return geometry::dot(direction, prism.centre - origin) - prism.radius > upTo + kHair;
}

}  // namespace

std::vector<Crossing> crossingsAlong(const SceneAt& now, Point origin, Vec direction, double upTo) {
  std::vector<Crossing> crossings;
  for (std::size_t i = 0; i < now.size(); ++i)
    if (!beginsBeyond(now.prism(i), origin, direction, upTo))
      appendCrossings(now, now.prism(i), origin, direction, crossings);
  std::erase_if(crossings, [upTo](const Crossing& c) { return c.box.near >= upTo; });
  return crossings;
}

namespace {

void appendHiders(std::span<const Hider> others, Point origin, Vec direction, std::vector<Crossing>& crossings) {
  for (const Hider& other : others) {
    const auto part = geometry::chord(origin, direction, other.body.centre, other.body.radius);
    if (!part) continue;
    crossings.push_back(
        {{part->from, part->until, other.body.floor, other.body.top}, {Owner::other, other.tag}, Surface::solid});
  }
}

/// Metres along the floor at which a line of slope m, from height `eye`, is first inside the box.
std::optional<double> entryOf(const Upright& box, double eye, double m) {
  double from = box.near, until = box.far;
  const auto keep = [&](double level, double slope) {  // level <= slope * r
    if (slope > 0) {
      from = std::max(from, level / slope);
    } else if (slope < 0) {
      until = std::min(until, level / slope);
    } else if (level >= 0) {
      until = from - 1;
    }
  };
  keep(box.bottom - eye, m);
  keep(eye - box.top, -m);
  if (from > until || (from == until && box.near < box.far)) return std::nullopt;
  return from;
}

/// The unit plan direction of a way, and any for an upright one: then everything happens at the foot.
Vec planDirection(Vec flatWay) {
  return geometry::length(flatWay) > 0 ? geometry::unit(flatWay) : Vec{1, 0};
}

/// Straight up or down meets only what stands over the foot.
std::optional<Hit> uprightHit(const std::vector<Crossing>& crossings, Point3 from, bool up, double upTo) {
  std::optional<Hit> first;
  for (const Crossing& c : crossings) {
    if (c.box.near > 0) continue;
    const double until = up ? c.box.bottom - from.z : from.z - c.box.top;
    const double beyond = up ? c.box.top - from.z : from.z - c.box.bottom;
    if (beyond <= 0 || until >= upTo || (first && first->distance <= until)) continue;
    first = Hit{std::max(0.0, until), c.source, c.surface};
  }
  return first;
}

}  // namespace

std::optional<Hit> rayHit(const SceneAt& now, Point3 from, geometry::Vec3 direction, double upTo,
                          std::span<const Hider> others) {
  const Vec flatWay{direction.x, direction.y};
  const double share = geometry::length(flatWay);
  const Vec u = planDirection(flatWay);
  std::vector<Crossing> crossings = crossingsAlong(now, geometry::flat(from), u, std::max(upTo * share, 1e-12));
  appendHiders(others, geometry::flat(from), u, crossings);
  if (share < 1e-12) return uprightHit(crossings, from, direction.z > 0, upTo);
  std::optional<Hit> first;
  for (const Crossing& c : crossings) {
    const auto r = entryOf(c.box, from.z, direction.z / share);
    if (!r || *r / share >= upTo || (first && first->distance <= *r / share)) continue;
    first = Hit{*r / share, c.source, c.surface};
  }
  return first;
}

bool openBetween(const SceneAt& now, Point3 a, Point3 b, std::span<const Hider> others) {
  const geometry::Vec3 way = b - a;
  const double metres = geometry::length(way);
  if (!(metres > 0)) return true;
  // What begins within a nanometre of b is b's own surface.
  const double upTo = metres - 1e-9;
  const geometry::Vec3 direction = way * (1 / metres);
  const Vec flatWay{direction.x, direction.y};
  const double share = geometry::length(flatWay);
  if (share < 1e-12) return !rayHit(now, a, direction, upTo, others);
  const Vec u = planDirection(flatWay);
  const double onFloor = std::max(upTo * share, 1e-12);
  std::vector<Crossing> crossings;
  const auto meets = [&](const Crossing& c) {
    const auto r = c.box.near < onFloor ? entryOf(c.box, a.z, direction.z / share) : std::nullopt;
    return r && *r / share < upTo;
  };
  const Span heights{std::min(a.z, b.z) - kHair, std::max(a.z, b.z) + kHair};
  for (std::size_t i = 0; i < now.size(); ++i) {
    const Prism& prism = now.prism(i);
    if (prism.top < heights.from || prism.bottom > heights.until) continue;
    if (beginsBeyond(prism, geometry::flat(a), u, onFloor)) continue;
    crossings.clear();
    appendCrossings(now, prism, geometry::flat(a), u, crossings);
    if (std::any_of(crossings.begin(), crossings.end(), meets)) return false;
  }
  crossings.clear();
  appendHiders(others, geometry::flat(a), u, crossings);
  return std::none_of(crossings.begin(), crossings.end(), meets);
}

PointSight pointSight(const SceneAt& now, const Eye& eye, Point3 point, std::span<const Hider> others) {
  return {Frame(eye).holds(point), !openBetween(now, eye.pupil.at, point, others)};
}

bool crossesWall(const Scene& scene, Point a, Point b) {
  const Point middle = lerp(a, b, 0.5);
  const double half = geometry::distance(a, b) / 2;
  for (const Prism& prism : scene.prisms()) {
    if (!prism.jamb || geometry::distance(middle, prism.centre) > half + prism.radius) continue;
    if (geometry::crosses(scene.corners(prism), {a, b})) return true;
  }
  return false;
}

std::vector<int> openingsCrossed(const Scene& scene, Point a, Point b) {
  std::vector<std::pair<double, int>> met;
  for (const Gap& gap : scene.gaps())
    for (std::size_t i = 0; i + 1 < gap.course.size(); ++i)
      if (const auto share = geometry::whereMeet({a, b}, {gap.course[i], gap.course[i + 1]})) {
        met.push_back({*share, gap.tag});
        break;
      }
  std::sort(met.begin(), met.end());
  std::vector<int> tags;
  for (const auto& [share, tag] : met) tags.push_back(tag);
  return tags;
}

}  // namespace wend::sight
