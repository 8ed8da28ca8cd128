/// The ground a low or hanging piece hides: where a whole body, feet to crown, is behind it.
///
/// Frame     plan metres; heights above the datum. A sheet from `bottom` to `top` is crossed at a share 1 / k of the
///           way to the body, k >= 1. It hides the height z there when z lies between eye + (bottom - eye) k and eye +
///           (top - eye) k.
/// Stops holding for bodies hidden by two pieces together: each piece is asked alone.
#pragma once

#include <span>

#include "core/geometry/convex.h"

namespace wend::sight {

using geometry::Point;
using geometry::Segment;
using geometry::Span;

struct Heights {
  double bottom = 0, top = 1.8;
  bool operator==(const Heights&) const = default;
};

/// The ratios k at which a sheet hides a body whole from an eye of that height; `until` may be infinite, and the span
/// is empty (until < from) when there is none.
/// Ensures   (1) k is listed exactly when the body's floor and crown are both hidden; (2) for one k the heights of the
///           eye that list it are one interval, so that what both ends of a rise list, every height between lists.
Span hidingRatios(double eye, Heights sheet, Heights body);

/// Ratios common to every eye between two heights.
Span hidingRatios(Span eye, Heights sheet, Heights body);

/// The places behind a sheet at the ratios, as far as `reach` metres from the eye: a convex quadrilateral, empty when
/// the eye stands in line with the sheet.
geometry::Convex shadowOf(Point eye, Segment sheet, Span ratios, double reach);

/// The places that lie in the shadow all the while the eye goes straight from one place to the other, its sway from the
/// straight line at most `sway` metres.
///
/// Ensures   with no sway exact: for a fixed place, whether the line of sight passes between the sheet's ends, and at
///           which ratio, are linear conditions on the eye, so that they hold all along when they hold at both ends.
///           With sway every side of the area is drawn in by what the sway can move it within reach.
geometry::Convex steadyShadow(Point from, Point until, Segment sheet, Span ratios, double reach, double sway = 0);

}  // namespace wend::sight
