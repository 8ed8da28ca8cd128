/// When the take may start by the clock: the times at which its light still is what the plan was made for.
#pragma once

#include "core/answers/take.h"
#include "core/geometry/spans.h"
#include "core/light/hold_span.h"

namespace wend::answers {

/// Times of day, seconds after midnight, at which the take may start so that everyone who shows in frame and stands in
/// light read by the clock needs the same stop as at the plan's own time of day, within tolerance. Looked at every
/// `step` seconds of the take; who is in frame does not depend on the light.
///
/// Ensures   (1) nothing when the plan has no time of day or no lens, or no such face is ever in frame: then the clock
///           does not matter, or nobody can say; (2) empty when the light is not even known at the plan's own time; (3)
///           the plan's own time is among them otherwise.
/// Error     what enters the frame for less than `step` may be missed.
/// Requires  step positive.
/// Cost      an instant a step.
std::optional<geometry::Spans> lightWindow(const Take& take, double step = 0.5,
                                           const light::StopTolerance& tolerance = {});

}  // namespace wend::answers
