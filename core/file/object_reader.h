/// Reads one object of a plan into one struct, key by key, as `describe` names them.
#pragma once

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/file/fields.h"
#include "core/file/order_checks.h"
#include "core/file/read_parts.h"
#include "core/file/words.h"
#include "core/plan/lens_marks.h"

namespace wend::file {

inline KeyTimes timesOf(const plan::HandPull& pull) {
  return {pull.at, pull.over};
}
inline KeyTimes timesOf(const plan::PropEntry& entry) {
  return {entry.at, 0};
}
template <class Key>
KeyTimes timesOf(const Key& key) {
  return {key.time.at, key.time.over};
}

template <class T>
class ObjectReader {
 public:
  /// Unknown keys go to `it.extra` under `prefix`.
  ObjectReader(ReadContext& context, JsonValue object, T& it, std::string prefix = {})
      : context_(context), keys_(context, object), it_(it), prefix_(std::move(prefix)) {}

  /// To be called once, after every key was described.
  void finish() { keys_.keepRest(it_.extra, prefix_); }

  /// A key that somebody else reads.
  void known(std::string_view key) { keys_.take(key); }

  void id(base::Id<T> T::*member) {
    if (const auto value = keys_.require("id"))
      if (auto text = context_.text(*value)) it_.*member = base::Id<T>(std::move(*text));
  }
  void text(std::string_view key, std::string T::*member, Presence presence = Presence::may) {
    set(key, member, presence, [&](JsonValue value) { return context_.text(value); });
  }
  template <class Number>
  void number(std::string_view key, Number T::*member, const Range& range, Presence presence = Presence::may) {
    set(key, member, presence, [&](JsonValue value) { return context_.number(value, range); });
  }
  /// Null is a value: none.
  void numberOrNull(std::string_view key, std::optional<double> T::*member, const Range& range, Presence presence) {
    const auto value = find(key, presence);
    if (!value || value->kind() == JsonKind::null) return;
    if (const auto number = context_.number(*value, range)) it_.*member = number;
  }
  template <class Number>
  void integer(std::string_view key, Number T::*member, const Range& range, Presence presence = Presence::may) {
    set(key, member, presence, [&](JsonValue value) { return context_.integer(value, range); });
  }
  template <class Flag>
  void flag(std::string_view key, Flag T::*member) {
    set(key, member, Presence::may, [&](JsonValue value) { return context_.flag(value); });
  }
  template <class Choice, class Enum, std::size_t N>
  void word(std::string_view key, Choice T::*member, const Word<Enum> (&words)[N]) {
    set(key, member, Presence::may, [&](JsonValue value) { return choice(value, words); });
  }
  template <class Enum, std::size_t N>
  void words(std::string_view key, std::vector<Enum> T::*member, const Word<Enum> (&known)[N]) {
    const auto value = keys_.take(key);
    if (!value || !context_.expectList(*value)) return;
    for (auto item = value->first(); item; item = item->next())
      if (const auto one = choice(*item, known)) (it_.*member).push_back(*one);
  }
  void reference(std::string_view key, std::string T::*member, IdKind kind) {
    set(key, member, Presence::must, [&](JsonValue value) { return context_.reference(value, {kind}); });
  }
  void maybeReference(std::string_view key, std::string T::*member, IdKind kind) {
    set(key, member, Presence::may, [&](JsonValue value) { return context_.reference(value, {kind}); });
  }
  /// Somebody or something that a radio link ends at, or the camera.
  void linkEnd(std::string_view key, std::string T::*member) {
    set(key, member, Presence::must, [&](JsonValue value) {
      return context_.reference(value, {IdKind::crew, IdKind::gear, IdKind::performer}, plan::kCameraEnd);
    });
  }
  void fileName(std::string_view key, std::string T::*member) {
    set(key, member, Presence::must, [&](JsonValue value) { return context_.fileName(value); });
  }
  void point(std::string_view key, plan::Point T::*member, Presence presence = Presence::may) {
    set(key, member, presence, [&](JsonValue value) { return context_.point(value); });
  }
  void offset(std::string_view key, geometry::Vec T::*member) {
    const auto value = keys_.take(key);
    const auto read = value ? context_.point(*value) : std::nullopt;
    if (read) it_.*member = {read->x, read->y};
  }
  /// A number, or rows of [focal length, number].
  void overFocal(std::string_view key, plan::OverFocal T::*member, const Range& range) {
    set(key, member, Presence::may, [&](JsonValue value) { return overFocalFrom(context_, value, range); });
  }
  void date(std::string_view key, plan::Date T::*member) {
    set(key, member, Presence::must, [&](JsonValue value) { return dateFrom(context_, value); });
  }
  void points(std::string_view key, std::vector<plan::Point> T::*member, std::size_t least,
              Presence presence = Presence::must) {
    set(key, member, presence, [&](JsonValue value) { return context_.points(value, least); });
  }
  void pair(std::string_view key, std::array<double, 2> T::*member, const Range& range, bool ordered) {
    set(key, member, Presence::may, [&](JsonValue value) { return context_.pair(value, range, ordered); });
  }
  void span(std::string_view key, geometry::Span T::*member, const Range& range) {
    const auto value = keys_.require(key);
    const auto pair = value ? context_.pair(*value, range, true) : std::nullopt;
    if (pair) it_.*member = {(*pair)[0], (*pair)[1]};
  }
  template <class Time>
  void moment(std::string_view key, Time T::*member, Presence presence) {
    set(key, member, presence, [&](JsonValue value) { return momentFrom(context_, value, keep(key)); });
  }
  void keyTime(plan::KeyTime T::*member) {
    plan::KeyTime& time = it_.*member;
    if (const auto at = keys_.require("at"))
      if (auto read = momentFrom(context_, *at, keep("at"))) time.at = std::move(*read);
    if (const auto over = keys_.take("over"))
      if (const auto read = context_.number(*over, kDuration)) time.over = *read;
    if (const auto pace = keys_.take("pace"))
      if (const auto read = choice(*pace, kPaces)) time.pace = *read;
  }
  void target(std::string_view key, plan::Target T::*member, std::span<const std::string_view> allowed) {
    set(key, member, Presence::must, [&](JsonValue value) { return targetFrom(context_, value, allowed, keep(key)); });
  }
  void footprint(plan::Footprint T::*member, bool lines) {
    if (auto shape = footprintFrom(keys_, lines, {it_.extra, prefix_})) it_.*member = std::move(*shape);
  }
  void timeOfDay(std::string_view key, std::optional<double> T::*member) {
    set(key, member, Presence::may, [&](JsonValue value) { return context_.timeOfDay(value); });
  }
  void clockReadings(std::string_view key, std::vector<plan::ClockReading> T::*member) {
    if (const auto value = keys_.take(key)) it_.*member = clockReadingsFrom(context_, *value);
  }
  template <class Output>
  void output(std::string_view key, Output T::*member) {
    set(key, member, Presence::may, [&](JsonValue value) { return outputFrom(context_, value, keep(key)); });
  }
  template <class What>
  void need(What T::*member) {
    if (auto what = needFrom(keys_)) it_.*member = std::move(*what);
  }
  void exposePerformer(std::string_view key, std::string T::*member) {
    set(key, member, Presence::may, [&](JsonValue value) { return exposePerformerFrom(context_, value, keep(key)); });
  }
  void numbersByName(std::string_view key, std::vector<std::pair<std::string, double>> T::*member, const Range& range) {
    if (const auto value = keys_.take(key)) it_.*member = file::numbersByName(context_, *value, range);
  }
  void numbersByName(std::string_view key, std::map<std::string, double> T::*member, const Range& range) {
    const auto value = keys_.take(key);
    if (!value) return;
    for (const auto& [name, number] : file::numbersByName(context_, *value, range)) (it_.*member)[name] = number;
  }
  void thresholds(std::string_view key, std::map<std::string, double> T::*member) {
    if (const auto value = keys_.take(key)) it_.*member = thresholdsFrom(context_, *value, keep(key));
  }
  /// A rate as [numerator, denominator].
  void ratio(std::string_view key, int T::*numerator, int T::*denominator) {
    const auto value = keys_.take(key);
    if (!value) return;
    if (const auto remedy = ratioInstead(*value))
      return context_.problem("wrong-type", *value, "a list of two whole numbers", *remedy);
    if (!context_.expectList(*value)) return;
    if (value->count() != 2)
      return context_.problem("wrong-type", *value, "a list of two whole numbers", "write [24, 1]");
    const auto over = context_.integer(*value->first(), kRateTerm);
    const auto under = context_.integer(*value->first()->next(), kRateTerm);
    if (!over || !under) return;
    it_.*numerator = *over;
    it_.*denominator = *under;
  }
  /// A place, or the id of what gives one.
  void placeOr(std::string_view key, std::string T::*member, IdKind kind, plan::Point T::*pos) {
    const std::array<std::string_view, 2> either{"pos", key};
    const auto chosen = keys_.choose(either);
    if (!chosen) return;
    if (*chosen == "pos") return point("pos", pos);
    reference(key, member, kind);
  }
  /// A focal length, or a shot size of somebody.
  void focalOrSize(double T::*focal, std::string T::*size, plan::Target T::*of) {
    static constexpr std::array<std::string_view, 2> kEither{"focal", "size"};
    const auto chosen = keys_.choose(kEither);
    if (!chosen) return;
    if (*chosen == "focal") return number("focal", focal, kMillimetres);
    text("size", size);
    target("of", of, kSizeTargets);
    if ((it_.*size).empty())
      context_.problem("unknown-word", *keys_.take("size"), "the name of a shot size", "write one such as medium");
  }

