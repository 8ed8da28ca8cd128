/// Routes put into plans: somebody's marks changed.
#pragma once

#include <string>
#include <vector>

#include "core/answers/on_found_routes.h"

namespace wend::answers {

inline void setMarks(plan::Plan& plan, const std::string& id, std::vector<plan::Mark> marks) {
  plan::Crew crew = *plan.crew.find(id);
  crew.marks = std::move(marks);
  plan.crew.replace(plan.crew.indexOf(id), crew);
}

}  // namespace wend::answers
