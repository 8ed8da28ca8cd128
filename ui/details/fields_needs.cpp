#include <algorithm>

#include "core/plan/edits_people.h"
#include "ui/details/fields.h"
#include "ui/details/member_fields.h"

namespace wend::ui {
namespace {

using plan::Need;
using plan::Plan;

const std::string kNothing = "nothing more", kNear = "near the camera", kSees = "sees", kStays = "stays in",
                  kHolds = "holds a link", kReaches = "serves a pole";

std::string wordOf(const Need& need) {
  const std::string words[] = {kNear, kSees, kStays, kHolds, kReaches};
  return words[need.what.index()];
}

/// A need of that kind with the first thing it can be about; nothing where the plan has none of it.
std::optional<Need::What> needOf(const Plan& plan, const std::string& word) {
  const auto first = [](const auto& table) { return table.empty() ? std::string() : table[0].id.text(); };
  if (word == kNear) return plan::NearCamera{};
  if (word == kSees) return plan::Sees{plan::kFocusSubject};
  if (word == kStays && !plan.shelters.empty()) return plan::Stays{first(plan.shelters)};
  if (word == kHolds && !plan.links.empty()) return plan::Holds{first(plan.links)};
  if (word == kReaches && !plan.poles.empty()) return plan::Reaches{first(plan.poles)};
  return std::nullopt;
}

/// change(needs) on a copy of the crew member's needs.
template <class Change>
PlanEdit withNeeds(const Plan& plan, const std::string& id, Change change) {
  auto needs = plan.crew.find(id)->needs;
  change(needs);
  return plan::crewNeedsSet(plan, id, std::move(needs));
}

PlanEdit kindSet(const Plan& plan, const std::string& id, std::size_t i, const std::string& word) {
  if (word == kNothing)
    return withNeeds(plan, id, [i](auto& needs) {
      if (i < needs.size()) needs.erase(needs.begin() + std::ptrdiff_t(i));
    });
  const auto what = needOf(plan, word);
  if (!what)
    return base::Problem{"nothing-to-need", "", word, "a shelter, link or pole in the plan",
                         "put one into the plan first"};
  return withNeeds(plan, id, [&](auto& needs) {
    if (i == needs.size()) needs.emplace_back();
    needs[i].what = *what;
  });
}

/// What the need is about: metres, or one of the plan's things.
struct AboutField {
  const Plan& plan;
  std::string label, id;
  std::size_t i;

  template <class What>
  Field chosen(const std::string& now, std::vector<std::string> among, std::string What::*member) const {
    return choiceField(label, now, std::move(among), [id = id, i = i, member](const Plan& p, const std::string& word) {
      return withNeeds(p, id, [&](auto& needs) { std::get<What>(needs[i].what).*member = word; });
    });
  }
  Field operator()(const plan::NearCamera& need) const {
    return lengthField(label, need.within, [id = id, i = i](const Plan& p, double metres) {
      return withNeeds(p, id, [&](auto& needs) { needs[i].what = plan::NearCamera{metres}; });
    });
  }
  Field operator()(const plan::Sees& need) const {
    return chosen(need.who, idsOf(plan.performers, {plan::kFocusSubject}), &plan::Sees::who);
  }
  Field operator()(const plan::Stays& need) const {
    return chosen(need.shelter, idsOf(plan.shelters), &plan::Stays::shelter);
  }
  Field operator()(const plan::Holds& need) const { return chosen(need.link, idsOf(plan.links), &plan::Holds::link); }
  Field operator()(const plan::Reaches& need) const {
    return chosen(need.pole, idsOf(plan.poles), &plan::Reaches::pole);
  }
};

Field endOf(const std::string& label, const std::string& id, std::size_t i, std::optional<plan::Moment> Need::*member,
            const Need& need, const std::string& meaning) {
  return optionalMomentField(label, need.*member, meaning,
                             [id, i, member](const Plan& p, const std::optional<plan::Moment>& moment) {
                               return withNeeds(p, id, [&](auto& needs) { needs[i].*member = moment; });
                             });
}

}  // namespace

void addNeeds(const Subject& subject, const plan::Crew& crew, Fields& fields) {
  const std::string id = crew.id.text();
  for (std::size_t i = 0; i <= crew.needs.size(); ++i) {
    const bool more = i == crew.needs.size();
    const std::string number = std::to_string(i + 1);
    Field kind = choiceField("need " + number, more ? kNothing : wordOf(crew.needs[i]),
                             {kNothing, kNear, kSees, kStays, kHolds, kReaches},
                             [id, i](const Plan& p, const std::string& word) { return kindSet(p, id, i, word); });
    kind.columns = 2;
    fields.push_back(std::move(kind));
    if (more) return;
    const Need& need = crew.needs[i];
    fields.push_back(std::visit(AboutField{subject.plan, "of need " + number, id, i}, need.what));
    fields.push_back(endOf("from " + number, id, i, &Need::from, need, "the start"));
    fields.push_back(endOf("until " + number, id, i, &Need::until, need, "the end"));
  }
}

}  // namespace wend::ui
