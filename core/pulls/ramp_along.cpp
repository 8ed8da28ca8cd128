#include "core/pulls/ramp_along.h"

#include <algorithm>
#include <vector>

#include "core/base/check.h"

namespace wend::pulls {
namespace {

using Corners = std::vector<Ends>;

/// b x before + a x after <= most.
struct HalfPlane {
  double b = 0, a = 0, most = 0;
  double over(const Ends& at) const { return b * at.before + a * at.after - most; }
};

Corners cut(const Corners& corners, const HalfPlane& side) {
  if (std::all_of(corners.begin(), corners.end(), [&](const Ends& at) { return side.over(at) <= 0; })) return corners;
  Corners kept;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Ends &p = corners[i], &q = corners[(i + 1) % corners.size()];
    const double overP = side.over(p), overQ = side.over(q);
    if (overP <= 0) kept.push_back(p);
    if ((overP < 0 && overQ > 0) || (overP > 0 && overQ < 0)) {
      const double share = overP / (overP - overQ);
      kept.push_back({geometry::lerp(p.before, q.before, share), geometry::lerp(p.after, q.after, share)});
    }
  }
  return kept;
}

void cutBy(Corners& corners, const TubeSample& at, geometry::Span span) {
  if (at.open || corners.empty()) return;
  const double share = (at.t - span.from) / span.length();
  corners = cut(corners, {1 - share, share, at.hi + kTubeRounding});
  corners = cut(corners, {share - 1, -share, -(at.lo - kTubeRounding)});
}

Ends middleOf(const Corners& corners) {
  Ends middle;
  for (const Ends& corner : corners) {
    middle.before += corner.before / double(corners.size());
    middle.after += corner.after / double(corners.size());
  }
  return middle;
}

}  // namespace

std::optional<Ends> rampAlong(const Tube& tube, geometry::Span span, Choice before, Choice after, double atMost) {
  WEND_CHECK(span.from < span.until && !before.empty() && !after.empty() && atMost > 0);
  Corners corners{{before.lo, after.lo}, {before.hi, after.lo}, {before.hi, after.hi}, {before.lo, after.hi}};
  auto at = std::lower_bound(tube.begin(), tube.end(), span.from,
                             [](const TubeSample& sample, double t) { return sample.t < t; });
  cutBy(corners, sampleAt(tube, span.from), span);
  for (; at != tube.end() && at->t <= span.until && !corners.empty(); ++at) cutBy(corners, *at, span);
  cutBy(corners, sampleAt(tube, span.until), span);
  if (corners.empty()) return std::nullopt;
  const Ends middle = middleOf(corners);
  const double sign = middle.after < middle.before ? -1 : 1, most = atMost * span.length();
  const auto change = [&](const Ends& ends) { return sign * (ends.after - ends.before); };
  if (change(middle) <= most) return middle;
  const Ends slowest = *std::min_element(corners.begin(), corners.end(),
                                         [&](const Ends& p, const Ends& q) { return change(p) < change(q); });
  if (change(slowest) > most) return std::nullopt;
  const double share = (change(middle) - most) / (change(middle) - change(slowest));
  return Ends{geometry::lerp(middle.before, slowest.before, share), geometry::lerp(middle.after, slowest.after, share)};
}

}  // namespace wend::pulls
