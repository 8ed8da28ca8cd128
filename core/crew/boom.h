/// A microphone on a pole over the picture: how low it may come, how far from the mouth that leaves it, and what its
/// pole passes on the way there.
///
/// Frame     metres, heights above the datum.
/// Source    common practice, no source, but for the frame's upper edge, which is plain projection.
/// Stops holding for poles that come from below or aside. The pole is taken as straight.
#pragma once

#include <optional>
#include <span>

#include "core/geometry/pose.h"

namespace wend::crew {

using geometry::Point;
using geometry::Point3;

/// A mouth is this far under its eyes.
inline constexpr double kMouthUnderEyes = 0.08;

/// Height of the picture's upper edge over a place on the floor. Nothing behind the lens, or where the edge looks
/// straight up.
/// Ensures   the height depends on how far ahead a place is, not on how far aside: edge and lens span a plane that is
///           level across the picture.
std::optional<double> topOfFrame(const geometry::Pose& pupil, double tangentUp, Point place);

/// The picture's upper edge about a place: it rises evenly the way the lens looks.
struct FrameTop {
  double height = 0;      ///< over the place
  double rise = 0;        ///< metres up for each metre ahead
  geometry::Vec ahead{};  ///< the way the lens looks, on the level, of length 1
  double distance = 1e9;  ///< from the lens to the place, along `ahead`; there is no edge nearer to the lens than that
};
/// Nothing where `topOfFrame` is nothing.
std::optional<FrameTop> frameTopAt(const geometry::Pose& pupil, double tangentUp, Point place);

struct BoomPole {
  double reach = 3;                      ///< on the level, from shoulder to microphone
  double shoulder = 1.45;                ///< above the floor the holder stands on
  double above = 0.15;                   ///< the microphone stays over the top of the frame
  double nearest = 0.4, furthest = 0.9;  ///< from microphone to mouth
};

/// Whether metres of reach or gap are over a limit by more than rounding: poles are leaned until they just meet it.
inline bool beyond(double metres, double limit) {
  constexpr double kRounding = 1e-6;
  return metres > limit + kRounding;
}

/// A microphone held over a mouth, or out in front of it.
struct BoomStand {
  Point3 shoulder, microphone;
  double gap = 0;    ///< from microphone to mouth
  double reach = 0;  ///< on the level, from shoulder to microphone
};

/// The microphone straight over the mouth, as low as it may come: over the top of the frame where there is one to stay
/// out of, and no nearer to the mouth than the pole's nearest. Where that is further than the pole's furthest, out from
/// the mouth to where the edge is lower, towards the lens as a rule: as far as makes the gap the furthest, or to the
/// least gap there is.
/// Ensures   (1) pole.nearest <= gap, and no place over the edge has a gap under the lesser of this one and the
///           furthest; (2) where the microphone is does not depend on the holder.
BoomStand boomStand(const BoomPole& pole, Point holder, double holdersFloor, Point3 mouth,
                    const std::optional<FrameTop>& top);

/// The lamp nearest to the pole.
struct LampBeside {
  std::size_t lamp = 0;
  double metres = 0;
};
std::optional<LampBeside> lampBeside(const BoomStand& stand, std::span<const Point3> lamps);

}  // namespace wend::crew
