#include "core/pulls/track_moves.h"

#include <algorithm>
#include <cmath>

namespace wend::pulls {
namespace {

/// A level piece long enough to be a rest, or cut short by an end of the take.
bool rests(const std::vector<Knot>& knots, std::size_t piece, double shortestHold) {
  if (knots[piece].value != knots[piece + 1].value) return false;
  const bool end = piece == 0 || piece + 2 == knots.size();
  return end || knots[piece + 1].t - knots[piece].t >= shortestHold;
}

}  // namespace

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

}  // namespace wend::pulls
