/// Prints how long the fewest moves take, for a take and for tubes of growing length.
#include <chrono>
#include <iostream>

#include "core/pulls/fewest_moves.h"
#include "core/pulls/ramp_reach.h"
#include "tests/core/pulls/random_tube.h"

namespace {

using wend::pulls::Tube;

double milliseconds(const auto& work) {
  double best = 1e300;
  for (int round = 0; round < 3; ++round) {
    const auto before = std::chrono::steady_clock::now();
    work();
    best = std::min(best, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - before).count());
  }
  return best;
}

void measure(const char* what, int samples, double rate) {
  const Tube tube = wend::pulls::randomTube(
      7, {.samples = samples, .step = 1 / rate, .drift = 20, .gaps = 0.1 / rate, .narrowest = 1});
  const auto way = wend::pulls::passable(tube, 120);
  const double sweep = milliseconds([&] { wend::pulls::rampReach(way.reachable, 120); });
  wend::pulls::Track track;
  const double whole = milliseconds([&] { track = wend::pulls::fewestMoves(tube, {}); });
  std::cout << what << ": " << samples << " samples, " << track.ramps() << " ramps (bound " << track.leastRamps
            << "), least number " << sweep << " ms, whole track " << whole << " ms" << std::endl;
}

}  // namespace

int main() {
  measure("168 s at 24 a second", 4032, 24);
  measure("15 min at 60 a second", 54000, 60);
  measure("a quarter of a million", 250000, 60);
  measure("a million", 1000000, 60);
}
