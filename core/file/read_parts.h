/// The parts of a plan that are more than one value and less than an entity: times, targets, outlines, lamps' outputs,
/// needs. Unknown keys inside them are kept in the owner's extras under a prefix.
#pragma once

#include "core/file/key_reader.h"
#include "core/plan/plan.h"

namespace wend::file {

/// Where unknown keys go: the owner's extras, and the path from the owner to the part.
struct Keep {
  plan::Extras& extras;
  std::string prefix;
};

/// Seconds, a beat's id, or {"beat", "plus"}.
std::optional<plan::Moment> momentFrom(ReadContext& context, JsonValue value, Keep keep);

/// What an aim or the focus is on; `allowed` are the keys that may say so.
std::optional<plan::Target> targetFrom(ReadContext& context, JsonValue value, std::span<const std::string_view> allowed,
                                       Keep keep);

/// One of the keys outline, disc and, where `lines` are allowed, points.
std::optional<plan::Footprint> footprintFrom(KeyReader& keys, bool lines, Keep keep);

/// {"candela", "beam", "field"} or {"ies", "scale"}.
std::optional<std::variant<plan::BeamOutput, plan::IesOutput>> outputFrom(ReadContext& context, JsonValue value,
                                                                          Keep keep);

/// One of the keys near (with within), sees, stays, holds and reaches. "sees" takes plan::kFocusSubject as well.
std::optional<plan::Need::What> needFrom(KeyReader& keys);
/// A number, or rows of [focal length, number], strictly rising.
std::optional<plan::OverFocal> overFocalFrom(ReadContext& context, JsonValue value, const Range& range);
std::optional<plan::Date> dateFrom(ReadContext& context, JsonValue value);

/// ["HH:MM", stop] rows in the order of the day.
std::vector<plan::ClockReading> clockReadingsFrom(ReadContext& context, JsonValue value);

/// Numbers by name: {"b1": 0.4}.
std::vector<std::pair<std::string, double>> numbersByName(ReadContext& context, JsonValue value, const Range& range);

/// {"pan": {"share": 1.0}}.
std::map<std::string, double> thresholdsFrom(ReadContext& context, JsonValue value, Keep keep);

/// {"follow": "focus"}: empty; {"performer": id}: the id.
std::optional<std::string> exposePerformerFrom(ReadContext& context, JsonValue value, Keep keep);

/// What to write for a rate given as one number, alone or before its 1: "write [24000, 1001]" of 23.976. Nothing where
/// there is no such number.
std::optional<std::string> ratioInstead(JsonValue value);

}  // namespace wend::file
