/// The people who hide others from the lens, when the plan asks for it: a body is no wall, and counting on one is a
/// choice.
#pragma once

#include "core/answers/take.h"
#include "core/sight/take_look.h"

namespace wend::answers {

/// Performers come first, in their order, then crew.
inline int crewTag(const Take& take, std::size_t crew) {
  return static_cast<int>(take.plan().performers.size() + crew);
}

/// Everybody who hides, by `sightRules.bodiesHide`; empty when nobody does. `take` must outlive it.
sight::HidersAt hidersOf(const Take& take);

/// Everything the plan draws, marks and people included.
geometry::Extent extentOfSet(const Take& take);

}  // namespace wend::answers
