/// What is written over the picture of the frame: its edge, safe inset, eyes line, headroom, who is about to be seen,
/// and a tag for everybody in frame.
#pragma once

#include "core/sheets/frame_figure.h"

namespace wend::sheets {

/// Ensures   (1) no tag covers the face of anybody in frame while there is a place for it beside; (2) tags lie inside
///           the frame
void drawFrameOverlay(geometry::Drawing& drawing, const FrameFit& fit, const answers::Answers& answers,
                      const answers::Instant& instant);

}  // namespace wend::sheets
