/// How far a subject is from the camera, in the three ways a set measures it.
///
/// Frame     metres from the sensor, where a tape is hooked. Optics count from the entrance pupil: fromPupil.
#pragma once

#include "core/geometry/pose.h"

namespace wend::optics {

struct SubjectDistances {
  double slant = 0;  ///< straight through the air, what a tape reads
  double flat = 0;   ///< along the lens axis, what a flat field focuses
  double floor = 0;  ///< on the plan
  bool operator==(const SubjectDistances&) const = default;
};

/// Ensures   (1) floor <= slant, flat <= slant
///           (2) a subject level with or behind the sensor has no flat distance: slant stands in
SubjectDistances distancesOf(geometry::Point3 subject, const geometry::Pose& sensor);

/// What a lens set for `distance` metres from the sensor is set for, counted from the pupil; not positive when the
/// subject is no further than the pupil. Infinity stays infinity.
inline double fromPupil(double distance, double pupilAhead) {
  return distance - pupilAhead;
}

/// Between two distances by `share`, even in 1/distance, as a lens scale is.
///
/// Requires  a, b > 0, infinity allowed
/// Ensures   share 0 is a and 1 is b, exactly
double blendedDistance(double a, double b, double share);

/// Each kind of distance blended on its own: what is wanted during a change of subject.
SubjectDistances blended(const SubjectDistances& a, const SubjectDistances& b, double share);

}  // namespace wend::optics
