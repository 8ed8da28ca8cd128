// A performer the focus is on, alone or in a split, is out of frame or hidden for longer than a glance.
#include <algorithm>

#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

const PerformerAt* subjectOf(const Instant& instant, const std::string& id) {
  if (!follows(instant.focus, id)) return nullptr;
  const auto found = std::find_if(instant.performers.begin(), instant.performers.end(),
                                  [&](const PerformerAt& performer) { return performer.id == id; });
  return found == instant.performers.end() ? nullptr : &*found;
}

bool lost(const PerformerAt& performer) {
  return !performer.present || performer.inFrame == optics::Showing::out ||
         performer.inFrame == optics::Showing::hidden;
}

}  // namespace

Findings subjectLost(const Evidence& evidence) {
  Findings findings;
  if (!evidence.sightKnown) return findings;
  const Threshold limit = threshold(*evidence.plan, "subject-lost");
  for (const auto& performer : evidence.plan->performers) {
    const std::string& id = performer.id.text();
    const auto gone = stretches(evidence, limit.value, [&](const Instant& instant, std::size_t) {
      const PerformerAt* subject = subjectOf(instant, id);
      return subject && lost(*subject) ? std::optional<double>(0) : std::nullopt;
    });
    for (const auto& stretch : gone) {
      const Span span = spanOf(evidence, stretch);
      const PerformerAt* subject = subjectOf(evidence.samples[stretch.first], id);
      const bool hidden = subject->inFrame == optics::Showing::hidden;
      findings.push_back({id, "", span.from, span.until, subject->pos, limit.severity,
                          performer.name + (hidden ? " is hidden" : " is out of frame") + " for " +
                              seconds(span.length()) + " while the focus is on them",
                          "aim at them, or hand the focus to somebody in frame"});
    }
  }
  return findings;
}

}  // namespace wend::snags
