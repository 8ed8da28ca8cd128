/// Fields whose values are the members of an enumeration, each with its word.
#pragma once

#include "ui/details/field.h"

namespace wend::ui {

template <class E>
struct Word {
  const char* word;
  E value;
};

template <class E, std::size_t N>
std::string wordOf(const Word<E> (&words)[N], E value) {
  for (const auto& word : words)
    if (word.value == value) return word.word;
  return {};
}

/// Requires  one of the words is `text`
template <class E, std::size_t N>
E valueOf(const Word<E> (&words)[N], const std::string& text) {
  for (const auto& word : words)
    if (text == word.word) return word.value;
  WEND_CHECK(false);
  return words[0].value;
}

inline constexpr Word<bool> kYesNo[] = {{"yes", true}, {"no", false}};

/// `set` takes a plan and the enumeration's value.
template <class E, std::size_t N, class Set>
Field choiceOf(const std::string& label, E now, const Word<E> (&words)[N], Set set) {
  std::vector<std::string> choices;
  for (const auto& word : words) choices.emplace_back(word.word);
  return choiceField(
      label, wordOf(words, now), choices,
      [&words, set](const plan::Plan& plan, const std::string& word) { return set(plan, valueOf(words, word)); });
}

}  // namespace wend::ui
