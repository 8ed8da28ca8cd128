/// The frame: what the lens sees, in perspective, with the people in it and how sharp and how bright they are.
#pragma once

#include <optional>
#include <string>

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"

namespace wend::sheets {

/// Where the delivered frame lies in a drawing of that size.
struct FrameFit {
  geometry::Point centre;
  double halfWidth = 0, halfHeight = 0;

  /// Half-frames (x right, y up) to px and back.
  geometry::Point toPicture(geometry::Point p) const {
    return {centre.x + p.x * halfWidth, centre.y - p.y * halfHeight};
  }
  geometry::Point toFrame(geometry::Point p) const {
    return {(p.x - centre.x) / halfWidth, (centre.y - p.y) / halfHeight};
  }
};

/// Requires  the instant has a lens; width and height more than twice the inset
FrameFit frameFit(const answers::Instant& instant, double width, double height, double inset = 8);

/// The performer whose figure stands at that place of the frame, in half-frames: the nearest one to the lens.
std::optional<std::size_t> performerAt(const answers::Instant& instant, geometry::Point place);

/// Who is in frame, in words: "Ilse and Tom in frame, Mrs A hidden".
std::string frameInWords(const answers::Answers& answers, const answers::Instant& instant);

/// Frame    px, the picture's edges at the drawing's. `width` and `height` need not have the frame's shape: the frame
///          is fitted into them, `inset` px inside, and everything outside is page.
/// Stops    being a picture of light: flat fills by facing, floors and ceilings of rooms only.
geometry::Drawing frameDrawing(const answers::Answers& answers, const answers::Instant& instant, double width,
                               double height, double inset = 8);

}  // namespace wend::sheets
