#include "core/sight/low_shadow.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace wend::sight {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr Span kNone{1, 0};

/// Keeps the k with rate * k >= least.
void keepWhere(Span& k, double rate, double least) {
  if (rate > 0) {
    k.from = std::max(k.from, least / rate);
  } else if (rate < 0) {
    k.until = std::min(k.until, least / rate);
  } else if (least > 0) {
    k = kNone;
  }
}

}  // namespace

Span hidingRatios(double eye, Heights sheet, Heights body) {
  Span k{1, kInfinity};
  if (std::isfinite(sheet.top)) keepWhere(k, sheet.top - eye, body.top - eye);
  if (std::isfinite(sheet.bottom)) keepWhere(k, eye - sheet.bottom, eye - body.bottom);
  return k;
}

Span hidingRatios(Span eye, Heights sheet, Heights body) {
  const Span low = hidingRatios(eye.from, sheet, body), high = hidingRatios(eye.until, sheet, body);
  return {std::max(low.from, high.from), std::min(low.until, high.until)};
}

geometry::Convex shadowOf(Point eye, Segment sheet, Span ratios, double reach) {
  if (!(ratios.until >= ratios.from)) return {};
  geometry::Vec a = sheet.a - eye, b = sheet.b - eye;
  if (geometry::cross(a, b) < 0) std::swap(a, b);
  // Seen nearly edge on it hides next to nothing, and its shadow has no width to trust.
  if (geometry::cross(a, b) <= 1e-6 * geometry::length(b - a)) return {};
  const double nearest = geometry::distance(eye, Segment{sheet.a, sheet.b});
  const double far = std::min(ratios.until, std::max(ratios.from, reach / nearest));
  if (!(far > ratios.from)) return {};
  return {eye + a * ratios.from, eye + a * far, eye + b * far, eye + b * ratios.from};
}

namespace {

/// Every side moved inwards.
void drawIn(geometry::Convex& area, double metres) {
  const geometry::Convex sides = area;
  for (std::size_t i = 0, j = sides.size() - 1; i < sides.size(); j = i++) {
    const geometry::Vec edge = sides[i] - sides[j];
    const double long_ = geometry::length(edge);
    if (!(long_ > 0)) continue;
    const geometry::Vec in = geometry::left(edge) * (metres / long_);
    geometry::cutRightOf(area, sides[j] + in, sides[i] + in);
  }
}

}  // namespace

geometry::Convex steadyShadow(Point from, Point until, Segment sheet, Span ratios, double reach, double sway) {
  geometry::Convex area = shadowOf(from, sheet, ratios, reach);
  if (area.empty()) return area;
  if (!(from == until)) area = geometry::common(std::move(area), shadowOf(until, sheet, ratios, reach));
  if (sway <= 0 || area.empty()) return area;
  // An eye moved by s turns a line of sight over an end of the sheet, r metres away, by s / r, and carries the
  // distances at the ratio k by (k - 1) s: within reach no side moves by more than this.
  const double nearest = std::min(geometry::distance(from, sheet), geometry::distance(until, sheet)) - sway;
  if (!(nearest > sway)) return {};
  drawIn(area, sway * reach / nearest);
  return area;
}

}  // namespace wend::sight
