/// What would let one setting hold several subjects: how far the lens has to be closed, or how short it has to be.
///
/// Frame     as depth_of_field.h: metres from the entrance pupil, millimetres, f-numbers.
/// Source    the blur at the best setting s = 2ab/(a+b), f^2 (b-a) / (N (a+b) (s-f)), solved for N and for f.
/// Stops     holding where depth_of_field.h does.
#pragma once

#include <optional>
#include <vector>

#include "core/optics/depth_of_field.h"

namespace wend::optics {

/// Each is one change alone, everything else as it is.
struct SplitNeeds {
  double fNumber = 0;  ///< the widest opening that does
  double focal = 0;    ///< mm, the longest lens that does
};

/// What it takes to keep all of them within `blurShare` blur circles at one setting, whether it can be done now or not.
///
/// Requires  at least one distance, each > the focal length, infinity allowed; blurShare > 0; closest > focal length
/// Ensures   (1) at either value splitFocus has slack, of no width to rounding; at a larger focal length or a smaller
///               f-number it has none
///           (2) nothing where no stop and no lens would do: somebody is nearer than `closest`
///           (3) nothing where any would do: all at one distance
std::optional<SplitNeeds> splitNeeds(const std::vector<double>& distances, const Optics& optics, double blurShare,
                                     double closest);

}  // namespace wend::optics
