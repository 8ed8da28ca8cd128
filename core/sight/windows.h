/// When a body is seen during a take, and when it is clear.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/body.h"
#include "core/sight/eye_step.h"

namespace wend::sight {

/// Sampled: sight is asked at every frame and at every instant a leaf changes, and the edges between are found to this.
inline constexpr double kEdgeSeconds = 1e-3;

/// A stretch in which the body is seen in one way.
struct SeenSpan {
  Span time;
  std::optional<int> mirror;  ///< nothing: directly
};

/// A stretch in which nothing bars the body's place.
struct ClearSpan {
  Span time;
  double marginDegrees = 0;  ///< the least degreesToFrame at a frame within it
};

struct SightWindows {
  std::vector<SeenSpan> seen;
  std::vector<ClearSpan> clear;
};

/// Who is looked at, at any time: nothing while there is no body.
using BodyAt = std::function<std::optional<Body>(double)>;

/// What to sample.
struct Watch {
  Span take;
  double rate = 24;            ///< frames a second
  double early = 0, late = 0;  ///< seconds by which a seen stretch bars more than itself
};

/// Requires  rate > 0, early and late not negative.
/// Ensures   (1) seen spans are in order and apart, except that two which differ in how the body is seen may touch;
///           (2) clear spans are what remains of the take without [from - early, until + late] of every seen span;
///           (3) a body that does not exist is not seen.
/// Error     a sight shorter than a frame between two frames is missed; edges are within kEdgeSeconds.
/// Cost      one body question a frame, and ten an edge.
/// Fails     when cancelled: nothing.
std::optional<SightWindows> sightWindows(const Scene& scene, const EyeAt& eye, const BodyAt& body, const Watch& watch,
                                         const base::Cancel& cancel = {});

/// The take without the seen spans grown by early and late, in order.
std::vector<Span> clearOf(const std::vector<SeenSpan>& seen, const Watch& watch);

}  // namespace wend::sight
