/// How far the marks of a scale can be trusted between them, and where one more would help most.
///
/// Each inner mark is left out in turn and asked of the scale through the others. What comes out is off by about what a
/// gap as wide as the two beside that mark would hide: an honest guess at too few marks, on the dark side, since with
/// the mark in place the gaps are half as wide.
///
/// Frame     that of lens_scale.h.
/// Source    leave-one-out cross-validation; e.g. T. Hastie, R. Tibshirani, J. Friedman, The Elements of Statistical
///           Learning, section 7.10.
/// Stops     telling a lens that is smooth but odd from marks that are few, and finding an error that all marks share.
#pragma once

#include <optional>
#include <vector>

#include "core/optics/lens_scale.h"

namespace wend::optics {

/// What the scale without a mark says at that mark, less what the mark says.
struct MarkMiss {
  double degrees = 0;  ///< at its value
  double value = 0;    ///< at its degrees; infinite where the others never show a finite distance there
};

/// The values a scale has to serve. Of distances, `far` may be infinite.
struct ScaleReach {
  double near = 0, far = 0;
};

struct ScaleTrust {
  std::vector<std::optional<MarkMiss>> rows;  ///< nothing for the outermost two, and all with fewer than three marks
  double worstDegrees = 0;                    ///< the largest of them
  /// The value to mark next: an end of the reach beyond the marks, first the far one; or else the middle, in the
  /// scale's own measure, of the gap whose ends were missed by most, among equals the widest.
  double markNext = 0;
};

/// Requires  marks that LensScale::through takes; a reach of values it takes, near and far in order of value
/// Ensures   (1) marks of a law even in the scale's measure miss by nothing; (2) marks in reverse order say the same
/// Cost      the number of marks squared
ScaleTrust trustOf(ScaleOf of, const std::vector<ScaleMark>& marks, ScaleReach reach);

}  // namespace wend::optics
