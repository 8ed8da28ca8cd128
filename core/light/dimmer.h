/// Lamps that change in the place of the iris.
///
/// An iris that closes by s stops lets in 2^-s of the light. A lamp that gives part of a face's light does the same to
/// that face alone when it gives so much less that 2^-s of the whole is left; one that gives less than the part that
/// has to go cannot, even switched off.
///
/// Frame     lux; shares of the light that the lamp gives the face as it burns there.
/// Stops holding where the lamp's light reaches the face by the walls as well, and for what else in the picture it
///           lights: that changes with it. A tungsten lamp turns warmer as it is dimmed.
#pragma once

#include <optional>
#include <vector>

#include "core/light/face.h"

namespace wend::light {

/// What one lamp, or several by the same share, must come to for the whole to change by so many stops, positive for
/// less light: 1 - (1 - 2^-stops) whole / lamp. Over 1: it has to burn brighter.
/// Requires  whole >= 0, lamp >= 0; more than the whole counts as the whole
/// Ensures   whole - lamp + share x lamp = whole x 2^-stops
/// Fails     nothing where the lamp gives no light, or too little to take away so much
std::optional<double> shareInstead(double whole, double lamp, double stops);

/// The same for each lamp of a face's light, in their order; nothing too where the exposure is unknown.
std::vector<std::optional<double>> sharesInstead(const FaceLight& light, double stops);

}  // namespace wend::light
