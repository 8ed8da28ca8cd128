/// What a zoom does to the balance of the rig: as the glass inside runs out, the point the rig balances on runs with
/// it.
///
/// Units     metres along the lens, forward positive; kilograms; newton metres; millimetres of focal length.
/// Source    Statics: a weight m g held a lever d off its point of balance turns with m g d. g is the standard
///           acceleration 9.80665 m/s2 (3rd General Conference on Weights and Measures, 1901).
#pragma once

#include <optional>

#include "core/plan/plan.h"

namespace wend::plan {

/// Of everything listed on the rig, lens included; nothing while nothing is listed.
std::optional<double> rigMass(const Rig& rig);

/// Holds a rig of `kg` level against a point of balance that lies `metres` off, the lens level.
double balanceMoment(double kg, double metres);

/// How a zoom is best balanced once for all focal lengths it runs through.
struct BestBalance {
  double focal = 0;  ///< balance it there
  double most = 0;   ///< and it is never further off than that, either way
};

/// For a zoom that runs between two focal lengths.
///
/// Requires  0 < shortest <= longest.
/// Ensures   (1) `focal` lies within them; (2) |balance.at(f) - balance.at(focal)| <= most for every f within them, and
///           no other focal length has a smaller bound; of several the shortest.
BestBalance bestBalance(const OverFocal& balance, double shortest, double longest);

}  // namespace wend::plan
