// Cables that a door shuts on, and the camera's own that runs out. Stepping over them is a matter of steps.
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

Findings cableShutIn(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "cable-shut-in");
  for (const auto& shut : evidence.cablesShutIn)
    findings.push_back(
        {shut.cable, shut.opening, shut.time, shut.time, shut.pos, limit.severity,
         nameOf(*evidence.plan, shut.opening) + " is shut where " + cableNameOf(*evidence.plan, shut.cable) + " lies",
         "caution: lay it another way or keep the door from shutting; a pinched one may be live"});
  return findings;
}

Findings cableShort(const Evidence& evidence) {
  const auto& out = evidence.cameraCableOut;
  if (!out || !evidence.plan->camera.cable) return {};
  const Threshold limit = threshold(*evidence.plan, "cable-short");
  const double has = evidence.plan->camera.cable->length;
  if (out->most <= has * limit.value) return {};
  return {{"camera", "", out->time, evidence.length, out->pos, limit.severity,
           "the camera's cable is " + lengthText(*evidence.plan, has) + " long and its way takes " +
               lengthText(*evidence.plan, out->most),
           "lay a longer one, move its anchor, or have somebody take it in on the way back"}};
}

}  // namespace wend::snags
