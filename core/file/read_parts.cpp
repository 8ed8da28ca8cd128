#include "core/file/read_parts.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/file/fields.h"

namespace wend::file {

namespace {

std::optional<double> numberAt(KeyReader& keys, std::string_view key, const Range& range, double fallback) {
  const auto value = keys.take(key);
  return value ? keys.context().number(*value, range) : std::optional(fallback);
}

std::optional<double> neededNumber(KeyReader& keys, std::string_view key, const Range& range) {
  const auto value = keys.require(key);
  return value ? keys.context().number(*value, range) : std::nullopt;
}

std::optional<std::string> beatFrom(ReadContext& context, JsonValue value) {
  if (value.kind() == JsonKind::text && value.text() == plan::kEndBeat) return plan::kEndBeat;
  return context.reference(value, {IdKind::beat});
}

std::optional<plan::Target> onPoint(KeyReader& keys, JsonValue value) {
  const auto pos = keys.context().point(value);
  const auto height = numberAt(keys, "height", kHeight, plan::OnPoint{}.height);
  if (!pos || !height) return std::nullopt;
  return plan::OnPoint{*pos, *height};
}

std::optional<plan::Target> onBearing(KeyReader& keys, JsonValue value) {
  const auto bearing = keys.context().number(value, kAngle);
  const auto tilt = numberAt(keys, "tilt", kTilt, plan::OnBearing{}.tilt);
  if (!bearing || !tilt) return std::nullopt;
  return plan::OnBearing{*bearing, *tilt};
}

std::optional<plan::Target> onTravel(KeyReader& keys, JsonValue value) {
  const auto offset = keys.context().number(value, kAngle);
  const auto tilt = numberAt(keys, "tilt", kTilt, plan::OnTravel{}.tilt);
  if (!offset || !tilt) return std::nullopt;
  return plan::OnTravel{*offset, *tilt};
}

std::optional<plan::Target> onSplit(ReadContext& context, JsonValue value) {
  if (!context.expectList(value)) return std::nullopt;
  if (value.count() < 2) {
    context.problem("out-of-range", value, "two or more performers or props", "name what the focus is split between");
    return std::nullopt;
  }
  plan::OnSplit split;
  for (auto item = value.first(); item; item = item->next())
    if (auto who = context.reference(*item, {IdKind::performer, IdKind::prop})) {
      if (std::find(split.who.begin(), split.who.end(), *who) != split.who.end())
        context.problem("out-of-range", *item, "each performer or prop once",
                        "name somebody else, or focus on that one alone");
      split.who.push_back(std::move(*who));
    }
  return split;
}

std::optional<plan::Target> targetOf(KeyReader& keys, std::string_view choice) {
  ReadContext& context = keys.context();
  const JsonValue value = *keys.take(choice);
  if (choice == "point") return onPoint(keys, value);
  if (choice == "bearing") return onBearing(keys, value);
  if (choice == "travel") return onTravel(keys, value);
  if (choice == "split") return onSplit(context, value);
  if (choice == "distance") {
    const auto metres = context.number(value, kPositiveSize);
    return metres ? std::optional<plan::Target>(plan::OnDistance{*metres}) : std::nullopt;
  }
  auto id = context.reference(value, {choice == "prop" ? IdKind::prop : IdKind::performer});
  if (!id) return std::nullopt;
  if (choice == "prop") return plan::OnProp{std::move(*id)};
  return plan::OnPerformer{std::move(*id)};
}

std::optional<plan::Footprint> discFrom(ReadContext& context, JsonValue value, Keep keep) {
  if (!context.expectObject(value)) return std::nullopt;
  KeyReader keys(context, value);
  const auto centreValue = keys.require("centre");
  const auto radius = neededNumber(keys, "radius", kPositiveSize);
  const auto centre = centreValue ? context.point(*centreValue) : std::nullopt;
  keys.keepRest(keep.extras, keep.prefix + "disc/");
  if (!centre || !radius) return std::nullopt;
  return plan::Disc{*centre, *radius};
}

std::optional<std::variant<plan::BeamOutput, plan::IesOutput>> beamFrom(KeyReader& keys) {
  const plan::BeamOutput fallback;
  const auto candela = neededNumber(keys, "candela", kCandela);
  const auto beam = numberAt(keys, "beam", kBeamAngle, fallback.beam);
  const auto field = numberAt(keys, "field", kBeamAngle, fallback.field);
  if (!candela || !beam || !field) return std::nullopt;
  if (*field > *beam) return plan::BeamOutput{*candela, *beam, *field};
  keys.context().problem("out-of-range", keys.object(), "a field angle above the beam angle", "check the two angles");
  return std::nullopt;
}

}  // namespace

std::optional<plan::Moment> momentFrom(ReadContext& context, JsonValue value, Keep keep) {
  if (value.kind() == JsonKind::number) {
    const auto seconds = context.number(value, kTime);
    return seconds ? std::optional(plan::Moment{"", *seconds}) : std::nullopt;
  }
  if (value.kind() == JsonKind::text) {
    auto beat = beatFrom(context, value);
    return beat ? std::optional(plan::Moment{std::move(*beat), 0}) : std::nullopt;
  }
  if (!value.isObject()) {
    context.problem("wrong-type", value, "seconds, a beat's id, or {\"beat\", \"plus\"}", "write a time");
    return std::nullopt;
  }
  KeyReader keys(context, value);
  const auto beatValue = keys.require("beat");
  auto beat = beatValue ? beatFrom(context, *beatValue) : std::nullopt;
  const auto plus = numberAt(keys, "plus", kTime, 0);
  keys.keepRest(keep.extras, keep.prefix);
  if (!beat || !plus) return std::nullopt;
  return plan::Moment{std::move(*beat), *plus};
}

std::optional<plan::Target> targetFrom(ReadContext& context, JsonValue value, std::span<const std::string_view> allowed,
                                       Keep keep) {
  if (!context.expectObject(value)) return std::nullopt;
  KeyReader keys(context, value);
  const auto choice = keys.choose(allowed);
  if (!choice) return std::nullopt;
  auto target = targetOf(keys, *choice);
  keys.keepRest(keep.extras, keep.prefix);
  return target;
}

std::optional<plan::Footprint> footprintFrom(KeyReader& keys, bool lines, Keep keep) {
  static constexpr std::array<std::string_view, 3> kShapes{"outline", "disc", "points"};
  const auto choice = keys.choose(std::span(kShapes).first(lines ? 3 : 2));
  if (!choice) return std::nullopt;
  const JsonValue value = *keys.take(*choice);
  if (*choice == "disc") return discFrom(keys.context(), value, std::move(keep));
  auto points = keys.context().points(value, *choice == "outline" ? 3 : 2);
  if (!points) return std::nullopt;
  if (*choice == "outline") return plan::Outline{std::move(*points)};
  return plan::Line{std::move(*points)};
}

std::optional<std::variant<plan::BeamOutput, plan::IesOutput>> outputFrom(ReadContext& context, JsonValue value,
                                                                          Keep keep) {
  static constexpr std::array<std::string_view, 2> kOutputs{"candela", "ies"};
  if (!context.expectObject(value)) return std::nullopt;
  KeyReader keys(context, value);
  const auto choice = keys.choose(kOutputs);
  if (!choice) return std::nullopt;
  std::optional<std::variant<plan::BeamOutput, plan::IesOutput>> output;
  if (*choice == "candela") {
    output = beamFrom(keys);
  } else {
    auto file = context.fileName(*keys.take("ies"));
    const auto scale = numberAt(keys, "scale", kFactor, plan::IesOutput{}.scale);
    if (file && scale) output = plan::IesOutput{std::move(*file), *scale};
  }
  keys.keepRest(keep.extras, keep.prefix);
  return output;
}

std::optional<plan::Need::What> needFrom(KeyReader& keys) {
  static constexpr std::array<std::string_view, 5> kNeeds{"near", "sees", "stays", "holds", "reaches"};
  ReadContext& context = keys.context();
  const auto choice = keys.choose(kNeeds);
  if (!choice) return std::nullopt;
  const JsonValue value = *keys.take(*choice);
  if (*choice == "near") {
    const auto within = numberAt(keys, "within", kPositiveSize, plan::NearCamera{}.within);
    if (!context.word(value, {"camera"}) || !within) return std::nullopt;
    return plan::NearCamera{*within};
  }
  if (*choice == "sees") {
    auto who = context.reference(value, {IdKind::performer}, plan::kFocusSubject);
    return who ? std::optional<plan::Need::What>(plan::Sees{std::move(*who)}) : std::nullopt;
  }
  const IdKind kind = *choice == "stays" ? IdKind::shelter : *choice == "holds" ? IdKind::link : IdKind::pole;
  auto id = context.reference(value, {kind});
  if (!id) return std::nullopt;
  if (*choice == "holds") return plan::Holds{std::move(*id)};
  if (*choice == "reaches") return plan::Reaches{std::move(*id)};
  return plan::Stays{std::move(*id)};
}

std::optional<plan::OverFocal> overFocalFrom(ReadContext& context, JsonValue value, const Range& range) {
  if (!value.isList()) {
    const auto number = context.number(value, range);
    return number ? std::optional(plan::OverFocal(*number)) : std::nullopt;
  }
  std::vector<plan::FocalValue> rows;
  for (auto row = value.first(); row; row = row->next()) {
    if (!row->isList() || row->count() != 2) {
      context.problem("wrong-type", *row, "a focal length and a value", "write [mm, value]");
      return std::nullopt;
    }
    const auto focal = context.number(*row->first(), kMillimetres);
    const auto number = context.number(*row->first()->next(), range);
    if (!focal || !number) return std::nullopt;
    if (!rows.empty() && *focal <= rows.back().focal) {
      context.problem("not-rising", *row, "a longer focal length than the row before", "put the rows in order");
      return std::nullopt;
    }
    rows.push_back({*focal, *number});
  }
  if (rows.empty()) {
    context.problem("wrong-type", value, "a number, or at least one row", "write a number");
    return std::nullopt;
  }
  return plan::OverFocal(std::move(rows));
}

std::optional<plan::Date> dateFrom(ReadContext& context, JsonValue value) {
  const auto text = context.text(value);
  if (!text) return std::nullopt;
  auto date = plan::dateFrom(*text);
  if (!date) context.problem("bad-date", value, "a day of 1900 to 2199 as YYYY-MM-DD", "correct the date");
  return date;
}

std::vector<plan::ClockReading> clockReadingsFrom(ReadContext& context, JsonValue value) {
  std::vector<plan::ClockReading> readings;
  if (!context.expectList(value)) return readings;
  for (auto row = value.first(); row; row = row->next()) {
    if (!row->isList() || row->count() != 2) {
      context.problem("wrong-type", *row, "a time of day and a stop", "write [\"HH:MM\", stop]");
      continue;
    }
    const auto time = context.timeOfDay(*row->first());
    const auto stop = context.number(*row->first()->next(), kStop);
    if (!time || !stop) continue;
    if (!readings.empty() && *time <= readings.back().timeOfDay)
      context.problem("time-order", *row->first(), "a later time of day than the row before", "put the rows in order");
    readings.push_back({*time, *stop});
  }
  return readings;
}

std::vector<std::pair<std::string, double>> numbersByName(ReadContext& context, JsonValue value, const Range& range) {
  std::vector<std::pair<std::string, double>> numbers;
  if (!context.expectObject(value)) return numbers;
  for (auto member = value.first(); member; member = member->next())
    if (const auto number = context.number(*member, range)) numbers.emplace_back(member->key(), *number);
  return numbers;
}

std::map<std::string, double> thresholdsFrom(ReadContext& context, JsonValue value, Keep keep) {
  std::map<std::string, double> factors;
  if (!context.expectObject(value)) return factors;
  if (value.count() > kMostThresholds) {
    context.problem("too-many", value, std::to_string(kMostThresholds) + " thresholds", "keep those that differ");
    return factors;
  }
  for (auto rule = value.first(); rule; rule = rule->next()) {
    if (!context.expectObject(*rule)) continue;
    KeyReader keys(context, *rule);
    if (const auto share = neededNumber(keys, "share", kFactor)) factors[std::string(rule->key())] = *share;
    keys.keepRest(keep.extras, keep.prefix + pointerStep(rule->key()) + "/");
  }
  return factors;
}

std::optional<std::string> exposePerformerFrom(ReadContext& context, JsonValue value, Keep keep) {
  static constexpr std::array<std::string_view, 2> kExposed{"follow", "performer"};
  if (!context.expectObject(value)) return std::nullopt;
  KeyReader keys(context, value);
  const auto choice = keys.choose(kExposed);
  if (!choice) return std::nullopt;
  const JsonValue chosen = *keys.take(*choice);
  keys.keepRest(keep.extras, keep.prefix);
  if (*choice == "performer") return context.reference(chosen, {IdKind::performer});
  return context.word(chosen, {"focus"}) ? std::optional(std::string()) : std::nullopt;
}

std::optional<std::string> ratioInstead(JsonValue value) {
  const bool alone = value.kind() == JsonKind::number;
  const auto number = alone ? std::optional(value) : value.kind() == JsonKind::list ? value.first() : std::nullopt;
  if (!number || number->kind() != JsonKind::number) return std::nullopt;
  const auto rate = base::readNumber(number->raw());
  if (!rate || *rate < 1 || *rate > 1000) return std::nullopt;
  const double whole = std::round(*rate), over = std::round(*rate * 1.001);
  if (*rate == whole) return alone ? std::optional("write [" + base::fixed(whole, 0) + ", 1]") : std::nullopt;
  // Such rates are typed with two or three digits.
  if (std::abs(*rate - over / 1.001) < 0.006) return "write [" + base::fixed(over * 1000, 0) + ", 1001]";
  return "write it as a fraction of two whole numbers";
}

}  // namespace wend::file
