/// Names of things in a plan: letters and digits, unique in the document, typed by what they name.
#pragma once

#include <compare>
#include <string>
#include <utility>

namespace wend::base {

template <class T>
class Id {
 public:
  Id() = default;
  explicit Id(std::string text) : text_(std::move(text)) {}
  const std::string& text() const { return text_; }
  bool empty() const { return text_.empty(); }
  auto operator<=>(const Id&) const = default;

 private:
  std::string text_;
};

/// True for a non-empty word of ASCII letters and digits of at most 64 characters.
inline bool isId(const std::string& text) {
  if (text.empty() || text.size() > 64) return false;
  for (const char c : text) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    if (!letter && !(c >= '0' && c <= '9')) return false;
  }
  return true;
}

}  // namespace wend::base
