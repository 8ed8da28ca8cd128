#include "ui/details/need_words.h"

#include <algorithm>

#include "core/answers/route_needs.h"
#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/sheets/need_state.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/length.h"

namespace wend::ui {
namespace {

using plan::Plan;

struct NeedWords {
  const Plan& plan;
  std::string operator()(const plan::NearCamera& need) const {
    return "within " + units::lengthText(need.within, plan.display) + " of the camera";
  }
  std::string operator()(const plan::Sees& need) const {
    return "sees " + (need.who == plan::kFocusSubject ? "who is sharp" : snags::nameOf(plan, need.who));
  }
  std::string operator()(const plan::Stays& need) const { return "in " + snags::nameOf(plan, need.shelter); }
  std::string operator()(const plan::Holds& need) const { return "link " + snags::nameOf(plan, need.link); }
  std::string operator()(const plan::Reaches& need) const { return "pole " + snags::nameOf(plan, need.pole); }
};

/// The word of a break for the kind of need, in the order of Need::What; none for links and poles, which have figures.
constexpr const char* kBreaks[] = {"far", "blind", "away", "", ""};

std::string breakWords(const std::vector<answers::RouteBreak>& breaks, const std::string& why, geometry::Span during) {
  double seconds = 0;
  const answers::RouteBreak* first = nullptr;
  for (const auto& broken : breaks) {
    const double from = std::max(broken.span.from, during.from), until = std::min(broken.span.until, during.until);
    if (broken.why != why || until < from) continue;
    seconds += until - from;
    if (!first) first = &broken;
  }
  if (!first) return "met";
  return "not met for " + base::fixed(seconds, 1) + " s, first at " + units::takeTimeText(first->span.from);
}

/// Of the route that is drawn, or of the one found; nothing where there is neither.
std::optional<std::vector<answers::RouteBreak>> breaksOf(const answers::Answers& answers, std::size_t member,
                                                         const std::string& id) {
  if (const auto* track = answers.take->people().crew(member))
    return answers::needBreaks(*answers.take, member, [track](double t) { return track->place(t); });
  const auto* found = answers.routes ? answers.routes->find(id) : nullptr;
  if (found && found->found) return found->breaks;
  return std::nullopt;
}

}  // namespace

void addNeedLines(const Subject& subject, std::vector<Computed>& lines) {
  const Plan& plan = subject.plan;
  const std::string& id = subject.selection.id;
  const auto& needs = plan.crew.find(id)->needs;
  const bool known = subject.answers && subject.answers->evidence && subject.answers->evidence->plan.get() == &plan &&
                     &subject.answers->take->plan() == &plan;
  if (needs.empty() || !known) return;
  const auto breaks = breaksOf(*subject.answers, plan.crew.indexOf(id), id);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    const auto& need = needs[i];
    const geometry::Span during{need.from ? plan::secondsOf(plan, *need.from) : 0,
                                need.until ? plan::secondsOf(plan, *need.until) : plan.clock.length};
    const std::string why = kBreaks[need.what.index()];
    const auto* link = std::get_if<plan::Holds>(&need.what);
    const auto* pole = std::get_if<plan::Reaches>(&need.what);
    const snags::Evidence& evidence = *subject.answers->evidence;
    const std::string state = link      ? sheets::linkState(evidence, link->link, during)
                              : pole    ? sheets::poleState(evidence, pole->pole, during)
                              : !breaks ? "unknown: no route drawn or found"
                                        : breakWords(*breaks, why, during);
    lines.push_back({"need " + std::to_string(i + 1), std::visit(NeedWords{plan}, need.what) + ": " + state});
  }
}

}  // namespace wend::ui
