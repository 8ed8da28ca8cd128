/// What is sharp: blur circles, the sharp range, and the settings of a lens that keep a subject sharp.
///
/// Frame     distances in metres from the entrance pupil (distance from the sensor less pupilAhead), infinity allowed;
///           focal length and blur in millimetres on the sensor; f-numbers, never T-numbers.
/// Source    the thin lens. Near and far limits with H = f^2/(Nc) + f in the exact form s(H-f)/(H+s-2f) and
///           s(H-f)/(H-s): "Precision Depth of Field of Optical Lens", Maple user forum, 2016. Two conventions of the
///           hyperfocal distance, a focal length apart: piglix.com, "Hyperfocal distance". Depth from f-numbers, not
///           from T-numbers: sizes.com, "Transmission stops". Split: US Navy NAVEDTRA 14209, "Photography (Basic)", p.
///           1-26.
/// Stops     holding where diffraction outweighs defocus (beyond about f/16), for lenses with a curved field, where the
///           entrance and exit pupils differ much in size at magnifications above about 0.1 (toothwalker.org,
///           "Depth of field: derivation"), and under squeeze, where blur differs across and along.
#pragma once

#include <optional>
#include <vector>

namespace wend::optics {

/// The f-number of a lens that passes `transmission` of its light at that T-number: T sqrt(transmission).
/// Requires both positive, transmission at most 1.
double fNumberOf(double tNumber, double transmission);
double tNumberOf(double fNumber, double transmission);

/// A lens as depth of field sees it.
struct Optics {
  double focal = 50;  ///< mm
  double fNumber = 4;
  double blurCircle = 0.025;  ///< mm, the largest blur still called sharp
};

/// A range of distances, `far` possibly infinite.
struct Range {
  double near = 0, far = 0;
  bool contains(double distance) const { return distance >= near && distance <= far; }
  bool operator==(const Range&) const = default;
};

/// The setting whose far limit just reaches infinity: f^2/(N c) + f.
double hyperfocal(const Optics& optics);

/// Diameter in mm of the blur on the sensor of a point at `distance` when the lens is set at `setting`.
///
/// Requires  distance > 0; setting > focal length; either may be infinite
/// Ensures   0 only when they are equal; grows with the distance between them on either side
double blurOf(double distance, double setting, const Optics& optics);

/// The distances at which a lens set at `setting` blurs by no more than the blur circle.
///
/// Requires  setting > focal length, infinity allowed
/// Ensures   (1) blurOf is the blur circle at both ends (at an infinite far end: at most that)
///           (2) far is infinite exactly when setting >= hyperfocal, within rounding
Range depthOfField(double setting, const Optics& optics);

/// The settings at which a subject at `distance` is blurred by at most `blurShare` blur circles. `blurShare` scales the
/// blur, not the range. `closest` is the nearest setting of the lens, from the pupil.
///
/// Requires  distance > 0 (infinity allowed), blurShare > 0, closest > focal length
/// Ensures   (1) contains the subject's own distance
///           (2) blurOf(distance, end) = blurShare x blur circle at each end that is neither infinite nor `closest`
///           (3) nothing when the subject is nearer than `closest`: too close
std::optional<Range> slackOf(double distance, const Optics& optics, double blurShare, double closest);

/// One setting for several subjects.
struct Split {
  double setting = 0;          ///< the one of least largest blur
  double largestBlur = 0;      ///< mm, at that setting
  std::optional<Range> slack;  ///< settings that keep every one of them within blurShare; nothing: it cannot be done
};

/// The nearest and the furthest decide: blur grows towards both, so the best setting is where theirs are equal,
/// 2ab/(a + b), and every subject between them is sharper.
///
/// Requires  at least one distance, each > 0; closest > focal length
/// Ensures   (1) no other setting from `closest` on has a smaller largest blur
///           (2) slack is the intersection of every subject's slackOf
Split splitFocus(const std::vector<double>& distances, const Optics& optics, double blurShare, double closest);

}  // namespace wend::optics
