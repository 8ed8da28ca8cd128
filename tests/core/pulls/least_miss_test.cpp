#include "core/pulls/least_miss.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

#include "core/pulls/fewest_moves.h"
#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

constexpr int kHighest = 15;
constexpr double kStep = 0.5;  // seconds, a power of two, so that sums of weights are exact

/// The least integral of any track, by looking at every whole value at every sample. That is exact when all bounds are
/// whole and the rate leads from whole to whole: the integral is made of straight pieces between such tracks.
double leastByTrying(const Tube& tube, int reach) {
  std::vector<double> least(kHighest + 1, 0.0);
  for (std::size_t i = 0; i < tube.size(); ++i) {
    std::vector<double> next(kHighest + 1, 1e300);
    const int step = i > 0 && tube[i].t > tube[i - 1].t ? reach : 0;
    for (int v = 0; v <= kHighest; ++v) {
      for (int u = std::max(0, v - step); u <= std::min(kHighest, v + step); ++u) {
        const double before = i == 0 ? 0 : least[static_cast<std::size_t>(u)];
        next[static_cast<std::size_t>(v)] = std::min(next[static_cast<std::size_t>(v)], before);
      }
      next[static_cast<std::size_t>(v)] += missAt(tube[i], v) * secondsAt(tube, i);
    }
    least = next;
  }
  return *std::min_element(least.begin(), least.end());
}

Tube wildTube(std::uint64_t seed) {
  Draw draw(seed);
  Tube tube;
  int middle = draw.below(kHighest);
  const int samples = 3 + draw.below(30);
  double t = 0;
  for (int i = 0; i < samples; ++i) {
    if (draw.chance(0.3)) middle = draw.below(kHighest);
    const int half = draw.below(3);
    tube.push_back({t, static_cast<double>(std::max(0, middle - half)),
                    static_cast<double>(std::min(kHighest, middle + half)),
                    draw.chance(0.15) && i > 0 && i + 1 < samples});
    if (!draw.chance(0.1)) t += kStep;  // else a cut
  }
  return tube;
}

TEST(LeastMiss, IsTheLeastOfAnExhaustiveSearch) {
  int missing = 0;
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    const Tube tube = wildTube(seed);
    const int reach = 1 + static_cast<int>(seed % 3);
    const std::vector<double> values = leastMiss(tube, 0, tube.size() - 1, reach / kStep);
    const double least = leastByTrying(tube, reach);
    missing += least > 0;
    ASSERT_NEAR(missOf(tube, values), least, 1e-5) << "seed " << seed;
    for (std::size_t i = 1; i < values.size(); ++i)
      ASSERT_LE(std::abs(values[i] - values[i - 1]), reach / kStep * (tube[i].t - tube[i - 1].t) + 1e-9)
          << "seed " << seed;
  }
  std::cout << missing << " of 3000 tubes cannot be followed, seeds 1 to 3000\n";
  EXPECT_GT(missing, 1500);
}

TEST(FewestMoves, MissAsLittleAsAnyTrackCan) {
  int missing = 0;
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    const Tube tube = wildTube(seed);
    const int reach = 1 + static_cast<int>(seed % 3);
    const double rate = reach / kStep;
    const Track track = fewestMoves(tube, {.rate = rate, .easyRate = rate, .shortestHold = 0.25});
    std::vector<double> values;
    for (const TubeSample& s : tube) values.push_back(track.valueAt(s.t));
    const double least = leastByTrying(tube, reach);
    missing += least > 0;
    ASSERT_NEAR(missOf(tube, values), least, 1e-5) << "seed " << seed;
    double told = 0;
    for (const UnmetSpan& span : track.unmet) told += span.missed;
    ASSERT_NEAR(told, least, 1e-4) << "seed " << seed << ": what is told is what is missed";
  }
  EXPECT_GT(missing, 1500);
}

TEST(LeastMiss, GivesUpAFlightThatIsTooShortToFollow) {
  // To 100 for a tenth of a second and back, at 10 a second: nothing is gained by leaving.
  Tube tube;
  for (int i = 0; i <= 100; ++i) {
    const bool away = i >= 50 && i <= 60;
    tube.push_back({i * 0.01, away ? 100.0 : -0.02, away ? 101.0 : 0.02});
  }
  const Passable way = passable(tube, 10);
  // A peak that goes up at the full rate and down again is worth raising until as much time is lost outside the flight
  // as is won in it: it is then twice as long as the flight, and as high as the rate brings it in that time.
  double highest = 0;
  for (const TubeSample& s : way.reachable) highest = std::max(highest, s.hi);
  EXPECT_NEAR(highest, 1.1, 0.12);
}

TEST(LeastMiss, TakesTheMiddleWhereNoValueWouldDo) {
  EXPECT_EQ(leastMiss({{0, 7, 3}}, 0, 0, 1), std::vector<double>{5});
  EXPECT_EQ(missAt({0, 7, 3}, 5), 2);
  EXPECT_EQ(missAt({0, 7, 3}, 6), 3);
  EXPECT_EQ(missAt({0, 3, 7, true}, 100), 0);
}

TEST(LeastMiss, AsksNothingWhereNothingIsAsked) {
  EXPECT_EQ(leastMiss({{0, 7, 3, true}, {1, 0, 1, true}}, 0, 1, 1), (std::vector<double>{kNowhere, kNowhere}));
}

}  // namespace
}  // namespace wend::pulls
