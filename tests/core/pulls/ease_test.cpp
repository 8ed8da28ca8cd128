#include "core/pulls/ease.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

#include "core/pulls/least_miss.h"
#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

/// Held at 0 and, from 4 s to 6 s, brought up to 10.
Track onePull() {
  Track track;
  track.knots = {{0, 0}, {4, 0}, {6, 10}, {10, 10}};
  track.moves = {{4, 6, 0, 10, 5, 1}};
  return track;
}

Tube wide(double room) {
  Tube tube;
  for (int i = 0; i <= 100; ++i) {
    const double t = i * 0.1, value = onePull().valueAt(t);
    tube.push_back({t, value - room, value + room});
  }
  return tube;
}

TEST(Ease, TakesHalfOfTheRampEachWhereThereIsRoom) {
  Track track = onePull();
  easeEnds(track, wide(100), 0.25);
  EXPECT_NEAR(track.moves[0].easeIn, 2, 1e-12) << "starts a second early, is at full rate a second late";
  EXPECT_NEAR(track.moves[0].easeOut, 2, 1e-12);
  // Even acceleration: from rest at 3 s to 5 a second at 5 s.
  EXPECT_NEAR(easedAt(track, 3), 0, 1e-12);
  EXPECT_NEAR(easedAt(track, 4), 5 * 1.0 / 4, 1e-12);
  EXPECT_NEAR(easedAt(track, 5), 5, 1e-12);
  EXPECT_NEAR(easedAt(track, 6), 10 - 5 * 1.0 / 4, 1e-12);
  EXPECT_NEAR(easedAt(track, 7), 10, 1e-12);
}

TEST(Ease, IsAsLongAsTheSlackAtTheCornerAllows) {
  Track track = onePull();
  easeEnds(track, wide(0.5), 0.25);
  EXPECT_NEAR(track.moves[0].easeIn, 0.8, 1e-12) << "rate x ease / 8 is the room";
  EXPECT_NEAR(easedAt(track, 4), 0.5, 1e-12);
  EXPECT_NEAR(easedAt(track, 6), 9.5, 1e-12);
}

TEST(Ease, IsNothingWhereTheSlackHasNoRoom) {
  Track track = onePull();
  easeEnds(track, wide(0), 0.25);
  EXPECT_NEAR(track.moves[0].easeIn, 0, 1e-6);
  EXPECT_EQ(easedAt(track, 4), 0);
}

TEST(Ease, IsDrawnAsALineCloseToTheCurve) {
  Track track = onePull();
  easeEnds(track, wide(100), 0.25);
  const std::vector<Knot> line = easedLine(track, 10);
  ASSERT_EQ(line.size(), 24u) << "both ends of the take and eleven points on each ease; corners are gone";
  EXPECT_EQ(line.front(), (Knot{0, 0}));
  EXPECT_EQ(line.back(), (Knot{10, 10}));
  const Track drawn{line, {}, {}, 0};
  double worst = 0;
  for (double t = 0; t <= 10; t += 0.001) worst = std::max(worst, std::abs(drawn.valueAt(t) - easedAt(track, t)));
  EXPECT_LE(worst, 5 * 2 / 8.0 / 100 + 1e-9) << "rate x ease / (8 steps^2)";
  EXPECT_GT(worst, 0.001) << "it is a line of chords";
}

TEST(Ease, LeavesARestItsStillness) {
  Track track;
  track.knots = {{0, 0}, {2, 0}, {4, 10}, {4.45, 10}, {6, 0}, {6.1, 0}};
  track.moves = {{2, 4, 0, 10, 5, 1}, {4.45, 6, 10, 0, 10 / 1.55, 1}};
  easeEnds(track, {{0, -100, 100}, {6.1, -100, 100}}, 0.25);
  EXPECT_NEAR(track.moves[0].easeOut, 0.2, 1e-12) << "half of what the rest has over 0.25 s";
  EXPECT_NEAR(track.moves[1].easeIn, 0.2, 1e-12);
  EXPECT_NEAR(track.moves[1].easeOut, 0.2, 1e-12) << "the rest at the end of the take may be used up";
  EXPECT_NEAR(track.moves[0].easeIn, 2 * 1.8, 1e-12) << "what the rest forbids the other end of the ramp anyway";
}

struct End {
  double t, value, slope, rest, ramp;
  bool start;
};

/// The eased curve about an end, by the law of even acceleration; nothing where it is straight.
double curveAt(const End& end, double ease, double t) {
  const double since = end.start ? t - (end.t - ease / 2) : end.t + ease / 2 - t;
  const double run = end.slope * since * since / (2 * ease);
  return end.start ? end.value + run : end.value - run;
}

/// The longest ease inside the tube, by halving.
double longestByTrying(const End& end, const Tube& tube, const Track& track) {
  double least = 0, most = 2 * std::min(end.rest, end.ramp);
  const auto fits = [&](double ease) {
    for (const TubeSample& s : tube)
      if (!s.open && std::abs(s.t - end.t) < ease / 2 &&
          missAt(s, curveAt(end, ease, s.t)) > missAt(s, track.valueAt(s.t)) + 1e-9)
        return false;
    return true;
  };
  if (most > 0 && fits(most)) return most;
  for (int k = 0; k < 50; ++k) (fits((least + most) / 2) ? least : most) = (least + most) / 2;
  return least;
}

