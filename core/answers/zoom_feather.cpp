#include "core/answers/zoom_feather.h"

#include <cmath>

namespace wend::answers {

std::array<double, 2> zoomFeather(const plan::Plan& plan, const snags::Move& zoom) {
  if (zoom.ease) return *zoom.ease;
  std::array<double, 2> feather{0, 0};
  constexpr double kSame = 1e-6;
  for (const auto& key : plan.zoom.keys) {
    if (key.time.pace != plan::Pace::eased || key.time.over <= 0) continue;
    const double at = plan::secondsOf(plan, key.time.at), end = at + key.time.over;
    if (std::abs(at - zoom.from) < kSame) feather[0] = key.time.over / 2;
    // A key that runs past the end of the take is cut off at its speed.
    if (std::abs(end - zoom.until) < kSame) feather[1] = key.time.over / 2;
  }
  return feather;
}

}  // namespace wend::answers
