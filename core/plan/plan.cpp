#include "core/plan/plan.h"

namespace wend::plan {

double secondsOf(const Plan& plan, const Moment& moment) {
  if (moment.beat.empty()) return moment.seconds;
  if (moment.beat == kEndBeat) return plan.clock.length + moment.seconds;
  const Beat* beat = plan.beats.find(moment.beat);
  WEND_CHECK(beat != nullptr);
  return beat->time + moment.seconds;
}

bool hasBeat(const Plan& plan, const std::string& beat) {
  return beat == kEndBeat || plan.beats.find(beat) != nullptr;
}

}  // namespace wend::plan
