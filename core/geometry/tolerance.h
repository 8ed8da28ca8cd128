/// Every tolerance of the geometry in one place, with what it means on the floor.
#pragma once

namespace wend::geometry {

/// Two plan points closer than this are one point: 0.1 mm, a tenth of the width of a tape mark's edge, and the step
/// plans are quantised to.
inline constexpr double kTouch = 1e-4;

/// A leg or a hold shorter than this on the floor does not travel: 1 mm.
inline constexpr double kHold = 1e-3;

/// Sight lines thinner than this do not count, in radians: at 100 m it is a tenth of a micrometre.
inline constexpr double kSliver = 1e-9;

}  // namespace wend::geometry
