/// The stop a face needs: what the areas read at its place, and the lamps that the readings do not contain.
///
/// Stops holding where the face turns its key away from the lens; readings are taken as the meter pass took them.
#pragma once

#include "core/light/area.h"
#include "core/light/density.h"
#include "core/light/exposure.h"
#include "core/light/fixture.h"

namespace wend::light {

struct FaceLight {
  /// The T-number to set, behind the density. Absent: unknown, because no area and no lamp reaches the face, because an
  /// area that counts there has no value at this time, or because a lamp that is to be added shines by unknown candela.
  std::optional<double> needed;
  double lux = 0;                  ///< that needs it; meaningful when `needed` is known
  std::vector<double> fixtureLux;  ///< what each lamp gives the face, in the order of the fixtures, added or not
};

/// Whether somebody stands on the open line between a lamp and a face at a time.
using BlockedAt = std::function<bool(Point3 lamp, Point3 face, double t)>;

/// All the light of a plan.
struct Lighting {
  Areas areas;
  std::vector<Fixture> fixtures;
  Exposure exposure;
  Receptor receptor = Receptor::dome;
  Blocked blocked;
  std::vector<DensityKey> density{};  ///< a variable density on top of the exposure's own
  BlockedAt bodies{};                 ///< who takes lamps away from faces besides what `blocked` tells; empty: nobody

  /// The exposure with all density that is in front of the lens at t.
  Exposure exposureAt(double t) const;
};

/// Areas give E = C T^2 / (S t), every lamp that is not in the readings adds its lux, and the sum asks for
/// sqrt(E S t / C) 2^(-nd/2).
/// Ensures   (1) with no lamp to add, the reading x 2^(-nd/2), whatever C; (2) more lamps never need a wider iris;
///           (3) a place that no area covers is known by its lamps alone, and unknown when none reaches it.
FaceLight lightOnFace(const Lighting& lighting, const Face& face, double t);

/// The stop of the same, at less cost: lamps that are in the readings are not asked.
std::optional<double> neededOnFace(const Lighting& lighting, const Face& face, double t);

/// The share of the face's exposure that one lamp gives, 0 to 1: what a body in its line would take away.
/// Nothing when the exposure is unknown.
std::optional<double> shareOfFixture(const FaceLight& light, std::size_t fixture);

/// The need of a subject that changes: both needs blended in stops, unknown when one that counts is.
std::optional<double> blendedNeed(std::optional<double> before, std::optional<double> after, double share);

}  // namespace wend::light
