/// JSON at the door: parsed under the limits, every value with its place in the text. Nothing is converted here;
/// numbers stay the text that was written until somebody reads them with a range.
///
/// Ensures   (1) depth, counts, string lengths and UTF-8 are checked while parsing, before anything is built from it
///           (2) a repeated key of one object is a problem
///           (3) a value's pointer (RFC 6901) is made when somebody asks, so reading costs nothing for it
/// Cost      O(n log n) time; below 50 bytes a value and twice the text in memory
/// Source    RFC 8259 (grammar), RFC 6901 (pointers)
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/file/problem_list.h"

namespace wend::file {

enum class JsonKind : std::uint8_t { null, boolean, number, text, list, object };

class JsonDocument;

/// A value of a document, as cheap to copy as a pointer. Lives no longer than its document.
class JsonValue {
 public:
  JsonKind kind() const;
  bool isObject() const { return kind() == JsonKind::object; }
  bool isList() const { return kind() == JsonKind::list; }
  /// The value as it was written.
  std::string_view raw() const;
  /// Of a string, escapes resolved.
  std::string_view text() const;
  /// Of an object's member, escapes resolved.
  std::string_view key() const;
  /// Items of a list, members of an object.
  std::size_t count() const;
  /// The items or members in order.
  std::optional<JsonValue> first() const;
  std::optional<JsonValue> next() const;
  std::optional<JsonValue> member(std::string_view key) const;
  /// "/camera/marks/3/at"; "/" is the whole document, so that a place is never empty.
  std::string pointer() const;
  /// The pointer of a member it has, or would have.
  std::string pointerTo(std::string_view key) const;
  /// The value cut to a readable length, for a problem.
  std::string shown() const;
  /// The value on one line with single blanks, numbers and strings as they were written.
  std::string compact() const;

 private:
  friend class JsonDocument;
  JsonValue(const JsonDocument& document, std::uint32_t node) : document_(&document), node_(node) {}
  std::optional<JsonValue> at(std::uint32_t node) const;
  std::string step() const;
  const JsonDocument* document_;
  std::uint32_t node_;
};

class JsonDocument {
 public:
  /// Requires `text` to outlive the document.
  explicit JsonDocument(std::string_view text) : text_(text) {}
  JsonDocument(const JsonDocument&) = delete;
  JsonDocument& operator=(const JsonDocument&) = delete;

  /// Parses. False when there is no tree to read; problems say why. With a tree there may be problems too (2).
  bool parse(ProblemList& problems);
  /// Requires parse() to have succeeded.
  JsonValue root() const { return value(0); }

 private:
  friend class JsonValue;
  friend class JsonBuilder;
  static constexpr std::uint32_t kNone = 0xFFFFFFFF;
  struct Slice {
    std::uint32_t begin = 0, end = 0;
  };
  struct Node {
    JsonKind kind = JsonKind::null;
    Slice raw, text, key;  ///< raw in the text, the others in the pool
    std::uint32_t parent = kNone, first = kNone, next = kNone, count = 0;
  };
  JsonValue value(std::uint32_t node) const { return JsonValue(*this, node); }
  std::string_view pooled(Slice slice) const {
    return std::string_view(pool_).substr(slice.begin, slice.end - slice.begin);
  }
  std::string_view text_;
  std::string pool_;
  std::vector<Node> nodes_;
};

/// A key as one step of a JSON pointer, and back.
std::string pointerStep(std::string_view key);
std::string keyOfStep(std::string_view step);

}  // namespace wend::file
