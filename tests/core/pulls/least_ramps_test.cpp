/// The planner's count of ramps against an exhaustive search on small tubes with values on a grid.
#include <gtest/gtest.h>

#include <cmath>
#include <iostream>
#include <limits>

#include "core/pulls/fewest_moves.h"
#include "tests/core/pulls/interval_search.h"
#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

constexpr int kNever = 1000000;
constexpr int kHighest = 12;
const MoveRules kRules{.rate = 16.01, .easyRate = 8, .shortestHold = 0.25};

bool straight(const Tube& tube, std::size_t i, double v, std::size_t j, double w) {
  const double time = tube[j].t - tube[i].t;
  if (std::abs(w - v) > kRules.rate * time + 1e-12) return false;
  for (std::size_t k = i; k <= j; ++k) {
    const double value = v + (w - v) * (tube[k].t - tube[i].t) / time;
    if (!tube[k].open && (value < tube[k].lo - 1e-12 || value > tube[k].hi + 1e-12)) return false;
  }
  return true;
}

/// The least number of ramps of any track with knots at samples and at values `grain` apart, whatever it takes: level
/// pieces cost nothing, other straight pieces one each.
int leastRamps(const Tube& tube, double grain) {
  const std::size_t values = static_cast<std::size_t>(kHighest / grain) + 1;
  const auto valueOf = [grain](std::size_t v) { return static_cast<double>(v) * grain; };
  const std::size_t n = tube.size();
  std::vector<std::vector<int>> least(n, std::vector<int>(values, kNever));
  for (std::size_t v = 0; v < values; ++v)
    if (tube[0].open || (valueOf(v) >= tube[0].lo && valueOf(v) <= tube[0].hi)) least[0][v] = 0;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t v = 0; v < values; ++v) {
      if (least[i][v] >= kNever) continue;
      for (std::size_t j = i + 1; j < n; ++j) {
        for (std::size_t w = 0; w < values; ++w) {
          const int then = least[i][v] + (v == w ? 0 : 1);
          if (then < least[j][w] && straight(tube, i, valueOf(v), j, valueOf(w))) least[j][w] = then;
        }
      }
    }
  }
  return *std::min_element(least[n - 1].begin(), least[n - 1].end());
}

Tube smallTube(std::uint64_t seed) {
  Draw draw(seed);
  Tube tube;
  int middle = draw.below(kHighest + 1), half = 1;
  const int samples = 6 + draw.below(14);
  int open = 0;
  for (int i = 0; i < samples; ++i) {
    if (draw.chance(0.5)) middle = std::clamp(middle + draw.below(3) - 1, 0, kHighest);
    if (draw.chance(0.2)) half = draw.below(4);
    if (open == 0 && draw.chance(0.12)) open = 1 + draw.below(5);
    if (open > 0 && --open == 0) middle = draw.below(kHighest + 1);
    // A hair of room, so that no track depends on touching two edges at once.
    const double lo = std::max(0, middle - half) - 0.01, hi = std::min(kHighest, middle + half) + 0.01;
    tube.push_back({i * 0.125, lo, hi, open > 0 && i > 0 && i + 1 < samples});
  }
  return tube;
}

struct Tally {
  int tried = 0, fewer = 0, equal = 0, over = 0, worst = 0, unproven = 0;
};

Tally compare(std::uint64_t seeds, double grain) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
    const Tube tube = smallTube(seed);
    const int least = leastRamps(tube, grain);
    if (least >= kNever) continue;  // no track on the grid; there may be one between its values
    const Track track = fewestMoves(tube, kRules);
    EXPECT_TRUE(track.unmet.empty()) << "seed " << seed << ": a track exists";
    const int found = static_cast<int>(track.ramps());
    EXPECT_LE(static_cast<int>(track.leastRamps), least) << "seed " << seed << ": the bound is above a track that is";
    EXPECT_LE(static_cast<int>(track.leastRamps), found) << "seed " << seed;
    tally.unproven += track.leastRamps != track.ramps();
    ++tally.tried;
    ++(found < least ? tally.fewer : found == least ? tally.equal : tally.over);
    tally.worst = std::max(tally.worst, found - least);
  }
  std::cout << tally.tried << " tubes, seeds 1 to " << seeds << ", grain " << grain << ": " << tally.fewer << " fewer, "
            << tally.equal << " equal, " << tally.over << " over, by " << tally.worst << " at worst; " << tally.unproven
            << " not proven\n";
  return tally;
}

// Fewer than on the grid is no fault: the planner may turn between two samples and at any value.
TEST(FewestMoves, IsTheLeastOfAnExhaustiveSearchOnSmallTubes) {
  const Tally coarse = compare(3000, 1);
  EXPECT_GT(coarse.tried, 2000);
  EXPECT_EQ(coarse.over, 0);
  EXPECT_EQ(coarse.unproven, 0);
}

