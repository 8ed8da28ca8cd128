#include "core/sheets/text_words.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/optics/lens_scale.h"
#include "core/sheets/text_tables.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace snags;
using base::fixed;
using units::secondsText;

const char* const kCaution =
    "Caution: a drawing aid, not a risk assessment.\n"
    "Local rules and the licensed people in charge on the day decide.";

std::string shortLength(double metres, units::LengthUnit unit, units::LengthStep step) {
  const std::string text = units::lengthText(metres, unit, step);
  return unit == units::LengthUnit::metres && text.ends_with(" m") ? text.substr(0, text.size() - 2) : text;
}

std::string spanText(const geometry::Span& span) {
  return secondsText(span.from) + "\u2013" + secondsText(span.until);
}

std::string placeText(geometry::Point place) {
  return fixed(place.x, 2) + ", " + fixed(place.y, 2);
}

std::string stopOr(const std::optional<double>& stop) {
  return stop ? units::stopText(*stop) : "unknown";
}

std::string signedStops(const std::optional<double>& offset) {
  return offset ? units::stopsText(*offset) : std::string("unknown");
}

std::string kelvinText(const std::optional<double>& kelvin) {
  return kelvin ? base::fixed(*kelvin, 0) + " K" : std::string("unknown");
}

const char* wordOf(optics::Showing showing) {
  switch (showing) {
    case optics::Showing::whole:
      return "in frame";
    case optics::Showing::part:
      return "partly";
    case optics::Showing::hidden:
      return "hidden";
    case optics::Showing::out:
      break;
  }
  return "out";
}

const char* wordOf(Severity severity) {
  return severity == Severity::stops ? "stops" : severity == Severity::risks ? "risks" : "note";
}

std::string focusNames(const plan::Plan& plan, const FocusAt& focus) {
  std::string names;
  for (const auto& on : focus.on) names += (names.empty() ? "" : " \u2192 ") + subjectName(plan, on);
  return names.empty() ? "nobody" : names;
}

std::string heatWord(double warmth) {
  return warmth >= 1.5 ? "cool" : warmth >= 1.0 ? "warm" : "hot";
}

std::string beatText(const plan::Plan& plan, const std::string& beat, double plus) {
  if (beat.empty()) return "start+" + secondsText(plus);
  const std::size_t number = plan.beats.indexOf(beat) + 1;
  return std::to_string(number) + " " + plan.beats.find(beat)->name + (plus > 0.05 ? " +" + secondsText(plus) : "");
}

std::string triggerText(const std::string& beat, double plus) {
  if (beat.empty()) return "start+" + secondsText(plus);
  return beat + (plus > 0.05 ? "+" + secondsText(plus) : "");
}

std::string bandText(const plan::Plan& plan, const BandAt& band) {
  return lengthText(plan, band.near) + " to " + lengthText(plan, band.far);
}

std::string valueText(const plan::Plan& plan, Move::Axis axis, double value) {
  if (axis == Move::Axis::focus) return units::lengthText(value, unitOf(plan), units::LengthStep::tape);
  if (axis == Move::Axis::iris) return units::stopText(value);
  if (axis == Move::Axis::density) return fixed(value, 1) + " stops";
  return fixed(value, 0) + " mm";
}

std::string degreesRateText(double rate) {
  if (std::isinf(rate)) return "at once";
  return fixed(rate, rate < 9.95 ? 1 : 0) + "\u00b0/s";
}

std::string unchartedText(const plan::Plan& plan) {
  if (!plan.lens || plan.lens->focusMarks.size() > 1) return "";
  return std::string(plan.lens->focusMarks.empty() ? "no marks" : "one mark says nothing") +
         " of the focus ring: degrees are counted as " + base::fixed(optics::kUnchartedThrow, 0) +
         "\u00b0 from infinity to closest focus";
}

bool beyondMarks(const plan::Plan& plan, double metres) {
  if (!plan.lens || plan.lens->focusMarks.size() < 2) return false;
  constexpr double kRounding = 1e-6;
  double near = kInfinity, far = 0;
  for (const auto& mark : plan.lens->focusMarks) {
    near = std::min(near, mark.distance.value_or(kInfinity));
    far = std::max(far, mark.distance.value_or(kInfinity));
  }
  return metres < near * (1 - kRounding) || metres > far * (1 + kRounding);
}

std::string coverText(const Move& move) {
  const bool part = !move.cover.empty() && move.exposed && move.exposed->worst > 1;
  return move.cover + (part ? " for a part" : "");
}

std::string rateText(const Move& move) {
  if (move.cut()) return "at once";
  if (move.axis == Move::Axis::focus) return degreesRateText(move.peakDegPerSecond);
  if (move.axis == Move::Axis::iris || move.axis == Move::Axis::density)
    return fixed(move.peakStopsPerSecond, 2) + " stop/s";
  return fixed(move.peakPercentPerSecond, 1) + " %/s";
}

std::string openingsText(const plan::Plan& plan, const std::string& ids) {
  std::string names;
  for (const auto& id : base::split(ids, '+')) names += (names.empty() ? "" : " and ") + nameOf(plan, id);
  return names;
}

std::string howText(const plan::Plan& plan, const SeenSpan& seen) {
  if (seen.via.empty()) return "perhaps: cannot be told from out of sight";
  const std::string openings = seen.by.empty() ? "" : "through " + openingsText(plan, seen.by);
  if (seen.via != "direct") return "in " + nameOf(plan, seen.via) + (openings.empty() ? "" : " " + openings);
  return openings.empty() ? "directly" : openings;
}

std::string paneText(const std::string& name) {
  return "in " + name + ", by the light";
}

std::string marginText(double marginDeg) {
  if (marginDeg < 0) return "up to " + fixed(-marginDeg, 1) + "\u00b0 inside the frame, hidden by the set alone";
  return "margin " + fixed(marginDeg, 1) + "\u00b0";
}

}  // namespace wend::sheets
