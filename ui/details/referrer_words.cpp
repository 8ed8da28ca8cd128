#include "ui/details/referrer_words.h"

#include <algorithm>
#include <charconv>
#include <vector>

#include "core/base/text.h"
#include "ui/details/chosen_words.h"

namespace wend::ui {
namespace {

using plan::Plan;

constexpr std::size_t kMost = 3;

template <class T>
std::string idIn(const base::Table<T>& table, std::size_t i) {
  return i < table.size() ? table[i].id.text() : std::string();
}

/// The first number in a JSON pointer: the place in the list.
std::size_t numberIn(const std::string& where) {
  const std::size_t digit = where.find_first_of("0123456789");
  std::size_t number = 0;
  if (digit != std::string::npos) std::from_chars(where.data() + digit, where.data() + where.size(), number);
  return number;
}

/// Whatever holds the place a pointer leads to.
Selection holderOf(const Plan& plan, const std::string& where) {
  const std::size_t i = numberIn(where);
  const int row = static_cast<int>(i);
  const auto in = [&](const char* list) { return where.starts_with(list); };
  if (in("/set/openings/")) return {Kind::opening, idIn(plan.set.openings, i), -1};
  if (in("/set/pieces/")) return {Kind::piece, idIn(plan.set.pieces, i), -1};
  if (in("/set/areas/")) return {Kind::area, idIn(plan.set.areas, i), -1};
  if (in("/fixtures/")) return {Kind::fixture, idIn(plan.fixtures, i), -1};
  if (in("/performers/")) return {Kind::performer, idIn(plan.performers, i), -1};
  if (in("/crew/")) return {Kind::crew, idIn(plan.crew, i), -1};
  if (in("/props/")) return {Kind::prop, idIn(plan.props, i), -1};
  if (in("/cables/")) return {Kind::cable, idIn(plan.cables, i), -1};
  if (in("/poles/")) return {Kind::pole, idIn(plan.poles, i), -1};
  if (in("/links/")) return {Kind::link, idIn(plan.links, i), -1};
  if (in("/speech/")) return {Kind::speech, {}, row};
  if (in("/handovers/")) return {Kind::handover, {}, row};
  if (in("/camera/aims/")) return {Kind::aim, {}, row};
  if (in("/camera/marks/")) return {Kind::camera, {}, row};
  if (in("/camera/nd/")) return {Kind::density, {}, row};
  if (in("/focus/keys/")) return {Kind::focus, {}, row};
  if (in("/focus/pulls/")) return {Kind::pull, {}, row};
  if (in("/zoom/")) return {Kind::zoom, {}, row};
  if (in("/iris/keys/")) return {Kind::iris, {}, row};
  if (in("/iris/")) return {Kind::iris, {}, -1};
  if (in("/camera/")) return {Kind::camera, {}, -1};
  return {};
}

}  // namespace

std::string referrersOf(const Plan& plan, const base::Problems& problems) {
  std::vector<std::string> names;
  for (const auto& problem : problems) {
    if (problem.code != "missing-reference") continue;
    const Selection holder = holderOf(plan, problem.where);
    const std::string name =
        holder.any() && exists(plan, holder) ? headingOf({plan, holder, nullptr, 0}) : problem.where;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  if (names.size() > kMost) {
    const std::string more = std::to_string(names.size() - kMost) + " more";
    names.resize(kMost);
    names.push_back(more);
  }
  std::string words;
  for (std::size_t i = 0; i < names.size(); ++i)
    words += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return words;
}

}  // namespace wend::ui
