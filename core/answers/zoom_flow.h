/// How much of the picture's flow is the zoom's: a heuristic, and to be called one wherever it is shown.
///
/// Source    core/pulls/zoom_cover.h
#pragma once

#include "core/answers/answers.h"

namespace wend::answers {

/// The largest share over a move of the zoom, looked at ten times a second over a frame each; performers do not stop
/// the rays. Nothing without a lens.
std::optional<double> zoomFlowShare(const Take& take, geometry::Span span);

}  // namespace wend::answers
