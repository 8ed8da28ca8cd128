#include "core/file/read_context.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/units/clock_time.h"
#include "core/units/typed.h"

namespace wend::file {

namespace {

std::string rangeText(const Range& range, const char* kind) {
  const std::string unit = *range.unit == '\0' ? "" : std::string(" ") + range.unit;
  const std::string most = base::shortest(range.most) + unit;
  if (range.above) return std::string(kind) + " above " + base::shortest(range.least) + ", at most " + most;
  return std::string(kind) + " from " + base::shortest(range.least) + " to " + most;
}

bool inRange(double value, const Range& range) {
  return value <= range.most && (range.above ? value > range.least : value >= range.least);
}

std::string alternatives(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i)
    text += (i == 0 ? "" : i + 1 < words.size() ? ", " : " or ") + words[i];
  return text;
}

std::string didYouMean(const std::optional<std::string>& word, const std::string& otherwise) {
  return word ? "did you mean \"" + *word + "\"?" : otherwise;
}

/// Relative, downwards only, and nothing that another system would take for a drive, a scheme or a parent.
bool staysBelow(std::string_view path) {
  if (path.empty()) return false;
  for (const char c : path)
    if (static_cast<unsigned char>(c) < 0x20 || c == '\\' || c == ':' || c == 0x7F) return false;
  for (const auto& part : base::split(path, '/'))
    if (part.empty() || part == "." || part == "..") return false;
  return true;
}

}  // namespace

void ReadContext::problem(const char* code, JsonValue at, const std::string& expected, const std::string& remedy) {
  problems_.addMade([&] { return base::Problem{code, at.pointer(), at.shown(), expected, remedy}; });
}

void ReadContext::problem(const char* code, JsonValue object, std::string_view key, const std::string& found,
                          const std::string& expected, const std::string& remedy) {
  problems_.addMade([&] { return base::Problem{code, object.pointerTo(key), found, expected, remedy}; });
}

void ReadContext::missing(JsonValue object, std::string_view key) {
  problem("missing-key", object, key, "nothing", "this key", "add it");
}

void ReadContext::unknownKey(JsonValue member, const std::vector<std::string>& known) {
  notes_.addMade([&] {
    return base::Problem{
        "unknown-key", member.pointer(), units::asTyped(member.key()), "a key of this format",
        didYouMean(base::nearestWord(member.key(), known), "it is kept and written back, and changes nothing")};
  });
}

std::optional<double> ReadContext::number(JsonValue value, const Range& range) {
  if (value.kind() != JsonKind::number) {
    problem("wrong-type", value, rangeText(range, "a number"), "write a number");
    return std::nullopt;
  }
  const auto read = base::readNumber(value.raw());
  if (read && inRange(*read, range)) return read;
  problem("out-of-range", value, rangeText(range, "a number"), "check the unit and the decimal mark");
  return std::nullopt;
}

std::optional<int> ReadContext::integer(JsonValue value, const Range& range) {
  const auto read = value.kind() == JsonKind::number ? base::readNumber(value.raw()) : std::nullopt;
  if (read && inRange(*read, range) && *read == std::floor(*read)) return static_cast<int>(*read);
  problem(value.kind() == JsonKind::number ? "out-of-range" : "wrong-type", value, rangeText(range, "a whole number"),
          "write a whole number");
  return std::nullopt;
}

std::optional<bool> ReadContext::flag(JsonValue value) {
  if (value.kind() == JsonKind::boolean) return value.raw() == "true";
  problem("wrong-type", value, "true or false", "write true or false, without quotation marks");
  return std::nullopt;
}

std::optional<std::string> ReadContext::text(JsonValue value) {
  if (value.kind() == JsonKind::text) return std::string(value.text());
  problem("wrong-type", value, "text", "put it in quotation marks");
  return std::nullopt;
}

