#include "core/plan/edits_plan.h"

#include "core/plan/edits_parts.h"
#include "core/units/timecode.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Result;

Result<Plan> withText(const Plan& plan, std::string Plan::*member, const std::string& text, const std::string& where) {
  if (Trouble trouble = textTrouble(text, where)) return *trouble;
  Plan next = plan;
  next.*member = text;
  return next;
}

template <class Change>
Result<Plan> changedClock(const Plan& plan, Change&& change) {
  return changedPart(plan, &Plan::clock, "/clock", std::forward<Change>(change));
}

bool isDropRate(int numerator, int denominator) {
  return denominator == 1001 && (numerator == 30000 || numerator == 60000);
}

bool isTimecode(const std::string& text, const Clock& clock) {
  return units::framesFrom(text, {{clock.rateNumerator, clock.rateDenominator}, clock.dropFrame}).ok();
}

auto acceptedAt(auto& accepted, const std::string& key) {
  return std::find_if(accepted.begin(), accepted.end(), [&](const Accepted& a) { return a.key == key; });
}

}  // namespace

Result<Plan> titled(const Plan& plan, const std::string& title) {
  return withText(plan, &Plan::title, title, "/title");
}

Result<Plan> revisionSet(const Plan& plan, const std::string& revision) {
  return withText(plan, &Plan::revision, revision, "/revision");
}

Result<Plan> notesSet(const Plan& plan, const std::string& notes) {
  return withText(plan, &Plan::notes, notes, "/notes");
}

Result<Plan> displayUnitSet(const Plan& plan, LengthUnit unit) {
  Plan next = plan;
  next.display = unit;
  return next;
}

Result<Plan> clockLengthSet(const Plan& plan, double seconds) {
  return changedClock(plan, [&](Clock& clock) { clock.length = seconds; });
}

Result<Plan> frameRateSet(const Plan& plan, int numerator, int denominator, bool dropFrame) {
  if (numerator < 1 || denominator < 1 || numerator > 1000000 || denominator > 1001 || numerator < denominator ||
      numerator > 1000.0 * denominator)
    return Problem{"rate", "/clock/rate", std::to_string(numerator) + "/" + std::to_string(denominator),
                   "1 to 1000 frames a second", "Choose a rate in that range."};
  if (dropFrame && !isDropRate(numerator, denominator))
    return Problem{"drop-frame", "/clock/dropFrame", std::to_string(numerator) + "/" + std::to_string(denominator),
                   "30000/1001 or 60000/1001 with drop frame", "Switch drop frame off, or choose one of these rates."};
  return changedClock(plan, [&](Clock& clock) -> Trouble {
    clock.rateNumerator = numerator;
    clock.rateDenominator = denominator;
    clock.dropFrame = dropFrame;
    if (clock.startTimecode.size() == 11) clock.startTimecode[8] = dropFrame ? ';' : ':';
    if (isTimecode(clock.startTimecode, clock)) return std::nullopt;
    return Problem{"timecode", "/clock/startTimecode", clock.startTimecode, "a timecode that exists at this rate",
                   "Change the start timecode first."};
  });
}

Result<Plan> timeOfDaySet(const Plan& plan, std::optional<double> seconds) {
  return changedClock(plan, [&](Clock& clock) { clock.timeOfDay = seconds; });
}

Result<Plan> startTimecodeSet(const Plan& plan, const std::string& timecode) {
  return changedClock(plan, [&](Clock& clock) -> Trouble {
    if (!isTimecode(timecode, clock))
      return Problem{"timecode", "/clock/startTimecode", timecode,
                     clock.dropFrame ? "HH:MM:SS;FF, with a frame number that drop frame keeps" : "HH:MM:SS:FF",
                     "Type hours, minutes, seconds and frames below the frame rate."};
    clock.startTimecode = timecode;
    return std::nullopt;
  });
}

Result<Plan> mainsSet(const Plan& plan, std::optional<int> hertz) {
  if (hertz && *hertz != 50 && *hertz != 60)
    return Problem{"mains", "/clock/mainsHz", std::to_string(*hertz) + " Hz", "50 or 60 Hz", "Choose one of the two."};
  return changedClock(plan, [&](Clock& clock) { clock.mainsHz = hertz; });
}

Result<Plan> cycleSet(const Plan& plan, std::optional<double> minutes) {
  return changedClock(plan, [&](Clock& clock) { clock.cycleMinutes = minutes; });
}

Result<Plan> siteSet(const Plan& plan, std::optional<Site> site) {
  if (site) {
    if (!isDate(site->date))
      return Problem{"date", "/site/date", dateText(site->date), "a day of the years 1900 to 2199",
                     "Type the year, the month and the day."};
    if (Trouble trouble = settle(plan.site.value_or(Site{}), *site, "/site")) return *trouble;
  }
  Plan next = plan;
  next.site = std::move(site);
  return next;
}

Result<Plan> speechSet(const Plan& plan, std::vector<Speech> speech) {
  return changedPart(plan, &Plan::speech, "/speech", [&](std::vector<Speech>& old) { old = std::move(speech); });
}

Result<Plan> handoversSet(const Plan& plan, std::vector<Handover> handovers) {
  return changedPart(plan, &Plan::handovers, "/handovers",
                     [&](std::vector<Handover>& old) { old = std::move(handovers); });
}

Result<Plan> thresholdFactorSet(const Plan& plan, const std::string& name, double factor) {
  const double value = quantised(factor, kinds::kFactor);
  if (name.empty() || !(value >= kinds::kFactor.least && value <= kinds::kFactor.most))
    return Problem{"out-of-range", "/thresholds/" + name, "another factor", rangeText(kinds::kFactor),
                   "Type a factor in that range."};
  Plan next = plan;
  if (value == 1)
    next.thresholds.erase(name);
  else
    next.thresholds[name] = value;
  return next;
}

Result<Plan> sizeShareSet(const Plan& plan, const std::string& size, std::optional<double> share) {
  if (Trouble trouble = textTrouble(size, "/sizes")) return *trouble;
  if (size.empty()) return notThere("/sizes", "no size", "a shot size's name");
  Plan next = plan;
  next.sizes.erase(size);
  if (!share) return next;
  if (!KnownNumbers::inRange(*share, kinds::kSizeShare))
    return Problem{"out-of-range", "/sizes/" + size, "another share", rangeText(kinds::kSizeShare),
                   "Type a share in that range."};
  next.sizes[size] = quantised(*share, kinds::kSizeShare);
  return next;
}

Result<Plan> acceptedSnag(const Plan& plan, const std::string& key, const std::string& by, const std::string& note) {
  if (Trouble trouble = textTrouble(key + by + note, "/accepted")) return *trouble;
  if (key.empty()) return notThere("/accepted", "no key", "a snag's key");
  Plan next = plan;
  const auto at = acceptedAt(next.accepted, key);
  if (at == next.accepted.end()) {
    next.accepted.push_back({key, by, note, {}});
  } else {
    at->by = by;
    at->note = note;
  }
  return next;
}

Result<Plan> unacceptedSnag(const Plan& plan, const std::string& key) {
  const auto at = acceptedAt(plan.accepted, key);
  if (at == plan.accepted.end()) return notThere("/accepted", "\"" + key + "\"", "a snag that is accepted");
  Plan next = plan;
  next.accepted.erase(next.accepted.begin() + (at - plan.accepted.begin()));
  return next;
}

Result<Plan> loggedTake(const Plan& plan, Take take) {
  return changedPart(plan, &Plan::takes, "/takes", [&](std::vector<Take>& takes) { takes.push_back(std::move(take)); });
}

}  // namespace wend::plan
