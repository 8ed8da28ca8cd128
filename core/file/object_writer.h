/// Writes one struct of a plan as one object, key by key, as `describe` names them. Keys that hold the struct's default
/// are left out unless the format needs them.
#pragma once

#include <span>

#include "core/file/fields.h"
#include "core/file/ranges.h"
#include "core/file/words.h"
#include "core/file/write_parts.h"
#include "core/units/clock_time.h"

namespace wend::file {

template <class T>
class ObjectWriter {
 public:
  explicit ObjectWriter(const T& it, std::string prefix = {}) : it_(it), prefix_(std::move(prefix)) {}

  /// The object with its unknown keys at the end. To be called once, after every key was described.
  Written finish() {
    addExtras(out_, it_.extra, prefix_);
    return std::move(out_);
  }

  /// A key that is no part of the struct.
  void fixed(std::string_view key, Written value) { out_.add(key, std::move(value)); }

  void id(base::Id<T> T::*member) { out_.add("id", Written::text((it_.*member).text())); }
  void text(std::string_view key, std::string T::*member, Presence presence = Presence::may) {
    if (needed(member, presence)) out_.add(key, Written::text(it_.*member));
  }
  void number(std::string_view key, double T::*member, const Range&, Presence presence = Presence::may) {
    if (needed(member, presence)) out_.add(key, Written::number(it_.*member));
  }
  void number(std::string_view key, std::optional<double> T::*member, const Range&, Presence = Presence::may) {
    if (it_.*member) out_.add(key, Written::number(*(it_.*member)));
  }
  void numberOrNull(std::string_view key, std::optional<double> T::*member, const Range&, Presence presence) {
    if (it_.*member)
      out_.add(key, Written::number(*(it_.*member)));
    else if (presence == Presence::must)
      out_.add(key, Written::raw("null"));
  }
  void integer(std::string_view key, int T::*member, const Range&, Presence presence = Presence::may) {
    if (needed(member, presence)) out_.add(key, Written::raw(std::to_string(it_.*member)));
  }
  void integer(std::string_view key, std::optional<int> T::*member, const Range&) {
    if (it_.*member) out_.add(key, Written::raw(std::to_string(*(it_.*member))));
  }
  void flag(std::string_view key, bool T::*member) {
    if (needed(member, Presence::may)) out_.add(key, Written::flag(it_.*member));
  }
  void flag(std::string_view key, std::optional<bool> T::*member) {
    if (it_.*member) out_.add(key, Written::flag(*(it_.*member)));
  }
  template <class Enum, std::size_t N>
  void word(std::string_view key, Enum T::*member, const Word<Enum> (&words)[N]) {
    if (needed(member, Presence::may)) out_.add(key, spelled(it_.*member, words));
  }
  template <class Enum, std::size_t N>
  void word(std::string_view key, std::optional<Enum> T::*member, const Word<Enum> (&words)[N]) {
    if (it_.*member) out_.add(key, spelled(*(it_.*member), words));
  }
  template <class Enum, std::size_t N>
  void words(std::string_view key, std::vector<Enum> T::*member, const Word<Enum> (&known)[N]) {
    if ((it_.*member).empty()) return;
    Written list = Written::list();
    for (const Enum value : it_.*member) list.add(spelled(value, known));
    out_.add(key, std::move(list));
  }
  void reference(std::string_view key, std::string T::*member, IdKind) { out_.add(key, Written::text(it_.*member)); }
  void maybeReference(std::string_view key, std::string T::*member, IdKind) { text(key, member); }
  void linkEnd(std::string_view key, std::string T::*member) { out_.add(key, Written::text(it_.*member)); }
  void fileName(std::string_view key, std::string T::*member) { out_.add(key, Written::text(it_.*member)); }
  void point(std::string_view key, plan::Point T::*member, Presence presence = Presence::may) {
    if (needed(member, presence)) out_.add(key, Written::point(it_.*member));
  }
  void offset(std::string_view key, geometry::Vec T::*member) {
    if (needed(member, Presence::may)) out_.add(key, Written::point({(it_.*member).x, (it_.*member).y}));
  }
  void overFocal(std::string_view key, plan::OverFocal T::*member, const Range&) {
    if (needed(member, Presence::may)) out_.add(key, writtenOverFocal(it_.*member));
  }
  void date(std::string_view key, plan::Date T::*member) { out_.add(key, Written::text(plan::dateText(it_.*member))); }
  void points(std::string_view key, std::vector<plan::Point> T::*member, std::size_t,
              Presence presence = Presence::must) {
    if (needed(member, presence)) out_.add(key, Written::points(it_.*member));
  }
  void pair(std::string_view key, std::array<double, 2> T::*member, const Range&, bool) {
    const auto& [a, b] = it_.*member;
    if (needed(member, Presence::may)) out_.add(key, Written::point({a, b}));
  }
  void span(std::string_view key, geometry::Span T::*member, const Range&) {
    out_.add(key, Written::point({(it_.*member).from, (it_.*member).until}));
  }
  void moment(std::string_view key, plan::Moment T::*member, Presence presence) {
    if (needed(member, presence)) out_.add(key, writtenMoment(it_.*member, it_.extra, under(key)));
  }
  void moment(std::string_view key, std::optional<plan::Moment> T::*member, Presence) {
    if (it_.*member) out_.add(key, writtenMoment(*(it_.*member), it_.extra, under(key)));
  }
  void keyTime(plan::KeyTime T::*member) {
    const plan::KeyTime& time = it_.*member;
    const plan::KeyTime fallback;
    out_.add("at", writtenMoment(time.at, it_.extra, under("at")));
    if (time.over != fallback.over) out_.add("over", Written::number(time.over));
    if (time.pace != fallback.pace) out_.add("pace", spelled(time.pace, kPaces));
  }
  void target(std::string_view key, plan::Target T::*member, std::span<const std::string_view>) {
    out_.add(key, writtenTarget(it_.*member, it_.extra, under(key)));
  }
  void footprint(plan::Footprint T::*member, bool) { addFootprint(out_, it_.*member, it_.extra, prefix_); }
  void timeOfDay(std::string_view key, std::optional<double> T::*member) {
    if (it_.*member) out_.add(key, Written::text(units::timeOfDayText(*(it_.*member))));
  }
  void clockReadings(std::string_view key, std::vector<plan::ClockReading> T::*member) {
    if (!(it_.*member).empty()) out_.add(key, writtenClockReadings(it_.*member));
  }
  template <class Output>
  void output(std::string_view key, Output T::*member) {
    out_.add(key, writtenOutput(it_.*member, it_.extra, under(key)));
  }
  template <class What>
  void need(What T::*member) {
    addNeed(out_, it_.*member);
  }
  void exposePerformer(std::string_view key, std::string T::*member) {
    if (!(it_.*member).empty() || keepsUnder(it_.extra, under(key)))
      out_.add(key, writtenExpose(it_.*member, it_.extra, under(key)));
  }
  void numbersByName(std::string_view key, std::vector<std::pair<std::string, double>> T::*member, const Range&) {
    if ((it_.*member).empty()) return;
    Written object = Written::object();
    for (const auto& [name, value] : it_.*member) object.add(name, Written::number(value));
    out_.add(key, std::move(object));
  }
  void numbersByName(std::string_view key, std::map<std::string, double> T::*member, const Range&) {
    if ((it_.*member).empty()) return;
    Written object = Written::object();
    for (const auto& [name, value] : it_.*member) object.add(name, Written::number(value));
    out_.add(key, std::move(object));
  }
  void thresholds(std::string_view key, std::map<std::string, double> T::*member) {
    if (!(it_.*member).empty()) out_.add(key, writtenThresholds(it_.*member, it_.extra, under(key)));
  }
  void ratio(std::string_view key, int T::*numerator, int T::*denominator) {
    if (needed(numerator, Presence::may) || needed(denominator, Presence::may))
      out_.add(key, Written::point({double(it_.*numerator), double(it_.*denominator)}));
  }
  void placeOr(std::string_view key, std::string T::*member, IdKind, plan::Point T::*pos) {
    if ((it_.*member).empty())
      out_.add("pos", Written::point(it_.*pos));
    else
      out_.add(key, Written::text(it_.*member));
  }
  void focalOrSize(double T::*focal, std::string T::*size, plan::Target T::*of) {
    if ((it_.*size).empty()) {
      out_.add("focal", Written::number(it_.*focal));
      return;
    }
    out_.add("size", Written::text(it_.*size));
    target("of", of, kSizeTargets);
  }