std::optional<std::size_t> ReadContext::word(JsonValue value, const std::vector<std::string>& words) {
  if (value.kind() == JsonKind::text) {
    const auto found = std::find(words.begin(), words.end(), value.text());
    if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  }
  const auto near = value.kind() == JsonKind::text ? base::nearestWord(value.text(), words) : std::nullopt;
  problem("unknown-word", value, alternatives(words), didYouMean(near, "use one of these words"));
  return std::nullopt;
}

std::optional<std::string> ReadContext::reference(JsonValue value, const std::vector<IdKind>& kinds,
                                                  const std::string& word) {
  const bool text = value.kind() == JsonKind::text;
  if (text && !word.empty() && value.text() == word) return word;
  for (const IdKind kind : kinds)
    if (text && index_.has(value.text(), kind)) return std::string(value.text());
  std::vector<std::string> words;
  for (const IdKind kind : kinds) words.emplace_back(DocumentIndex::word(kind));
  const std::string expected = "the id of a " + alternatives(words) + (word.empty() ? "" : ", or \"" + word + "\"");
  if (!text) {
    problem("wrong-type", value, expected, "write an id in quotation marks");
    return std::nullopt;
  }
  const auto near = problems_.open() ? index_.nearest(value.text(), kinds) : std::nullopt;
  problem("missing-reference", value, expected, didYouMean(near, "name one that the plan has, or add it"));
  return std::nullopt;
}

std::optional<std::string> ReadContext::fileName(JsonValue value) {
  auto path = text(value);
  if (path && staysBelow(*path)) return path;
  if (path)
    problem("outside-folder", value, "a path below the plan's folder, with \"/\" between its parts",
            "move the file next to the plan and name it relative to the plan");
  return std::nullopt;
}

std::optional<std::array<double, 2>> ReadContext::pair(JsonValue value, const Range& range, bool ordered) {
  if (!value.isList() || value.count() != 2) {
    problem("wrong-type", value, "a list of two numbers", "write [a, b]");
    return std::nullopt;
  }
  const JsonValue second = *value.first()->next();
  const auto a = number(*value.first(), range);
  const auto b = number(second, range);
  if (!a || !b) return std::nullopt;
  if (ordered && *b < *a) {
    problem("out-of-range", second, "no less than the first number", "swap the two");
    return std::nullopt;
  }
  return std::array{*a, *b};
}

std::optional<plan::Point> ReadContext::point(JsonValue value) {
  const auto read = pair(value, kCoordinate, false);
  return read ? std::optional(plan::Point{(*read)[0], (*read)[1]}) : std::nullopt;
}

std::optional<std::vector<plan::Point>> ReadContext::points(JsonValue value, std::size_t least) {
  if (!expectList(value)) return std::nullopt;
  if (value.count() < least) {
    problem("out-of-range", value, "at least " + std::to_string(least) + " points", "add the missing points");
    return std::nullopt;
  }
  vertices_ += value.count();
  if (vertices_ > kMostVertices) {
    problem("too-many", value, std::to_string(kMostVertices) + " points in a plan", "simplify the outlines");
    return std::nullopt;
  }
  std::vector<plan::Point> read;
  for (auto item = value.first(); item; item = item->next())
    if (const auto p = point(*item)) read.push_back(*p);
  return read;
}

std::optional<double> ReadContext::timeOfDay(JsonValue value) {
  const auto typed = text(value);
  if (!typed) return std::nullopt;
  const auto read = units::timeOfDayFrom(*typed);
  if (read) return *read;
  const auto& first = read.problems().front();
  problem(first.code.c_str(), value, first.expected, first.remedy);
  return std::nullopt;
}

bool ReadContext::expectList(JsonValue value) {
  if (value.isList()) return true;
  problem("wrong-type", value, "a list", "put it in [ ]");
  return false;
}

bool ReadContext::expectObject(JsonValue value) {
  if (value.isObject()) return true;
  problem("wrong-type", value, "an object", "put it in { }");
  return false;
}

}  // namespace wend::file
