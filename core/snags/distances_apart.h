/// The kinds of distance of a subject against each other: what the plan's focus goes by, and what a tape or a flat
/// field would have it go by instead.
#pragma once

#include "core/snags/evidence.h"

namespace wend::snags {

struct NamedDistance {
  const char* name = "";  ///< "slant", "flat", "floor"
  double metres = 0;
};

/// What the plan's focus goes by (its `focus.distance`).
NamedDistance usedDistance(const plan::Plan& plan, const optics::SubjectDistances& distances);

/// What it would be taken for: of the flat distance the slant, which is what a tape from the sensor to the eyes reads;
/// of the slant the flat one, which is what a lens with a flat field focuses; of the floor's whichever of the two is
/// further off.
NamedDistance otherDistance(const plan::Plan& plan, const optics::SubjectDistances& distances);

/// Metres of sharpness on the side of where the subject is that has less.
double nearerHalf(const FocusAt& focus);

/// How far the two are apart over the nearer half of the sharp band. Nothing without a lens or a known subject, while
/// the subject changes, where it is too close, and of a performer who is out of frame.
std::optional<double> apartOverBand(const plan::Plan& plan, const Instant& instant);

}  // namespace wend::snags
