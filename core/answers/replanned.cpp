#include "core/answers/replanned.h"

#include <algorithm>
#include <cmath>

#include "core/answers/hand_axis.h"
#include "core/base/text.h"
#include "core/plan/invariants.h"
#include "core/plan/quantise.h"
#include "core/pulls/least_miss.h"
#include "core/pulls/pinned.h"

namespace wend::answers {
namespace {

using base::Problem;
using base::Result;
using geometry::Span;
using plan::kSameTime;
using plan::secondsText;

constexpr double kMillisecond = 1e-3;

/// The whole milliseconds inside the span and the take.
Span onSteps(Span span, double length) {
  double from = plan::quantised(std::max(span.from, 0.0), plan::kinds::kMoment);
  double until = plan::quantised(std::min(span.until, length), plan::kinds::kMoment);
  if (from < span.from - kSameTime) from = plan::quantised(from + kMillisecond, plan::kinds::kMoment);
  if (until > std::min(span.until, length) + kSameTime)
    until = plan::quantised(until - kMillisecond, plan::kinds::kMoment);
  return {from, until};
}

/// What becomes of the entries of a hand track: the first `before` and the last `after` are kept.
struct Kept {
  std::size_t before = 0, after = 0;
  pulls::Pins pins;
  std::optional<double> landing;  ///< as the plan writes the value at the far pin
};

template <class Axis>
std::optional<Problem> cutMove(const Axis& axis, Span span) {
  const auto entries = axis.entries();
  for (std::size_t i = 1; i < entries.size(); ++i) {
    const double from = axis.startOf(entries[i]), until = from + axis.overOf(entries[i]);
    const auto cuts = [&](double t) { return from < t - kSameTime && until > t + kSameTime; };
    if (!cuts(span.from) && !cuts(span.until)) continue;
    return Problem{"span-cuts-move", axis.path() + "/" + std::to_string(i),
                   "a move from " + secondsText(from) + " to " + secondsText(until),
                   "a span that holds it whole or leaves it out",
                   cuts(span.from) ? "Select from " + secondsText(from) + " or from " + secondsText(until) + " on."
                                   : "Select up to " + secondsText(until) + " or up to " + secondsText(from) + "."};
  }
  return std::nullopt;
}

template <class Axis>
Kept keptOf(const Axis& axis, Span span, double length) {
  const auto entries = axis.entries();
  Kept kept;
  std::size_t until = 1;
  if (span.from > kSameTime) kept.before = 1;
  for (std::size_t i = 1; i < entries.size(); ++i) {
    const double from = axis.startOf(entries[i]), over = axis.overOf(entries[i]);
    if (kept.before == i && from + over <= span.from + kSameTime && from < span.from - kSameTime) kept.before = i + 1;
    if (from < span.until - kSameTime || (over == 0 && from <= span.until + kSameTime)) until = i + 1;
  }
  until = std::max(until, kept.before);
  kept.after = entries.size() - until;
  if (kept.before > 0) kept.pins.from = axis.workingOf(axis.valueOf(entries[kept.before - 1]));
  if (span.until < length - kSameTime) {
    kept.landing = axis.valueOf(entries[until - 1]);
    kept.pins.until = axis.workingOf(*kept.landing);
  }
  return kept;
}

/// A move as the plan writes it: on its steps.
struct Written {
  double at = 0, over = 0, value = 0;
};

template <class Axis>
std::vector<Written> writtenOf(const Axis& axis, const pulls::Track& track, const Kept& kept) {
  const auto time = [](double t) { return plan::quantised(t, plan::kinds::kMoment); };
  const auto& knots = track.knots;
  std::vector<Written> moves;
  if (!kept.pins.from) moves.push_back({0, 0, axis.written(knots.front().value)});
  for (std::size_t k = 1; k < knots.size(); ++k) {
    if (knots[k].value == knots[k - 1].value) continue;
    const double at = time(knots[k - 1].t);
    moves.push_back({at, time(time(knots[k].t) - at), axis.written(knots[k].value)});
  }
  if (!kept.landing) return moves;
  const bool moved = moves.size() > (kept.pins.from ? 0u : 1u);
  // Two values so near to each other that no move is needed may still be two in the plan.
  if (!moved && !(kept.pins.from == kept.pins.until)) moves.push_back({time(knots.back().t), 0, 0});
  if (!moves.empty()) moves.back().value = *kept.landing;
  return moves;
}

/// What the axis does with these moves written down.
template <class Axis>
pulls::Track trackOf(const Axis& axis, const std::vector<Written>& moves, const Kept& kept, Span span) {
  pulls::Track track;
  double value = kept.pins.from ? *kept.pins.from : axis.workingOf(moves.front().value);
  track.knots.push_back({span.from, value});
  for (std::size_t i = kept.pins.from ? 0 : 1; i < moves.size(); ++i) {
    if (moves[i].at > track.knots.back().t) track.knots.push_back({moves[i].at, value});
    value = axis.workingOf(moves[i].value);
    track.knots.push_back({moves[i].at + moves[i].over, value});
  }
  if (track.knots.back().t < span.until) track.knots.push_back({span.until, value});
  return track;
}

double steepest(const pulls::Track& track) {
  double rate = 0;
  for (std::size_t k = 1; k < track.knots.size(); ++k) {
    const auto &a = track.knots[k - 1], &b = track.knots[k];
    if (a.value != b.value) rate = std::max(rate, std::abs(b.value - a.value) / std::max(b.t - a.t, 1e-9));
  }
  return rate;
}

/// How far what is written breaks more than what was meant: outside the tube where that is inside, and over the limit.
double harm(const pulls::Track& written, const pulls::Track& meant, const pulls::Tube& tube, double limit) {
  constexpr double kNothing = 1e-6;
  double worst = 0;
  for (const auto& sample : tube)
    if (pulls::missAt(sample, meant.valueAt(sample.t)) <= kNothing)
      worst = std::max(worst, pulls::missAt(sample, written.valueAt(sample.t)) - kNothing);
  // The limit comes first: what is faster cannot be done at all.
  constexpr double kGraver = 1e6;
  return worst + kGraver * std::max(0.0, steepest(written) / limit - 1 - kNothing);
}

/// Room for the steps the plan writes in, where there is any.
template <class Axis>
pulls::Tube narrower(const Axis& axis, pulls::Tube tube, double steepness) {
  for (auto& sample : tube) {
    if (sample.open || sample.lo >= sample.hi) continue;
    const double middle = (sample.lo + sample.hi) / 2;
    const double room = std::min(axis.stepAt(middle) + steepness * kMillisecond, 0.49 * (sample.hi - sample.lo));
    sample.lo += room;
    sample.hi -= room;
  }
  return tube;
}

/// The fewest moves, written: with room left for the plan's steps only where they would lead out of the tube or over
/// the limit.
template <class Axis>
std::vector<Written> plannedMoves(const Axis& axis, const pulls::Tube& tube, const Kept& kept, Span span) {
  const pulls::MoveRules rules = axis.rules();
  const auto trackFor = [&](const pulls::Tube& asked, double rate) {
    const pulls::Tube held = pulls::pinned(asked, kept.pins, rate);
    const pulls::MoveRules at{rate, std::min(rate, rules.easyRate), rules.shortestHold, rules.easySeconds};
    return axis.laid(pulls::fewestMoves(held, at), held, at);
  };
  const pulls::Track meant = trackFor(tube, rules.rate);
  std::vector<Written> best = writtenOf(axis, meant, kept);
  double least = harm(trackOf(axis, best, kept, span), meant, tube, rules.rate);
  for (const double share : {1.0, 0.9995, 0.99, 0.96}) {
    if (least <= 0 || pulls::rateBetween(kept.pins, span) > rules.rate * share) break;
    const auto tried = writtenOf(axis, trackFor(narrower(axis, tube, steepest(meant)), rules.rate * share), kept);
    const double worst = harm(trackOf(axis, tried, kept, span), meant, tube, rules.rate);
    if (worst < least) best = tried;
    least = std::min(least, worst);
  }
  return best;
}

template <class Axis>
Result<plan::Plan> withMoves(const Axis& axis, const std::vector<Written>& moves, const Kept& kept, double from) {
  auto old = axis.entries();
  std::vector<typename Axis::Entry> entries(old.begin(), old.begin() + static_cast<std::ptrdiff_t>(kept.before));
  if (kept.before == 1 && axis.startOf(entries[0]) + axis.overOf(entries[0]) > from + kSameTime)
    axis.startTake(entries[0]);
  for (const Written& move : moves) entries.push_back(axis.entry(move.at, move.over, move.value));
  entries.insert(entries.end(), old.end() - static_cast<std::ptrdiff_t>(kept.after), old.end());
  return axis.with(std::move(entries));
}

template <class Axis>
Problem tooShort(const Axis& axis, const Kept& kept, Span span) {
  const double change = std::abs(*kept.pins.until - *kept.pins.from), rate = axis.rules().rate;
  return {"span-too-short", axis.path(),
          base::fixed(change, 2) + " " + axis.unit() + " from end to end in " + secondsText(span.length()),
          secondsText(std::ceil(change / rate / kMillisecond) * kMillisecond) + " or longer at the limit of " +
              base::shortest(rate) + " " + axis.unit() + " a second",
          "Select a longer span, or with the move before or after it."};
}

template <class Axis>
Result<plan::Plan> replannedOn(const Axis& axis, Span asked, double length) {
  if (axis.entries().empty()) return axis.plan();
  const Span span = onSteps(asked, length);
  if (!(span.from < span.until))
    return Problem{"span-empty", axis.path(), secondsText(asked.from) + " to " + secondsText(asked.until),
                   "a span of the take, from its earlier end to its later", "Select a stretch of the track."};
  if (auto problem = cutMove(axis, span)) return *problem;
  const Kept kept = keptOf(axis, span, length);
  if (Axis::kPlannedWhenEmpty && kept.before == 0 && kept.after == 0 && !kept.landing) return axis.with({});
  if (pulls::rateBetween(kept.pins, span) > axis.rules().rate) return tooShort(axis, kept, span);
  return withMoves(axis, plannedMoves(axis, pulls::cutOut(axis.tube(), span), kept, span), kept, span.from);
}

template <class Axis>
Result<plan::Plan> inHandOn(const Axis& axis, double length) {
  if (axis.byHand()) return axis.plan();
  return withMoves(axis, plannedMoves(axis, axis.tube(), {}, {0, length}), {}, 0);
}

Problem notPlanned() {
  return {"axis-not-planned", "", "an axis that is not planned", "focus, iris or zoom",
          "Select on focus, iris or zoom."};
}

/// From where a key starts until the next one is done: as long as what it asks for is seen.
Span reignOf(const HandZoom& zoom, std::size_t key, double length) {
  const auto& keys = zoom.entries();
  const double from = key == 0 ? 0 : zoom.startOf(keys[key]);
  if (key + 1 == keys.size()) return {from, length};
  return {from, std::min(length, zoom.startOf(keys[key + 1]) + zoom.overOf(keys[key + 1]))};
}

/// Kept before the span, with another kept key between: what is planned starts from where that one stays.
bool isBefore(const HandZoom& zoom, std::size_t key, Span span) {
  if (key + 1 == zoom.entries().size()) return false;
  const plan::ZoomKey& next = zoom.entries()[key + 1];
  const double from = zoom.startOf(next);
  return from < span.from - kSameTime && from + zoom.overOf(next) <= span.from + kSameTime;
}

/// Kept after the span: a cut at its end is replaced with it.
bool isAfter(const HandZoom& zoom, std::size_t key, Span span) {
  const double from = zoom.startOf(zoom.entries()[key]), over = zoom.overOf(zoom.entries()[key]);
  return over == 0 ? from > span.until + kSameTime : from >= span.until - kSameTime;
}

/// A shot size that is kept beyond the span cannot be taken out of it: keys by focal length would have to take its
/// place outside.
std::optional<Problem> cutSize(const HandZoom& zoom, Span span, double length) {
  for (std::size_t i = 0; i < zoom.entries().size(); ++i) {
    if (zoom.entries()[i].size.empty()) continue;
    const Span reign = reignOf(zoom, i, length);
    const bool apart = isBefore(zoom, i, span) || isAfter(zoom, i, span);
    const bool held = reign.from >= span.from - kSameTime && reign.until <= span.until + kSameTime;
    if (apart || held) continue;
    return Problem{"span-cuts-size", zoom.path() + "/" + std::to_string(i),
                   "a shot size kept from " + secondsText(reign.from) + " to " + secondsText(reign.until),
                   "a span that holds it whole or leaves it out",
                   "The moves that keep a size are planned already: select keys by focal length."};
  }
  return std::nullopt;
}

/// True when no key by focal length starts in the span.
bool onlySizes(const HandZoom& zoom, Span span) {
  return std::none_of(zoom.entries().begin(), zoom.entries().end(), [&](const plan::ZoomKey& key) {
    const double at = zoom.startOf(key);
    return key.size.empty() && at >= span.from - kSameTime && at <= span.until + kSameTime;
  });
}

/// Nothing where a zoom can be planned anew.
std::optional<Problem> zoomUnready(const plan::Plan& plan) {
  if (!plan.lens) return Problem{"lens-unknown", "/lens", "no lens", "a lens", "Choose the lens first."};
  if (plan.zoom.slackShare > 0) return std::nullopt;
  return Problem{"zoom-no-slack", "/zoom/slackShare", "0", "more than 0",
                 "Say how far the focal length may be off what the keys ask for."};
}

Result<plan::Plan> zoomReplanned(const Take& take, Span asked) {
  if (auto problem = zoomUnready(take.plan())) return *problem;
  const HandZoom zoom(take);
  const Span span = onSteps(asked, take.length());
  if (auto problem = cutMove(zoom, span)) return *problem;
  if (span.from < span.until && onlySizes(zoom, span)) return take.plan();
  if (auto problem = cutSize(zoom, span, take.length())) return *problem;
  return replannedOn(zoom, asked, take.length());
}

Result<plan::Plan> zoomInHand(const Take& take) {
  if (auto problem = zoomUnready(take.plan())) return *problem;
  return inHandOn(HandZoom(take), take.length());
}

}  // namespace

Result<plan::Plan> replanned(const Take& take, plan::Axis axis, Span span) {
  if (axis == plan::Axis::focus) return replannedOn(HandFocus(take), span, take.length());
  if (axis == plan::Axis::iris) return replannedOn(HandIris(take), span, take.length());
  if (axis == plan::Axis::zoom) return zoomReplanned(take, span);
  return notPlanned();
}

Result<plan::Plan> inHand(const Take& take, plan::Axis axis) {
  if (axis == plan::Axis::focus) return inHandOn(HandFocus(take), take.length());
  if (axis == plan::Axis::iris) return inHandOn(HandIris(take), take.length());
  if (axis == plan::Axis::zoom) return zoomInHand(take);
  return notPlanned();
}

}  // namespace wend::answers
