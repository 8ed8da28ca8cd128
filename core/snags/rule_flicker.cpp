// Lamps on the mains pulse, and the shutter holds no whole number of pulses: frames differ in brightness while any
// burns.
#include "core/base/text.h"
#include "core/light/fixture.h"
#include "core/light/flicker.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

light::Fixture dimmed(const plan::Plan& plan, const plan::Fixture& fixture) {
  light::Fixture lamp;
  for (const auto& key : fixture.level)
    lamp.level.push_back(
        {{plan::secondsOf(plan, key.time.at), key.time.over, key.time.pace == plan::Pace::eased}, key.share});
  return lamp;
}

std::string mendText(double shutter, double rate, double mains) {
  const std::string other = "let nothing burn that goes out between pulses, or dim by other means than the mains";
  const auto steady = light::steadyShutters(rate, mains);
  if (steady.empty()) return other;
  return "set the shutter to " + base::fixed(light::nearestSteady(shutter, steady), 1) + "\u00b0, or " + other;
}

}  // namespace

Findings flicker(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  if (!plan.clock.mainsHz || plan.fixtures.size() == 0) return findings;
  const Threshold limit = threshold(plan, "flicker");
  const double rate = plan.clock.rate(), shutter = plan.camera.shutterDeg, mains = *plan.clock.mainsHz;
  const double swing = light::rippleStops(shutter, rate, mains);
  if (swing <= limit.value) return findings;
  std::vector<light::Fixture> lamps;
  for (const auto& fixture : plan.fixtures) lamps.push_back(dimmed(plan, fixture));
  const auto lit = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) -> std::optional<double> {
    for (const auto& lamp : lamps)
      if (light::levelAt(lamp, instant.time) > 0) return swing;
    return std::nullopt;
  });
  for (const auto& stretch : lit) {
    const Span span = spanOf(evidence, stretch);
    findings.push_back({"light", "", span.from, span.until, std::nullopt, limit.severity,
                        "lamps on " + base::fixed(mains, 0) + " Hz may vary by up to " + base::fixed(swing, 2) +
                            " stop from frame to frame at a shutter of " + base::fixed(shutter, 1) +
                            "\u00b0, those that go out between pulses",
                        mendText(shutter, rate, mains)});
  }
  return findings;
}

}  // namespace wend::snags
