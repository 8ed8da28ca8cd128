/// What parts of the evidence found at single instants before they made spans of it: kept with the evidence, so that
/// after an edit only those instants are looked at again that are not as they were.
#pragma once

#include <algorithm>
#include <span>
#include <vector>

#include "core/answers/light_blockers.h"
#include "core/answers/panes.h"
#include "core/answers/reuse.h"
#include "core/sight/through.h"

namespace wend::answers {

/// All glass that has turned into a mirror.
struct GlassAt {
  double time = 0;  ///< seconds from the take's start
  std::vector<TurnedGlass> glass;
};

/// On what in frame the shadows of the camera, the crew and the poles fall by lamps.
struct FallenAt {
  double time = 0;  ///< likewise
  LightBlockers gear;
  std::vector<std::vector<snags::SurfaceShadow>> found;  ///< one list a body, spans left empty
};

struct KnownInstants {
  std::vector<GlassAt> glass;
  std::vector<FallenAt> fallen;
  std::vector<sight::ThroughStep> throughs;
};

/// Of a list in order of time, what it has at exactly t.
template <class Found>
std::span<const Found> foundAt(std::span<const Found> list, double t) {
  const auto at = std::ranges::equal_range(list, t, {}, &Found::time);
  return {at.begin(), at.end()};
}

/// What is found at one instant after the other: asked of an earlier take first, and kept for the next edit.
template <class Found>
class ByInstant {
 public:
  /// Nothing is known before.
  ByInstant() = default;
  /// `found` is all that depends on the edited plan by the eye alone, `margin` degrees wider; it outlives this.
  ByInstant(const Take& now, const Take& before, const std::vector<Found>& found, double margin)
      : now_(&now), before_(&before), found_(found), margin_(margin) {}

  /// Null where the eye goes another way, and where nobody has looked.
  const Found* known(double t) const {
    const auto found = foundAt(found_, t);
    return found.empty() || !sameEyeAt(*now_, *before_, t, margin_) ? nullptr : &found.front();
  }
  /// Requires  times not falling.
  const Found& keep(Found found) { return kept_.emplace_back(std::move(found)); }
  std::vector<Found> kept() && { return std::move(kept_); }

 private:
  const Take *now_ = nullptr, *before_ = nullptr;
  std::span<const Found> found_;
  double margin_ = 0;
  std::vector<Found> kept_;
};

}  // namespace wend::answers
