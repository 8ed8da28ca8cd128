/// Lengths as people type and read them: metres and centimetres, feet and inches. Everything inside Wend is metres.
///
/// Source    one foot is 0.3048 m and one inch 25.4 mm exactly (international yard and pound agreement of 1959).
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wend::units {

inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kMetresPerFoot = 0.3048;

/// No length of a plan is longer: 10 km.
inline constexpr double kLongestMetres = 10000;

enum class LengthUnit { metres, feet };

/// A typed length in metres; a number without a unit counts in `assumed`.
///
/// Takes     3.2   3,2   3.2 m   320cm   3200 mm   10'6"   10' 6 1/2"   4'-2"   10.5ft   6 in   -0.12
/// Ensures   (1) point and comma are both the decimal mark, and nothing is a thousands mark
///           (2) the value is the typed one: nothing is rounded
/// Fails     bad-length for text that is no length; ambiguous-length, with both readings in `expected`, for
///           "1,234.5", "10 6", "12 1/2" and their like; out-of-range beyond 10 km
base::Result<double> lengthFrom(std::string_view text, LengthUnit assumed);

/// How finely a length is printed: `fine` is 1 cm or half an inch; `tape` is what a hand can use at that distance: 1 cm
/// (1/2 in) below 1 m, 2 cm (1 in) below 3 m, 5 cm (2 in) below 8 m, then 0.25 m, 0.5 m from 15 m on (1 ft). Common
/// practice, no source.
enum class LengthStep { fine, tape };

/// The step of a tape in metres at that distance, in that unit.
double tapeStep(double metres, LengthUnit unit);

/// "1.27 m" or "4'-2\"", halves as "4'-2½\""; infinity is the sign for it. Requires not NaN.
std::string lengthText(double metres, LengthUnit unit, LengthStep step = LengthStep::fine);

}  // namespace wend::units
