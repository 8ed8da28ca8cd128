/// Focus pulls by somebody who does not see, from where they are, whom the lens is on.
///
/// Frame     plan metres, seconds from the take's start.
/// Source    common practice, no source: who pulls by eye has the subject in sight. A picture on a monitor may serve
///           instead; which pictures reach whom is not looked at.
#pragma once

#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/snags/evidence.h"

namespace wend::answers {

struct BlindPull {
  std::size_t move = 0;  ///< its place among the moves
  std::string who;       ///< crew id
  Point pos;             ///< of theirs as it starts
  double blind = 0;      ///< seconds of it without sight, more than none
};

/// Of whoever has the focus as a pull starts (`holderOf`) and is somewhere then, as drawn or along with the camera.
/// Their eyes are those of somebody who stands; walls, pieces and leaves hide, people do not. A cut takes no time and is
/// not told.
/// Error     looked at every tenth of a second.
std::vector<BlindPull> blindPulls(const Take& take, const std::vector<snags::Move>& moves);

}  // namespace wend::answers
