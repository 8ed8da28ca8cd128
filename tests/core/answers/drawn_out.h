/// Routes put into plans: somebody's marks changed, a found route drawn out as marks.
#pragma once

#include <string>
#include <vector>

#include "core/answers/routes.h"

namespace wend::answers {

inline void setMarks(plan::Plan& plan, const std::string& id, std::vector<plan::Mark> marks) {
  plan::Crew crew = *plan.crew.find(id);
  crew.marks = std::move(marks);
  plan.crew.replace(plan.crew.indexOf(id), crew);
}

inline std::vector<plan::Mark> marksOf(const FoundRoute& route) {
  std::vector<plan::Mark> marks;
  const auto add = [&](double t, geometry::Point pos) {
    plan::Mark mark;
    mark.at = {"", t};
    mark.pos = pos;
    marks.push_back(mark);
  };
  for (const auto& stand : route.stands) {
    add(stand.span.from, stand.pos);
    marks.back().until = plan::Moment{"", stand.span.until};
    for (const auto& walk : route.walks)
      if (walk.walk.span.from == stand.span.until)
        for (std::size_t i = 1; i + 1 < walk.path.size(); ++i) add(walk.path[i].time, walk.path[i].at);
  }
  return marks;
}

}  // namespace wend::answers
