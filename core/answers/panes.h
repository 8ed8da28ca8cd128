/// Glass of the set that has turned into a mirror, seen from the lens.
///
/// Stops holding as light::paneLight and light::paneReflectance; cases and other closed shapes of glass are left out,
/// for both of their walls return light; so is a leaf while it moves.
#pragma once

#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/light/pane_light.h"

namespace wend::answers {

/// Seconds from one look at the glass to the next; what comes and goes between two looks is missed.
inline constexpr double kGlassStep = 0.1;

/// A part of a pane, small enough to be looked at from one direction.
struct TurnedGlass {
  std::string pane;        ///< id of an opening or a piece
  sight::Mirror face;      ///< shows on the lens' side
  light::PaneLight light;  ///< known on both sides
  bool inFrame = false;    ///< its middle is in the delivered frame, not only in the widened one
};

/// The parts whose middle is in the frame of `eye`, with nothing solid before it, and that return at least the
/// threshold "glass-mirror" of the brightness that comes through them.
///
/// Ensures   glass with a wall of the set right behind it is left out: nothing comes through.
/// Cost      in the parts in frame, a question about what stands before each and two readings of the areas.
std::vector<TurnedGlass> turnedGlass(const Take& take, const sight::SceneAt& now, const sight::Eye& eye, double t);

/// Lets each show as a mirror does, tagged by its place in the list after all the set's pieces.
void addMirrors(const std::vector<TurnedGlass>& glass, const Take& take, sight::SceneAt& now);

/// The id of the mirror or the pane of such a scene.
std::string mirrorId(const Take& take, const std::vector<TurnedGlass>& glass, int tag);

}  // namespace wend::answers
