#include "core/optics/depth_of_field.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// All in metres inside this file: f and c are thousandths of what the caller speaks of.
double focalMetres(const Optics& optics) {
  return optics.focal / 1000;
}
/// f^2 / (N c): the hyperfocal distance from the front focal point, in metres.
double reach(const Optics& optics, double blurShare = 1) {
  WEND_CHECK(optics.focal > 0 && optics.fNumber > 0 && optics.blurCircle > 0 && blurShare > 0);
  return optics.focal * optics.focal / (optics.fNumber * optics.blurCircle * blurShare) / 1000;
}

}  // namespace

double fNumberOf(double tNumber, double transmission) {
  WEND_CHECK(tNumber > 0 && transmission > 0 && transmission <= 1);
  return tNumber * std::sqrt(transmission);
}

double tNumberOf(double fNumber, double transmission) {
  WEND_CHECK(fNumber > 0 && transmission > 0 && transmission <= 1);
  return fNumber / std::sqrt(transmission);
}

double hyperfocal(const Optics& optics) {
  return reach(optics) + focalMetres(optics);
}

double blurOf(double distance, double setting, const Optics& optics) {
  const double f = focalMetres(optics);
  WEND_CHECK(distance > 0 && setting > f);
  if (distance == setting) return 0;
  // |x - s| / (x (s - f)) written so that either may be infinite.
  const double defocus = std::isinf(setting) ? 1 / distance : std::abs(1 - setting / distance) / (setting - f);
  return optics.focal * optics.focal / optics.fNumber * defocus / 1000;
}

Range depthOfField(double setting, const Optics& optics) {
  const double f = focalMetres(optics), h = reach(optics);
  WEND_CHECK(setting > f);
  if (std::isinf(setting)) return {h, kInfinity};
  const double open = h - (setting - f);
  return {setting * h / (h + (setting - f)), open > 0 ? setting * h / open : kInfinity};
}

std::optional<Range> slackOf(double distance, const Optics& optics, double blurShare, double closest) {
  const double f = focalMetres(optics), h = reach(optics, blurShare);
  WEND_CHECK(distance > 0 && closest > f);
  if (distance < closest) return std::nullopt;
  if (std::isinf(distance)) return Range{std::max(h + f, closest), kInfinity};
  const double near = distance * (h + f) / (h + distance);
  const double far = h > distance ? distance * (h - f) / (h - distance) : kInfinity;
  return Range{std::max(std::min(near, distance), closest), std::max(far, distance)};
}

Split splitFocus(const std::vector<double>& distances, const Optics& optics, double blurShare, double closest) {
  WEND_CHECK(!distances.empty());
  const auto [near, far] = std::minmax_element(distances.begin(), distances.end());
  const double a = *near, b = *far;
  Split split;
  split.setting = std::max(std::isinf(b) ? 2 * a : 2 * a / (1 + a / b), closest);
  if (std::isinf(a)) split.setting = kInfinity;
  split.largestBlur = std::max(blurOf(a, split.setting, optics), blurOf(b, split.setting, optics));
  const auto nearSlack = slackOf(a, optics, blurShare, closest), farSlack = slackOf(b, optics, blurShare, closest);
  if (nearSlack && farSlack && nearSlack->far >= farSlack->near) split.slack = Range{farSlack->near, nearSlack->far};
  return split;
}

}  // namespace wend::optics
