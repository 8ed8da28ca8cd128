/// How high the eyes and the top of a body are, by posture and stature.
///
/// Frame     metres above the floor the body stands on; a seat is 0.45 m high.
/// Source    standing and sitting: mean eye heights over mean statures of 4082 men and 1986 women, C. C. Gordon et al.,
///           "2012 Anthropometric Survey of U.S. Army Personnel" (ANSUR II), NATICK/TR-15/007, 2014: standing 0.935 as
///           stature less sitting height plus sitting eye height; sitting 0.458 above the seat. Kneeling: upright on
///           both knees, standing less the knee height of the same survey (0.278); lying and the seat: common practice,
///           no source.
/// Holds for adults in bare feet and upright; a slouch takes 4 to 6 cm, shoes add 2 to 4 (from memory).
#pragma once

namespace wend::motion {

enum class Posture { stand, kneel, sit, lie };

inline constexpr double kSeatHeight = 0.45;       ///< metres
inline constexpr double kLyingEyeHeight = 0.15;   ///< metres
inline constexpr double kCrownAboveEyes = 0.065;  ///< of the stature

/// Requires stature > 0, metres.
constexpr double eyeHeight(Posture posture, double stature) {
  switch (posture) {
    case Posture::stand:
      return 0.935 * stature;
    case Posture::kneel:
      return 0.657 * stature;
    case Posture::sit:
      return kSeatHeight + 0.458 * stature;
    case Posture::lie:
      return kLyingEyeHeight;
  }
  return 0.935 * stature;
}

/// Eyes `share` of the way from one posture to another.
constexpr double eyeHeight(Posture before, Posture after, double share, double stature) {
  const double from = eyeHeight(before, stature);
  return from + (eyeHeight(after, stature) - from) * share;
}

/// The top of a body whose eyes are at `eyes`.
constexpr double bodyTop(double eyes, double stature) {
  return eyes + kCrownAboveEyes * stature;
}

}  // namespace wend::motion
