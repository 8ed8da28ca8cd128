#include "core/pulls/fewest_moves.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

constexpr double kFrame = 1.0 / 24;

/// Samples a frame apart from `from` frames on, `count` of them.
void add(Tube& tube, int from, int count, double lo, double hi, bool open = false) {
  for (int i = 0; i < count; ++i) tube.push_back({(from + i) * kFrame, lo, hi, open});
}

TEST(FewestMoves, StandsStillWhereOneValueServes) {
  Tube tube;
  for (int i = 0; i < 240; ++i) tube.push_back({i * kFrame, 10 + 3 * std::sin(i * 0.1), 20 + 3 * std::sin(i * 0.1)});
  const Track track = fewestMoves(tube, {});
  EXPECT_TRUE(track.moves.empty());
  EXPECT_TRUE(track.unmet.empty());
  ASSERT_EQ(track.knots.size(), 2u);
  EXPECT_NEAR(track.knots[0].value, 15, 0.01) << "in the middle of what serves throughout";
  EXPECT_EQ(track.knots[0].value, track.knots[1].value);
}

TEST(FewestMoves, ChangesSubjectInOneStraightPullThroughTheGap) {
  Tube tube;
  add(tube, 0, 48, 9, 11);
  add(tube, 48, 36, 0, 0, true);
  add(tube, 84, 48, 99, 101);
  const Track track = fewestMoves(tube, {});
  ASSERT_EQ(track.moves.size(), 1u);
  const Move& move = track.moves[0];
  EXPECT_EQ(move.ramps, 1u);
  EXPECT_NEAR(move.from, 47 * kFrame, 1e-12) << "the last frame of the one";
  EXPECT_NEAR(move.until, 84 * kFrame, 1e-12) << "the first frame of the other";
  EXPECT_NEAR(move.valueBefore, 10, 1e-3) << "from the middle of the slack";
  EXPECT_NEAR(move.valueAfter, 100, 1e-3);
  EXPECT_NEAR(move.peakRate, 90 / (37 * kFrame), 0.01);
  EXPECT_TRUE(track.unmet.empty());
}

TEST(FewestMoves, LeavesBeforeAGapTooShortForTheRate) {
  Tube tube;
  add(tube, 0, 48, 0, 20);
  add(tube, 48, 12, 0, 0, true);
  add(tube, 60, 48, 80, 100);
  const Track track = fewestMoves(tube, {.rate = 120, .easyRate = 60});
  // 60 degrees lie between the two at least; 13 frames at 120 a second are 65.
  ASSERT_EQ(track.moves.size(), 1u);
  EXPECT_EQ(track.moves[0].ramps, 1u);
  EXPECT_LE(track.moves[0].peakRate, 120 * (1 + 1e-9));
  EXPECT_TRUE(track.unmet.empty());
}

TEST(FewestMoves, TakesItsTimeOverASmallChangeWhereTheTubeLetsIt) {
  Tube tube;
  add(tube, 0, 96, 0, 1);
  add(tube, 96, 1, 0, 3);
  add(tube, 97, 96, 2, 3);
  const auto quick = fewestMoves(tube, {.rate = 120, .easyRate = 60});
  ASSERT_EQ(quick.moves.size(), 1u);
  EXPECT_LT(quick.moves[0].until - quick.moves[0].from, 0.2) << "nothing to make it slower for";
  Tube wide;
  add(wide, 0, 96, 0, 1);
  add(wide, 96, 48, 0, 3);
  add(wide, 144, 96, 2, 3);
  const auto easy = fewestMoves(wide, {.rate = 120, .easyRate = 60, .easySeconds = 1});
  ASSERT_EQ(easy.moves.size(), 1u);
  EXPECT_NEAR(easy.moves[0].until - easy.moves[0].from, 1, 2 * kFrame);
  Tube half;
  add(half, 0, 96, 0, 1);
  add(half, 96, 12, 0, 3);
  add(half, 108, 96, 2, 3);
  const auto pressed = fewestMoves(half, {.rate = 120, .easyRate = 60, .easySeconds = 1});
  ASSERT_EQ(pressed.moves.size(), 1u);
  EXPECT_TRUE(pressed.unmet.empty());
  EXPECT_GE(pressed.moves[0].until - pressed.moves[0].from, 0.5 - 2 * kFrame) << "as long as the tube lets it";
  EXPECT_LT(pressed.moves[0].until - pressed.moves[0].from, 1);
}

TEST(FewestMoves, SaysWhereAndHowFarATubeCannotBeFollowed) {
  Tube tube;
  add(tube, 0, 49, -1, 1);
  add(tube, 48, 49, 99, 101);
  const Track track = fewestMoves(tube, {.rate = 120, .easyRate = 60});
  ASSERT_EQ(track.unmet.size(), 1u);
  EXPECT_EQ(track.unmet[0].reason, Unmet::tooFast);
  EXPECT_NEAR(track.unmet[0].worst, 49, 6) << "half the jump between the edges, within a frame";
  EXPECT_NEAR((track.unmet[0].span.from + track.unmet[0].span.until) / 2, 2, kFrame);
  EXPECT_LT(track.unmet[0].span.length(), 98.0 / 120 + 2 * kFrame) << "no longer than the jump takes at full rate";
}

TEST(FewestMoves, SaysWhereNoValueWouldDo) {
  Tube tube;
  add(tube, 0, 24, 0, 10);
  add(tube, 24, 10, 6, 4);
  add(tube, 34, 24, 0, 10);
  const Track track = fewestMoves(tube, {});
  ASSERT_EQ(track.unmet.size(), 1u);
  EXPECT_EQ(track.unmet[0].reason, Unmet::noValue);
  EXPECT_NEAR(track.unmet[0].worst, 1, 1e-6);
  EXPECT_TRUE(track.moves.empty());
}

