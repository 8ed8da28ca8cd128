#include "core/file/json_document.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <nlohmann/json.hpp>

#include "core/base/text.h"
#include "core/units/typed.h"

namespace wend::file {

namespace {

using base::Problem;

/// Walks the text and leaves behind how far it was read, so that a value's place is known when the parser reports it.
class Tracked {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  Tracked(const char* at, const char** seen) : at_(at), seen_(seen) {}
  reference operator*() const { return *at_; }
  Tracked& operator++() {
    *seen_ = ++at_;
    return *this;
  }
  Tracked operator++(int) {
    const Tracked before = *this;
    ++*this;
    return before;
  }
  bool operator==(const Tracked& other) const { return at_ == other.at_; }
  bool operator!=(const Tracked& other) const { return at_ != other.at_; }

 private:
  const char* at_;
  const char** seen_;
};

bool inNumber(char c) {
  return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.' || c == 'e' || c == 'E';
}

std::string lineAndColumn(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, offset);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
  return "line " + std::to_string(line) + ", column " + std::to_string(1 + base::columns(before.substr(start)));
}

}  // namespace

/// Takes the parser's events and builds the nodes.
class JsonBuilder {
 public:
  using number_integer_t = nlohmann::json::number_integer_t;
  using number_unsigned_t = nlohmann::json::number_unsigned_t;
  using number_float_t = nlohmann::json::number_float_t;
  using string_t = std::string;
  using binary_t = nlohmann::json::binary_t;

  JsonBuilder(JsonDocument& document, ProblemList& problems, const char* const& seen)
      : document_(document), problems_(problems), seen_(seen) {}

  bool null() { return scalar(JsonKind::null); }
  bool boolean(bool) { return scalar(JsonKind::boolean); }
  bool number_integer(number_integer_t) { return number(); }
  bool number_unsigned(number_unsigned_t) { return number(); }
  bool number_float(number_float_t, const string_t&) { return number(); }
  bool binary(binary_t&) { return false; }

  bool string(string_t& text) {
    if (!scalar(JsonKind::text)) return false;
    nodes().back().text = pool(text);
    checkLength(text, lastNode());
    return true;
  }
  bool key(string_t& text) {
    key_ = pool(text);
    read_ = offset();
    if (text.size() <= kMostCharacters) return true;
    return refuse("text-too-long", "a key of " + std::to_string(text.size()) + " bytes",
                  "at most " + std::to_string(kMostCharacters) + " characters", "shorten the key");
  }
  bool start_object(std::size_t) { return start(JsonKind::object); }
  bool start_array(std::size_t) { return start(JsonKind::list); }
  bool end_object() {
    checkKeys(open_.back().node);
    return end();
  }
  bool end_array() { return end(); }

  template <class Error>
  bool parse_error(std::size_t position, const std::string&, const Error& error) {
    constexpr int kOverflow = 406;
    if (error.id == kOverflow)
      return refuse("out-of-range", "a number beyond 1.8e308", "a finite number", "write a number that is meant",
                    begin());
    const std::string_view text = document_.text_;
    const std::size_t at = std::min(position > 0 ? position - 1 : 0, text.size());
    const bool cut = offset() >= text.size() && (position > text.size() || !open_.empty());
    const std::string_view line = text.substr(at, std::min(text.find_first_of("\r\n", at), text.size()) - at);
    const std::string found = cut ? "the end of the file" : units::asTyped(line.substr(0, 12));
    problems_.add({"json-syntax", lineAndColumn(text, at), found, "valid JSON",
                   cut ? "the file is cut short: restore it from a copy" : "mend the text at that place"});
    return false;
  }

 private:
  using Node = JsonDocument::Node;
  struct Open {
    std::uint32_t node, last;
  };
  std::vector<Node>& nodes() { return document_.nodes_; }
  std::uint32_t lastNode() { return static_cast<std::uint32_t>(nodes().size() - 1); }
  std::uint32_t offset() const { return static_cast<std::uint32_t>(seen_ - document_.text_.data()); }

  JsonDocument::Slice pool(const std::string& text) {
    const auto begin = static_cast<std::uint32_t>(document_.pool_.size());
    document_.pool_ += text;
    return {begin, static_cast<std::uint32_t>(document_.pool_.size())};
  }

