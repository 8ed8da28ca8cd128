#include "core/geometry/spline.h"

#include <array>

#include "core/base/check.h"
#include "core/geometry/tolerance.h"

namespace wend::geometry {
namespace {

/// dP/dknot at `here` between its neighbours at knot distances `before` and `after`: the slope there of the parabola
/// through the three points.
Vec tangent(Point previous, double before, Point here, double after, Point next) {
  return (here - previous) / before - (next - previous) / (before + after) + (next - here) / after;
}

}  // namespace

Point Cubic::place(double u) const {
  const Vec chord = to - from;
  const Vec rise = 3 * chord - 2 * leaving - arriving, twist = leaving + arriving - 2 * chord;
  return u == 1 ? to : from + u * (leaving + u * (rise + u * twist));
}

Vec Cubic::slope(double u) const {
  const Vec chord = to - from;
  return leaving + u * (2 * (3 * chord - 2 * leaving - arriving) + u * 3 * (leaving + arriving - 2 * chord));
}

Vec Cubic::bend(double u) const {
  const Vec chord = to - from;
  return 2 * (3 * chord - 2 * leaving - arriving) + u * 6 * (leaving + arriving - 2 * chord);
}

double Cubic::length(double a, double b) const {
  // Abscissae and weights in closed form: M. Abramowitz, I. Stegun, "Handbook of Mathematical Functions", 25.4.29-30.
  static const std::array<double, 3> x{0, std::sqrt(5 - 2 * std::sqrt(10.0 / 7)) / 3,
                                       std::sqrt(5 + 2 * std::sqrt(10.0 / 7)) / 3};
  static const std::array<double, 3> w{128.0 / 225, (322 + 13 * std::sqrt(70.0)) / 900,
                                       (322 - 13 * std::sqrt(70.0)) / 900};
  const double middle = (a + b) / 2, half = (b - a) / 2;
  double sum = w[0] * geometry::length(slope(middle));
  for (std::size_t k = 1; k < 3; ++k)
    sum += w[k] * (geometry::length(slope(middle - half * x[k])) + geometry::length(slope(middle + half * x[k])));
  return half * sum;
}

std::vector<Cubic> catmullRom(const std::vector<Point>& points) {
  WEND_CHECK(points.size() >= 2);
  const std::size_t last = points.size() - 1;
  std::vector<double> knots;
  for (std::size_t i = 0; i < last; ++i) {
    WEND_CHECK(distance(points[i], points[i + 1]) > kTouch);
    knots.push_back(std::sqrt(distance(points[i], points[i + 1])));
  }
  std::vector<Vec> tangents{(points[1] - points[0]) / knots[0]};
  for (std::size_t i = 1; i < last; ++i)
    tangents.push_back(tangent(points[i - 1], knots[i - 1], points[i], knots[i], points[i + 1]));
  tangents.push_back((points[last] - points[last - 1]) / knots[last - 1]);
  std::vector<Cubic> pieces;
  for (std::size_t i = 0; i < last; ++i)
    pieces.push_back({points[i], points[i + 1], tangents[i] * knots[i], tangents[i + 1] * knots[i]});
  return pieces;
}

}  // namespace wend::geometry
