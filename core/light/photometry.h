/// A measured light distribution: candela over two angles, as luminaire data files give it.
///
/// Frame     type C angles in degrees: vertical 0 along the lamp's axis (straight down as it hangs), 180 behind it;
///           horizontal counter-clockwise seen from behind (from above), 0 at the lamp's top side.
/// Source    IES LM-63, type C photometry; the meaning of the range of horizontal angles after Ian Ashdown, "Parsing
///           the IESNA LM-63 photometric data file" (1998).
/// Stops holding nearer than about five times the luminaire's largest dimension.
#pragma once

#include <vector>

#include "core/base/result.h"

namespace wend::light {

class Photometry {
 public:
  /// The distribution of a table with one row a horizontal angle and one value a vertical angle, already scaled.
  ///
  /// The last horizontal angle (the first, where said) tells the symmetry: 0 alone, the same all round; 0 to 90, four
  /// equal quarters; 0 to 180, mirrored in the plane 0-180; 90 to 270, mirrored in the plane 90-270; 0 to 360, none.
  /// Fails     `photometry-angles` for angles that do not increase or whose range means nothing, `photometry-table` for
  ///           a table of another size or with a negative or infinite value.
  static base::Result<Photometry> of(std::vector<double> vertical, std::vector<double> horizontal,
                                     std::vector<std::vector<double>> candela);

  /// Candela in a direction, bilinear in both angles.
  /// Ensures   (1) at the table's own angles its value; (2) nothing beyond the first and the last vertical angle; (3)
  ///           any horizontal angle is brought into the table's range by its symmetry.
  double candelaAt(double vertical, double horizontal) const;

  /// Lumens of the bilinear distribution: integrated exactly, not by zones.
  double totalFlux() const;

  /// The largest candela of the table, and with it of the whole distribution.
  double peak() const;

  /// The full angle in the plane through the axis at `plane` and `plane` + 180 degrees: from the outermost direction on
  /// one side that still has `share` of the peak to that on the other. A share of a half gives the beam, a tenth the
  /// field of data sheets.
  /// Ensures   (1) exact for the bilinear distribution; (2) 0 where neither side reaches the share; (3) at most twice
  /// the
  ///           last vertical angle.
  /// Stops holding as the width of one beam where the light falls below the share in between, as of two wings.
  double spread(double share, double plane) const;

 private:
  Photometry() = default;
  double outermost(double level, double horizontal) const;
  std::vector<double> vertical_, horizontal_;
  std::vector<std::vector<double>> candela_;
};

}  // namespace wend::light
