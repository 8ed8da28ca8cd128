// A pan so fast that still detail judders, with no subject held in the frame to ride on: about 7 s for a still thing to
// cross the frame at 24 frames a second and a half-open shutter, a rule of the trade (homemade-editing.com, "Motion
// picture"; some textbooks print 3 to 5 s). No ITU or SMPTE document sets a limit.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// True when somebody in frame keeps their place in it: the image moves less than `held` frames a second.
bool subjectHeld(const Evidence& evidence, std::size_t i, double held) {
  const std::size_t before = i == 0 ? i : i - 1;
  const std::size_t after = std::min(i + 1, evidence.samples.size() - 1);
  const double span = evidence.samples[after].time - evidence.samples[before].time;
  if (span <= 0) return true;
  for (std::size_t k = 0; k < evidence.samples[i].performers.size(); ++k) {
    const PerformerAt& now = evidence.samples[i].performers[k];
    if (!optics::shows(now.inFrame)) continue;
    const double moved = evidence.samples[after].performers[k].place.x - evidence.samples[before].performers[k].place.x;
    if (std::abs(moved) / 2 / span < held) return true;
  }
  return false;
}

}  // namespace

Findings panFast(const Evidence& evidence) {
  Findings findings;
  const Threshold row = threshold(*evidence.plan, "pan");
  const double held = threshold(*evidence.plan, "pan-held").value;
  const auto fast = stretches(evidence, row.hold, [&](const Instant& instant, std::size_t i) -> std::optional<double> {
    if (!instant.lens) return std::nullopt;
    const double rate = std::abs(instant.camera.panRate);
    if (rate <= instant.lens->hfov * row.value || subjectHeld(evidence, i, held)) return std::nullopt;
    return rate;
  });
  for (const auto& stretch : fast) {
    const Instant& worst = evidence.samples[stretch.worst];
    const Span span = spanOf(evidence, stretch);
    findings.push_back({"camera", "", span.from, span.until, geometry::flat(worst.camera.sensor.at), row.severity,
                        "pan of " + base::fixed(stretch.value, 0) +
                            "\u00b0/s with nobody held in frame; still detail judders over " +
                            base::fixed(worst.lens->hfov * row.value, 1) + "\u00b0/s",
                        "hold a subject through it, slow down, or make it a swish"});
  }
  return findings;
}

}  // namespace wend::snags