  template <class Part>
  void maybe(std::string_view key, std::optional<Part> T::*member) {
    if (it_.*member) out_.add(key, writtenObject(*(it_.*member)));
  }
  template <class Part>
  void object(std::string_view key, Part T::*member, Presence presence = Presence::may) {
    if (needed(member, presence)) out_.add(key, writtenObject(it_.*member));
  }
  template <class Describe>
  void inner(std::string_view key, Describe describeInner) {
    ObjectWriter nested(it_, under(key));
    describeInner(nested);
    Written object = nested.finish();
    if (!object.empty()) out_.add(key, std::move(object));
  }
  template <class Row>
  void rows(std::string_view key, std::vector<Row> T::*member, Layout layout) {
    list(key, it_.*member, layout == Layout::lines, Presence::may);
  }
  template <class Row>
  void lensMarks(std::string_view key, std::vector<Row> T::*member) {
    list(key, it_.*member, false, Presence::may);
  }
  template <class Row>
  void keys(std::string_view key, std::vector<Row> T::*member, bool = true) {
    list(key, it_.*member, true, Presence::may);
  }
  void marks(std::string_view key, std::vector<plan::Mark> T::*member, MarkOf whose,
             Presence presence = Presence::may) {
    list(key, it_.*member, true, presence, whose);
  }
  template <class Row>
  void table(std::string_view key, base::Table<Row> T::*member) {
    list(key, it_.*member, true, Presence::may);
  }
  template <class Wrong>
  void refuse(std::string_view, Wrong, const char*, const char*, const char*) {}

 private:
  std::string under(std::string_view key) const { return prefix_ + std::string(key) + "/"; }
  template <class Value>
  bool needed(Value T::*member, Presence presence) const {
    return presence == Presence::must || !(it_.*member == fallback_.*member);
  }
  template <class Enum, std::size_t N>
  static Written spelled(Enum value, const Word<Enum> (&words)[N]) {
    for (const auto& word : words)
      if (word.value == value) return Written::text(word.text);
    return Written::text(words[0].text);
  }
  template <class Part, class... With>
  static Written writtenObject(const Part& part, With... with) {
    ObjectWriter<Part> writer(part);
    describe(writer, Of<Part>{}, with...);
    return writer.finish();
  }
  template <class Rows, class... With>
  void list(std::string_view key, const Rows& rows, bool lines, Presence presence, With... with) {
    if (rows.empty() && presence == Presence::may) return;
    Written items = Written::list(lines);
    for (const auto& row : rows) items.add(writtenObject(row, with...));
    out_.add(key, std::move(items));
  }

  const T& it_;
  const T fallback_{};
  std::string prefix_;
  Written out_ = Written::object();
};

}  // namespace wend::file
