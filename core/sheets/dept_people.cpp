// Sheets about people: crew, director and sound.
#include <algorithm>

#include "core/base/text.h"
#include "core/crew/boom.h"
#include "core/sheets/crew_sheet.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/route_lines.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;

namespace {

TextTable peopleTable(const plan::Plan& plan) {
  TextTable table({"who", "on the plan", "role", ">walks up to"});
  const std::vector<std::string> labels = crewLabels(plan);
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    const auto& crew = plan.crew[i];
    table.add({crew.id.text(), labels[i], crew.role,
               figure(fixed(crew.speed, 2) + " m/s", "mostMetresPerSecond", crew.speed)});
  }
  return table;
}

struct TimedRow {
  double at = 0;
  std::vector<Cell> cells;
};

std::vector<TimedRow> rowsOf(const RouteOf& route) {
  std::vector<TimedRow> rows;
  for (const auto& stand : route.stands)
    rows.push_back({stand.span.from,
                    {route.id,
                     stand.crouch ? "crouches" : "stands",
                     spanCell(stand.span),
                     {stand.shelter.empty() ? placeText(stand.pos) : stand.shelter, placeCell(stand.pos).figures}}});
  for (const auto& walk : route.walks)
    rows.push_back({walk.span.from,
                    {route.id,
                     "walks",
                     spanCell(walk.span),
                     {"to " + placeText(walk.path.back()), placeCell(walk.path.back()).figures},
                     figure(triggerText(walk.beat, walk.plus), "plusSeconds", walk.plus),
                     figure(fixed(walk.speed, 2), "walkMetresPerSecond", walk.speed),
                     secondsCell("leaveBy", walk.latestLeave),
                     secondsCell("thereFrom", walk.earliestArrive)}});
  for (const auto& stop : route.breaks)
    rows.push_back({stop.span.from, {route.id, "BREAKS", spanCell(stop.span), placeCell(stop.pos), stop.why}});
  std::stable_sort(rows.begin(), rows.end(), [](const TimedRow& a, const TimedRow& b) { return a.at < b.at; });
  return rows;
}

TextTable routesTable(const std::vector<RouteOf>& routes) {
  TextTable table({"who", "does", "seconds", "where", "trigger", ">m/s", ">leave by", ">there from"});
  for (const auto& route : routes) {
    if (route.carried) table.add({route.id, "goes along", "all", "with the camera"});
    if (!route.carried && !route.drawn && !route.sought) table.add({route.id, "unknown", "", "no route drawn"});
    if (route.sought && route.why.empty()) table.add({route.id, "found", "all", "no marks drawn"});
    if (route.sought && !route.why.empty()) table.add({route.id, "NO ROUTE", "", "see below"});
    for (auto& row : rowsOf(route)) table.add(std::move(row.cells));
  }
  return table;
}

/// Walks that lead round something; the others go straight to where the table above says.
TextTable cornersTable(const std::vector<RouteOf>& routes) {
  TextTable table({"who", "walks", "~by way of, at"});
  for (const auto& route : routes)
    for (const auto& walk : route.walks)
      if (walk.path.size() > 2) table.add({route.id, spanCell(walk.span), wayText(walk)});
  return table;
}

TextTable remarksTable(const std::vector<RouteOf>& routes) {
  TextTable table({"who", "~what"});
  for (const auto& route : routes) {
    if (!route.why.empty()) table.add({route.id, route.why});
    for (const auto& note : route.notes) table.add({route.id, note});
  }
  return table;
}

TextTable windowsTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"who or what", "seen", "how"});
  if (!answers.evidence->sightKnown) table.add({"everybody", "unknown", "no lens in the plan"});
  for (const auto& sight : answers.evidence->sight) {
    const bool crew = plan.crew.find(sight.id) != nullptr;
    const std::string name = crew ? sight.id : sight.id == "camera" ? "the rig" : nameOf(plan, sight.id);
    bool ever = false;
    const auto add = [&](const geometry::Span& span, const std::string& how) {
      table.add({name, spanCell(span), how});
      ever = true;
    };
    for (const auto& seen : sight.seen) add(seen.span, howText(plan, seen));
    for (const auto& pane : answers.evidence->panes)
      if (pane.who == sight.id) add(pane.span, paneText(nameOf(plan, pane.pane)));
    if (!ever) table.add({name, "never", ""});
  }
  return table;
}

