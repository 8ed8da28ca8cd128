// A drawn route takes somebody away from what they need. What hangs on links and poles has rules of its own.
#include <optional>

#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

struct Words {
  const char *text, *mend;
};

/// Nothing for what the rules of links and poles tell.
std::optional<Words> wordsFor(NeedFails why) {
  switch (why) {
    case NeedFails::far:
      return Words{"is farther from the camera than the plan says they may be", "draw the way nearer to the camera's"};
    case NeedFails::away:
      return Words{"is not in the shelter they are to stay in", "draw the way into it"};
    case NeedFails::blind:
      return Words{"cannot see who they are to see", "move them to where nothing stands in between"};
    case NeedFails::link:
    case NeedFails::reach:
    case NeedFails::gap:
      break;
  }
  return std::nullopt;
}

}  // namespace

Findings needUnmet(const Evidence& evidence) {
  const plan::Plan& plan = *evidence.plan;
  const Threshold row = threshold(plan, "need-unmet");
  Findings findings;
  for (const NeedUnmet& unmet : evidence.unmetNeeds) {
    const auto words = wordsFor(unmet.why);
    if (!words || unmet.span.length() < row.value) continue;
    findings.push_back({unmet.who, placeOf(plan, unmet.pos), unmet.span.from, unmet.span.until, unmet.pos, row.severity,
                        nameOf(plan, unmet.who) + " " + words->text + " for " + seconds(unmet.span.length()),
                        std::string(words->mend) + ", delete the way and let one be found, or change the need"});
  }
  return findings;
}

}  // namespace wend::snags
