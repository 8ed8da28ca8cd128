#include "core/snags/cures.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/optics/warmth.h"
#include "core/plan/rig_wobble.h"
#include "core/snags/stretch.h"
#include "core/snags/thresholds.h"
#include "core/units/stop.h"

namespace wend::snags {

namespace {

using Change = HotCure::Change;

/// Less of a change than this is none.
constexpr double kSame = 1e-3;

/// What the cures of one instant are worked out from.
struct Hot {
  const plan::Plan& plan;
  const Instant& at;
  optics::Optics optics;
  optics::CureLimits limits;
  double target = 0;

  double ahead() const { return plan.lens->pupilAhead; }
  double distance() const { return optics::fromPupil(at.focus.wantedDistance, ahead()); }
};

Hot hotOf(const plan::Plan& plan, const Instant& at) {
  const plan::Lens& lens = *plan.lens;
  const double transmission = lens.transmission.at(at.lens->focal);
  const optics::Optics optics{at.lens->focal, optics::fNumberOf(at.iris.set, transmission), plan.camera.blurCircle};
  return {plan, at, optics,
          optics::CureLimits{std::min(lens.focal[0], optics.focal),
                             std::max(optics::fNumberOf(lens.stop[1], transmission), optics.fNumber)},
          threshold(plan, "warmth").value};
}

HotCure cureOf(const Hot& hot, Change change, double value, const optics::Cure& cure) {
  return {change,      value, BandAt{cure.band.near + hot.ahead(), cure.band.far + hot.ahead()},
          cure.warmth, {},    cure.enough};
}

/// The two changes of the lens, where it has any of them left.
void addLensCures(const Hot& hot, const optics::Cure& widen, const optics::Cure& stopDown,
                  std::vector<HotCure>& cures) {
  if (widen.value < hot.optics.focal * (1 - kSame)) cures.push_back(cureOf(hot, Change::widen, widen.value, widen));
  if (stopDown.value <= hot.optics.fNumber * (1 + kSame)) return;
  const double stop = optics::tNumberOf(stopDown.value, hot.plan.lens->transmission.at(hot.optics.focal));
  cures.push_back(cureOf(hot, Change::stopDown, stop, stopDown));
  cures.back().moreLight = units::stopsBetween(hot.at.iris.set, stop);
}

/// What less straying would make of the same band: the subject stopped on tape, the camera stopped.
void addSteadier(const Hot& hot, std::vector<HotCure>& cures) {
  const double rig = plan::rigWobble(hot.plan, hot.at.camera.moving), still = plan::rigWobble(hot.plan, false),
               all = *hot.at.focus.wobble;
  const double subject = std::sqrt(std::max(0.0, all * all - rig * rig));
  const auto add = [&](Change change, double a, double b) {
    const double warmth = optics::warmthOf(hot.distance(), hot.optics, optics::wobbleOf({a, b}));
    cures.push_back({change, {}, {}, warmth, {}, warmth >= hot.target});
  };
  const bool person = hot.plan.performers.find(hot.at.focus.on.front()) != nullptr;
  if (person && subject > hot.plan.wobble.taped * (1 + 1e-6)) add(Change::onTape, hot.plan.wobble.taped, rig);
  if (still < rig) add(Change::standStill, subject, still);
}

std::vector<HotCure> splitCures(const Hot& hot) {
  std::vector<HotCure> cures{{Change::nearerTogether, {}, {}, {}, {}, false}};
  std::vector<optics::Held> held;
  for (const SplitOn& one : hot.at.focus.split)
    held.push_back({optics::fromPupil(one.distance, hot.ahead()), one.wobble});
  if (!(optics::splitWarmth(held, hot.optics).warmth < hot.target)) return cures;
  const optics::SplitCures split = optics::curesForSplit(held, hot.optics, hot.target, hot.limits);
  addLensCures(hot, split.widen, split.stopDown, cures);
  return cures;
}

/// A stop has to be reached and a focal length not passed, so they are rounded that way.
std::string focalText(double focal, bool enough) {
  return (enough ? base::fixedDown(focal, 1) : base::fixed(focal, 0)) + " mm";
}

std::string cureText(const plan::Plan& plan, const HotCure& cure) {
  std::string inside;
  if (cure.band)
    inside = "band " + lengthText(plan, cure.band->near) + " to " + lengthText(plan, cure.band->far) + ", ";
  std::string text = changeText(plan, cure);
  if (cure.warmth)
    text += " (" + inside + base::fixed(*cure.warmth, 1) + " \u00d7 wobble" + (cure.enough ? "" : ", not enough") + ")";
  if (cure.moreLight) text += ", with " + base::fixed(*cure.moreLight, 1) + " stops more light";
  return text;
}

}  // namespace

bool isHot(const plan::Plan& plan, const Instant& instant) {
  return instant.lens && instant.focus.warmth && *instant.focus.warmth < threshold(plan, "warmth").value;
}

std::vector<HotCure> curesAt(const plan::Plan& plan, const Instant& instant) {
  if (!plan.lens || !isHot(plan, instant)) return {};
  const Hot hot = hotOf(plan, instant);
  if (!instant.focus.split.empty()) return splitCures(hot);
  if (!(optics::warmthOf(hot.distance(), hot.optics, *instant.focus.wobble) < hot.target)) return {};
  const optics::Cures lens =
      optics::curesFor(hot.distance(), hot.optics, *instant.focus.wobble, hot.target, hot.limits);
  std::vector<HotCure> cures{cureOf(hot, Change::backOff, lens.backOff.value + hot.ahead(), lens.backOff)};
  addLensCures(hot, lens.widen, lens.stopDown, cures);
  addSteadier(hot, cures);
  return cures;
}

std::string changeText(const plan::Plan& plan, const HotCure& cure) {
  switch (cure.change) {
    case Change::backOff:
      return "back off to " + lengthText(plan, *cure.value);
    case Change::nearerTogether:
      return "bring them nearer to one distance from the lens";
    case Change::widen:
      return "widen to " + focalText(*cure.value, cure.enough);
    case Change::stopDown:
      return "stop down to T" + (cure.enough ? base::fixedUp(*cure.value, 1) : base::fixed(*cure.value, 1));
    case Change::onTape:
      return "stop them on tape";
    case Change::standStill:
      return "pull while the camera stands";
  }
  return "";
}

std::string curesText(const plan::Plan& plan, const std::vector<HotCure>& cures) {
  std::string text;
  for (const HotCure& cure : cures) text += (text.empty() ? "" : "; or ") + cureText(plan, cure);
  return text;
}

const Instant& arrivalOf(const Evidence& evidence, const Move& move) {
  const auto at = std::lower_bound(evidence.samples.begin(), evidence.samples.end(), move.until - 1e-9,
                                   [](const Instant& instant, double t) { return instant.time < t; });
  return at == evidence.samples.end() ? evidence.samples.back() : *at;
}

std::vector<HotSpot> hotSpots(const Evidence& evidence) {
  std::vector<HotSpot> spots;
  const plan::Plan& plan = *evidence.plan;
  for (const auto& stretch : hotStretches(evidence))
    spots.push_back({spanOf(evidence, stretch), 0, &evidence.samples[stretch.worst], {}});
  for (std::size_t i = 0; i < evidence.moves.size() && !evidence.samples.empty(); ++i) {
    const Move& move = evidence.moves[i];
    if (move.axis != Move::Axis::focus) continue;
    if (const Instant& at = arrivalOf(evidence, move); isHot(plan, at))
      spots.push_back({{move.from, move.until}, i + 1, &at, {}});
  }
  for (HotSpot& spot : spots) spot.cures = curesAt(plan, *spot.at);
  std::stable_sort(spots.begin(), spots.end(),
                   [](const HotSpot& a, const HotSpot& b) { return a.at->time < b.at->time; });
  return spots;
}

}  // namespace wend::snags
