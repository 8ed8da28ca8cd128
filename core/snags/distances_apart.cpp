#include "core/snags/distances_apart.h"

#include <algorithm>
#include <cmath>

namespace wend::snags {

NamedDistance usedDistance(const plan::Plan& plan, const optics::SubjectDistances& distances) {
  switch (plan.focus.distance) {
    case plan::DistanceKind::slant:
      return {"slant", distances.slant};
    case plan::DistanceKind::floor:
      return {"floor", distances.floor};
    case plan::DistanceKind::flat:
      break;
  }
  return {"flat", distances.flat};
}

NamedDistance otherDistance(const plan::Plan& plan, const optics::SubjectDistances& distances) {
  const NamedDistance slant{"slant", distances.slant}, flat{"flat", distances.flat};
  switch (plan.focus.distance) {
    case plan::DistanceKind::slant:
      return flat;
    case plan::DistanceKind::flat:
      return slant;
    case plan::DistanceKind::floor:
      break;
  }
  const auto off = [&](double metres) { return std::abs(metres - distances.floor); };
  return off(flat.metres) > off(slant.metres) ? flat : slant;
}

double nearerHalf(const FocusAt& focus) {
  return std::min(focus.wantedDistance - focus.wantedBand.near, focus.wantedBand.far - focus.wantedDistance);
}

namespace {

/// Beside or behind the lens all distances differ, and nobody sees it.
bool outOfFrame(const Instant& instant) {
  return std::any_of(instant.performers.begin(), instant.performers.end(), [&](const PerformerAt& at) {
    return at.id == instant.focus.on.back() && at.inFrame == optics::Showing::out;
  });
}

}  // namespace

std::optional<double> apartOverBand(const plan::Plan& plan, const Instant& instant) {
  const FocusAt& focus = instant.focus;
  if (!instant.lens || !focus.known || focus.changing || focus.tooClose || nearerHalf(focus) <= 0) return std::nullopt;
  if (outOfFrame(instant)) return std::nullopt;
  const double apart = std::abs(usedDistance(plan, focus.wanted).metres - otherDistance(plan, focus.wanted).metres);
  return apart / nearerHalf(focus);
}

}  // namespace wend::snags
