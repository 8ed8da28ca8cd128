#include "core/optics/hyperfocal.h"

#include <algorithm>

namespace wend::optics {
namespace {

/// The longest run from a sample that has settings and is still.
FarRun runFrom(const std::vector<FarSample>& samples, std::size_t first) {
  Range common = *samples[first].settings;
  FarRun run{first, first, common.near};
  for (std::size_t i = first + 1; i < samples.size() && samples[i].settings; ++i) {
    common.near = std::max(common.near, samples[i].settings->near);
    common.far = std::min(common.far, samples[i].settings->far);
    if (common.near > common.far) break;
    if (samples[i].still) run = {first, i, common.near};
  }
  return run;
}

}  // namespace

std::optional<Range> settingsToInfinity(double nearest, const Optics& optics, double closest) {
  const auto settings = slackOf(nearest, optics, 1, closest);
  if (!settings) return std::nullopt;
  const double least = std::max(hyperfocal(optics), closest);
  if (least > settings->far) return std::nullopt;
  return Range{least, settings->far};
}

std::vector<FarRun> farRuns(const std::vector<FarSample>& samples, double leastSeconds) {
  std::vector<FarRun> runs;
  for (std::size_t i = 0; i < samples.size();) {
    if (!samples[i].settings || !samples[i].still) {
      ++i;
      continue;
    }
    const FarRun run = runFrom(samples, i);
    const bool counts = samples[run.last].t - samples[run.first].t >= leastSeconds;
    if (counts) runs.push_back(run);
    i = counts ? run.last + 1 : i + 1;
  }
  return runs;
}

}  // namespace wend::optics
