#include "core/geometry/band.h"

#include "core/base/check.h"
#include "core/geometry/tolerance.h"

namespace wend::geometry {

Course::Course(std::span<const Point> points) {
  for (const Point& p : points) {
    if (!points_.empty() && distance(points_.back(), p) < kTouch) continue;
    starts_.push_back(points_.empty() ? 0 : starts_.back() + distance(points_.back(), p));
    points_.push_back(p);
  }
  WEND_CHECK(points_.size() >= 2);
}

std::size_t Course::legAt(double along) const {
  std::size_t leg = 0;
  while (leg + 2 < points_.size() && starts_[leg + 1] <= along) ++leg;
  return leg;
}

Point Course::at(double along) const {
  const std::size_t leg = legAt(along);
  const double share = (along - starts_[leg]) / (starts_[leg + 1] - starts_[leg]);
  return lerp(points_[leg], points_[leg + 1], std::clamp(share, 0.0, 1.0));
}

Vec Course::direction(double along) const {
  const std::size_t leg = legAt(along);
  return unit(points_[leg + 1] - points_[leg]);
}

namespace {

/// How far the left corner of a mitre between two directions lies ahead of the joint, along the first one, for a half
/// width of 1; the right corner lies as far behind.
double mitreLead(Vec before, Vec after) {
  const double turn = angleBetween(before, after);
  return -std::clamp(std::tan(turn / 2), -kMitreLimit, kMitreLimit);
}

/// Leads at both ends of a leg; 0 where the course ends or is cut.
struct Leads {
  double start = 0, end = 0;
};

Quad legQuad(Point origin, Vec along, double half, Span leg, Leads leads) {
  const double startLeft = leg.from + half * leads.start, startRight = leg.from - half * leads.start;
  const double endLeft = leg.until + half * leads.end, endRight = leg.until - half * leads.end;
  const Vec side = left(along) * half;
  const auto corner = [&](double metres, Vec off) { return origin + along * metres + off; };
  // A cut inside the mitre must not turn the quad over.
  return {corner(std::min(startRight, endRight), -side), corner(std::max(startRight, endRight), -side),
          corner(std::max(startLeft, endLeft), side), corner(std::min(startLeft, endLeft), side)};
}

}  // namespace

std::vector<Quad> bandAround(const Course& course, double width, Span part) {
  const auto& points = course.points();
  const auto& starts = course.starts();
  const double half = width / 2;
  std::vector<Quad> quads;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const Span leg{std::max(part.from, starts[i]), std::min(part.until, starts[i + 1])};
    if (leg.length() < kTouch / 10) continue;
    const Vec along = unit(points[i + 1] - points[i]);
    Leads leads;
    // Before the joint and after it the corner has the same place; its lead differs in sign only.
    if (i > 0 && part.from <= starts[i]) leads.start = -mitreLead(unit(points[i] - points[i - 1]), along);
    if (i + 2 < points.size() && part.until >= starts[i + 1])
      leads.end = mitreLead(along, unit(points[i + 2] - points[i + 1]));
    quads.push_back(legQuad(points[i], along, half, {leg.from - starts[i], leg.until - starts[i]}, leads));
  }
  return quads;
}

}  // namespace wend::geometry