std::string inFrameWords(const plan::Plan& plan, const Instant& instant) {
  if (!instant.lens) return "unknown";
  std::string words;
  for (const auto& at : instant.performers) {
    if (!at.present || at.inFrame == optics::Showing::out) continue;
    const std::string how = at.inFrame == optics::Showing::whole ? at.size : std::string(wordOf(at.inFrame));
    words += (words.empty() ? "" : "; ") + nameOf(plan, at.id) + " " + how;
  }
  return words.empty() ? "nobody" : words;
}

TextTable beatsTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", ">at", "timecode", "~beat", "~cue", "~in frame"});
  std::size_t number = 0;
  for (const auto& beat : plan.beats) {
    const auto instant = answers::instantAt(*answers.take, std::min(beat.time, answers.take->length()));
    table.add({count("beat", ++number), secondsCell("at", beat.time), instant.timecode, beat.name,
               beat.cue.empty() ? "\u2013" : beat.cue, inFrameWords(plan, instant)});
  }
  return table;
}

TextTable stoppers(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "~beat", "~what stops the take"});
  for (const auto& snag : *answers.snags)
    if (snag.severity == Severity::stops && !snag.accepted)
      table.add(
          {spanCell({snag.from, snag.until}), snag.beat.empty() ? "start" : beatText(plan, snag.beat, 0), snag.text});
  return table;
}

/// The lowest the frame's upper edge comes over somebody in a span.
struct LowestTop {
  double height = 0, above = 0, time = 0;
};

std::optional<LowestTop> lowestTop(const Evidence& evidence, const std::string& who, geometry::Span span) {
  std::optional<LowestTop> lowest;
  for (const auto& instant : evidence.samples) {
    if (instant.time < span.from || instant.time > span.until) continue;
    for (const auto& at : instant.performers) {
      if (at.id != who || !at.present || at.inFrame == optics::Showing::out) continue;
      const auto top = topOfFrameOver(instant, at.pos);
      if (top && (!lowest || *top < lowest->height)) lowest = {*top, *top - at.top, instant.time};
    }
  }
  return lowest;
}

TextTable speechTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "who", ">top of frame", ">above head", ">at", "~words"});
  for (const auto& speech : plan.speech) {
    const geometry::Span span{plan::secondsOf(plan, speech.from), plan::secondsOf(plan, speech.until)};
    const auto top = lowestTop(*answers.evidence, speech.who, span);
    const std::string missing = plan.lens ? "out of frame" : "unknown";
    const auto of = [&](double LowestTop::*what) { return top ? std::optional((*top).*what) : std::nullopt; };
    table.add({spanCell(span), nameOf(plan, speech.who),
               metresCell(plan, "topOfFrame", of(&LowestTop::height), missing),
               metresCell(plan, "aboveHead", of(&LowestTop::above), "\u2013"),
               secondsCell("at", of(&LowestTop::time), "\u2013"), speech.words.empty() ? "unknown" : speech.words});
  }
  return table;
}

}  // namespace

std::optional<double> topOfFrameOver(const Instant& instant, geometry::Point place) {
  if (!instant.lens) return std::nullopt;
  return crew::topOfFrame(instant.camera.pupil, instant.lens->half.v, place);
}

DeptSheet crewPaper(const Answers& answers) {
  const std::vector<RouteOf> routes = routesOf(answers);
  DeptSheet sheet{"crew",
                  "Crew sheet",
                  {{"Who is who", peopleTable(answers.take->plan())},
                   {"Where to be; BREAKS is where the plan does not hold", routesTable(routes)}}};
  if (TextTable corners = cornersTable(routes); corners.cells().size() > 1)
    sheet.parts.push_back({"The corners of walks: where to be when", std::move(corners)});
  TextTable remarks = remarksTable(routes);
  if (remarks.cells().size() > 1)
    sheet.parts.push_back({"Why somebody has no route, and what was not planned for", std::move(remarks)});
  sheet.parts.push_back({"When the lens sees whom", windowsTable(answers)});
  return sheet;
}

DeptSheet directorSheet(const Answers& answers) {
  return {"director",
          "Director's sheet",
          {{"Beats, and who is in frame when each starts", beatsTable(answers)},
           {"What stops the take as planned", stoppers(answers)}}};
}

DeptSheet soundSheet(const Answers& answers) {
  return {"sound",
          "Sound sheet",
          {{"Speech, and the lowest the top of the frame comes over who speaks while they are in frame",
            speechTable(answers)}}};
}

}  // namespace wend::sheets
