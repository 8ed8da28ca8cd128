/// A window between two lights, seen from a place: what reads on either side of it, and whether it has turned into a
/// mirror.
///
/// Frame     plan metres; the pane stands upright.
/// Stops holding where a lamp shines at the pane without being in the readings, and where what stands behind the glass
///           is much lighter or darker than what stands before it: both sides are taken as equally grey.
#pragma once

#include <optional>

#include "core/geometry/segment.h"
#include "core/light/area.h"
#include "core/light/pane.h"

namespace wend::light {

struct PaneLight {
  double incidence = 0;                     ///< degrees off the pane's normal at which the eye looks at it
  std::optional<double> nearStop, farStop;  ///< readings on the eye's side and beyond; absent: unknown
  std::optional<bool> mirror;               ///< as actsAsMirror; absent while a reading is
  std::optional<double> closer;    ///< stops by which the far side may still darken before it turns, negative past it
  std::optional<double> returned;  ///< brightness of what it returns over that of what comes through it
};

/// Looks from `eye` at a place of a pane at time t. The readings are taken a soft edge's width clear of the wall's two
/// faces, so that the areas' edges do not mix the two lights; the pane hangs in the middle of a wall of that thickness.
/// Ensures   (1) the incidence is that in space: a look down at a low pane counts its slant; (2) from the other side
///           the two readings change places.
/// Requires  the pane longer than nothing, the eye not in it.
PaneLight paneLight(const Areas& areas, geometry::Segment pane, double thickness, geometry::Point3 on,
                    geometry::Point3 eye, double t);

}  // namespace wend::light
