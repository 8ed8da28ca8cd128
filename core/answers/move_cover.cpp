#include "core/answers/move_cover.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/pulls/least_miss.h"
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
  return units::stopsBetween(move.valueBefore, move.valueAfter) * ringShare(move);
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

/// Whether it lasts over enough of the change: half a second, or half of a change that is shorter than a second.
bool worthNaming(const CoverSpan& cover, const Span& seen) {
  constexpr double kRounding = 1e-9;
  const double shared = std::min(cover.span.until, seen.until) - std::max(cover.span.from, seen.from);
  return shared >= std::min(kShortestCover, seen.length() / 2) - kRounding;
}

std::vector<CoverSpan> coveringOf(const Take& take, const std::vector<CoverSpan>& covers, const Move& move) {
  std::vector<CoverSpan> kept = pulls::rankedFor(covers, hiddenOf(move), spanSeen(take, move));
  std::erase_if(kept, [&](const CoverSpan& cover) { return !worthNaming(cover, spanSeen(take, move)); });
  kept = oneOfEach(kept);
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

/// How much of a change is done when it runs over a span.
double doneAt(const Span& span, double t) {
  return span.length() > 0 ? std::clamp((t - span.from) / span.length(), 0.0, 1.0) : t < span.from ? 0.0 : 1.0;
}

}  // namespace

