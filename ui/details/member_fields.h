/// Fields of an entity that have no edit of their own: a copy with one member set goes in its place.
#pragma once

#include "core/plan/edits_entities.h"
#include "ui/details/fields.h"

namespace wend::ui {

/// Sets that member of the entity of that id.
template <class T, class M>
auto memberSet(const std::string& id, M T::*member) {
  return [id, member](const plan::Plan& plan, const M& value) {
    T changed = *tableOf<T>(plan).find(id);
    changed.*member = value;
    return plan::replaced(plan, std::move(changed));
  };
}

template <class T>
Field memberField(const std::string& label, const std::string& id, std::string T::*member, const T& now) {
  return wordsField(label, now.*member, memberSet<T>(id, member));
}

template <class T>
Field memberLength(const std::string& label, const std::string& id, double T::*member, const T& now) {
  return lengthField(label, now.*member, memberSet<T>(id, member));
}

/// A length that may be absent, which means `meaning`.
template <class T>
Field optionalLength(const std::string& label, const std::string& id, std::optional<double> T::*member, const T& now,
                     const std::string& meaning) {
  const auto set = memberSet<T>(id, member);
  return orNothing(lengthField(label, (now.*member).value_or(0),
                               [set](const plan::Plan& p, double metres) { return set(p, std::optional(metres)); }),
                   !(now.*member), meaning, [set](const plan::Plan& p) { return set(p, std::nullopt); });
}

/// A number that may be absent, which means `meaning`.
template <class T>
Field optionalNumber(const std::string& label, const std::string& id, std::optional<double> T::*member, const T& now,
                     const std::string& unit, double nudge, const std::string& meaning) {
  const auto set = memberSet<T>(id, member);
  return orNothing(numberField(label, (now.*member).value_or(0), unit, nudge, 0,
                               [set](const plan::Plan& p, double value) { return set(p, std::optional(value)); }),
                   !(now.*member), meaning, [set](const plan::Plan& p) { return set(p, std::nullopt); });
}

/// The ids of a table with the words that stand for something else in front.
template <class T>
std::vector<std::string> idsOf(const base::Table<T>& table, std::vector<std::string> first = {}) {
  for (const auto& row : table) first.push_back(row.id.text());
  return first;
}

}  // namespace wend::ui
