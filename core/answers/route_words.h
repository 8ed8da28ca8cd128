/// Why somebody has no route, in words.
#pragma once

#include <string>
#include <vector>

#include "core/answers/routes.h"

namespace wend::answers {

/// When and where it ends and how long the exposure is at best; no full stop at the end.
std::string stuckWords(const crew::Stuck& stuck);

/// What would free it, each with its figure and in words; empty where nothing that was tried does. `needs` are the
/// words of the task's needs, in its order.
std::vector<Freeing> freeingsOf(const crew::Stuck& stuck, const std::vector<std::string>& needs);

/// Parts with something between each two.
std::string joined(const std::vector<std::string>& parts, const std::string& between);

}  // namespace wend::answers