  bool refuse(const char* code, const std::string& found, const std::string& expected, const std::string& remedy) {
    return refuse(code, found, expected, remedy, offset());
  }
  bool refuse(const char* code, const std::string& found, const std::string& expected, const std::string& remedy,
              std::uint32_t at) {
    problems_.add({code, lineAndColumn(document_.text_, at), found, expected, remedy});
    return false;
  }

  /// Where the value that was just read, or opened, began: after what was read before, blanks and separators.
  std::uint32_t begin() const {
    const std::size_t at = document_.text_.find_first_not_of(" \t\r\n:,", read_);
    return static_cast<std::uint32_t>(std::min(at, document_.text_.size()));
  }

  bool add(JsonKind kind, std::uint32_t end) {
    if (nodes().size() >= kMostValues)
      return refuse("too-many", "more values than that", std::to_string(kMostValues) + " values in a file",
                    "split the plan");
    Node node;
    node.kind = kind;
    node.raw = {begin(), end};
    node.key = key_;
    key_ = {};
    if (!open_.empty() && !join(node)) return false;
    nodes().push_back(node);
    read_ = end;
    return true;
  }

  bool join(Node& node) {
    Open& open = open_.back();
    node.parent = open.node;
    const auto self = static_cast<std::uint32_t>(nodes().size());
    (open.last == JsonDocument::kNone ? nodes()[open.node].first : nodes()[open.last].next) = self;
    open.last = self;
    if (++nodes()[open.node].count <= kMostItems) return true;
    return refuse("too-many", "more items than that", std::to_string(kMostItems) + " items in a list",
                  "split the list");
  }

  bool scalar(JsonKind kind) { return add(kind, offset()); }

  /// The parser has looked one character past a number's end, except at the end of the text.
  bool number() {
    std::uint32_t end = offset();
    if (end > 0 && !inNumber(document_.text_[end - 1])) --end;
    return add(JsonKind::number, end);
  }

  bool start(JsonKind kind) {
    if (open_.size() >= kMostDepth)
      return refuse("too-deep", "lists or objects deeper than that", std::to_string(kMostDepth) + " levels",
                    "check where the file comes from");
    if (!add(kind, offset())) return false;
    open_.push_back({lastNode(), JsonDocument::kNone});
    return true;
  }

  bool end() {
    nodes()[open_.back().node].raw.end = offset();
    open_.pop_back();
    read_ = offset();
    return true;
  }

  void checkLength(const std::string& text, std::uint32_t node) {
    if (text.size() <= kMostCharacters || base::columns(text) <= kMostCharacters) return;
    problems_.addMade([&] {
      return Problem{"text-too-long", document_.value(node).pointer(),
                     std::to_string(base::columns(text)) + " characters",
                     "at most " + std::to_string(kMostCharacters) + " characters", "shorten the text"};
    });
  }

  void checkKeys(std::uint32_t object) {
    std::vector<std::string_view> keys;
    for (auto member = document_.value(object).first(); member; member = member->next()) keys.push_back(member->key());
    std::sort(keys.begin(), keys.end());
    for (std::size_t i = 1; i < keys.size(); ++i)
      if (keys[i] == keys[i - 1] && (i == 1 || keys[i] != keys[i - 2])) repeated(object, keys[i]);
  }

  void repeated(std::uint32_t object, std::string_view key) {
    problems_.addMade([&] {
      return Problem{"duplicate-key", document_.value(object).pointerTo(key), "the key more than once", "each key once",
                     "keep the one that is meant"};
    });
  }

  JsonDocument& document_;
  ProblemList& problems_;
  const char* const& seen_;
  std::uint32_t read_ = 0;  ///< end of what was read last
  JsonDocument::Slice key_;
  std::vector<Open> open_;
};

