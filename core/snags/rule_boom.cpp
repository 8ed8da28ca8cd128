// A microphone on a pole cannot come near enough, the pole is too short for it, or lamps hang in its way.
#include <algorithm>

#include "core/crew/boom.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

/// How far over the limit an instant of a line is; nothing while it is not.
using LineExcess = std::function<std::optional<double>(const BoomAt&)>;

struct Run {
  Span span;
  const BoomAt* worst = nullptr;
  double value = 0;
};

/// Runs of a line's samples in which something is too much, of at least `hold` seconds or the whole of the line.
std::vector<Run> runs(const BoomLine& line, double hold, const LineExcess& excess) {
  std::vector<std::optional<double>> values;
  for (const auto& at : line.at) values.push_back(excess(at));
  std::vector<Run> found;
  for (const Stretch& one : stretchesOf(values))
    found.push_back({{line.at[one.first].time, line.at[one.last].time}, &line.at[one.worst], one.value});
  const double least = line.at.empty() ? 0 : std::min(hold, line.at.back().time - line.at.front().time);
  std::erase_if(found, [&](const Run& run) { return run.span.length() < least - 1e-9; });
  return found;
}

const plan::Pole& poleOf(const Evidence& evidence, const BoomLine& line) {
  return *evidence.plan->poles.find(line.pole);
}

Finding findingOf(const Evidence& evidence, const BoomLine& line, const Run& run, Severity severity,
                  const std::string& text, std::string mend) {
  return {line.who,
          line.pole,
          run.span.from,
          run.span.until,
          run.worst->pos,
          severity,
          text + routeNote(evidence, line.pole),
          std::move(mend)};
}

/// "BOOM 1 over ILSE".
std::string poleOver(const Evidence& evidence, const BoomLine& line) {
  return nameOf(*evidence.plan, line.pole) + " over " + nameOf(*evidence.plan, line.who);
}

std::optional<double> over(double value, double limit) {
  return crew::beyond(value, limit) ? std::optional<double>(value) : std::nullopt;
}

}  // namespace

Findings boomGap(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "boom-gap");
  for (const auto& line : evidence.boom) {
    const double most = poleOf(evidence, line).gap[1] * limit.value;
    for (const auto& run : runs(line, limit.hold, [&](const BoomAt& at) {
           return at.top ? over(at.gap.value_or(0), most) : std::nullopt;
         }))
      findings.push_back(findingOf(evidence, line, run, limit.severity,
                                   poleOver(evidence, line) + " comes no nearer to the mouth than " +
                                       lengthText(*evidence.plan, run.value) + ", the top of the frame being at " +
                                       lengthText(*evidence.plan, *run.worst->top),
                                   "lower the top of the frame, or hide a microphone on them or in the set"));
  }
  return findings;
}

Findings boomReach(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "boom-reach");
  for (const auto& line : evidence.boom) {
    const double most = poleOf(evidence, line).reach * limit.value;
    const auto tooFar = runs(line, limit.hold, [&](const BoomAt& at) { return over(at.reach.value_or(0), most); });
    for (const auto& run : tooFar)
      findings.push_back(findingOf(evidence, line, run, limit.severity,
                                   poleOver(evidence, line) + " has to reach " + lengthText(*evidence.plan, run.value) +
                                       " and reaches " + lengthText(*evidence.plan, most),
                                   "bring the holder nearer, hand over to another pole, or hide a microphone"));
    const auto walled = runs(line, limit.hold, [&](const BoomAt& at) {
      return at.walled && at.reach && !crew::beyond(*at.reach, most) ? at.reach : std::nullopt;
    });
    for (const auto& run : walled)
      findings.push_back(findingOf(evidence, line, run, limit.severity,
                                   poleOver(evidence, line) + " would pass through the set",
                                   "hold it from a place with a free line, or hide a microphone"));
  }
  return findings;
}

Findings boomLamp(const Evidence& evidence) {
  Findings findings;
  const Threshold limit = threshold(*evidence.plan, "boom-lamp");
  for (const auto& line : evidence.boom) {
    const auto near = runs(line, limit.hold, [&](const BoomAt& at) {
      return !at.lamp.empty() && at.lampMetres < limit.value ? std::optional<double>(limit.value - at.lampMetres)
                                                             : std::nullopt;
    });
    for (const auto& run : near)
      findings.push_back(findingOf(evidence, line, run, limit.severity,
                                   poleOver(evidence, line) + " passes " + nameOf(*evidence.plan, run.worst->lamp) +
                                       " at " + lengthText(*evidence.plan, run.worst->lampMetres),
                                   "caution: lamps are hot and live; come in from another side, by whoever is "
                                   "in charge of the lamps"));
  }
  return findings;
}

}  // namespace wend::snags