/// Starts and ends by turns, in order.
std::vector<End> endsOf(const Track& track, double shortestHold) {
  std::vector<End> ends;
  const auto knots = [&](double t, int off) {
    for (std::size_t k = 0; k < track.knots.size(); ++k)
      if (track.knots[k].t == t) return track.knots[k + static_cast<std::size_t>(off)];
    return Knot{};
  };
  for (std::size_t i = 0; i < track.moves.size(); ++i) {
    const Move& move = track.moves[i];
    const Knot next = knots(move.from, 1), prev = knots(move.until, -1);
    const double before =
        i > 0 ? std::max(0.0, move.from - track.moves[i - 1].until - shortestHold) : move.from - track.knots.front().t;
    const double after = i + 1 < track.moves.size() ? std::max(0.0, track.moves[i + 1].from - move.until - shortestHold)
                                                    : track.knots.back().t - move.until;
    ends.push_back({move.from, move.valueBefore, (next.value - move.valueBefore) / (next.t - move.from), before,
                    next.t - move.from, true});
    ends.push_back({move.until, move.valueAfter, (move.valueAfter - prev.value) / (move.until - prev.t), after,
                    move.until - prev.t, false});
  }
  return ends;
}

void expectLongest(const Track& track, const Tube& tube, double shortestHold, const std::string& which) {
  const std::vector<End> ends = endsOf(track, shortestHold);
  std::vector<double> could;
  for (const End& end : ends) could.push_back(longestByTrying(end, tube, track) / 2);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const Move& move = track.moves[i / 2];
    const double half = (ends[i].start ? move.easeIn : move.easeOut) / 2;
    ASSERT_LE(half, could[i] + 1e-5) << which << ", end " << i;
    if (half >= could[i] - 1e-5) continue;
    // Shorter than the tube allows only where a neighbour wants the same stretch, and then at least half of it.
    bool shared = false;
    for (const std::size_t other : {i - 1, i + 1}) {
      if (other >= ends.size()) continue;
      const bool ramp = other / 2 == i / 2;
      if (ramp && move.ramps > 1) continue;
      const double stretch = ramp ? ends[i].ramp : ends[i].rest;
      shared = shared || half >= std::max(stretch / 2, stretch - could[other]) - 1e-5;
    }
    ASSERT_TRUE(shared) << which << ", end " << i << " could be longer";
  }
}

void expectInside(const Track& track, const Tube& tube, double rate, const std::string& which) {
  double before = easedAt(track, tube.front().t);
  for (std::size_t i = 0; i < tube.size(); ++i) {
    const TubeSample& s = tube[i];
    ASSERT_LE(missAt(s, easedAt(track, s.t)), missAt(s, track.valueAt(s.t)) + 1e-9) << which << " at " << s.t;
    if (i == 0) continue;
    const TubeSample& p = tube[i - 1];
    const bool inside =
        !p.open && !s.open && missAt(p, track.valueAt(p.t)) < 1e-9 && missAt(s, track.valueAt(s.t)) < 1e-9;
    for (int part = 1; part <= 8; ++part) {
      const double share = part / 8.0, t = geometry::lerp(p.t, s.t, share), now = easedAt(track, t);
      ASSERT_LE(std::abs(now - before), rate * (s.t - p.t) / 8 * (1 + 1e-6) + 1e-9) << which << " at " << t;
      before = now;
      if (!inside) continue;
      ASSERT_GE(now, geometry::lerp(p.lo, s.lo, share) - 3e-9) << which << " at " << t;
      ASSERT_LE(now, geometry::lerp(p.hi, s.hi, share) + 3e-9) << which << " at " << t;
    }
  }
}

TEST(Ease, IsInsideTheTubeAndNoFasterAndCannotBeLonger) {
  double eased = 0;
  int moves = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    Draw draw(seed + 9000);
    const TubeStyle style{.samples = 100 + draw.below(300),
                          .drift = draw.uniform(0, 90),
                          .gaps = draw.chance(0.5) ? 0.02 : 0,
                          .narrowest = draw.chance(0.3) ? 0.05 : 1};
    const Tube tube = randomTube(seed, style);
    const MoveRules rules{.rate = draw.uniform(80, 200), .easyRate = 40};
    const Track track = fewestMoves(tube, rules);
    const std::string which = "seed " + std::to_string(seed);
    ASSERT_NO_FATAL_FAILURE(expectInside(track, tube, rules.rate, which));
    ASSERT_NO_FATAL_FAILURE(expectLongest(track, tube, rules.shortestHold, which));
    for (const Move& move : track.moves) eased += move.easeIn + move.easeOut;
    moves += static_cast<int>(track.moves.size());
  }
  std::cout << moves << " moves, seeds 1 to 200, eased over " << eased / moves / 2 << " s an end on average\n";
  EXPECT_GT(eased / moves, 0.1);
}

}  // namespace
}  // namespace wend::pulls
