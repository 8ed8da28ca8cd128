/// The words that tables and sheets share: spans, stops, triggers, how warm a focus is.
#pragma once

#include <optional>
#include <string>

#include "core/answers/answers.h"
#include "core/snags/stretch.h"
#include "core/units/length.h"

namespace wend::sheets {

using snags::unitOf;

/// Without the unit where it is metres: for places that say it once.
std::string shortLength(double metres, units::LengthUnit unit, units::LengthStep step = units::LengthStep::fine);

/// "12.0–13.5".
std::string spanText(const geometry::Span& span);
/// "4.50, 3.70": plan metres, whatever the display.
std::string placeText(geometry::Point place);
std::string stopOr(const std::optional<double>& stop);
std::string signedStops(const std::optional<double>& offset);
/// "5600 K", "unknown".
std::string kelvinText(const std::optional<double>& kelvin);

const char* wordOf(optics::Showing showing);
const char* wordOf(snags::Severity severity);

using snags::subjectName;
std::string focusNames(const plan::Plan& plan, const snags::FocusAt& focus);
/// How forgiving a focus is, by its band against the subject's wobble: cool from 1.5, warm from 1, else hot.
std::string heatWord(double warmth);

/// "5 Lamp cord +2.0".
std::string beatText(const plan::Plan& plan, const std::string& beat, double plus);
/// "b5+2.0", as the verbs take it; "start+2.0" before the first beat.
std::string triggerText(const std::string& beat, double plus);

std::string bandText(const plan::Plan& plan, const snags::BandAt& band);
std::string valueText(const plan::Plan& plan, snags::Move::Axis axis, double value);
std::string rateText(const snags::Move& move);
/// What covers it, " for a part" where something of it runs faster than that lets pass; empty: nothing.
std::string coverText(const snags::Move& move);
/// "12\u00b0/s", "0.3\u00b0/s", "at once" of an infinite one.
std::string degreesRateText(double rate);

/// What degrees of barrel stand for where nobody marked the focus ring; empty where it has two marks or more.
std::string unchartedText(const plan::Plan& plan);
/// Whether a setting lies past the outermost marks of the focus ring: its degrees are a guess then.
bool beyondMarks(const plan::Plan& plan, double metres);

/// "D1 and D2" of "d1+d2".
std::string openingsText(const plan::Plan& plan, const std::string& ids);
/// "directly", "through D1", "in the hall mirror".
std::string howText(const plan::Plan& plan, const snags::SeenSpan& seen);
/// How somebody shows in glass that has turned into a mirror: "in shop window, by the light".
std::string paneText(const std::string& name);
/// How far out of the frame somebody who is clear stays at least, or what hides them inside it.
std::string marginText(double marginDeg);

}  // namespace wend::sheets
