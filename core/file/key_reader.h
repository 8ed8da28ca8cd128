/// The keys of one object while it is read: which were asked for, and what is left over.
#pragma once

#include <span>

#include "core/file/read_context.h"

namespace wend::file {

class KeyReader {
 public:
  /// Requires `object` to be an object.
  KeyReader(ReadContext& context, JsonValue object) : context_(context), object_(object) {}

  ReadContext& context() const { return context_; }
  JsonValue object() const { return object_; }

  /// The value of the key, if the object has it.
  std::optional<JsonValue> take(std::string_view key);
  /// The same; a problem if it has not.
  std::optional<JsonValue> require(std::string_view key);
  /// The one key of `keys` that the object has; a problem if it has none or several.
  std::optional<std::string_view> choose(std::span<const std::string_view> keys);

  /// Keeps what nobody asked for under `prefix`, with a note for each key.
  void keepRest(plan::Extras& extras, const std::string& prefix);

 private:
  ReadContext& context_;
  JsonValue object_;
  std::vector<std::string> asked_;
};

}  // namespace wend::file
