#include "core/plan/on_beat.h"

namespace wend::plan {

OnBeat onBeat(const Plan& plan, double t) {
  constexpr double kHair = 1e-9;
  const Beat* last = nullptr;
  for (const Beat& beat : plan.beats)
    if (beat.time <= t + kHair && (!last || beat.time >= last->time)) last = &beat;
  return last ? OnBeat{last->id.text(), t - last->time} : OnBeat{"", t};
}

}  // namespace wend::plan
