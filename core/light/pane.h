/// Clear glass between two lights: how much it returns, and when it turns into a mirror.
///
/// Source    Fresnel's equations (Born and Wolf, "Principles of Optics", section 1.5.2, from memory), refractive index
///           1.5, light of no polarisation; each polarisation returns R = 2r / (1 + r) from the two faces and all
///           returns between them, without absorption, and the pane the mean of both.
/// Stops holding for coated, wired, tinted or double panes.
#pragma once

#include <optional>

namespace wend::light {

/// Shares of the light one air-to-glass face returns at `incidence` degrees from its normal, 0 to 90: of what vibrates
/// across the plane of incidence, and of what vibrates in it.
struct FaceReturns {
  double across = 0, within = 0;
};
FaceReturns faceReturns(double incidence, double refractiveIndex = 1.5);

/// Share the whole pane returns. Ensures 7.7 % head-on, 1 at 90 degrees, never falling in between.
double paneReflectance(double incidence, double refractiveIndex = 1.5);

/// Whether the pane shows its near side: R Lnear >= (1 - R) Lfar / 2, the returned image at least half as bright as
/// what comes through. The luminances go as the squares of the readings at the two faces, both sides equally grey.
/// Nothing when a reading is unknown.
std::optional<bool> actsAsMirror(double incidence, std::optional<double> nearStop, std::optional<double> farStop);

/// By how many stops the far side must be darker for that, negative where it may even be brighter.
double mirrorContrast(double incidence);

}  // namespace wend::light
