// The sharp band is narrower than people and rig wobble: the focus is a gamble there, however good the hand. Each cure
// is one change alone, with the band it would give.
#include <cmath>

#include "core/base/text.h"
#include "core/optics/warmth.h"
#include "core/plan/rig_wobble.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"
#include "core/units/stop.h"

namespace wend::snags {

namespace {

/// One change by itself, with the band it gives.
std::string cureText(const plan::Plan& plan, const std::string& change, const optics::Cure& cure) {
  const double ahead = plan.lens->pupilAhead;
  return change + " (band " + lengthText(plan, cure.band.near + ahead) + " to " +
         lengthText(plan, cure.band.far + ahead) + ", " + base::fixed(cure.warmth, 1) + " \u00d7 wobble" +
         (cure.enough ? "" : ", not enough") + ")";
}

/// What less straying would make of the same band: the subject stopped on tape, the camera stopped.
std::string steadierText(const plan::Plan& plan, const Instant& worst, double distance, const optics::Optics& optics) {
  const double rig = plan::rigWobble(plan, worst.camera.moving), still = plan::rigWobble(plan, false),
               all = *worst.focus.wobble;
  const double subject = std::sqrt(std::max(0.0, all * all - rig * rig));
  const auto warmth = [&](double a, double b) {
    return base::fixed(optics::warmthOf(distance, optics, optics::wobbleOf({a, b})), 1) + " \u00d7 wobble)";
  };
  std::string text;
  const bool person = plan.performers.find(worst.focus.on.front()) != nullptr;
  if (person && subject > plan.wobble.taped * (1 + 1e-6))
    text += "; or stop them on tape (" + warmth(plan.wobble.taped, rig);
  if (still < rig) text += "; or pull while the camera stands (" + warmth(subject, still);
  return text;
}

/// The two changes of the lens. A stop has to be reached and a focal length not passed, so they are rounded that way.
std::string lensCures(const plan::Plan& plan, const Instant& worst, const optics::Cure& widen,
                      const optics::Cure& stopDown) {
  const double stop = optics::tNumberOf(stopDown.value, plan.lens->transmission.at(worst.lens->focal));
  const std::string focal =
      widen.enough ? base::fixedDown(widen.value, widen.value < 10 ? 1 : 0) : base::fixed(widen.value, 0);
  return cureText(plan, "widen to " + focal + " mm", widen) +
         cureText(plan, "; or stop down to T" + (stopDown.enough ? base::fixedUp(stop, 1) : base::fixed(stop, 1)),
                  stopDown) +
         ", with " + base::fixed(units::stopsBetween(worst.iris.set, stop), 1) + " stops more light";
}

std::string splitCuresText(const plan::Plan& plan, const Instant& worst, const optics::Optics& optics, double target,
                           const optics::CureLimits& limits) {
  const std::string closer = "bring them nearer to one distance from the lens";
  std::vector<optics::Held> held;
  for (const SplitOn& one : worst.focus.split)
    held.push_back({optics::fromPupil(one.distance, plan.lens->pupilAhead), one.wobble});
  if (!(optics::splitWarmth(held, optics).warmth < target)) return closer + ", widen or stop down";
  const optics::SplitCures cures = optics::curesForSplit(held, optics, target, limits);
  return closer + "; or " + lensCures(plan, worst, cures.widen, cures.stopDown);
}

std::string curesText(const plan::Plan& plan, const Instant& worst) {
  const plan::Lens& lens = *plan.lens;
  const double target = threshold(plan, "warmth").value, transmission = lens.transmission.at(worst.lens->focal);
  const optics::Optics optics{worst.lens->focal, optics::fNumberOf(worst.iris.set, transmission),
                              plan.camera.blurCircle};
  const optics::CureLimits limits{std::min(lens.focal[0], optics.focal),
                                  std::max(optics::fNumberOf(lens.stop[1], transmission), optics.fNumber)};
  if (!worst.focus.split.empty()) return splitCuresText(plan, worst, optics, target, limits);
  const double distance = optics::fromPupil(worst.focus.wantedDistance, lens.pupilAhead);
  if (!(optics::warmthOf(distance, optics, *worst.focus.wobble) < target)) return "back off, widen or stop down";
  const optics::Cures cures = optics::curesFor(distance, optics, *worst.focus.wobble, target, limits);
  return cureText(plan, "back off to " + lengthText(plan, cures.backOff.value + lens.pupilAhead), cures.backOff) +
         "; or " + lensCures(plan, worst, cures.widen, cures.stopDown) + steadierText(plan, worst, distance, optics);
}

}  // namespace

Findings hotFocus(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "warmth");
  for (const auto& stretch : hotStretches(evidence)) {
    const Instant& worst = evidence.samples[stretch.worst];
    const Span span = spanOf(evidence, stretch);
    const std::string tightest =
        worst.focus.tightest.empty() ? "" : ", least for " + nameOf(plan, worst.focus.tightest);
    findings.push_back(
        {worst.focus.on.front(), "", span.from, span.until, geometry::flat(worst.camera.sensor.at), limit.severity,
         "hot focus on " + subjectName(plan, worst.focus.on.front()) + ": band " + base::fixed(*worst.focus.warmth, 1) +
             " \u00d7 wobble (\u00b1" + lengthText(plan, *worst.focus.wobble) + ") at " +
             lengthText(plan, worst.focus.wantedDistance) + tightest,
         curesText(plan, worst)});
  }
  return findings;
}

}  // namespace wend::snags
