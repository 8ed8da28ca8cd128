/// The ground that is clear over one span of the take: the answer to one question, without the windows of all cells.
#pragma once

#include <cstdint>
#include <vector>

#include "core/answers/answers.h"

namespace wend::answers {

struct ClearGround {
  geometry::Grid grid;
  std::vector<std::uint8_t> cells;   ///< a byte a cell, from the south-west, row by row: 1 where it is clear
  std::vector<std::uint8_t> ground;  ///< likewise: 1 where somebody can stand at all (footing.h)

  /// Likewise: 1 where both hold.
  std::vector<std::uint8_t> clearFloor() const;
};

/// What `groundOf` calls clear over the span for whoever stands on any floor of the plan, from the feet on the lowest to
/// the crown on the highest, grown by the plan's `early` and `late` (see sight::clearGround). Fails when cancelled or
/// without a lens.
base::Result<ClearGround> clearGroundOf(const Take& take, const GroundQuestion& question, geometry::Span span,
                                        const base::Cancel& cancel = {});

}  // namespace wend::answers
