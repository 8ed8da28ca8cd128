/// A measured light distribution: candela over two angles, as luminaire data files give it.
///
/// Frame     directions are asked for in type C angles, degrees: vertical 0 along the lamp's axis (straight down as it
///           hangs), 180 behind it; horizontal counter-clockwise seen from behind (from above), 0 at the lamp's top
///           side. With right, up and ahead as the lamp sees them, up its top side, ahead its axis, tables of type
///             C stand at ahead = cos v, up = sin v cos h, right = -sin v sin h: the poles on the axis;
///             B stand at right = sin H, up = cos H sin V, ahead = cos H cos V: the poles left and right;
///             A stand at right = cos V sin H, up = sin V, ahead = cos V cos H: the poles above and below.
/// Source    IES LM-63; the meaning of the range of the angles, and which axis of the luminaire is polar in types A and
///           B, after Ian Ashdown, "Parsing the IESNA LM-63 photometric data file" (1998). The sense of the angles,
///           V upwards from below and H clockwise where type C goes against the clock, after ANSI/IESNA LM-63-02,
///           section 3 (photometric zero, photometric horizontal, photometric plane, horizontal angles).
/// Stops holding nearer than about five times the luminaire's largest dimension.
#pragma once

#include <vector>

#include "core/base/result.h"

namespace wend::light {

/// Which two angles a table is laid out by.
enum class PhotometryType { c, b, a };

class Photometry {
 public:
  /// The distribution of a table with one row a horizontal angle and one value a vertical angle, already scaled.
  ///
  /// Type C: the last horizontal angle (the first, where said) tells the symmetry: 0 alone, the same all round; 0 to
  /// 90, four equal quarters; 0 to 180, mirrored in the plane 0-180; 90 to 270, mirrored in the plane 90-270; 0 to 360,
  /// none. Types A and B: angles within -90 to 90; horizontal angles that start at 0 stand for the other side as well.
  /// Fails     `photometry-angles` for angles that do not increase or whose range means nothing, `photometry-table` for
  ///           a table of another size or with a negative or infinite value.
  static base::Result<Photometry> of(std::vector<double> vertical, std::vector<double> horizontal,
                                     std::vector<std::vector<double>> candela, PhotometryType type = PhotometryType::c);

  /// Candela in a direction, bilinear in both angles of the table's own type.
  /// Ensures   (1) at the table's own angles its value; (2) nothing beyond the first and the last vertical angle, in
  ///           types A and B nothing beyond the horizontal ones either; (3) any horizontal angle is brought into the
  ///           table's range by its symmetry.
  double candelaAt(double vertical, double horizontal) const;

  /// Lumens of the bilinear distribution: integrated exactly, not by zones.
  double totalFlux() const;

  /// The largest candela of the table, and with it of the whole distribution.
  double peak() const;

  /// The full angle in the plane through the axis at `plane` and `plane` + 180 degrees: from the outermost direction on
  /// one side that still has `share` of the peak to that on the other. A share of a half gives the beam, a tenth the
  /// field of data sheets.
  /// Ensures   (1) exact for the bilinear distribution of type C; types A and B are looked at every tenth of a degree;
  ///           (2) 0 where neither side reaches the share; (3) at most twice the last vertical angle.
  /// Stops holding as the width of one beam where the light falls below the share in between, as of two wings.
  double spread(double share, double plane) const;

 private:
  Photometry() = default;
  bool ownPlanes() const { return type_ == PhotometryType::c; }
  double valueAt(double vertical, double horizontal) const;
  double outermost(double level, double horizontal) const;
  PhotometryType type_ = PhotometryType::c;
  std::vector<double> vertical_, horizontal_;
  std::vector<std::vector<double>> candela_;
};

}  // namespace wend::light
