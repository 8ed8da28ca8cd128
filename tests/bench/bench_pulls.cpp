/// Prints how long the fewest moves take, for a take and for tubes of growing length, and against a plain search over
/// reachable intervals on stretches of the same tube.
#include <chrono>
#include <iostream>

#include "core/pulls/fewest_moves.h"
#include "core/pulls/least_miss.h"
#include "core/pulls/ramp_reach.h"
#include "tests/core/pulls/interval_search.h"
#include "tests/core/pulls/random_tube.h"

namespace {

using wend::pulls::Tube;

double milliseconds(const auto& work, int rounds = 3) {
  double best = 1e300;
  for (int round = 0; round < rounds; ++round) {
    const auto before = std::chrono::steady_clock::now();
    work();
    best = std::min(best, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - before).count());
  }
  return best;
}

Tube longTube(int samples, double rate, double gaps) {
  return wend::pulls::randomTube(
      7, {.samples = samples, .step = 1 / rate, .drift = 20, .gaps = gaps / rate, .narrowest = 1});
}

/// Both on the same stretches, from the whole of the tube.
void measureAgainstSearch(int samples, double rate, int stretch) {
  const Tube tube = longTube(samples, rate, 0);  // the search knows no way where there is none
  std::vector<Tube> parts;
  for (int from = 0; from + stretch <= samples; from += samples / 20)
    parts.emplace_back(tube.begin() + from, tube.begin() + from + stretch);
  std::size_t ours = 0, theirs = 0;
  const double fast = milliseconds([&] {
    ours = 0;
    for (const Tube& part : parts) ours += wend::pulls::fewestMoves(part, {}).ramps();
  });
  const auto search = [&] {
    for (const Tube& part : parts) theirs += wend::pulls::IntervalSearch(part, 120).leastRamps(99).value_or(0);
  };
  const double plain = milliseconds(search, 1);
  std::cout << parts.size() << " stretches of " << stretch << " samples: " << ours << " ramps in " << fast
            << " ms, search over reachable intervals " << theirs << " ramps in " << plain << " ms, " << plain / fast
            << " times as long" << std::endl;
}

/// A tube that jumps at every sample, so that nothing of it can be followed.
void measureMiss(int samples) {
  wend::pulls::Draw draw(7);
  Tube tube;
  for (int i = 0; i < samples; ++i) {
    const double middle = draw.uniform(0, 300);
    tube.push_back({i / 60.0, middle - 1, middle + 1});
  }
  std::vector<double> values;
  const double time = milliseconds([&] { values = wend::pulls::leastMiss(tube, 0, tube.size() - 1, 120); });
  std::cout << samples << " samples that cannot be followed: least integral " << wend::pulls::missOf(tube, values)
            << " degree seconds in " << time << " ms, " << 1e6 * time / samples << " ns a sample" << std::endl;
}

void measure(const char* what, int samples, double rate) {
  const Tube tube = longTube(samples, rate, 0.1);
  const auto way = wend::pulls::passable(tube, 120);
  const double sweep = milliseconds([&] { wend::pulls::rampReach(way.reachable, 120); });
  wend::pulls::Track track;
  const double whole = milliseconds([&] { track = wend::pulls::fewestMoves(tube, {}); });
  std::cout << what << ": " << samples << " samples, " << track.ramps() << " ramps (bound " << track.leastRamps << "), "
            << track.unmet.size() << " unmet, least number " << sweep << " ms, whole track " << whole << " ms, "
            << 1e6 * whole / samples << " ns a sample" << std::endl;
}

}  // namespace

int main() {
  measure("168 s at 24 a second", 4032, 24);
  measure("15 min at 60 a second", 54000, 60);
  measure("a quarter of a million", 250000, 60);
  measure("a million", 1000000, 60);
  for (const int samples : {54000, 1000000}) measureMiss(samples);
  for (const int stretch : {100, 300}) measureAgainstSearch(54000, 60, stretch);
}
