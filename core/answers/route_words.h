/// Why somebody has no route, in words.
#pragma once

#include <string>
#include <vector>

#include "core/crew/route_stuck.h"

namespace wend::answers {

/// When and where it ends, how long the exposure is at best, and what would free it, each with its figures.
/// `needs` are the words of the task's needs, in its order.
std::string stuckWords(const crew::Stuck& stuck, const std::vector<std::string>& needs);

}  // namespace wend::answers
