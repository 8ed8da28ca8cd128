// A face shows whose light nobody can tell, in a plan that tells of light: its exposure is unknown there, not fine.
#include <cmath>

#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::snags {

namespace {

bool unknownLight(const PerformerAt& face) {
  const bool shown = optics::shows(face.inFrame);
  return face.present && shown && !face.needed && !face.offset;
}

/// "17:30:00", seconds beyond a day left out.
std::string clockText(double seconds) {
  constexpr double kDay = 86400;
  const double whole = std::fmod(std::round(seconds), kDay);
  return units::timeOfDayText(whole < 0 ? whole + kDay : whole);
}

/// What an area read by the clock lacks there and then, in words; empty where its list is not to blame.
std::string listLacks(const plan::Plan& plan, Point pos, double t) {
  for (const auto& area : plan.set.areas) {
    if (area.byClock.empty() || !onArea(area, pos)) continue;
    const std::string name = nameOf(plan, area.id.text());
    if (!plan.clock.timeOfDay) return name + " is read by the clock, and the plan has no time of day";
    const double now = *plan.clock.timeOfDay + t, first = area.byClock.front().timeOfDay,
                 last = area.byClock.back().timeOfDay;
    if (now < first) return "the list of " + name + " begins at " + clockText(first) + ", and it is " + clockText(now);
    if (now > last) return "the list of " + name + " ends at " + clockText(last) + ", and it is " + clockText(now);
  }
  return {};
}

/// The first that is lacking: whoever walks under a list comes from beside it.
std::string firstLack(const Evidence& evidence, std::size_t performer, const Stretch& stretch) {
  for (std::size_t i = stretch.first; i <= stretch.last; ++i) {
    const Instant& instant = evidence.samples[i];
    std::string lacks = listLacks(*evidence.plan, instant.performers[performer].pos, instant.time);
    if (!lacks.empty()) return lacks;
  }
  return {};
}

/// A list that stops short is a plan that was meant to tell and does not, so it is a risk; of other places nobody said.
Finding findingOf(const Evidence& evidence, std::size_t performer, const Stretch& stretch, const Threshold& row) {
  const plan::Plan& plan = *evidence.plan;
  const PerformerAt& face = evidence.samples[stretch.first].performers[performer];
  const Span span = spanOf(evidence, stretch);
  const std::string lacks = firstLack(evidence, performer, stretch);
  return {face.id,
          placeOf(plan, face.pos),
          span.from,
          span.until,
          face.pos,
          lacks.empty() ? row.severity : Severity::risks,
          "the light on " + nameOf(plan, face.id) + " is unknown for " + seconds(span.length()) +
              (lacks.empty() ? "" : ": " + lacks),
          lacks.empty() ? "give the place a reading or a lamp" : "carry the list on, or start at another hour"};
}

}  // namespace

Findings lightUnknown(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  if (!tellsOfLight(plan)) return findings;
  const Threshold row = threshold(plan, "light-unknown");
  for (std::size_t i = 0; i < plan.performers.size(); ++i) {
    const auto found = stretches(evidence, row.hold, [&](const Instant& instant, std::size_t) {
      return unknownLight(instant.performers[i]) ? std::optional<double>(0) : std::nullopt;
    });
    for (const auto& stretch : found) findings.push_back(findingOf(evidence, i, stretch, row));
  }
  return findings;
}

}  // namespace wend::snags
