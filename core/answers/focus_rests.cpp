#include "core/answers/focus_rests.h"

#include <algorithm>
#include <cmath>

#include "core/optics/hyperfocal.h"

namespace wend::answers {

namespace {

/// Shorter than this nobody takes the hand off the ring for. Common practice, no source.
constexpr double kLeastSeconds = 3;
/// Hyperfocal distance changing by less than this share a second counts as standing still.
constexpr double kStillShare = 0.01;

/// Requires a lens.
optics::Optics opticsAt(const Take& take, double t) {
  return opticsOf(take.plan(), *take.view().focalAt(t), take.lens().irisAt(t));
}

/// From the pupil, the nearest of all that the focus is on or changes between; nothing without a subject.
std::optional<double> nearestWanted(const Take& take, double t) {
  if (!take.subjects().any()) return std::nullopt;
  const geometry::KeyBlend blend = take.subjects().blendAt(t);
  std::optional<double> nearest;
  for (const std::size_t key : {blend.before, blend.after}) {
    const auto distances = take.subjects().drivingDistances(key, t, take.view().sensorAt(t));
    if (distances.empty()) return std::nullopt;
    const double least = *std::min_element(distances.begin(), distances.end());
    nearest = std::min(nearest.value_or(least), least);
  }
  return *nearest - take.plan().lens->pupilAhead;
}

optics::FarSample sampleOf(const Take& take, const optics::Optics& optics, double t) {
  const geometry::Span about{std::max(t - 0.1, 0.0), std::min(t + 0.1, take.length())};
  const auto later = opticsAt(take, about.until), earlier = opticsAt(take, about.from);
  const double rate = (optics::hyperfocal(later) / optics::hyperfocal(earlier) - 1) / about.length();
  optics::FarSample sample{t, std::nullopt, std::abs(rate) < kStillShare};
  const auto nearest = nearestWanted(take, t);
  if (nearest && *nearest > 0)
    sample.settings =
        optics::settingsToInfinity(*nearest, optics, take.plan().lens->closeFocus - take.plan().lens->pupilAhead);
  return sample;
}

}  // namespace

std::vector<snags::FocusRest> focusRests(const Take& take, const std::vector<Instant>& samples) {
  if (!take.plan().lens) return {};
  const double ahead = take.plan().lens->pupilAhead;
  std::vector<optics::Optics> optics;
  std::vector<optics::FarSample> far;
  for (const Instant& instant : samples) {
    optics.push_back(opticsAt(take, instant.time));
    far.push_back(sampleOf(take, optics.back(), instant.time));
  }
  std::vector<snags::FocusRest> rests;
  for (const optics::FarRun& run : optics::farRuns(far, kLeastSeconds)) {
    snags::FocusRest rest{{far[run.first].t, far[run.last].t}, run.setting + ahead, 0, 0};
    for (std::size_t i = run.first; i <= run.last; ++i) {
      rest.near = std::max(rest.near, optics::depthOfField(run.setting, optics[i]).near + ahead);
      rest.hyperfocal = std::max(rest.hyperfocal, optics::hyperfocal(optics[i]) + ahead);
    }
    rests.push_back(rest);
  }
  return rests;
}

}  // namespace wend::answers
