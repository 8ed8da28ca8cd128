#include "core/light/hold_span.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/check.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

using geometry::Span;
using geometry::Spans;

/// Where a value that goes linearly from (a.from, low) to (a.until, high) lies within [least, most].
std::optional<Span> within(Span a, double low, double high, double least, double most) {
  if (low == high) return low >= least && low <= most ? std::optional(a) : std::nullopt;
  const auto where = [&](double value) {
    return geometry::lerp(a.from, a.until, std::clamp((value - low) / (high - low), 0.0, 1.0));
  };
  if (std::max(low, high) < least || std::min(low, high) > most) return std::nullopt;
  const double one = where(least), other = where(most);
  return Span{std::min(one, other), std::max(one, other)};
}

Spans startsFor(const ClockNeed& need) {
  Spans spans;
  const auto add = [&](Span clock, double first, double second) {
    const auto inside = within(clock, units::stopsOf(first), units::stopsOf(second), units::stopsOf(need.allowed.from),
                               units::stopsOf(need.allowed.until));
    if (inside) spans.push_back({inside->from - need.t, inside->until - need.t});
  };
  const auto& readings = need.readings;
  if (readings.size() == 1) add({readings[0].timeOfDay, readings[0].timeOfDay}, readings[0].stop, readings[0].stop);
  for (std::size_t i = 1; i < readings.size(); ++i)
    add({readings[i - 1].timeOfDay, readings[i].timeOfDay}, readings[i - 1].stop, readings[i].stop);
  return geometry::tidy(std::move(spans));
}

/// A thousandth of a second is nobody's doing: a span that fits a cycle exactly must not lose it to rounding.
int goes(double room, double cycle) {
  return room < -1e-3 ? 0 : 1 + static_cast<int>(std::floor((std::max(room, 0.0) + 1e-3) / cycle));
}

}  // namespace

Span allowedReadings(double reading, double lampLux, const Exposure& exposure, const StopTolerance& tolerance) {
  if (lampLux <= 0) return {units::closedBy(reading, -tolerance.under), units::closedBy(reading, tolerance.over)};
  const double daylight = luxOfReading(reading, exposure);
  Exposure clear = exposure;
  clear.ndStops = 0;
  const auto readingAt = [&](double stops) {
    const double left = (daylight + lampLux) * std::exp2(stops) - lampLux;
    // No daylight at all is not dark enough to be out of tolerance: any reading will do.
    return stopFor(std::max(left, daylight * 1e-12), clear);
  };
  return {readingAt(-tolerance.under), readingAt(tolerance.over)};
}

Spans holdSpans(const std::vector<ClockNeed>& needs) {
  WEND_CHECK(!needs.empty());
  Spans starts = startsFor(needs.front());
  for (std::size_t i = 1; i < needs.size() && !starts.empty(); ++i)
    starts = geometry::intersection(starts, startsFor(needs[i]));
  return starts;
}

int goesWithin(Span light, double take, double cycle) {
  WEND_CHECK(take >= 0 && cycle > 0);
  return goes(light.length() - take, cycle);
}

int goesFrom(Span starts, double cycle) {
  return goesWithin(starts, 0, cycle);
}

}  // namespace wend::light
