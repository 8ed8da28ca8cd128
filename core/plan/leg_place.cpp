#include "core/plan/leg_place.h"

#include <algorithm>

#include "core/plan/arc_leg.h"

namespace wend::plan {

using geometry::distance;

namespace {

std::vector<Point> polyline(const Leg& leg, Point from, Point to) {
  std::vector<Point> line{from};
  line.insert(line.end(), leg.via.begin(), leg.via.end());
  line.push_back(to);
  return line;
}

double lengthOf(const std::vector<Point>& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += distance(line[i - 1], line[i]);
  return sum;
}

/// The nearest point of a polyline: which piece, and how far along the whole.
struct OnLine {
  std::size_t piece = 0;
  double along = 0;
};

OnLine nearestOnLine(const std::vector<Point>& line, Point near) {
  OnLine best;
  double bestDistance = -1, before = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const geometry::Vec way = line[i + 1] - line[i];
    const double square = dot(way, way);
    const double share = square > 0 ? std::clamp(dot(near - line[i], way) / square, 0.0, 1.0) : 0;
    const double away = distance(near, line[i] + way * share);
    if (bestDistance < 0 || away < bestDistance) {
      bestDistance = away;
      best = {i, before + length(way) * share};
    }
    before += length(way);
  }
  return best;
}

Point pointOnArc(const Leg& leg, Point from, Point to, double share) {
  const double bearing = geometry::bearingOf(from - leg.centre) + leg.sweep * share;
  const double radius = geometry::lerp(distance(from, leg.centre), distance(to, leg.centre), share);
  return leg.centre + geometry::direction(bearing) * radius;
}

}  // namespace

Point pointOnLeg(const Leg& leg, Point from, Point to, double share) {
  if (leg.shape == LegShape::arc) return pointOnArc(leg, from, to, share);
  const std::vector<Point> line = polyline(leg, from, to);
  double left = lengthOf(line) * share;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double piece = distance(line[i], line[i + 1]);
    if (left <= piece && piece > 0) return geometry::lerp(line[i], line[i + 1], left / piece);
    left -= piece;
  }
  return to;
}

double shareOnLeg(const Leg& leg, Point from, Point to, Point near) {
  if (leg.shape == LegShape::arc) {
    if (leg.sweep == 0 || distance(near, leg.centre) < kArcLeast) return 0.5;
    return std::clamp(sweepBetween(from, near, leg.centre, leg.sweep / 2) / leg.sweep, 0.0, 1.0);
  }
  const std::vector<Point> line = polyline(leg, from, to);
  const double whole = lengthOf(line);
  return whole > 0 ? nearestOnLine(line, near).along / whole : 0.5;
}

LegHalves halvesOfLeg(const Leg& leg, Point from, Point to, Point at, double share) {
  LegHalves halves{leg, leg};
  halves.second.extra.clear();
  if (leg.shape == LegShape::arc) {
    if (distance(at, leg.centre) >= kArcLeast)
      halves.first.sweep = sweepBetween(from, at, leg.centre, leg.sweep * share);
    halves.second.sweep = leg.sweep - halves.first.sweep;
    refit(halves.first, from, at);
    refit(halves.second, at, to);
    return halves;
  }
  const auto cut = leg.via.begin() + static_cast<std::ptrdiff_t>(nearestOnLine(polyline(leg, from, to), at).piece);
  halves.first.via.assign(leg.via.begin(), cut);
  halves.second.via.assign(cut, leg.via.end());
  return halves;
}

Leg joinedLeg(const Leg& first, const Leg& second) {
  Leg joined = first;
  if (first.shape != second.shape) {
    joined.shape = LegShape::straight;
    joined.via.clear();
    joined.centre = {};
    joined.sweep = 0;
  } else if (first.shape == LegShape::arc) {
    if (distance(first.centre, second.centre) <= kArcRadii) joined.sweep += second.sweep;
  } else {
    joined.via.insert(joined.via.end(), second.via.begin(), second.via.end());
  }
  return joined;
}

}  // namespace wend::plan