double ringShare(const Move& move) {
  if (move.ease) return 1;
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

std::vector<pulls::RateAt> ratesOf(double frameRate, const Move& move, const std::function<double(double)>& rateAt) {
  std::vector<pulls::RateAt> rates;
  const double half = 0.5 / frameRate;
  for (double t = std::ceil((move.from + half) * frameRate) / frameRate; t <= move.until - half; t += 1 / frameRate)
    rates.push_back({t, rateAt(t)});
  // Between two frames a change is as fast as in its middle.
  const double middle = (move.from + move.until) / 2;
  if (rates.empty()) rates.push_back({middle, rateAt(middle)});
  return rates;
}

pulls::SlotQuestion slotQuestionOf(const Move& move, Span free) {
  pulls::SlotQuestion question;
  question.axis = hiddenOf(move);
  question.change = changeOf(move);
  question.free = {free};
  question.near = (move.from + move.until) / 2;
  question.feather = move.axis == Move::Axis::zoom ? pulls::kZoomFeather : 0;
  return question;
}

std::vector<pulls::RampSpan> rampSpansFor(const Take& take, const std::vector<CoverSpan>& covers, Span starts,
                                          Span ends, double longest) {
  pulls::RampQuestion question;
  question.starts = starts;
  question.ends = ends;
  question.longest = std::max(question.longest, longest);
  question.frame = 1 / take.rate();
  return pulls::rampSpans(covers, question);
}

bool facesStand(const std::vector<Instant>& samples, const plan::Plan& plan,
                const std::function<double(double)>& lighter) {
  constexpr double kRounding = 1e-9;
  const double allowed = threshold(plan, "exposure").value;
  for (const Instant& instant : samples)
    for (const PerformerAt& face : instant.performers) {
      if (!optics::shows(face.inFrame) || !face.offset) continue;
      const double then = *face.offset + lighter(instant.time);
      if (std::abs(then) > std::max(std::abs(*face.offset), allowed) + kRounding) return false;
    }
  return true;
}

namespace {

/// Whether the same change over another span leaves no face further off, and an iris nowhere further outside its slack.
class Elsewhere {
 public:
  Elsewhere(const Take& take, const std::vector<Instant>& samples, const Move& move)
      : take_(take), samples_(samples), move_(move) {}

  bool does(const Span& span) const {
    if (move_.axis == Move::Axis::zoom) return true;
    if (move_.axis == Move::Axis::iris && !insideAsBefore(span)) return false;
    return facesStand(samples_, take_.plan(), [&](double t) { return darkening(move_) * (now(t) - doneAt(span, t)); });
  }

 private:
  double now(double t) const { return doneAt({move_.from, move_.until}, t); }

  bool insideAsBefore(const Span& span) const {
    constexpr double kRounding = 1e-6;
    const double change = stopsOf(move_.valueAfter) - stopsOf(move_.valueBefore);
    const Span touched{std::min(span.from, move_.from), std::max(span.until, move_.until)};
    const pulls::Tube& tube = take_.lens().irisTube();
    auto at = std::lower_bound(tube.begin(), tube.end(), touched.from,
                               [](const pulls::TubeSample& sample, double t) { return sample.t < t; });
    for (; at != tube.end() && at->t <= touched.until; ++at) {
      const double set = stopsOf(take_.lens().irisAt(at->t)), then = set + change * (doneAt(span, at->t) - now(at->t));
      if (pulls::missAt(*at, then) > std::max(pulls::missAt(*at, set), kRounding)) return false;
    }
    return true;
  }

  const Take& take_;
  const std::vector<Instant>& samples_;
  const Move& move_;
};

/// Ramps of an iris that lie along a sloping slack, where none of the longest covered spans would do.
std::optional<pulls::Slot> betterRamp(const Take& take, const std::vector<CoverSpan>& covers, Span free,
                                      const Move& move, const Elsewhere& elsewhere) {
  const double change = std::abs(changeOf(move)), unnoticed = threshold(take.plan(), "ramp-unnoticed").value;
  std::vector<pulls::Slot> ways;
  for (const auto& ramp : rampSpansFor(take, covers, free, free, move.until - move.from)) {
    const pulls::Slot slot{ramp.span, change / ramp.span.length(), std::max(ramp.allowed, unnoticed)};
    if (slot.margin() >= 1) ways.push_back(slot);
  }
  std::stable_sort(ways.begin(), ways.end(), [](const auto& a, const auto& b) { return a.margin() > b.margin(); });
  const auto found = std::find_if(ways.begin(), ways.end(), [&](const auto& way) { return elsewhere.does(way.span); });
  return found == ways.end() ? std::nullopt : std::optional(*found);
}

std::optional<pulls::Slot> betterSlot(const Take& take, const std::vector<Instant>& samples,
                                      const std::vector<CoverSpan>& covers, Span free, const Move& move) {
  const pulls::SlotQuestion question = slotQuestionOf(move, free);
  if (question.change == 0 || free.length() <= 0) return std::nullopt;
  const Elsewhere elsewhere(take, samples, move);
  for (const auto& slot : pulls::slotsFor(covers, question))
    if (elsewhere.does(slot.span)) return slot;
  return move.axis == Move::Axis::iris ? betterRamp(take, covers, free, move, elsewhere) : std::nullopt;
}

}  // namespace

void coverMove(const Take& take, const std::vector<Instant>& samples, const std::vector<CoverSpan>& covers, Span free,
               Move& move) {
  move.coveredBy = coveringOf(take, covers, move);
  move.cover.clear();
  for (const auto& cover : move.coveredBy) move.cover += (move.cover.empty() ? "" : ", ") + wordsOf(cover);
  const double unnoticed = move.axis == Move::Axis::zoom ? 0 : threshold(take.plan(), "ramp-unnoticed").value;
  const auto rates = move.cut() ? std::vector<pulls::RateAt>{{move.from, peakSeen(take, move)}}
                                : ratesOf(take.rate(), move, [&](double t) { return rateAt(take, move, t); });
  move.exposed = pulls::exposedIn(covers, hiddenOf(move), rates, {1 / take.rate(), unnoticed});
  if (move.exposed->worst <= 1 || pulls::hidesInFlow(move.flowShare)) return;
  move.better = betterSlot(take, samples, covers, free, move);
  if (!move.better) return;
  const auto there = pulls::rankedFor(covers, hiddenOf(move), move.better->span);
  move.betterCover = there.empty() ? "no cover needed" : wordsOf(there.front());
}

}  // namespace wend::answers