namespace {

/// The line of the first bytes that are not UTF-8. A newline is never part of a longer sequence.
std::size_t firstBadLine(std::string_view text) {
  std::size_t line = 1;
  for (std::size_t from = 0; from < text.size(); ++line) {
    const std::size_t to = std::min(text.find('\n', from), text.size());
    if (!base::isUtf8(text.substr(from, to - from))) return line;
    from = to + 1;
  }
  return line;
}

std::optional<Problem> unreadable(std::string_view text) {
  if (text.size() > kMostBytes)
    return Problem{"too-large", "the whole file", std::to_string(text.size()) + " bytes",
                   "at most " + std::to_string(kMostBytes) + " bytes", "check that this is a plan"};
  if (base::trimmed(text).empty())
    return Problem{"empty-file", "the whole file", "nothing", "a JSON object", "restore the file from a copy"};
  if (!base::isUtf8(text))
    return Problem{"not-utf8", "line " + std::to_string(firstBadLine(text)), "bytes that are not UTF-8", "UTF-8 text",
                   "save the file as UTF-8"};
  return std::nullopt;
}

}  // namespace

bool JsonDocument::parse(ProblemList& problems) {
  if (auto problem = unreadable(text_)) {
    problems.add(std::move(*problem));
    return false;
  }
  const char* seen = text_.data();
  JsonBuilder builder(*this, problems, seen);
  const Tracked first(text_.data(), &seen);
  const Tracked last(text_.data() + text_.size(), &seen);
  return nlohmann::json::sax_parse(first, last, &builder);
}

JsonKind JsonValue::kind() const {
  return document_->nodes_[node_].kind;
}
std::string_view JsonValue::raw() const {
  const auto slice = document_->nodes_[node_].raw;
  return document_->text_.substr(slice.begin, slice.end - slice.begin);
}
std::string_view JsonValue::text() const {
  return document_->pooled(document_->nodes_[node_].text);
}
std::string_view JsonValue::key() const {
  return document_->pooled(document_->nodes_[node_].key);
}
std::size_t JsonValue::count() const {
  return document_->nodes_[node_].count;
}

std::optional<JsonValue> JsonValue::at(std::uint32_t node) const {
  if (node == JsonDocument::kNone) return std::nullopt;
  return JsonValue(*document_, node);
}
std::optional<JsonValue> JsonValue::first() const {
  return at(document_->nodes_[node_].first);
}
std::optional<JsonValue> JsonValue::next() const {
  return at(document_->nodes_[node_].next);
}

std::optional<JsonValue> JsonValue::member(std::string_view key) const {
  auto value = first();
  while (value && value->key() != key) value = value->next();
  return value;
}

std::string JsonValue::step() const {
  const JsonValue parent(*document_, document_->nodes_[node_].parent);
  if (parent.isObject()) return "/" + pointerStep(key());
  std::size_t index = 0;
  for (auto item = parent.first(); item && item->node_ != node_; item = item->next()) ++index;
  return "/" + std::to_string(index);
}

std::string JsonValue::pointer() const {
  std::string text;
  for (JsonValue value = *this; value.node_ != 0; value.node_ = document_->nodes_[value.node_].parent)
    text = value.step() + text;
  return text.empty() ? "/" : text;
}

std::string JsonValue::pointerTo(std::string_view key) const {
  return (node_ == 0 ? std::string() : pointer()) + "/" + pointerStep(key);
}

std::string JsonValue::shown() const {
  if (kind() == JsonKind::text) return units::asTyped(text());
  if (isObject()) return "an object";
  if (isList()) return "a list of " + std::to_string(count());
  const std::string_view all = raw();
  constexpr std::size_t kMost = 40;
  return all.size() <= kMost ? std::string(all) : std::string(all.substr(0, kMost)) + "\u2026";
}

std::string JsonValue::compact() const {
  if (!isObject() && !isList()) return std::string(raw());
  std::string text(1, raw().front());
  for (auto item = first(); item; item = item->next()) {
    if (text.size() > 1) text += ", ";
    if (isObject()) text += nlohmann::json(item->key()).dump() + ": ";
    text += item->compact();
  }
  return text + raw().back();
}

std::string pointerStep(std::string_view key) {
  std::string step;
  for (const char c : key) {
    if (c == '~')
      step += "~0";
    else if (c == '/')
      step += "~1";
    else
      step += c;
  }
  return step;
}

std::string keyOfStep(std::string_view step) {
  std::string key;
  for (std::size_t i = 0; i < step.size(); ++i) {
    const bool escaped = step[i] == '~' && i + 1 < step.size();
    key += escaped ? (step[i + 1] == '1' ? '/' : '~') : step[i];
    if (escaped) ++i;
  }
  return key;
}

}  // namespace wend::file
