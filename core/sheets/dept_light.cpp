// Tables of what light does to a picture besides exposing it: the sun, glass that returns it, bodies in it.
#include <cmath>

#include "core/answers/sun.h"
#include "core/base/text.h"
#include "core/light/shadow.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;

namespace {

/// Standing height whose shadow is told beside the sun.
constexpr double kStature = 1.75;

std::string shownAs(const plan::Plan& plan, const std::string& id) {
  return id == "camera" ? id : nameOf(plan, id);
}

/// Of the light on a face or a surface that a lamp gives.
Cell shareCell(double share) {
  return figure(fixed(100 * share, 0) + " %", "lampShare", share);
}

TextTable sunTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">at", "clock", ">plan bearing", ">up", ">shadow of " + lengthText(plan, kStature)});
  for (const double t : {0.0, answers.take->length()}) {
    const auto sun = answers::sunOf(plan, t);
    if (!sun) continue;
    const bool up = sun->elevation > 0;
    const double clock = *plan.clock.timeOfDay + t;
    const auto shadow = up ? std::optional(light::shadowLength(kStature, sun->elevation)) : std::nullopt;
    table.add({secondsCell("at", t), figure(units::timeOfDayText(std::round(clock)), "afterMidnightSeconds", clock),
               degreesCell("planBearing", sun->bearing), degreesCell("up", sun->elevation, 1),
               metresCell(plan, "shadow", shadow, "down")});
  }
  return table;
}

TextTable sunTraps(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "~what the sun does to the picture"});
  for (const auto& sun : answers.evidence->sunInLens)
    table.add({spanCell(sun.span), figure(sun.offFrame <= 0 ? "stands in the frame"
                                                            : "shines into the lens from " + fixed(sun.offFrame, 0) +
                                                                  "\u00b0 beside the frame",
                                          "offFrameDegrees", sun.offFrame)});
  for (const auto& shadow : answers.evidence->sunShadows)
    table.add({spanCell(shadow.span), "throws the shadow of " + shownAs(plan, shadow.by) + " on " +
                                          (shadow.on.empty() ? "the ground" : nameOf(plan, shadow.on))});
  return table;
}

TextTable glassTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "glass", "shows", ">returns", ">far side", ">off square"});
  for (const auto& pane : answers.evidence->panes)
    table.add({spanCell(pane.span), nameOf(plan, pane.pane),
               pane.who.empty() ? std::string("\u2013") : shownAs(plan, pane.who),
               figure(fixed(pane.returned, 1), "returnedOverThrough", pane.returned),
               figure(fixed(-pane.darker, 1) + " stops", "farSideStops", -pane.darker),
               degreesCell("offSquare", pane.incidence)});
  return table;
}

TextTable shadowTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "lamp", "taken off", "by", ">share"});
  for (const auto& shadow : answers.evidence->shadows)
    table.add({spanCell(shadow.span), nameOf(plan, shadow.lamp), nameOf(plan, shadow.who), shownAs(plan, shadow.by),
               shareCell(shadow.share)});
  return table;
}

TextTable surfaceTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "lamp", "taken off", "by", ">share"});
  for (const auto& shadow : answers.evidence->surfaceShadows)
    table.add({spanCell(shadow.span), nameOf(plan, shadow.lamp),
               shadow.on.empty() ? "the ground" : nameOf(plan, shadow.on), shownAs(plan, shadow.by),
               shareCell(shadow.share)});
  return table;
}

}  // namespace

std::vector<SheetPart> lightTrapParts(const Answers& answers) {
  std::vector<SheetPart> parts;
  const auto add = [&](const char* heading, TextTable table) {
    if (!table.empty()) parts.push_back({heading, std::move(table)});
  };
  add("Lamps taken off faces in frame", shadowTable(answers));
  add("Shadows by lamps on walls, pieces and ground in frame", surfaceTable(answers));
  add("Glass that acts as a mirror: what it returns over what comes through", glassTable(answers));
  add("The sun; nobody looks at it through a finder", sunTable(answers));
  add("The sun in the picture", sunTraps(answers));
  return parts;
}

}  // namespace wend::sheets