  /// An object that is there or not.
  template <class Part>
  void maybe(std::string_view key, std::optional<Part> T::*member) {
    const auto value = keys_.take(key);
    if (!value || !context_.expectObject(*value)) return;
    it_.*member = readObject<Part>(*value);
  }
  template <class Part>
  void object(std::string_view key, Part T::*member, Presence presence = Presence::may) {
    const auto value = find(key, presence);
    if (value && context_.expectObject(*value)) it_.*member = readObject<Part>(*value);
  }
  /// Keys of this struct that the file keeps in an object of their own.
  template <class Describe>
  void inner(std::string_view key, Describe describeInner) {
    const auto value = keys_.take(key);
    if (!value || !context_.expectObject(*value)) return;
    ObjectReader nested(context_, *value, it_, prefix_ + std::string(key) + "/");
    describeInner(nested);
    nested.finish();
  }
  template <class Row>
  void rows(std::string_view key, std::vector<Row> T::*member, Layout) {
    it_.*member = list<Row>(key, Presence::may).rows;
  }
  template <class Row>
  static std::string markWords(const Row& row) {
    const double value = plan::markValue(row);
    return (std::isinf(value) ? "infinity" : base::shortest(value)) + " at " + base::shortest(row.deg) + "\u00b0";
  }
  /// Rows that run one way; the first that does not is named.
  template <class Row>
  void lensMarks(std::string_view key, std::vector<Row> T::*member) {
    const std::size_t before = context_.problemCount();
    auto read = list<Row>(key, Presence::may);
    const std::size_t back = plan::firstTurningBack(read.rows);
    if (context_.problemCount() == before && back < read.rows.size())
      context_.problem("marks-turn-back", read.values[back],
                       "rows that go one way, in value and in degrees: it says " + markWords(read.rows[back]) +
                           ", the row before " + markWords(read.rows[back - 1]),
                       "look at row " + std::to_string(back + 1) + " and the one before it");
    it_.*member = std::move(read.rows);
  }
  template <class Row>
  void keys(std::string_view key, std::vector<Row> T::*member, bool fromStart = true) {
    const std::size_t before = context_.problemCount();
    auto read = list<Row>(key, Presence::may);
    std::vector<KeyTimes> times;
    for (const Row& row : read.rows) times.push_back(timesOf(row));
    if (context_.problemCount() == before) checkKeys(context_, read.values, times, fromStart);
    it_.*member = std::move(read.rows);
  }
  void marks(std::string_view key, std::vector<plan::Mark> T::*member, MarkOf whose,
             Presence presence = Presence::may) {
    const std::size_t before = context_.problemCount();
    auto read = list<plan::Mark>(key, presence, whose);
    if (context_.problemCount() == before) checkMarks(context_, read.values, read.rows);
    it_.*member = std::move(read.rows);
  }
  template <class Row>
  void table(std::string_view key, base::Table<Row> T::*member) {
    auto read = list<Row>(key, Presence::may);
    if (context_.index().sound()) (it_.*member).append(std::move(read.rows));
  }
  /// A problem at `key` when the struct as read is not to be.
  template <class Wrong>
  void refuse(std::string_view key, Wrong wrong, const char* code, const char* expected, const char* remedy) {
    const auto value = keys_.object().member(key);
    if (!wrong(it_)) return;
    context_.problem(code, value.value_or(keys_.object()), expected, remedy);
  }

