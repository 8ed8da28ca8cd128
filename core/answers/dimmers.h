/// Lamp by lamp, what would spare the iris a move.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/take.h"

namespace wend::answers {

/// One lamp's level before and after, 0 to 1 of its full light.
struct LampLevel {
  std::string lamp;
  double from = 0, to = 0;
};

/// What lamps of the plan could do to the exposed face in the place of an iris move.
struct LampsInstead {
  bool known = false;     ///< the face and its exposure are known; a lamp without photometry counts as giving none
  bool anyLight = false;  ///< a lamp of the plan gives the face light as the move ends
  std::vector<LampLevel> alone;  ///< each does it by itself, and none has to burn over full
  /// The share of their light that all lamps on the face together come to, where that does it. Nothing where one of
  /// them would have to burn over full.
  std::optional<double> together;
};

/// Requires  a move of the iris
/// Ensures   with the iris left where the move starts and one lamp of `alone`, or all of them, at the new level as it
///           ends, the face has the exposure that the move would have given it
LampsInstead lampsInstead(const Take& take, const snags::Move& move);

}  // namespace wend::answers
