/// The frame: what the lens sees, in perspective, with the people in it and how sharp and how bright they are.
#pragma once

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"

namespace wend::sheets {

/// Frame    px, the picture's edges at the drawing's. `width` and `height` need not have the frame's shape: the frame
///          is fitted into them, `inset` px inside, and everything outside is page.
/// Stops    being a picture of light: flat fills by facing, floors and ceilings of rooms only.
geometry::Drawing frameDrawing(const answers::Answers& answers, const answers::Instant& instant, double width,
                               double height, double inset = 8);

}  // namespace wend::sheets
