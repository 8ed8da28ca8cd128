// The sharp band is narrower than people and rig wobble: the focus is a gamble there, however good the hand. Each cure
// is one change alone, with the band it would give.
#include <cmath>

#include "core/base/text.h"
#include "core/optics/warmth.h"
#include "core/plan/rig_wobble.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

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

std::string curesText(const plan::Plan& plan, const Instant& worst) {
  const plan::Lens& lens = *plan.lens;
  const double target = threshold(plan, "warmth").value, transmission = lens.transmission.at(worst.lens->focal);
  const optics::Optics optics{worst.lens->focal, optics::fNumberOf(worst.iris.set, transmission),
                              plan.camera.blurCircle};
  const double distance = optics::fromPupil(worst.focus.wantedDistance, lens.pupilAhead);
  if (!(optics::warmthOf(distance, optics, *worst.focus.wobble) < target)) return "back off, widen or stop down";
  const optics::Cures cures = optics::curesFor(
      distance, optics, *worst.focus.wobble, target,
      {std::min(lens.focal[0], optics.focal), std::max(optics::fNumberOf(lens.stop[1], transmission), optics.fNumber)});
  const double stop = optics::tNumberOf(cures.stopDown.value, transmission);
  return cureText(plan, "back off to " + lengthText(plan, cures.backOff.value + lens.pupilAhead), cures.backOff) +
         cureText(plan, "; or widen to " + base::fixed(cures.widen.value, 0) + " mm", cures.widen) +
         cureText(plan, "; or stop down to T" + base::fixed(stop, 1), cures.stopDown) + ", with " +
         base::fixed(2 * std::log2(stop / worst.iris.set), 1) + " stops more light" +
         steadierText(plan, worst, distance, optics);
}

}  // namespace

Findings hotFocus(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  const Threshold limit = threshold(plan, "warmth");
  for (const auto& stretch : hotStretches(evidence)) {
    const Instant& worst = evidence.samples[stretch.worst];
    const Span span = spanOf(evidence, stretch);
    findings.push_back(
        {worst.focus.on.front(), "", span.from, span.until, geometry::flat(worst.camera.sensor.at), limit.severity,
         "hot focus on " + nameOf(plan, worst.focus.on.front()) + ": band " + base::fixed(*worst.focus.warmth, 1) +
             " \u00d7 wobble (\u00b1" + lengthText(plan, *worst.focus.wobble) + ") at " +
             lengthText(plan, worst.focus.wantedDistance),
         curesText(plan, worst)});
  }
  return findings;
}

}  // namespace wend::snags
