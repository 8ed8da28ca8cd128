/// What every part of the reader shares, and the doors through which single values come in. A door reports what it
/// cannot honour and leaves its target as it was.
#pragma once

#include <array>

#include "core/file/document_index.h"
#include "core/file/ranges.h"

namespace wend::file {

class ReadContext {
 public:
  ReadContext(JsonValue root, ProblemList& problems) : problems_(problems), index_(root, problems) {}

  const DocumentIndex& index() const { return index_; }
  std::size_t problemCount() const { return problems_.count(); }
  const ProblemList& notes() const { return notes_; }

  void problem(base::Problem problem) { problems_.add(std::move(problem)); }
  void problem(const char* code, JsonValue at, const std::string& expected, const std::string& remedy);
  /// The same, where the value as a whole is no help: "where/key", found in words.
  void problem(const char* code, JsonValue object, std::string_view key, const std::string& found,
               const std::string& expected, const std::string& remedy);
  void missing(JsonValue object, std::string_view key);
  void unknownKey(JsonValue member, const std::vector<std::string>& known);

  /// The one door for numbers of a plan: finite, in range.
  std::optional<double> number(JsonValue value, const Range& range);
  /// A whole number in range, never narrowed.
  std::optional<int> integer(JsonValue value, const Range& range);
  std::optional<bool> flag(JsonValue value);
  std::optional<std::string> text(JsonValue value);
  /// The index of the word in `words`.
  std::optional<std::size_t> word(JsonValue value, const std::vector<std::string>& words);
  /// The id of something of those kinds, or the reserved `word`, which wins over an id.
  std::optional<std::string> reference(JsonValue value, const std::vector<IdKind>& kinds, const std::string& word = {});
  /// A path below the plan's folder.
  std::optional<std::string> fileName(JsonValue value);
  std::optional<plan::Point> point(JsonValue value);
  std::optional<std::vector<plan::Point>> points(JsonValue value, std::size_t least);
  /// Two numbers of that range, the second not below the first where `ordered`.
  std::optional<std::array<double, 2>> pair(JsonValue value, const Range& range, bool ordered);
  std::optional<double> timeOfDay(JsonValue value);
  /// True when it is a list or an object; a problem otherwise.
  bool expectList(JsonValue value);
  bool expectObject(JsonValue value);

 private:
  ProblemList& problems_;
  ProblemList notes_;
  DocumentIndex index_;
  std::size_t vertices_ = 0;
};

}  // namespace wend::file
