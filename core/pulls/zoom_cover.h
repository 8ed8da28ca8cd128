/// Whether a zoom hides in the other movement of the picture.
///
/// A heuristic, and to be called one wherever it is shown: over a grid of points of the picture, how much of the flow
/// is the zoom's. It knows nothing of what the eye looks at.
///
/// Frame     flow in tangents a second, the measure of the sensor plane; poses of the entrance pupil.
/// Source    common practice, no source: 3 to 4 per cent of the focal length a second hides in a nearly still frame.
#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "core/geometry/pose.h"

namespace wend::pulls {

inline constexpr std::size_t kCoverColumns = 5, kCoverRows = 3;

/// Half-frames of grid point i, the centres of 5 x 3 equal fields: rows from the top, left to right.
geometry::Point coverPoint(std::size_t i);

struct ZoomInstant {
  double halfTangentH = 0.4, halfTangentV = 0.22;  ///< of the field of view at `before`
  geometry::Pose before, after;
  double seconds = 1.0 / 24;  ///< from before to after
  double focalPerSecond = 0;  ///< change of the focal length a second as a share of it: f'/f
  /// Metres from the pupil to what each grid point shows, along its ray; infinity allowed.
  std::array<double, kCoverColumns * kCoverRows> distance{};
};

struct ZoomCover {
  double share = 0;     ///< sum |z| / (sum |z| + sum |m|); 0 without a zoom
  bool slow = false;    ///< under kSlowZoom: hides in any frame
  bool covered = true;  ///< slow, or share at most kCoveredShare
};

inline constexpr double kCoveredShare = 0.5;
inline constexpr double kSlowZoom = 0.035;  ///< of the focal length a second

/// Whether a zoom hides in the movement of the picture, whatever its rate; not where its share is not known.
inline bool hidesInFlow(const std::optional<double>& share) {
  return share && *share <= kCoveredShare;
}

/// z is the flow of the zoom alone, place x f'/f; m the flow of everything else: the points shown, standing still in
/// the world, seen from `after` instead of `before` at the same focal length. A point that comes behind the pupil
/// counts for nothing on either side.
///
/// Requires  seconds > 0, tangents and distances > 0
/// Ensures   (1) 0 <= share <= 1; 1 when nothing else moves; (2) zooming in or out at one rate covers alike
ZoomCover zoomCover(const ZoomInstant& instant);

}  // namespace wend::pulls
