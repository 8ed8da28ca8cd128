// Links, poles and cables at the shown instant.
#include "core/answers/booms.h"
#include "core/answers/radio.h"
#include "core/answers/whole_take.h"

namespace wend::answers {

using snags::TrapsNow;

TrapsNow trapsNow(const Take& take, const Instant& instant, const Evidence* evidence) {
  const plan::Plan& plan = take.plan();
  TrapsNow traps;
  if (plan.links.size() > 0) {
    const Radio radio(take, instant.time);
    for (const auto& link : plan.links) traps.links.emplace_back(link.id.text(), radio.over(link));
  }
  if (evidence)
    for (const auto& line : evidence->boom)
      if (line.span.contains(instant.time))
        if (const auto at = boomNow(take, line, instant)) traps.booms.push_back({line.pole, line.who, *at});
  traps.shutIn = shutInAt(take, instant.time);
  traps.cameraCableOut = cableNeededAt(take, instant.time);
  return traps;
}

}  // namespace wend::answers
