#include "core/answers/traps.h"

#include "core/answers/radio.h"
#include "core/answers/whole_take.h"

namespace wend::answers {

using snags::TrapsNow;

Traps::Traps(const Take& take, const Evidence* evidence)
    : take_(take), evidence_(evidence), pinches_(pinchesOf(take)), cable_(take) {}

TrapsNow Traps::at(const Instant& instant) const {
  const plan::Plan& plan = take_.plan();
  TrapsNow traps;
  if (plan.links.size() > 0) {
    const Radio radio(take_, instant.time);
    for (const auto& link : plan.links) traps.links.emplace_back(link.id.text(), radio.over(link));
  }
  if (evidence_)
    for (const auto& line : evidence_->boom)
      if (line.span.contains(instant.time))
        if (const auto at = boomNow(take_, line, instant)) traps.booms.push_back({line.pole, line.who, *at});
  for (const Pinch& pinch : pinches_)
    if (isShutIn(take_, pinch, instant.time)) traps.shutIn.push_back({pinch.cable, pinch.opening->id.text()});
  traps.cameraCableOut = cable_.neededAt(instant.time);
  return traps;
}

}  // namespace wend::answers