TEST(FewestMoves, FollowsASteadyApproachInOneLongMove) {
  Tube tube;
  add(tube, 0, 24, -2, 2);
  for (int i = 0; i < 240; ++i) tube.push_back({(24 + i) * kFrame, i * 0.5 - 2, i * 0.5 + 2});
  add(tube, 264, 24, 118, 122);
  const Track track = fewestMoves(tube, {});
  EXPECT_EQ(track.ramps(), 1u) << "a pull would last a third of a second on each of many rests";
  ASSERT_EQ(track.moves.size(), 1u);
  EXPECT_NEAR(track.moves[0].peakRate, 12, 1);
}

TEST(FewestMoves, MayStartAndEndOnTheMove) {
  Tube tube;
  for (int i = 0; i < 100; ++i) tube.push_back({i * kFrame, i * 1.0 - 0.5, i * 1.0 + 0.5});
  const Track track = fewestMoves(tube, {});
  EXPECT_EQ(track.ramps(), 1u);
  EXPECT_TRUE(track.unmet.empty());
}

TEST(FewestMoves, SingleSampleIsARest) {
  const Track track = fewestMoves({{3, 1, 2}}, {});
  EXPECT_TRUE(track.moves.empty());
  EXPECT_NEAR(track.valueAt(3), 1.5, 1e-9);
  EXPECT_NEAR(track.valueAt(-1), 1.5, 1e-9);
}

TEST(FewestMoves, SameTubeSameBits) {
  const Tube tube = randomTube(5, {.samples = 1000});
  const Track one = fewestMoves(tube, {}), two = fewestMoves(tube, {});
  EXPECT_EQ(one.knots, two.knots);
}

TEST(FewestMoves, ShiftedTubeIsTheSameTask) {
  const Tube tube = randomTube(6, {.samples = 600});
  Tube shifted = tube;
  for (TubeSample& s : shifted) {
    s.lo += 64;
    s.hi += 64;
  }
  EXPECT_EQ(fewestMoves(tube, {}).ramps(), fewestMoves(shifted, {}).ramps());
}

/// What holds of every track whatever the tube.
void expectLawful(const Tube& tube, const MoveRules& rules, const Track& track, const std::string& which) {
  const auto unmetAt = [&](double t) {
    for (const UnmetSpan& span : track.unmet)
      if (span.span.contains(t)) return true;
    return false;
  };
  ASSERT_EQ(track.knots.front().t, tube.front().t) << which;
  ASSERT_EQ(track.knots.back().t, tube.back().t) << which;
  for (std::size_t i = 0; i + 1 < track.knots.size(); ++i) {
    const Knot &a = track.knots[i], &b = track.knots[i + 1];
    ASSERT_LT(a.t, b.t) << which;
    ASSERT_LE(std::abs(b.value - a.value), rules.rate * (b.t - a.t) * (1 + 1e-6)) << which << " at " << a.t;
  }
  for (std::size_t i = 0; i < tube.size(); ++i) {
    const TubeSample& s = tube[i];
    if (!s.open && !unmetAt(s.t)) {
      ASSERT_GE(track.valueAt(s.t), s.lo - 1e-9) << which << " at " << s.t;
      ASSERT_LE(track.valueAt(s.t), s.hi + 1e-9) << which << " at " << s.t;
    }
    if (i == 0 || s.open || tube[i - 1].open || unmetAt(s.t) || unmetAt(tube[i - 1].t)) continue;
    for (const double share : {0.25, 0.5, 0.75}) {
      const TubeSample& p = tube[i - 1];
      const double value = track.valueAt(geometry::lerp(p.t, s.t, share));
      if (p.t == s.t) continue;
      ASSERT_GE(value, geometry::lerp(p.lo, s.lo, share) - 2e-9) << which << " between samples at " << s.t;
      ASSERT_LE(value, geometry::lerp(p.hi, s.hi, share) + 2e-9) << which << " between samples at " << s.t;
    }
  }
  for (std::size_t i = 0; i + 1 < track.moves.size(); ++i)
    ASSERT_GE(track.moves[i + 1].from - track.moves[i].until, rules.shortestHold - 1e-9) << which;
}

TEST(FewestMoves, RandomTubesAreObeyedEverywhere) {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    Draw draw(seed + 5000);
    const TubeStyle style{.samples = 30 + draw.below(500),
                          .drift = draw.uniform(0, 90),
                          .gaps = draw.chance(0.5) ? 0.02 : 0,
                          .narrowest = draw.chance(0.3) ? 0.01 : 1};
    const Tube tube = randomTube(seed, style);
    const MoveRules rules{.rate = draw.uniform(100, 200), .easyRate = 40};
    ASSERT_NO_FATAL_FAILURE(expectLawful(tube, rules, fewestMoves(tube, rules), "seed " + std::to_string(seed)));
  }
}

TEST(FewestMoves, TubesNoTrackCanFollowAreFollowedWhereTheyCanBe) {
  int failed = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const Tube tube = randomTube(seed, {.samples = 300, .drift = 200, .gaps = 0.02, .cuts = 0.01, .narrowest = 0.1});
    const MoveRules rules{.rate = 80, .easyRate = 60};
    const Track track = fewestMoves(tube, rules);
    failed += !track.unmet.empty();
    ASSERT_NO_FATAL_FAILURE(expectLawful(tube, rules, track, "seed " + std::to_string(seed)));
  }
  EXPECT_GT(failed, 100);
}

}  // namespace
}  // namespace wend::pulls
