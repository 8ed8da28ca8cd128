#include "core/pulls/fewest_moves.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/pulls/ease.h"
#include "core/pulls/least_miss.h"
#include "core/pulls/least_stands.h"

namespace wend::pulls {
namespace {

// What counts as outside: a tube that needs the full rate exactly is obeyed, though it was narrowed for rounding.
constexpr double kOutside = 1e-6;

std::vector<Knot> knotsOf(const std::vector<Stand>& stands, const Tube& tube) {
  std::vector<Knot> knots;
  for (const Stand& stand : stands) {
    for (const std::size_t at : {stand.from, stand.until})
      if (knots.empty() || knots.back().t < tube[at].t) knots.push_back({tube[at].t, stand.value});
  }
  return knots;
}

/// A level piece long enough to be a rest, or cut short by an end of the take.
bool rests(const std::vector<Knot>& knots, std::size_t piece, double shortestHold) {
  if (knots[piece].value != knots[piece + 1].value) return false;
  const bool end = piece == 0 || piece + 2 == knots.size();
  return end || knots[piece + 1].t - knots[piece].t >= shortestHold;
}

std::vector<Move> movesOf(const std::vector<Knot>& knots, double shortestHold) {
  std::vector<Move> moves;
  bool moving = false;
  for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
    const Knot &a = knots[i], &b = knots[i + 1];
    if (rests(knots, i, shortestHold)) {
      moving = false;
      continue;
    }
    const double rate = std::abs(b.value - a.value) / (b.t - a.t);
    if (!moving) moves.push_back({a.t, b.t, a.value, b.value, rate, 0});
    Move& move = moves.back();
    move.until = b.t;
    move.valueAfter = b.value;
    move.peakRate = std::max(move.peakRate, rate);
    if (b.value != a.value) ++move.ramps;
    moving = true;
  }
  return moves;
}

}  // namespace

double Track::valueAt(double t) const {
  WEND_CHECK(!knots.empty());
  if (t <= knots.front().t) return knots.front().value;
  if (t >= knots.back().t) return knots.back().value;
  const auto after = std::upper_bound(knots.begin(), knots.end(), t, [](double x, const Knot& k) { return x < k.t; });
  const Knot &a = *(after - 1), &b = *after;
  return geometry::lerp(a.value, b.value, (t - a.t) / (b.t - a.t));
}

std::size_t Track::ramps() const {
  std::size_t count = 0;
  for (const Move& move : moves) count += move.ramps;
  return count;
}

std::vector<UnmetSpan> outside(const Track& track, const Tube& tube) {
  std::vector<UnmetSpan> spans;
  bool within = false;
  for (std::size_t i = 0; i < tube.size(); ++i) {
    const TubeSample& s = tube[i];
    const double miss = missAt(s, track.valueAt(s.t));
    if (miss <= kOutside) {
      within = within && s.t == spans.back().span.until;
      continue;
    }
    if (!within) spans.push_back({{s.t, s.t}});
    UnmetSpan& span = spans.back();
    span.span.until = s.t;
    span.worst = std::max(span.worst, miss);
    span.missed += miss * secondsAt(tube, i);
    if (s.lo > s.hi) span.reason = Unmet::noValue;
    within = true;
  }
  return spans;
}

namespace {

Track planned(const Tube& tube, const MoveRules& rules, const Tube* asked) {
  WEND_CHECK(rules.easyRate > 0 && rules.easyRate <= rules.rate && rules.shortestHold >= 0 && rules.easySeconds >= 0);
  Passable way = passable(tube, rules.rate);
  LeastStands found = leastStands(way, rules.rate);
  const std::vector<Stand> stands = eased(std::move(found.stands), way, rules, asked);
  Track track;
  track.leastRamps = found.least;
  track.knots = knotsOf(stands, way.wanted);
  track.moves = movesOf(track.knots, rules.shortestHold);
  easeEnds(track, tube, rules.shortestHold);
  track.unmet = outside(track, tube);
  return track;
}

}  // namespace

Track fewestMoves(const Tube& tube, const MoveRules& rules) {
  return planned(tube, rules, nullptr);
}

Track fewestMoves(const Tube& tube, const MoveRules& rules, const Tube& asked) {
  return planned(tube, rules, &asked);
}

}  // namespace wend::pulls
