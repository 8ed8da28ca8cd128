/// The side elevation as a picture: the lens, the frame's upper and lower edge, what stands ahead, in true heights.
#pragma once

#include <optional>
#include <string>

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

struct SidePicture {
  double width = 0, height = 0;  ///< px
  bool titled = true;            ///< over the picture stand time, lens and where it looks
};

/// How far ahead the drawing shows, metres: as far as the view reaches; in a small one without a title that would be
/// drawn too small to read, no further than needed to read it, and still a metre past everybody in the view. The
/// drawing says where it was cut.
double shownReach(const SideView& view, const SidePicture& picture);

/// Everything of the view that is shown is inside the drawing, clear of its margins.
SideFit sideFit(const SideView& view, const SidePicture& picture);

/// "28 mm, 28.1° high, bearing 90°, tilt 0.0°". Requires an instant with a lens.
std::string sideWords(const answers::Instant& instant);

/// Frame     px, x right as the lens looks, y down.
/// Requires  an instant with a lens; 160 px at least either way.
geometry::Drawing sideDrawing(const answers::Answers& answers, const answers::Instant& instant,
                              const SidePicture& picture);

/// Whoever of the performers stands there in the picture, the nearest of several; nothing where nobody does.
std::optional<std::size_t> performerBeside(const SideView& view, const SidePicture& picture, geometry::Point px);

}  // namespace wend::sheets
