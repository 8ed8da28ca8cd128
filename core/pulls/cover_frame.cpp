#include "core/pulls/cover_frame.h"

#include <cmath>
#include <functional>

#include "core/base/check.h"

namespace wend::pulls {

using geometry::InView;

namespace {

/// Metres ahead of the pupil before which nothing is counted, so that every corner can be projected.
constexpr double kNear = 1e-4;

/// The corners on the side where `inside` is not negative; `inside` is linear in the place.
std::vector<InView> cut(const std::vector<InView>& corners, const std::function<double(const InView&)>& inside) {
  std::vector<InView> kept;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const InView &a = corners[i], &b = corners[(i + 1) % corners.size()];
    const double atA = inside(a), atB = inside(b);
    if (atA >= 0) kept.push_back(a);
    if ((atA >= 0) == (atB >= 0)) continue;
    const double s = atA / (atA - atB);
    kept.push_back({a.right + (b.right - a.right) * s, a.up + (b.up - a.up) * s, a.ahead + (b.ahead - a.ahead) * s});
  }
  return kept;
}

}  // namespace

double shareOfFrame(const std::vector<geometry::Point3>& corners, const geometry::Pose& pupil, double halfTangentH,
                    double halfTangentV) {
  WEND_CHECK(corners.size() >= 3 && halfTangentH > 0 && halfTangentV > 0);
  std::vector<InView> seen;
  for (const auto& corner : corners) seen.push_back(pupil.view(corner));
  seen = cut(seen, [](const InView& v) { return v.ahead - kNear; });
  for (const double side : {-1.0, 1.0}) {
    seen = cut(seen, [&](const InView& v) { return v.ahead * halfTangentH - side * v.right; });
    seen = cut(seen, [&](const InView& v) { return v.ahead * halfTangentV - side * v.up; });
  }
  double twice = 0;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const InView &a = seen[i], &b = seen[(i + 1) % seen.size()];
    twice += (a.right * b.up - b.right * a.up) / (a.ahead * b.ahead);
  }
  return std::abs(twice) / 2 / (4 * halfTangentH * halfTangentV);
}

}  // namespace wend::pulls
