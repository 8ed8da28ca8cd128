/// The side elevation as a picture: the lens, the frame's upper and lower edge, what stands ahead, in true heights.
#pragma once

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"
#include "core/sheets/side_view.h"

namespace wend::sheets {

/// How metres of the plane lie in a drawing: one scale both ways, so that heights and distances compare.
struct SideFit {
  geometry::Point origin;  ///< px: below the pupil, on the datum
  double pxPerMetre = 0;
  geometry::Point toPicture(geometry::Point metres) const {
    return {origin.x + metres.x * pxPerMetre, origin.y - metres.y * pxPerMetre};
  }
};

/// Everything of the view is inside the drawing, clear of its margins.
SideFit sideFit(const SideView& view, double width, double height);

/// Frame     px, x right as the lens looks, y down.
/// Requires  an instant with a lens; width and height of 200 at least.
geometry::Drawing sideDrawing(const answers::Answers& answers, const answers::Instant& instant, double width,
                              double height);

}  // namespace wend::sheets