TEST(FewestMoves, IsTheLeastOfAFinerSearch) {
  const Tally fine = compare(400, 0.25);
  EXPECT_GT(fine.tried, 300);
  EXPECT_EQ(fine.over, 0);
}

// Bounds anywhere, long enough for a dozen ramps. The search turns at samples only, so the planner may do with fewer.
TEST(FewestMoves, IsNoMoreThanASearchOverReachableIntervals) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    const Tube tube =
        randomTube(seed, {.samples = 90, .step = 1.0 / 12, .drift = 40, .gaps = seed % 2 ? 0.02 : 0, .narrowest = 1});
    const Track track = fewestMoves(tube, {});
    if (!track.unmet.empty()) continue;
    const auto least = IntervalSearch(tube, MoveRules{}.rate).leastRamps(60);
    ASSERT_TRUE(least) << "seed " << seed << ": a track exists";
    ASSERT_LE(track.leastRamps, *least) << "seed " << seed << ": the bound is above a track that is";
    ++tally.tried;
    ++(track.ramps() < *least ? tally.fewer : track.ramps() == *least ? tally.equal : tally.over);
    tally.unproven += track.ramps() != track.leastRamps;
  }
  std::cout << tally.tried << " tubes of 90 samples, seeds 1 to 2000: " << tally.fewer << " fewer, " << tally.equal
            << " equal, " << tally.over << " over; " << tally.unproven << " not proven\n";
  EXPECT_GT(tally.tried, 1000);
  EXPECT_EQ(tally.over, 0);
}

// A track as long as its own lower bound needs no search beside it.
TEST(FewestMoves, MeetsItsOwnLowerBoundOnLongTubes) {
  int proven = 0, tried = 0;
  std::size_t ramps = 0, over = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    const Tube tube = randomTube(seed, {.samples = 600, .drift = 40, .gaps = seed % 2 ? 0.01 : 0, .narrowest = 1});
    const Track track = fewestMoves(tube, {});
    ASSERT_GE(track.ramps(), track.leastRamps) << "seed " << seed;
    ++tried;
    proven += track.ramps() == track.leastRamps;
    ramps += track.leastRamps;
    over += track.ramps() - track.leastRamps;
  }
  std::cout << tried << " tubes of 600 samples, seeds 1 to 1500: " << proven << " proven least; " << ramps
            << " ramps in all, " << over << " over the bound\n";
  EXPECT_EQ(proven, tried);
}

/// The least travel of any track inside the tube, with as many ramps as it likes and no limit: it moves only when it
/// has to and no further, and sets out from the nearest of what serves longest.
double leastTravel(const Tube& tube) {
  Choice start{-1e9, 1e9};
  double value = 0, travel = 0;
  bool begun = false;
  for (const TubeSample& s : tube) {
    if (s.open) continue;
    const Choice serving = start.cut({s.lo, s.hi});
    if (!begun && !serving.empty()) {
      start = serving;
      continue;
    }
    if (!begun) value = s.lo > start.hi ? start.hi : start.lo;
    begun = true;
    const double next = std::clamp(value, s.lo, s.hi);
    travel += std::abs(next - value);
    value = next;
  }
  return travel;
}

// Travel is not made least: rests in the middle of their choice keep most of the slack on both sides instead.
TEST(FewestMoves, KeepsToTheMiddleAndTravelsLittleMoreThanItMust) {
  double travel = 0, least = 0, kept = 0, half = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    const Tube tube = randomTube(seed, {.samples = 600, .drift = 40, .gaps = seed % 2 ? 0.01 : 0, .narrowest = 1});
    const Track track = fewestMoves(tube, {});
    if (!track.unmet.empty()) continue;
    double here = 0;
    for (std::size_t k = 1; k < track.knots.size(); ++k)
      here += std::abs(track.knots[k].value - track.knots[k - 1].value);
    ASSERT_GE(here, leastTravel(tube) - 1e-6) << "seed " << seed;
    travel += here;
    least += leastTravel(tube);
    for (const TubeSample& s : tube) {
      if (s.open) continue;
      kept += std::min(track.valueAt(s.t) - s.lo, s.hi - track.valueAt(s.t));
      half += (s.hi - s.lo) / 2;
    }
  }
  std::cout << "travel " << travel / least << " times the least of any track, " << 100 * kept / half
            << " % of half the slack left on the nearer side, on average\n";
  EXPECT_LT(travel, 1.1 * least);
  EXPECT_GT(kept, 0.6 * half);
}

}  // namespace
}  // namespace wend::pulls
