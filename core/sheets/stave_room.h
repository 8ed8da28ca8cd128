/// How the staves of the score share the height that is in sight.
#pragma once

#include <vector>

#include "core/sheets/score_drawing.h"

namespace wend::sheets {

inline constexpr double kFoldedStave = 16;

/// Heights in, tops and heights out. Where the staves are higher than what is in sight
///           (1) those with curves give way first, down to what still reads
///           (2) then staves fold, those last that nobody but their own department reads, those never that were opened
///           (3) what is too high still is scrolled: clock and beats keep the upper edge of what is in sight, crew and
///               snags the lower one, and the rest passes under them
/// Height that nobody needs goes to the staves with curves, up to as much again as they have.
void shareRoom(const ScoreView& view, std::vector<StaveBox>& boxes);

/// What no pinned stave covers of this one, px from the top of the score; of no length where all is covered.
geometry::Span uncovered(const std::vector<StaveBox>& boxes, const StaveBox& box);

}  // namespace wend::sheets
