/// A person as the frame draws one: head over shoulders over a body as wide as the figure.
///
/// Source    heads of stature / 7.5: common practice in drawing, no source.
#pragma once

#include "core/geometry/drawing.h"
#include "core/optics/figure.h"
#include "core/sheets/frame_drawing.h"

namespace wend::sheets {

/// Px of the drawing, y down.
struct FigureShape {
  std::vector<geometry::Point> body, head;
  double faceLeft = 0, faceTop = 0, faceRight = 0, faceBottom = 0;
};

/// `headShare` is the head's height over that of the box; it is held below a half.
/// Requires  a box that is higher than nothing
/// Ensures   (1) inside the box as it falls in the picture; (2) the head is at its top
FigureShape figureShape(const FrameFit& fit, const optics::FrameBox& box, double headShare);

/// Body and head with one outline.
void drawFigure(geometry::Drawing& drawing, const FigureShape& shape, const geometry::Fill& fill,
                const geometry::Stroke& stroke);

/// Head over height of a performer in whatever posture.
double headShareOf(double stature, const optics::Figure& figure);

}  // namespace wend::sheets
