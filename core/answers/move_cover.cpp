#include "core/answers/move_cover.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/pulls/slot.h"
#include "core/pulls/zoom_cover.h"
#include "core/pulls/zoom_feather.h"
#include "core/snags/thresholds.h"
#include "core/units/stop.h"

namespace wend::answers {

using namespace snags;
using pulls::CoverKind;
using pulls::CoverSpan;
using pulls::Hidden;

namespace {

/// A density shows as an iris does: by the brightness of everything.
Hidden hiddenOf(const Move& move) {
  return move.axis == Move::Axis::zoom ? Hidden::zoom : Hidden::iris;
}

/// Stops by which it darkens.
double darkening(const Move& move) {
  if (move.axis == Move::Axis::density) return move.valueAfter - move.valueBefore;
  return units::stopsBetweenMarks(move.valueBefore, move.valueAfter);
}

/// Stops, or percent of the focal length.
double changeOf(const Move& move) {
  return move.axis == Move::Axis::zoom ? 100 * std::log(move.valueAfter / move.valueBefore) : darkening(move);
}

/// What the picture shows of it: a cut is there from one frame to the next, as a ramp of one frame is.
double peakSeen(const Take& take, const Move& move) {
  if (move.cut()) return std::abs(changeOf(move)) * take.rate();
  return move.axis == Move::Axis::zoom ? move.peakPercentPerSecond : move.peakStopsPerSecond;
}

/// While the picture changes.
Span spanSeen(const Take& take, const Move& move) {
  const double half = move.cut() ? 0.5 / take.rate() : 0;
  return {move.from - half, move.until + half};
}

/// Kinds that are one thing at different strengths share a family.
int familyOf(CoverKind kind) {
  switch (kind) {
    case CoverKind::movingFrame:
    case CoverKind::travel:
      return 0;
    case CoverKind::pan:
    case CoverKind::fastPan:
    case CoverKind::swish:
      return 1;
    case CoverKind::crossing:
    case CoverKind::wipe:
      return 2;
    case CoverKind::leaf:
    case CoverKind::doorway:
      return 3;
    case CoverKind::lightCue:
      return 4;
  }
  return 0;
}

/// The first of each thing in a ranked list.
std::vector<CoverSpan> oneOfEach(const std::vector<CoverSpan>& ranked) {
  std::vector<CoverSpan> kept;
  for (const auto& cover : ranked)
    if (std::none_of(kept.begin(), kept.end(), [&](const CoverSpan& other) {
          return familyOf(other.kind) == familyOf(cover.kind) && other.by == cover.by;
        }))
      kept.push_back(cover);
  return kept;
}

std::vector<CoverSpan> coveringOf(const Take& take, const std::vector<CoverSpan>& covers, const Move& move) {
  std::vector<CoverSpan> kept = oneOfEach(pulls::rankedFor(covers, hiddenOf(move), spanSeen(take, move)));
  const auto enough = std::stable_partition(kept.begin(), kept.end(), [&](const CoverSpan& cover) {
    return pulls::rateUnder(cover.kind, hiddenOf(move)) >= peakSeen(take, move);
  });
  kept.erase(enough == kept.begin() && !kept.empty() ? kept.begin() + 1 : enough, kept.end());
  // That the camera travels goes without saying where something else hides the change.
  const bool more = std::any_of(kept.begin(), kept.end(), [](const CoverSpan& c) { return familyOf(c.kind) != 0; });
  if (more) std::erase_if(kept, [](const CoverSpan& cover) { return familyOf(cover.kind) == 0; });
  return kept;
}

/// Stops a second, or percent of the focal length a second.
double rateAt(const Take& take, const Move& move, double t) {
  if (move.axis == Move::Axis::zoom) return take.view().zoomRateAt(t);
  if (move.axis == Move::Axis::density) return light::densityRate(take.lighting().density, t);
  constexpr double kStep = 0.001;
  const double rate = (stopsOf(take.lens().irisAt(t + kStep)) - stopsOf(take.lens().irisAt(t - kStep))) / (2 * kStep);
  return rate * ringShare(move);
}

std::vector<pulls::RateAt> ratesOf(const Take& take, const Move& move) {
  if (move.cut()) return {{move.from, peakSeen(take, move)}};
  std::vector<pulls::RateAt> rates;
  const double half = 0.5 / take.rate();
  for (double t = std::ceil((move.from + half) * take.rate()) / take.rate(); t <= move.until - half;
       t += 1 / take.rate())
    rates.push_back({t, rateAt(take, move, t)});
  // Between two frames a change is as fast as in its middle.
  const double middle = (move.from + move.until) / 2;
  if (rates.empty()) rates.push_back({middle, rateAt(take, move, middle)});
  return rates;
}

/// Up to when the value before the move would still do, and from when the value after it does; open where the value
/// does not do even then, as with a move set by hand.
Span mustSpan(const pulls::Tube& tube, const Move& move) {
  const auto inside = [](const pulls::TubeSample& at, double value) {
    return at.open || (value >= at.lo - 1e-6 && value <= at.hi + 1e-6);
  };
  const double before = stopsOf(move.valueBefore), after = stopsOf(move.valueAfter);
  Span must{kInfinity, -kInfinity};
  if (inside(pulls::sampleAt(tube, move.from), before)) {
    const auto leaves = std::find_if(tube.begin(), tube.end(), [&](const pulls::TubeSample& at) {
      return at.t >= move.from && !inside(at, before);
    });
    if (leaves != tube.end()) must.from = leaves->t;
  }
  if (inside(pulls::sampleAt(tube, move.until), after)) {
    const auto enters = std::find_if(tube.rbegin(), tube.rend(), [&](const pulls::TubeSample& at) {
      return at.t <= move.until && !inside(at, after);
    });
    if (enters != tube.rend()) must.until = enters->t;
  }
  return must;
}

pulls::SlotQuestion questionOf(const Move& move, Span free) {
  pulls::SlotQuestion question;
  question.axis = hiddenOf(move);
  question.change = changeOf(move);
  question.free = {free};
  question.near = (move.from + move.until) / 2;
  question.feather = move.axis == Move::Axis::zoom ? pulls::kZoomFeather : 0;
  return question;
}

/// How much of a change is done when it runs over a span.
double doneAt(const Span& span, double t) {
  return span.length() > 0 ? std::clamp((t - span.from) / span.length(), 0.0, 1.0) : t < span.from ? 0.0 : 1.0;
}

/// Whether no face in frame is further off than it is now, or than the threshold "exposure" lets pass, once the change
/// of brightness runs over another span.
bool facesStand(const std::vector<Instant>& samples, const plan::Plan& plan, const Move& move, const Span& slot) {
  constexpr double kRounding = 1e-9;
  const double allowed = threshold(plan, "exposure").value, stops = darkening(move);
  const double from = std::min(slot.from, move.from), until = std::max(slot.until, move.until);
  for (const Instant& instant : samples) {
    if (instant.time < from || instant.time > until) continue;
    const double lighter = stops * (doneAt({move.from, move.until}, instant.time) - doneAt(slot, instant.time));
    for (const PerformerAt& face : instant.performers) {
      const bool shown = face.inFrame == optics::Showing::whole || face.inFrame == optics::Showing::part;
      if (!shown || !face.offset) continue;
      if (std::abs(*face.offset + lighter) > std::max(std::abs(*face.offset), allowed) + kRounding) return false;
    }
  }
  return true;
}

std::optional<pulls::Slot> betterSlot(const Take& take, const std::vector<Instant>& samples,
                                      const std::vector<CoverSpan>& covers, Span free, const Move& move) {
  const pulls::SlotQuestion question = questionOf(move, free);
  if (question.change == 0 || free.length() <= 0) return std::nullopt;
  const Span must =
      move.axis == Move::Axis::iris ? mustSpan(take.lens().irisTube(), move) : Span{kInfinity, -kInfinity};
  for (const auto& slot : pulls::slotsFor(covers, question))
    if (slot.span.from <= must.from && slot.span.until >= must.until &&
        (move.axis == Move::Axis::zoom || facesStand(samples, take.plan(), move, slot.span)))
      return slot;
  return std::nullopt;
}

}  // namespace

double ringShare(const Move& move) {
  const double typed = units::stopsBetween(move.valueBefore, move.valueAfter);
  return typed == 0 ? 1 : units::stopsBetweenMarks(move.valueBefore, move.valueAfter) / typed;
}

std::string wordsOf(const CoverSpan& cover) {
  switch (cover.kind) {
    case CoverKind::movingFrame:
      return "moving frame";
    case CoverKind::travel:
      return "travel " + base::fixed(cover.strength, 1) + " m/s";
    case CoverKind::pan:
    case CoverKind::fastPan:
    case CoverKind::swish:
      return "pan " + base::fixed(cover.strength, 0) + "\u00b0/s";
    case CoverKind::leaf:
      return cover.by + " moving";
    case CoverKind::crossing:
      return cover.by + " crosses";
    case CoverKind::wipe:
      return cover.by + " fills the frame";
    case CoverKind::doorway:
    case CoverKind::lightCue:
      return cover.by;
  }
  return "";
}

void coverMove(const Take& take, const std::vector<Instant>& samples, const std::vector<CoverSpan>& covers, Span free,
               Move& move) {
  move.coveredBy = coveringOf(take, covers, move);
  move.cover.clear();
  for (const auto& cover : move.coveredBy) move.cover += (move.cover.empty() ? "" : ", ") + wordsOf(cover);
  const double unnoticed = move.axis == Move::Axis::zoom ? 0 : threshold(take.plan(), "ramp-unnoticed").value;
  move.exposed = pulls::exposedIn(covers, hiddenOf(move), ratesOf(take, move), {1 / take.rate(), unnoticed});
  if (move.exposed->worst <= 1 || pulls::hidesInFlow(move.flowShare)) return;
  move.better = betterSlot(take, samples, covers, free, move);
  if (!move.better) return;
  const auto there = pulls::rankedFor(covers, hiddenOf(move), move.better->span);
  move.betterCover = there.empty() ? "no cover needed" : wordsOf(there.front());
}

}  // namespace wend::answers
