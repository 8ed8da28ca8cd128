/// The two halves of a ray by way of a mirror, unfolded: distances run on behind the mirror.
#pragma once

#include <vector>

#include "core/sight/scene.h"

namespace wend::sight {

/// Within this distance of a solid the mirror wins: what crosses the ray that close to the face does not count.
inline constexpr double kMirrorSkin = 1e-3;

/// A prism crossed on either half.
struct MirrorHit {
  Upright box;
  std::uint32_t prism = 0;  ///< as SceneAt::prism
};

/// True when a pupil stands on the side the mirror shows.
bool shows(const Mirror& mirror, Point foot);

/// Adds a crossing of the straight ray as the first half meets it: cut off at the mirror, `mirrorAt` metres away, and
/// left out when it begins behind it or within its skin.
void appendFirstLeg(const MirrorHit& hit, const Mirror& mirror, Vec direction, double mirrorAt,
                    std::vector<MirrorHit>& hits);

/// Adds what the ray meets after the mirror among all prisms, or among `candidates`.
void appendSecondLeg(const SceneAt& now, const Mirror& mirror, Point foot, Vec direction, double mirrorAt,
                     std::vector<MirrorHit>& hits);
void appendSecondLeg(const SceneAt& now, std::span<const std::uint32_t> candidates, const Mirror& mirror, Point foot,
                     Vec direction, double mirrorAt, std::vector<MirrorHit>& hits);

}  // namespace wend::sight
