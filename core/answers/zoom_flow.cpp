#include "core/answers/zoom_flow.h"

#include <algorithm>

#include "core/answers/ray_end.h"
#include "core/pulls/zoom_cover.h"

namespace wend::answers {

namespace {

pulls::ZoomInstant instantOf(const Take& take, double t) {
  pulls::ZoomInstant instant;
  const optics::HalfTangents half = *take.view().halfTangentsAt(t);
  instant.halfTangentH = half.h;
  instant.halfTangentV = half.v;
  instant.seconds = 1 / take.rate();
  instant.before = take.view().pupilAt(t);
  instant.after = take.view().pupilAt(t + instant.seconds);
  instant.focalPerSecond = take.view().zoomRateAt(t) / 100;
  const sight::SceneAt now = take.scene().at(t);
  for (std::size_t i = 0; i < instant.distance.size(); ++i)
    instant.distance[i] =
        rayLength(take, now, instant.before.at, rayThrough(instant.before, half, pulls::coverPoint(i)))
            .value_or(snags::kInfinity);
  return instant;
}

}  // namespace

std::optional<double> zoomFlowShare(const Take& take, geometry::Span span) {
  if (!take.plan().lens) return std::nullopt;
  constexpr double kStep = 0.1;
  const auto shareAt = [&](double t) { return pulls::zoomCover(instantOf(take, t)).share; };
  // However short the move, its middle is in it.
  double most = shareAt((span.from + span.until) / 2);
  for (double t = span.from + kStep / 2; t < span.until - 1 / take.rate(); t += kStep)
    most = std::max(most, shareAt(t));
  return most;
}

}  // namespace wend::answers
