// The slack of the zoom about what its keys ask for.
#include <algorithm>
#include <cmath>

#include "core/answers/take.h"

namespace wend::answers {

pulls::Tube zoomTube(const Take& take) {
  const plan::Plan& plan = take.plan();
  if (plan.zoom.keys.empty()) return {};
  std::vector<double> times = take.frameTimes();
  for (const auto& key : resolvedKeys(plan, plan.zoom.keys))
    for (const double t : {key.at, key.at + key.over})
      if (t > 0 && t < take.length()) times.push_back(t);
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  const double slack = std::log2(1 + plan.zoom.slackShare);
  const double least = std::log2(plan.lens->focal[0]), most = std::log2(plan.lens->focal[1]);
  pulls::Tube tube;
  for (const double t : times) {
    const double asked = std::log2(take.view().zoom().askedAt(t));
    tube.push_back({t, asked - slack, asked + slack, false});
  }
  return pulls::heldWithin(std::move(tube), least, most);
}

}  // namespace wend::answers
