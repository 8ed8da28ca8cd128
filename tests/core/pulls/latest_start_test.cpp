#include "core/pulls/latest_start.h"

#include <gtest/gtest.h>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

constexpr double kRate = 100;

/// Tube edges at any instant, straight between samples, free beside an open one.
std::pair<double, double> edgesAt(const Tube& tube, double t) {
  constexpr double kFree = 1e9;
  for (const TubeSample& sample : tube)
    if (sample.t == t && !sample.open) return {sample.lo, sample.hi};
  for (std::size_t i = 0; i + 1 < tube.size(); ++i) {
    const TubeSample &a = tube[i], &b = tube[i + 1];
    if (t < a.t || t > b.t) continue;
    if (a.open || b.open) return {-kFree, kFree};
    const double share = (t - a.t) / (b.t - a.t);
    return {a.lo + share * (b.lo - a.lo), a.hi + share * (b.hi - a.hi)};
  }
  return tube.back().open ? std::pair{-kFree, kFree} : std::pair{tube.back().lo, tube.back().hi};
}

/// Forwards, by what can be reached on a fine clock: whether the axis may stand until `late` and still be at the
/// move's end value when the next move starts.
bool canWaitUntil(const Tube& tube, const Track& track, std::size_t move, double late, double slack) {
  const Move& planned = track.moves[move];
  const double end = move + 1 < track.moves.size() ? track.moves[move + 1].from : track.knots.back().t;
  double lo = planned.valueBefore, hi = lo, t = planned.from;
  const double tick = 1e-3;
  while (t < end - 1e-12) {
    double next = std::min(t + tick, end);
    for (const TubeSample& sample : tube)  // one between two open ones asks something at its own instant only
      if (sample.t > t && sample.t < next) next = sample.t;
    const double free = std::max(0.0, next - std::max(t, late));
    const auto [from, until] = edgesAt(tube, next);
    lo = std::max(lo - kRate * free, from - slack);
    hi = std::min(hi + kRate * free, until + slack);
    if (lo > hi) return false;
    t = next;
  }
  return planned.valueAfter >= lo - slack && planned.valueAfter <= hi + slack;
}

TEST(LatestStart, OfAPullInAGapLeavesTimeForTheFullRate) {
  // 10 to 60 degrees while nothing is asked from 1 to 3 s: half a second at full rate.
  const Tube tube{{0, 9, 11, false}, {1, 9, 11, false}, {2, 0, 0, true}, {3, 59, 61, false}, {4, 59, 61, false}};
  const Track track{{{0, 10}, {1, 10}, {3, 60}, {4, 60}}, {{1, 3, 10, 60, 25, 1}}, {}, 1};
  ASSERT_TRUE(latestStart(tube, track, 0, kRate));
  EXPECT_NEAR(*latestStart(tube, track, 0, kRate), 3 - (59 - 10) / kRate, 1e-6);
}

TEST(LatestStart, IsWhereTheTubeLeavesTheHeldValue) {
  // The lower edge rises by 10 a second from 8 and passes 10 at 0.2 s; the rate is ten times that.
  const Tube tube{{0, 8, 20, false}, {5, 58, 70, false}, {6, 58, 70, false}};
  const Track track{{{0, 10}, {5, 60}, {6, 60}}, {{0, 5, 10, 60, 10, 1}}, {}, 1};
  EXPECT_NEAR(*latestStart(tube, track, 0, kRate), 0.2, 1e-5);
}

TEST(LatestStart, IsNothingWhereEvenTheMoveLeavesTheTube) {
  const Tube tube{{0, 9, 11, false}, {1, 9, 11, false}, {1.1, 59, 61, false}, {2, 59, 61, false}};
  const Track track{{{0, 10}, {0.8, 10}, {1.3, 60}, {2, 60}}, {{0.8, 1.3, 10, 60, 100, 1}}, {}, 1};
  EXPECT_FALSE(latestStart(tube, track, 0, kRate));
}

TEST(LatestStart, IsTheLastFromWhichTheRestCanBeFollowed) {
  std::size_t looked = 0, later = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    SCOPED_TRACE(seed);
    TubeStyle style;
    style.samples = 120;
    const Tube tube = randomTube(seed, style);
    const Track track = fewestMoves(tube, {kRate, 60, 0.25});
    for (std::size_t i = 0; i < track.moves.size(); ++i) {
      const auto late = latestStart(tube, track, i, kRate);
      if (!late) continue;
      ++looked;
      later += *late > track.moves[i].from + 0.05;
      EXPECT_GE(*late, track.moves[i].from);
      // A tick of the clock is a tenth of a degree at full rate.
      EXPECT_TRUE(canWaitUntil(tube, track, i, *late - 2e-3, 1e-4)) << i;
      if (std::abs(track.moves[i].valueAfter - track.moves[i].valueBefore) < 1) continue;  // hardly a move
      EXPECT_FALSE(canWaitUntil(tube, track, i, *late + 4e-3, kLateRounding)) << i;
    }
  }
  EXPECT_GT(looked, 100u);
  EXPECT_GT(later, looked / 4);
}

}  // namespace
}  // namespace wend::pulls
