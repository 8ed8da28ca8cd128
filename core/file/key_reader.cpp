#include "core/file/key_reader.h"

#include <algorithm>

namespace wend::file {

std::optional<JsonValue> KeyReader::take(std::string_view key) {
  if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.emplace_back(key);
  return object_.member(key);
}

std::optional<JsonValue> KeyReader::require(std::string_view key) {
  auto value = take(key);
  if (!value) context_.missing(object_, key);
  return value;
}

std::optional<std::string_view> KeyReader::choose(std::span<const std::string_view> keys) {
  std::optional<std::string_view> chosen;
  std::string all;
  std::size_t present = 0;
  for (const auto key : keys) {
    all += (all.empty() ? "" : ", ") + std::string(key);
    if (!take(key)) continue;
    ++present;
    chosen = key;
  }
  if (present == 1) return chosen;
  context_.problem("choose-one", object_, keys.size() == 1 ? "the key " + all : "exactly one of the keys " + all,
                   present == 0 ? "add one" : "keep the one that is meant");
  return std::nullopt;
}

void KeyReader::keepRest(plan::Extras& extras, const std::string& prefix) {
  for (auto member = object_.first(); member; member = member->next()) {
    if (std::find(asked_.begin(), asked_.end(), member->key()) != asked_.end()) continue;
    context_.unknownKey(*member, asked_);
    extras.push_back({prefix + pointerStep(member->key()), member->compact()});
  }
}

}  // namespace wend::file
