#include "core/geometry/monotone_cubic.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::geometry {
namespace {

bool strictlyIncreasing(const std::vector<double>& x) {
  return std::adjacent_find(x.begin(), x.end(), [](double a, double b) { return !(a < b); }) == x.end();
}

}  // namespace

double Hermite::value(double x) const {
  // Written from the nearer end, so that both ends come out exact.
  const double h = x1 - x0, s = (x - x0) / h, d = chord();
  if (s <= 0.5) return y0 + h * s * (slope0 + s * ((3 * d - 2 * slope0 - slope1) + s * (slope0 + slope1 - 2 * d)));
  const double r = (x1 - x) / h;
  return y1 - h * r * (slope1 + r * ((3 * d - 2 * slope1 - slope0) + r * (slope0 + slope1 - 2 * d)));
}

double Hermite::slope(double x) const {
  const double s = (x - x0) / (x1 - x0), d = chord();
  return slope0 + s * (2 * (3 * d - 2 * slope0 - slope1) + s * 3 * (slope0 + slope1 - 2 * d));
}

double Hermite::steepest(double a, double b) const {
  double peak = std::max(std::abs(slope(a)), std::abs(slope(b)));
  const double d = chord(), bend = slope0 + slope1 - 2 * d;
  if (bend == 0) return peak;
  const double turning = x0 - (x1 - x0) * (3 * d - 2 * slope0 - slope1) / (3 * bend);
  if (turning > a && turning < b) peak = std::max(peak, std::abs(slope(turning)));
  return peak;
}

double Hermite::inverse(double y) const {
  if (y == y0) return x0;
  if (y == y1) return x1;
  double low = x0, high = x1, x = x0 + (x1 - x0) * (y - y0) / (y1 - y0);
  const bool rising = y1 > y0;
  for (int k = 0; k < 100; ++k) {
    const double off = value(x) - y;
    ((off > 0) == rising ? high : low) = x;
    const double m = slope(x), newton = x - off / m;
    const double next = m != 0 && newton > low && newton < high ? newton : (low + high) / 2;
    if (off == 0 || std::abs(next - x) <= 1e-15 * (x1 - x0) || next == x) return x;
    x = next;
  }
  return x;
}

double harmonicSlope(double h0, double chord0, double h1, double chord1) {
  if (!(chord0 * chord1 > 0)) return 0;
  const double w0 = 2 * h1 + h0, w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / chord0 + w1 / chord1);
}

MonotoneCubic::MonotoneCubic(std::vector<double> x, std::vector<double> y, std::optional<double> firstSlope,
                             std::optional<double> lastSlope)
    : x_(std::move(x)), y_(std::move(y)), slopes_(x_.size(), 0) {
  WEND_CHECK(!x_.empty() && x_.size() == y_.size() && strictlyIncreasing(x_));
  if (x_.size() == 1) return;
  const auto chord = [this](std::size_t i) { return (y_[i + 1] - y_[i]) / (x_[i + 1] - x_[i]); };
  for (std::size_t i = 1; i + 1 < x_.size(); ++i)
    slopes_[i] = harmonicSlope(x_[i] - x_[i - 1], chord(i - 1), x_[i + 1] - x_[i], chord(i));
  slopes_.front() = firstSlope.value_or(chord(0));
  slopes_.back() = lastSlope.value_or(chord(x_.size() - 2));
}

Hermite MonotoneCubic::piece(std::size_t i) const {
  return {x_[i], x_[i + 1], y_[i], y_[i + 1], slopes_[i], slopes_[i + 1]};
}

std::size_t MonotoneCubic::pieceAt(double x) const {
  const auto after = std::upper_bound(x_.begin() + 1, x_.end() - 1, x);
  return static_cast<std::size_t>(after - x_.begin()) - 1;
}

double MonotoneCubic::operator()(double x) const {
  if (x <= x_.front()) return y_.front();
  if (x >= x_.back()) return y_.back();
  return piece(pieceAt(x)).value(x);
}

double MonotoneCubic::slope(double x) const {
  if (x < x_.front() || x > x_.back() || x_.size() == 1) return 0;
  return piece(pieceAt(x)).slope(x);
}

double MonotoneCubic::inverse(double y) const {
  const bool rising = y_.back() > y_.front();
  if (rising ? y <= y_.front() : y >= y_.front()) return x_.front();
  if (rising ? y >= y_.back() : y <= y_.back()) return x_.back();
  const auto before = [rising](double knot, double wanted) { return rising ? knot <= wanted : knot >= wanted; };
  const auto after = std::lower_bound(y_.begin(), y_.end(), y, before);
  return piece(static_cast<std::size_t>(after - y_.begin()) - 1).inverse(y);
}

}  // namespace wend::geometry
