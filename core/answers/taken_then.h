/// What stands at a place for a time, and what its areas are used as: for who asks where somebody may stand, beside
/// what takes the place all along (footing.h).
///
/// Frame     plan metres, seconds from the take's start.
/// Safety    what an area has to be, and who may be near what moves, whoever is in charge of the place says.
#pragma once

#include <string>
#include <vector>

#include "core/answers/take.h"

namespace wend::answers {

struct TakenSpan {
  geometry::Span span;
  std::string by;  ///< a piece, or gear
};

/// Whether any piece of the set moves during the take.
bool anyPieceMoves(const plan::Plan& plan);

/// When a place is inside a piece that moves during the take, or inside gear, which stands there all of it; in order of
/// starts.
/// A place is a point.
/// Error     good to a frame; what is shorter than one may be missed.
std::vector<TakenSpan> takenOver(const Take& take, geometry::Point place, double height);

/// The areas that somebody of that radius touches there and that are closed to the crew: hazards and what is kept out
/// of, and exit lanes, in which nobody stands.
std::vector<const plan::Area*> closedAt(const plan::Plan& plan, geometry::Point place, double radius);

/// "hazard", "keepOut" or "exitLane", as plans write it. Requires such an area.
const char* closedWord(const plan::Area& area);

}  // namespace wend::answers