 private:
  template <class Row>
  struct List {
    std::vector<Row> rows;
    std::vector<JsonValue> values;
  };

  std::optional<JsonValue> find(std::string_view key, Presence presence) {
    return presence == Presence::must ? keys_.require(key) : keys_.take(key);
  }
  template <class Value, class Read>
  void set(std::string_view key, Value T::*member, Presence presence, Read read) {
    const auto value = find(key, presence);
    if (!value) return;
    if (auto good = read(*value)) it_.*member = std::move(*good);
  }
  Keep keep(std::string_view key) { return {it_.extra, prefix_ + std::string(key) + "/"}; }

  template <class Enum, std::size_t N>
  std::optional<Enum> choice(JsonValue value, const Word<Enum> (&words)[N]) {
    std::vector<std::string> texts;
    for (const auto& word : words) texts.emplace_back(word.text);
    const auto index = context_.word(value, texts);
    return index ? std::optional(words[*index].value) : std::nullopt;
  }
  template <class Part, class... With>
  Part readObject(JsonValue value, With... with) {
    Part part;
    ObjectReader<Part> reader(context_, value, part);
    describe(reader, Of<Part>{}, with...);
    reader.finish();
    return part;
  }
  template <class Row, class... With>
  List<Row> list(std::string_view key, Presence presence, With... with) {
    List<Row> read;
    const auto value = find(key, presence);
    if (!value || !context_.expectList(*value)) return read;
    for (auto item = value->first(); item; item = item->next()) {
      if (!context_.expectObject(*item)) continue;
      read.rows.push_back(readObject<Row>(*item, with...));
      read.values.push_back(*item);
    }
    return read;
  }

  ReadContext& context_;
  KeyReader keys_;
  T& it_;
  std::string prefix_;
};

}  // namespace wend::file
