// Moves that the tube leaves free in time: by hand, and on random tubes.
#include "core/pulls/free_moves.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

constexpr MoveRules kRules{1, 0.25, 0.25, 1};

/// -0.1 to 0.1 until 4, 0 to 0.3 until 12, 0.2 to 0.4 then: one move, anywhere between 4 and 12.
Tube stepped() {
  Tube tube;
  for (int i = 0; i <= 64; ++i) {
    const double t = 0.25 * i;
    tube.push_back({t, t <= 4 ? -0.1 : t < 12 ? 0 : 0.2, t <= 4 ? 0.1 : t < 12 ? 0.3 : 0.4, false});
  }
  return tube;
}

TEST(FreeMoves, AreFreeWhileSomeValueBeforeAndSomeValueAfterWouldDo) {
  const Tube tube = stepped();
  const Track track = fewestMoves(tube, kRules);
  ASSERT_EQ(track.moves.size(), 1u);
  const auto free = freeMoves(track, tube, kRules);
  ASSERT_EQ(free.size(), 1u);
  EXPECT_EQ(free[0].span(), (geometry::Span{4.25, 11.75}));
}

TEST(FreeMoves, LieElsewhereWithoutLeavingTheTube) {
  const Tube tube = stepped();
  const Track track = fewestMoves(tube, kRules);
  for (const geometry::Span to : {geometry::Span{4.25, 5}, {7, 8}, {10.75, 11.75}}) {
    const auto other = laid(track, 0, to, tube, kRules);
    ASSERT_TRUE(other) << to.from;
    ASSERT_EQ(other->moves.size(), 1u);
    EXPECT_EQ(other->moves[0].from, to.from);
    EXPECT_EQ(other->moves[0].until, to.until);
    EXPECT_TRUE(other->unmet.empty());
    EXPECT_TRUE(outside(*other, tube).empty());
    EXPECT_EQ(other->leastRamps, track.leastRamps);
    EXPECT_EQ(other->knots.front().t, 0);
    EXPECT_EQ(other->knots.back().t, 16);
  }
  EXPECT_FALSE(laid(track, 0, {11.5, 14}, tube, kRules)) << "past its span the old value would be out";
}

TEST(FreeMoves, AreNotLaidFasterThanTheLimit) {
  const Tube tube = stepped();
  const Track track = fewestMoves(tube, kRules);
  EXPECT_FALSE(laid(track, 0, {7, 7.01}, tube, kRules));
}

TEST(FreeMoves, AreNoneWhereTheTubeTellsTheTime) {
  Tube tube = stepped();
  for (auto& sample : tube)
    if (sample.t > 4) sample.lo = 0.2, sample.hi = 0.4;
  const Track track = fewestMoves(tube, kRules);
  ASSERT_EQ(track.moves.size(), 1u);
  const auto free = freeMoves(track, tube, kRules);
  ASSERT_EQ(free.size(), 1u);
  EXPECT_GE(free[0].span().from, free[0].span().until) << "at no instant would both values do";
}

/// +-0.1 about 0 until 4, rising by 0.25 a second until 8, level then.
Tube sloped() {
  Tube tube;
  for (int i = 0; i <= 48; ++i) {
    const double t = 0.25 * i, middle = 0.25 * (std::clamp(t, 4.0, 8.0) - 4);
    tube.push_back({t, middle - 0.1, middle + 0.1, false});
  }
  return tube;
}

TEST(FreeMoves, RunAlongASlopingTubeAsSlowlyAsAsked) {
  const Tube tube = sloped();
  const Track track = fewestMoves(tube, {1, 0.5, 0.25, 0.25});
  ASSERT_EQ(track.moves.size(), 1u);
  const auto free = freeMoves(track, tube, kRules);
  ASSERT_EQ(free.size(), 1u);
  EXPECT_GE(free[0].span().from, free[0].span().until);
  const geometry::Span to{4, 8};
  ASSERT_LE(free[0].starts.from, to.from);
  ASSERT_GE(free[0].ends.until, to.until);
  const auto along = laid(track, 0, to, tube, kRules);
  ASSERT_TRUE(along);
  EXPECT_NEAR(along->moves[0].peakRate, 0.25, 1e-6) << "the middle runs with the tube";
  // From 0.1 to 0.9 is the least there is: 0.8 over 4 s.
  const auto slow = laid(track, 0, to, tube, kRules, 0.21);
  ASSERT_TRUE(slow);
  EXPECT_NEAR(slow->moves[0].peakRate, 0.21, 1e-9);
  EXPECT_TRUE(outside(*slow, tube).empty());
  EXPECT_EQ(slow->ramps(), track.ramps());
  EXPECT_FALSE(laid(track, 0, to, tube, kRules, 0.19));
  EXPECT_NEAR(*rateAlong(track, 0, to, tube, 0.21), 0.21, 1e-9);
  EXPECT_FALSE(rateAlong(track, 0, to, tube, 0.19));
}

TEST(FreeMoves, CostNoMoveAndNoSlackOnRandomTubes) {
  const MoveRules rules{120, 60, 0.25, 1};
  int asked = 0, laidElsewhere = 0, beyond = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const Tube tube = randomTube(seed, {});
    const Track track = fewestMoves(tube, rules);
    Draw draw(seed);
    for (const FreeMove& free : freeMoves(track, tube, rules)) {
      const double from = draw.uniform(free.starts.from, std::min(free.starts.until, free.ends.until - 0.01));
      const double until = draw.uniform(std::max(free.ends.from, from + 0.01), free.ends.until);
      const double atMost = draw.chance(0.5) ? rules.rate : track.moves[free.move].peakRate;
      if (from < free.starts.from || until <= from || until > free.ends.until) continue;
      const auto other = laid(track, free.move, {from, until}, tube, rules, atMost);
      ++asked;
      if (!other) continue;
      ++laidElsewhere;
      EXPECT_EQ(other->moves.size(), track.moves.size()) << seed;
      EXPECT_EQ(other->ramps(), track.ramps()) << seed;
      EXPECT_LE(other->unmet.size(), track.unmet.size()) << seed;
      EXPECT_EQ(other->moves[free.move].from, from) << seed;
      EXPECT_LE(other->moves[free.move].peakRate, atMost * (1 + 1e-6)) << seed;
      beyond += from < free.span().from || until > free.span().until;
      EXPECT_EQ(other->knots.front().t, track.knots.front().t) << seed;
      EXPECT_EQ(other->knots.back().t, track.knots.back().t) << seed;
      for (std::size_t i = 0; i + 1 < other->knots.size(); ++i) {
        const Knot &a = other->knots[i], &b = other->knots[i + 1];
        ASSERT_LT(a.t, b.t) << seed;
        EXPECT_LE(std::abs(b.value - a.value), rules.rate * (b.t - a.t) * (1 + 1e-9)) << seed;
      }
      for (std::size_t i = 0; i + 1 < other->moves.size(); ++i) {
        EXPECT_GE(other->moves[i + 1].from - other->moves[i].until, rules.shortestHold - 1e-9) << seed;
      }
    }
  }
  std::printf("%d of %d random moves laid elsewhere, %d of them along the tube\n", laidElsewhere, asked, beyond);
  EXPECT_GT(beyond, 30);
  EXPECT_GT(laidElsewhere, 100) << "else this test says little";
}

}  // namespace
}  // namespace wend::pulls
