#include "core/answers/full_shelters.h"

#include <algorithm>
#include <optional>

#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/base/text.h"
#include "core/snags/stretch.h"

namespace wend::answers {

namespace {

/// Seconds between two looks.
constexpr double kLook = 0.25;

bool holds(const std::vector<std::size_t>& list, std::size_t member) {
  return std::find(list.begin(), list.end(), member) != list.end();
}

/// Who but `member` is in a shelter at t.
std::vector<std::size_t> insideAt(const Take& take, const std::string& shelter, std::size_t member,
                                  const std::vector<std::size_t>& placed, double t) {
  std::vector<std::size_t> inside;
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
    if (i == member || isCarried(take.plan(), i)) continue;
    const bool drawn = take.people().crew(i) && take.people().crewAt(i, t, {}).shelter == shelter;
    const auto stays = holds(placed, i) ? staySpans(take, i, shelter) : std::vector<geometry::Span>{};
    if (drawn || std::any_of(stays.begin(), stays.end(), [t](const auto& span) { return span.contains(t); }))
      inside.push_back(i);
  }
  return inside;
}

std::optional<FullShelter> fullDuring(const Take& take, const plan::Shelter& shelter, std::size_t member,
                                      const std::vector<std::size_t>& placed, geometry::Span stay) {
  std::optional<FullShelter> full;
  const auto look = [&](double t) {
    auto inside = insideAt(take, shelter.id.text(), member, placed, t);
    if (inside.size() < static_cast<std::size_t>(std::max(shelter.holds, 0))) return;
    if (!full) full = FullShelter{shelter.id.text(), {t, t}, std::move(inside)};
    full->span.until = t;
  };
  for (double t = stay.from; t < stay.until; t += kLook) look(t);
  look(stay.until);
  return full;
}

/// "grip", "grip and gaffer", "grip, gaffer and runner".
std::string names(const plan::Plan& plan, const std::vector<std::size_t>& who) {
  std::string text;
  for (std::size_t i = 0; i < who.size(); ++i)
    text += (i == 0 ? "" : i + 1 == who.size() ? " and " : ", ") + snags::nameOf(plan, plan.crew[who[i]].id.text());
  return text;
}

plan::Plan holdingOneMore(plan::Plan plan, const FullShelter& full) {
  plan::Shelter shelter = *plan.shelters.find(full.id);
  shelter.holds = static_cast<int>(full.who.size()) + 1;
  plan.shelters.replace(plan.shelters.indexOf(full.id), shelter);
  return plan;
}

plan::Plan notStaying(plan::Plan plan, const FullShelter& full, std::size_t who) {
  plan::Crew crew = plan.crew[who];
  std::erase_if(crew.needs, [&](const plan::Need& need) {
    const auto* stays = std::get_if<plan::Stays>(&need.what);
    return stays && stays->shelter == full.id;
  });
  plan.crew.replace(who, crew);
  return plan;
}

}  // namespace

std::vector<FullShelter> fullShelters(const Take& take, std::size_t member, const std::vector<std::size_t>& placed) {
  std::vector<FullShelter> all;
  for (const auto& shelter : take.plan().shelters)
    for (const auto& stay : staySpans(take, member, shelter.id.text()))
      if (auto full = fullDuring(take, shelter, member, placed, stay)) all.push_back(*std::move(full));
  return all;
}

std::string fullWords(const plan::Plan& plan, const std::vector<FullShelter>& full) {
  std::string text;
  for (const auto& one : full) {
    const plan::Shelter& shelter = *plan.shelters.find(one.id);
    text += (text.empty() ? "" : ". ") + snags::nameOf(plan, one.id) + " is full " + base::fixed(one.span.from, 1) +
            "\u2013" + base::fixed(one.span.until, 1) + " s: it holds " + std::to_string(shelter.holds);
    if (!one.who.empty()) text += ", and " + names(plan, one.who) + (one.who.size() == 1 ? " is" : " are") + " in it";
  }
  return text;
}

std::vector<Freeing> freedPlaces(const plan::Plan& plan, const std::vector<FullShelter>& full,
                                 const std::vector<std::size_t>& placed,
                                 const std::function<bool(const plan::Plan&)>& frees) {
  std::vector<Freeing> all;
  for (const auto& one : full) {
    const plan::Plan more = holdingOneMore(plan, one);
    const std::string name = snags::nameOf(plan, one.id);
    if (frees(more))
      all.push_back({Freeing::Kind::place, {}, name + " holding " + std::to_string(more.shelters.find(one.id)->holds)});
    for (const std::size_t who : one.who) {
      if (!holds(placed, who) || !frees(notStaying(plan, one, who))) continue;
      all.push_back({Freeing::Kind::place, {}, names(plan, {who}) + " not staying in " + name});
      break;
    }
  }
  return all;
}

}  // namespace wend::answers
