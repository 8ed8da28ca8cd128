#include "core/pulls/free_moves.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/pulls/choice.h"
#include "core/pulls/ease.h"
#include "core/pulls/least_miss.h"
#include "core/pulls/ramp_along.h"
#include "core/pulls/track_moves.h"

namespace wend::pulls {
namespace {

/// What would do at a sample.
Choice choiceAt(const TubeSample& at) {
  if (at.open) return {-HUGE_VAL, HUGE_VAL};
  return {at.lo - kTubeRounding, at.hi + kTubeRounding};
}

/// What would do all over a span, its ends included.
Choice choiceOver(const Tube& tube, geometry::Span span) {
  Choice choice = choiceAt(sampleAt(tube, span.from)).cut(choiceAt(sampleAt(tube, span.until)));
  for (const TubeSample& at : tube)
    if (at.t >= span.from && at.t <= span.until) choice = choice.cut(choiceAt(at));
  return choice;
}

/// From where the rest before a move begins to where the one after it ends.
geometry::Span restsBeside(const Track& track, std::size_t i, const Tube& tube) {
  return {i == 0 ? tube.front().t : track.moves[i - 1].until,
          i + 1 == track.moves.size() ? tube.back().t : track.moves[i + 1].from};
}

/// The last sample up to which one value would do from `from` on.
double doesUntil(const Tube& tube, geometry::Span over) {
  Choice choice{-HUGE_VAL, HUGE_VAL};
  double last = over.from;
  for (const TubeSample& at : tube) {
    if (at.t < over.from || at.t > over.until) continue;
    choice = choice.cut(choiceAt(at));
    if (choice.empty()) break;
    last = at.t;
  }
  return last;
}

/// The first sample from which one value would do until `over.until`.
double doesFrom(const Tube& tube, geometry::Span over) {
  Choice choice{-HUGE_VAL, HUGE_VAL};
  double first = over.until;
  for (auto at = tube.rbegin(); at != tube.rend(); ++at) {
    if (at->t < over.from || at->t > over.until) continue;
    choice = choice.cut(choiceAt(*at));
    if (choice.empty()) break;
    first = at->t;
  }
  return first;
}

/// The value a rest has, or the middle of its choice where that would not do.
std::optional<double> restingAt(double value, Choice choice) {
  if (choice.empty()) return std::nullopt;
  if (value >= choice.lo && value <= choice.hi) return value;
  return std::isfinite(choice.width()) ? choice.middle() : std::clamp(value, choice.lo, choice.hi);
}

/// Both values of a move that stands at either all through `to`.
std::optional<Ends> levelEnds(const Move& move, geometry::Span rests, geometry::Span to, const Tube& tube) {
  // While the move runs both values would do, and so does every one between them.
  const auto before = restingAt(move.valueBefore, choiceOver(tube, {rests.from, to.until}));
  const auto after = restingAt(move.valueAfter, choiceOver(tube, {to.from, rests.until}));
  return before && after ? std::optional(Ends{*before, *after}) : std::nullopt;
}

/// No further from the knot beyond a rest than the value is: the ramp between them gets no faster.
Choice noFurther(double value, const Knot* beyond) {
  if (!beyond) return {-HUGE_VAL, HUGE_VAL};
  const double way = std::abs(value - beyond->value);
  return {beyond->value - way, beyond->value + way};
}

/// What is left of an unbounded choice: nothing asks for more than the value.
Choice bounded(Choice choice, double value) {
  return {std::isfinite(choice.lo) ? choice.lo : std::min(value, choice.hi),
          std::isfinite(choice.hi) ? choice.hi : std::max(value, choice.lo)};
}

/// Both values of a move whose ramp runs along the tube.
std::optional<Ends> slopedEnds(const Track& track, std::size_t which, geometry::Span to, const Tube& tube,
                               double atMost) {
  const Move& move = track.moves[which];
  const geometry::Span rests = restsBeside(track, which, tube);
  const Knot *earlier = nullptr, *later = nullptr;
  for (const Knot& knot : track.knots) {
    if (knot.t < rests.from) earlier = &knot;
    if (knot.t > rests.until && !later) later = &knot;
  }
  const Choice before = choiceOver(tube, {rests.from, to.from}).cut(noFurther(move.valueBefore, earlier));
  const Choice after = choiceOver(tube, {to.until, rests.until}).cut(noFurther(move.valueAfter, later));
  if (before.empty() || after.empty()) return std::nullopt;
  return rampAlong(tube, to, bounded(before, move.valueBefore), bounded(after, move.valueAfter), atMost);
}

/// The knots with the two rests at these values and one straight pull between them.
std::vector<Knot> knotsWith(const Track& track, geometry::Span rests, geometry::Span to, double before, double after) {
  std::vector<Knot> knots;
  for (const Knot& knot : track.knots)
    if (knot.t < rests.from) knots.push_back(knot);
  if (rests.from < to.from) knots.push_back({rests.from, before});
  knots.insert(knots.end(), {{to.from, before}, {to.until, after}});
  if (to.until < rests.until) knots.push_back({rests.until, after});
  for (const Knot& knot : track.knots)
    if (knot.t > rests.until) knots.push_back(knot);
  return knots;
}

bool keepsTo(const std::vector<Knot>& knots, double rate) {
  constexpr double kRounding = 1 + 1e-9;
  for (std::size_t i = 0; i + 1 < knots.size(); ++i)
    if (std::abs(knots[i + 1].value - knots[i].value) > rate * kRounding * (knots[i + 1].t - knots[i].t)) return false;
  return true;
}

/// Whether the one is outside the tube nowhere but where the other is.
bool noFurtherOut(const Track& now, const Track& before, const Tube& tube) {
  return std::all_of(tube.begin(), tube.end(), [&](const TubeSample& at) {
    const double miss = missAt(at, now.valueAt(at.t));
    return miss <= 2 * kTubeRounding || miss <= missAt(at, before.valueAt(at.t)) + kTubeRounding;
  });
}

}  // namespace

std::vector<FreeMove> freeMoves(const Track& track, const Tube& tube, const MoveRules& rules) {
  std::vector<FreeMove> free;
  for (std::size_t i = 0; i < track.moves.size(); ++i) {
    if (track.moves[i].ramps != 1) continue;
    const geometry::Span rests = restsBeside(track, i, tube);
    const bool first = i == 0, last = i + 1 == track.moves.size();
    const double from = rests.from + (first ? 0 : rules.shortestHold);
    const double until = rests.until - (last ? 0 : rules.shortestHold);
    free.push_back({i, {from, doesUntil(tube, rests)}, {doesFrom(tube, rests), until}});
  }
  return free;
}

std::optional<Track> laid(const Track& track, std::size_t which, geometry::Span to, const Tube& tube,
                          const MoveRules& rules, double atMost) {
  WEND_CHECK(which < track.moves.size() && to.from < to.until && atMost > 0);
  constexpr double kRounding = 1 + 1e-9;
  const double limit = std::min(rules.rate, atMost);
  const geometry::Span rests = restsBeside(track, which, tube);
  auto ends = levelEnds(track.moves[which], rests, to, tube);
  if (!ends || ends->rateOver(to) > limit * kRounding) ends = slopedEnds(track, which, to, tube, limit);
  if (!ends || ends->before == ends->after || ends->rateOver(to) > limit * kRounding) return std::nullopt;
  Track other = track;
  other.knots = knotsWith(track, rests, to, ends->before, ends->after);
  other.moves = movesOf(other.knots, rules.shortestHold);
  const bool asMany = other.moves.size() == track.moves.size() && other.ramps() == track.ramps();
  if (!asMany || !keepsTo(other.knots, rules.rate) || !noFurtherOut(other, track, tube)) return std::nullopt;
  easeEnds(other, tube, rules.shortestHold);
  other.unmet = outside(other, tube);
  return other;
}

std::optional<double> rateAlong(const Track& track, std::size_t which, geometry::Span to, const Tube& tube,
                                double atMost) {
  const auto ends = slopedEnds(track, which, to, tube, atMost);
  return ends && ends->before != ends->after ? std::optional(ends->rateOver(to)) : std::nullopt;
}

}  // namespace wend::pulls
