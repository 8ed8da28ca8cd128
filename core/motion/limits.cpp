#include "core/motion/limits.h"

#include <algorithm>

namespace wend::motion {
namespace {

/// The parts of one leg's time that are faster than `limit`.
geometry::Spans fastParts(const Track& track, std::size_t leg, double limit) {
  const Span time = track.legs()[leg].time;
  if (track.legs()[leg].peakSpeed <= limit) return {};
  if (!track.marks()[leg].leg.eased) return {time};
  std::vector<double> cuts{time.from};
  for (const double t : track.timing(leg).slopeCrossings(limit)) cuts.push_back(t);
  cuts.push_back(time.until);
  geometry::Spans fast;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i)
    if (track.timing(leg).slope((cuts[i] + cuts[i + 1]) / 2) > limit) fast.push_back({cuts[i], cuts[i + 1]});
  return fast;
}

}  // namespace

double offAxis(Vec velocity, double bearing) {
  return std::abs(geometry::turn(bearing, geometry::bearingOf(velocity)));
}

geometry::Spans fasterThan(const Track& track, double limit, Span within) {
  geometry::Spans fast;
  for (std::size_t leg = 0; leg < track.legs().size(); ++leg)
    for (const Span& part : fastParts(track, leg, limit)) fast.push_back(part);
  return geometry::intersection(geometry::tidy(std::move(fast)), {within});
}

geometry::Spans backwards(const Track& track, const std::function<double(double)>& bearing, Span within) {
  const auto isBackwards = [&](double t) {
    const Vec velocity = track.velocity(t);
    return length(velocity) > kMoving && offAxis(velocity, bearing(t)) > kBackwards;
  };
  return geometry::spansWhere(within, 0.05, isBackwards);
}

}  // namespace wend::motion
