/// The scale on a lens barrel: degrees of turn for a distance, a stop or a focal length, and back.
///
/// A scale is even in 1/distance, in stops and in the logarithm of the focal length; between the user's own marks it
/// runs as a monotone cubic in that measure, beyond the first and last mark straight on with the end's slope.
///
/// Frame     degrees of barrel, as marked; metres from the sensor; T-numbers; millimetres.
/// Error     between marks as good as the marks: a real cam is smooth, but nobody has promised that it is a cubic.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/geometry/monotone_cubic.h"

namespace wend::optics {

enum class ScaleOf { distance, stop, focal };

struct ScaleMark {
  double value = 0;  ///< distance (infinity allowed), T-number or focal length
  double degrees = 0;
};

/// What a scale is even in: 1/distance in 1/m, stops from T1, the logarithm to base 2 of the focal length. Requires
/// what degreesAt requires.
double measureOf(ScaleOf of, double value);
/// And back; a distance whose measure is 0 or less is infinite.
double valueOf(ScaleOf of, double measure);

/// Degrees from infinity to closest focus of a lens without a chart: common practice, no source.
inline constexpr double kUnchartedThrow = 300;

class LensScale {
 public:
  /// Marks in order of value, either way; degrees may rise or fall along them.
  ///
  /// Ensures   (1) passes through every mark; (2) strictly monotone everywhere; (3) valueAt undoes degreesAt
  /// Fails     scale-too-short with fewer than two marks; scale-value for a value that is not positive (or infinite
  ///           where that has no meaning) or degrees that are not finite; scale-not-monotone naming the first row whose
  ///           value or degrees turn back. `where` is "/" and the row's index.
  static base::Result<LensScale> through(ScaleOf of, const std::vector<ScaleMark>& marks);

  /// The distance scale of a lens without a chart: 0 at infinity to kUnchartedThrow at closest focus, even in
  /// 1/distance. Requires closeFocus > 0.
  static LensScale uncharted(double closeFocus);

  /// Requires value > 0; infinity for distances only.
  double degreesAt(double value) const;
  /// Past infinity a distance scale shows infinity.
  double valueAt(double degrees) const;
  /// True when degrees rise from far to near, from open to closed, from wide to long.
  bool rising() const { return rising_; }

 private:
  LensScale(ScaleOf of, std::vector<double> x, std::vector<double> y);

  ScaleOf of_;
  geometry::MonotoneCubic curve_;
  bool rising_;
};

}  // namespace wend::optics
