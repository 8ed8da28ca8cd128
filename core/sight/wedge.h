/// The ground a frame holds at one instant, as areas to draw.
#pragma once

#include <vector>

#include "core/sight/scene.h"

namespace wend::sight {

/// Ground seen in one mirror.
struct MirrorWedge {
  int mirror = 0;  ///< the mirror's tag
  geometry::Ring ring;
};

struct SeenWedge {
  geometry::Ring direct;  ///< counter-clockwise from the pupil's foot; empty when nothing is seen
  std::vector<MirrorWedge> mirrors;
};

/// Who stands on the ground, and how far to draw.
struct WedgeSpec {
  double floor = 0, top = 1.8;
  double range = 30;  ///< metres along a ray
};

/// Ensures   (1) along each ray the wedge ends where a standing person is first hidden altogether, or at `range`;
///           ground seen again beyond is not drawn; (2) its corners are exact for straight pieces: rays go just past
///           both sides of every corner in the frame, and one a degree at least between;
///           where two pieces cross between rays the drawn edge cuts their crossing off;
///           (3) in a mirror it runs from the glass to where a person is first hidden on the way back.
/// Cost      corners times prisms: milliseconds for hundreds of walls.
SeenWedge seenWedge(const SceneAt& now, const Eye& eye, const WedgeSpec& spec);

/// Square metres of the ring.
double area(const geometry::Ring& ring);

}  // namespace wend::sight
