/// The steps of a take shared out among threads in stretches that follow each other.
#pragma once

#include <atomic>
#include <cstdint>
#include <vector>

#include "core/base/team.h"

namespace wend::sight {

/// Steps [from, until).
struct StepRange {
  std::uint32_t from = 0, until = 0;
  bool operator==(const StepRange&) const = default;
};

/// `steps` cut into stretches of about equal length, in order: one for one thread, more for several, because some steps
/// take longer than others.
inline std::vector<StepRange> partsOf(StepRange steps, int threads) {
  const std::uint64_t count = steps.until - steps.from;
  const std::uint64_t most = threads == 1 ? 1 : static_cast<std::uint64_t>(threads) * 8;
  const std::uint64_t parts = std::max<std::uint64_t>(1, std::min(most, count / 64));
  std::vector<StepRange> ranges;
  for (std::uint64_t i = 0; i < parts; ++i)
    ranges.push_back({steps.from + static_cast<std::uint32_t>(count * i / parts),
                      steps.from + static_cast<std::uint32_t>(count * (i + 1) / parts)});
  return ranges;
}

/// Calls `work(part)` once for each number below `parts`, on so many threads; each thread calls its own `makeWork()`.
template <class MakeWork>
void shareOut(std::size_t parts, int threads, MakeWork makeWork) {
  std::atomic<std::size_t> next{0};
  const auto run = [&](std::size_t) {
    auto work = makeWork();
    for (std::size_t part = next++; part < parts; part = next++) work(part);
  };
  base::Team team(static_cast<std::size_t>(threads));
  team.run(team.members(), run);
}

}  // namespace wend::sight
