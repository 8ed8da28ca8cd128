#include "core/pulls/ease.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace wend::pulls {
namespace {

/// Where a move starts or ends: rest on one side, `slope` on the other.
struct Corner {
  double t = 0, value = 0, slope = 0;
  bool start = true;
  double straightAt(double at) const { return start == (at > t) ? value + slope * (at - t) : value; }
  /// An eased start runs ahead of the corner, an eased end stays behind it.
  double side() const { return start == (slope > 0) ? 1 : -1; }
};

/// How far the eased curve is from the straight one, `away` seconds from the corner.
double rounding(double slope, double ease, double away) {
  const double within = ease / 2 - away;
  return ease > 0 && within > 0 ? std::abs(slope) * within * within / (2 * ease) : 0;
}

/// The longest ease whose curve is no more than `room` from the straight one there: rounding() grows with the ease, and
/// this is the greater root of rounding = room.
double longestFor(double slope, double away, double room) {
  const double half = away + 2 * room / std::abs(slope);
  return 2 * (half + std::sqrt(std::max(0.0, half * half - away * away)));
}

/// The longest ease up to `most` that the tube has room for. The curve bulges towards one edge only, so between two
/// samples it lies under the chord of its own values there, and the samples say it all.
double easeInside(const Corner& corner, const Tube& tube, double most) {
  const auto limited = [&](const TubeSample& s) {
    if (s.open) return;
    const double value = corner.straightAt(s.t), side = corner.side();
    const double room = std::max(0.0, side > 0 ? s.hi - value : value - s.lo);
    most = std::min(most, longestFor(corner.slope, std::abs(s.t - corner.t), room));
  };
  const auto at =
      std::lower_bound(tube.begin(), tube.end(), corner.t, [](const TubeSample& s, double time) { return s.t < time; });
  for (auto s = at; s != tube.end() && s->t - corner.t < most / 2; ++s) limited(*s);
  for (auto s = at; s != tube.begin() && corner.t - std::prev(s)->t < most / 2; --s) limited(*std::prev(s));
  return most;
}

/// The two knots about an instant at which one stands.
std::size_t knotAt(const Track& track, double t) {
  const auto at =
      std::lower_bound(track.knots.begin(), track.knots.end(), t, [](const Knot& k, double x) { return k.t < x; });
  return static_cast<std::size_t>(at - track.knots.begin());
}

double slopeAfter(const Track& track, std::size_t knot) {
  const Knot &a = track.knots[knot], &b = track.knots[knot + 1];
  return b.t > a.t ? (b.value - a.value) / (b.t - a.t) : 0;
}

Corner startOf(const Track& track, const Move& move) {
  return {move.from, move.valueBefore, slopeAfter(track, knotAt(track, move.from)), true};
}
Corner endOf(const Track& track, const Move& move) {
  return {move.until, move.valueAfter, slopeAfter(track, knotAt(track, move.until) - 1), false};
}

/// What one of two may take of a stretch, when the other can use so much at most.
double shareOf(double stretch, double other) {
  return std::max(stretch / 2, stretch - other);
}

/// An ease in the making: half of it lies before its corner and half after.
struct Half {
  Corner corner;
  double most = 0;  ///< that the tube has room for
};

/// The stretches that each two neighbours share: rests and ramps by turns, the first and last with nobody.
std::vector<double> stretchesOf(const Track& track, double shortestHold) {
  std::vector<double> stretches{track.moves.front().from - track.knots.front().t};
  for (std::size_t i = 0; i < track.moves.size(); ++i) {
    const Move& move = track.moves[i];
    stretches.push_back(move.until - move.from);
    const bool end = i + 1 == track.moves.size();
    const double rest = (end ? track.knots.back().t : track.moves[i + 1].from) - move.until;
    stretches.push_back(end ? rest : std::max(0.0, rest - shortestHold));
  }
  return stretches;
}

/// The most of its ramp that an ease may take: of two or more in one move each end has its own.
double rampAt(const Track& track, const Corner& corner) {
  const std::size_t knot = knotAt(track, corner.t);
  return corner.start ? track.knots[knot + 1].t - corner.t : corner.t - track.knots[knot - 1].t;
}

double roundedBy(const Corner& corner, double ease, double t) {
  return corner.side() * rounding(corner.slope, ease, std::abs(t - corner.t));
}

}  // namespace

void easeEnds(Track& track, const Tube& tube, double shortestHold) {
  if (track.moves.empty()) return;
  const std::vector<double> stretches = stretchesOf(track, shortestHold);
  std::vector<Half> halves;
  for (const Move& move : track.moves)
    for (const Corner& corner : {startOf(track, move), endOf(track, move)}) {
      const double rest = stretches[halves.size() + (corner.start ? 0 : 1)];
      const double most = std::min(rest, rampAt(track, corner));
      halves.push_back({corner, corner.slope == 0 ? 0 : easeInside(corner, tube, 2 * most) / 2});
    }
  for (std::size_t i = 0; i < halves.size(); ++i) {
    const bool start = halves[i].corner.start, alone = track.moves[i / 2].ramps > 1;
    const bool first = i == 0, last = i + 1 == halves.size();
    // A rest at an end of the take, and a ramp of several, is shared with nobody.
    const double before = first || (!start && alone) ? 0 : halves[i - 1].most;
    const double after = last || (start && alone) ? 0 : halves[i + 1].most;
    const double most = std::min({halves[i].most, shareOf(stretches[i], before), shareOf(stretches[i + 1], after)});
    Move& move = track.moves[i / 2];
    (start ? move.easeIn : move.easeOut) = 2 * most;
  }
}

double easedAt(const Track& track, double t) {
  double value = track.valueAt(t);
  // Eases do not overlap, so one move before and one after can be concerned at most.
  const auto next = std::lower_bound(track.moves.begin(), track.moves.end(), t,
                                     [](const Move& move, double time) { return move.until < time; });
  for (auto move = next == track.moves.begin() ? next : std::prev(next); move != track.moves.end(); ++move) {
    if (move->from - move->easeIn / 2 > t) break;
    if (move->easeIn > 0) value += roundedBy(startOf(track, *move), move->easeIn, t);
    if (move->easeOut > 0) value += roundedBy(endOf(track, *move), move->easeOut, t);
  }
  return value;
}

std::vector<Knot> easedLine(const Track& track, int steps) {
  std::vector<double> times, rounded;
  const auto curve = [&](double corner, double ease) {
    if (ease <= 0) return;
    rounded.push_back(corner);
    for (int i = 0; i <= steps; ++i) times.push_back(corner + ease * (static_cast<double>(i) / steps - 0.5));
  };
  for (const Move& move : track.moves) {
    curve(move.from, move.easeIn);
    curve(move.until, move.easeOut);
  }
  for (const Knot& knot : track.knots)
    if (!std::binary_search(rounded.begin(), rounded.end(), knot.t)) times.push_back(knot.t);
  std::sort(times.begin(), times.end());
  std::vector<Knot> line;
  for (const double t : times) line.push_back({t, easedAt(track, t)});
  return line;
}

}  // namespace wend::pulls
