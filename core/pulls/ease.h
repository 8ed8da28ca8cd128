/// How softly a move may start and end.
///
/// A ramp that starts at once asks a hand for a jerk. Eased, it starts half the ease early, at rest, speeds up evenly
/// over the ease and joins the straight ramp half the ease late; its end likewise. So the straight part stays where it
/// was and nothing gets faster: the peak rate is the ramp's own. What it costs is the corner: at the ramp's start the
/// value is ahead of the straight one by rate x ease / 8, and the slack must have room for that.
///
/// Frame     that of the tube; seconds.
/// Stops     bends inside a move, which are left as they are; a hand's own way of starting, which is no parabola.
#pragma once

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {

/// Gives every move of the track the longest easeIn and easeOut there is room for.
///
/// Two eases that share a ramp or a rest too short for both get half of it each, or one gets what the other cannot use.
/// A rest keeps `shortestHold` still, one at an end of the take nothing. A move that starts with the take, or ends with
/// it, has no ease there.
///
/// Requires  the tube the track was planned in; moves and knots in order
/// Ensures   (1) at samples the eased track is nowhere further outside the tube than the straight one, and between two
///               at which the straight one is inside it is inside too
///           (2) it is nowhere faster than the straight one
///           (3) no ease can be longer without leaving the tube or taking more than its share of a ramp or rest
/// Cost      linear
void easeEnds(Track& track, const Tube& tube, double shortestHold);

/// The track with its moves eased. Held before the first knot and after the last.
double easedAt(const Track& track, double t);

/// The eased track as a line to draw: knots where it runs straight or turns at once, and `steps` chords over each ease.
///
/// Requires  steps > 0
/// Ensures   in order of time, from the track's first instant to its last; on easedAt at each knot, and between two
///           nowhere further from it than rate x ease / (8 steps^2)
std::vector<Knot> easedLine(const Track& track, int steps);

}  // namespace wend::pulls
