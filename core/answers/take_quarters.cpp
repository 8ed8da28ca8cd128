#include "core/answers/take_quarters.h"

#include <algorithm>

#include "core/answers/answers.h"

namespace wend::answers {

double TakeQuarters::timeOf(long quarter) const {
  return std::clamp(static_cast<double>(quarter) * kQuarter, 0.0, take_.length());
}

const TakeQuarters::Around& TakeQuarters::around(long quarter) {
  const auto [entry, fresh] = around_.try_emplace(quarter);
  if (!fresh) return entry->second;
  Around& around = entry->second;
  around.instant = sampleAt(take_, timeOf(quarter));
  around.passing = obstacles_.passing(around.instant);
  for (const crew::Body& body : obstacles_.rig(around.instant)) around.rig.push_back(crew::obstacleOf(body));
  return around;
}

const TakeQuarters::Look& TakeQuarters::look(long quarter) {
  const auto known = looks_.find(quarter);
  if (known != looks_.end()) return known->second;
  const double t = timeOf(quarter);
  return looks_.emplace(quarter, Look{take_.scene().at(t), take_.eyeAt(t, take_.plan().sightRules.margin)})
      .first->second;
}

}  // namespace wend::answers
