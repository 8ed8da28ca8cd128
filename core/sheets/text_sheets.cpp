// The verbs' words.
#include <algorithm>
#include <cmath>
#include <functional>

#include "core/answers/footing.h"
#include "core/answers/taken_then.h"
#include "core/answers/zoom_feather.h"
#include "core/base/text.h"
#include "core/pulls/zoom_cover.h"
#include "core/sheets/route_lines.h"
#include "core/sheets/text_tables.h"
#include "core/sheets/text_words.h"
#include "core/snags/cures.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/length.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace snags;
using base::fixed;
using units::secondsText;

std::string takeSummary(const answers::Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  const Snags& snags = *answers.snags;
  const auto count = [&](Severity severity) {
    return std::to_string(std::count_if(snags.begin(), snags.end(),
                                        [&](const Snag& snag) { return snag.severity == severity && !snag.accepted; }));
  };
  return plan.title + ", rev " + plan.revision + ": " + secondsText(plan.clock.length) + " s at " +
         fixed(plan.clock.rate(), plan.clock.rateDenominator == 1 ? 0 : 3) + " fps, " +
         std::to_string(plan.beats.size()) + " beats, camera way " +
         lengthText(plan, answers.take->people().camera().totalLength()) + "\n" + count(Severity::stops) +
         " snags stop the take, " + count(Severity::risks) + " risk it, " + count(Severity::note) +
         " are worth knowing; accepted ones not counted\n";
}

std::string problemsText(const base::Problems& problems) {
  std::string text;
  for (const auto& problem : problems) text += base::toText(problem) + "\n";
  return text;
}

namespace {

/// Columns before a snag's own words.
constexpr std::size_t kLead = 26;

}  // namespace

std::string indentedLines(const std::string& words) {
  std::string text;
  for (const auto& line : wrapped(words, 96)) text += "    " + line + "\n";
  return text;
}

std::string snagsText(const plan::Plan& plan, const Snags& snags) {
  std::string text;
  for (const auto& snag : snags) {
    text += std::string(static_cast<std::size_t>(4 - static_cast<int>(snag.severity)), '|');
    text += std::string(static_cast<std::size_t>(static_cast<int>(snag.severity)), ' ');
    text += base::padRight(spanText({snag.from, snag.until}), 13) + " ";
    const std::size_t beat = snag.beat.empty() ? 0 : plan.beats.indexOf(snag.beat) + 1;
    text += "beat " + base::padRight(std::to_string(beat), 3);
    for (const auto& line : wrapped(snag.text, 100 - kLead))
      text += (text.back() == '\n' ? std::string(kLead, ' ') : "") + line + "\n";
    if (snag.accepted)
      text += "    accepted by " + snag.accepted->by + (snag.accepted->note.empty() ? "" : ": " + snag.accepted->note) +
              "\n";
    else
      text += indentedLines("mend: " + snag.mend);
    text += "    " + std::string(wordOf(snag.severity)) + "  " + snag.key + "\n";
  }
  return text;
}

namespace {

std::string performersText(const answers::Take& take, const Instant& instant) {
  const auto& all = instant.performers;
  const bool coloured = std::any_of(all.begin(), all.end(), [](const PerformerAt& at) { return at.kelvin; });
  std::vector<std::string> headers = {"who",    "in frame", "size",  ">slant", ">flat",
                                      ">floor", ">blur",    ">face", "needs"};
  if (coloured) headers.push_back(">light");
  TextTable table(std::move(headers));
  const plan::Plan& plan = take.plan();
  for (const auto& at : instant.performers) {
    if (!at.present) {
      table.add({nameOf(plan, at.id), "absent"});
      continue;
    }
    // Behind the lens there is nothing along its axis, and no picture to be blurred.
    const bool ahead =
        !instant.lens ||
        optics::placeInFrame(geometry::at(at.pos, at.eyes), instant.camera.pupil, instant.lens->half).has_value();
    table.add({nameOf(plan, at.id), wordOf(at.inFrame), at.size, lengthText(plan, at.distances.slant),
               ahead ? lengthText(plan, at.distances.flat) : "\u2013", lengthText(plan, at.distances.floor),
               ahead ? fixed(at.blur, 2) : "\u2013", signedStops(at.offset), stopOr(at.needed),
               coloured ? kelvinText(at.kelvin) : ""});
  }
  return table.empty() ? std::string() : table.text();
}

/// Who stands there and is to be seen sooner than the rules of sight have them gone before that, as the now panel tells
/// it.
std::string lateText(const answers::Take& take, const snags::CrewAt& at, double t) {
  const double early = take.plan().sightRules.early;
  if (at.walking || at.carried || at.seen || !at.nextSeen || *at.nextSeen >= early) return "";
  return "had to be gone by " + fixed(t + *at.nextSeen - early, 1);
}

std::string crewText(const answers::Take& take, const Instant& instant) {
  TextTable table({"crew", "where", "sight", ">until seen", ""});
  for (const auto& at : instant.crew) {
    const std::string name = nameOf(take.plan(), at.id);
    if (!at.present) {
      table.add({name, "no place in the plan", "unknown", "", ""});
      continue;
    }
    std::string where = at.shelter.empty() ? fixed(at.pos.x, 2) + ", " + fixed(at.pos.y, 2) : at.shelter;
    if (at.walking) where += ", walking";
    if (at.carried) where += ", carried along";
    const std::string sight = !instant.lens        ? "unknown"
                              : !at.seen           ? "not seen"
                              : at.via == "direct" ? "seen"
                                                   : "seen in " + at.via;
    table.add({name, where, sight, at.nextSeen ? secondsText(*at.nextSeen) + " s" : "never",
               lateText(take, at, instant.time)});
  }
  return table.empty() ? std::string() : table.text();
}

std::string focusText(const plan::Plan& plan, const Instant& instant) {
  const FocusAt& focus = instant.focus;
  std::string text = "focus    on " + focusNames(plan, focus) + "\n";
  if (!focus.known) return text;
  text += "wanted   " + lengthText(plan, focus.wantedDistance) + " (slant " + lengthText(plan, focus.wanted.slant) +
          ", flat " + lengthText(plan, focus.wanted.flat) + ", floor " + lengthText(plan, focus.wanted.floor) + ")";
  if (!instant.lens) return text + "\n";
  text += ", sharp " + bandText(plan, focus.wantedBand) + "\n";
  text += "set      " + lengthText(plan, focus.setDistance) + ", sharp " + bandText(plan, focus.setBand) + ", barrel " +
          fixed(focus.barrel, 0) + "\u00b0" + (beyondMarks(plan, focus.setDistance) ? " (beyond the marks)" : "") +
          "\n";
  if (const std::string uncharted = unchartedText(plan); !uncharted.empty()) text += "barrel   " + uncharted + "\n";
  text += focus.warmth ? "warmth   " + heatWord(*focus.warmth) + ", band " + fixed(*focus.warmth, 2) +
                             " \u00d7 wobble (\u00b1" + lengthText(plan, *focus.wobble) + ")" +
                             (focus.tightest.empty() ? "" : ", least for " + nameOf(plan, focus.tightest)) + "\n"
                       : std::string("warmth   unknown during a change of subject\n");
  if (const auto cures = curesAt(plan, instant); !cures.empty())
    text += "to cool it now:\n" + indentedLines(curesText(plan, cures));
  return text;
}

}  // namespace

std::string instantText(const answers::Take& take, const Instant& instant) {
  const plan::Plan& plan = take.plan();
  const CameraAt& camera = instant.camera;
  std::string text =
      units::takeTimeText(instant.time) + "  " + instant.timecode + "  frame " + std::to_string(instant.frameIndex);
  if (!instant.beat.empty())
    text += "  beat " + beatText(plan, instant.beat, instant.time - plan.beats.find(instant.beat)->time);
  text += "\ncamera   " + fixed(camera.sensor.at.x, 2) + ", " + fixed(camera.sensor.at.y, 2) + ", lens height " +
          lengthText(plan, camera.sensor.at.z) + ", bearing " + fixed(camera.sensor.bearing, 1) + "\u00b0, tilt " +
          fixed(camera.sensor.tilt, 1) + "\u00b0\n";
  text += "moves    " + fixed(camera.speed, 2) + " m/s, pan " + fixed(camera.panRate, 1) + "\u00b0/s\n";
  if (instant.lens)
    text += "lens     " + fixed(instant.lens->focal, 1) + " mm, " + fixed(instant.lens->hfov, 1) + "\u00b0 wide, " +
            fixed(instant.lens->vfov, 1) + "\u00b0 high\n";
  else
    text += "lens     none in the plan: sight unknown\n";
  text += focusText(plan, instant);
  text += "iris     set " + units::stopText(instant.iris.set) + ", needed " + stopOr(instant.iris.needed) +
          (instant.iris.density > 0 ? " behind " + fixed(instant.iris.density, 1) + " stops of density" : "") + "\n";
  if (instant.background)
    text += "behind   brightest tenth " + units::stopsText(instant.background->brightest) + ", darkest tenth " +
            units::stopsText(instant.background->darkest) + " stops against the set stop\n";
  if (instant.traps) text += trapsText(plan, *instant.traps);
  if (instant.sun)
    text += "sun      " +
            (instant.sun->elevation > 0 ? fixed(instant.sun->elevation, 1) + "\u00b0 up, plan bearing " +
                                              fixed(instant.sun->bearing, 1) + "\u00b0"
                                        : std::string("down")) +
            "\n";
  const std::string performers = performersText(take, instant), crew = crewText(take, instant);
  if (!performers.empty()) text += "\n" + performers;
  if (!crew.empty()) text += "\n" + crew;
  return text;
}

namespace {

/// One column of the table along the take.
struct InstantColumn {
  std::string header;
  bool few;
  std::function<std::string(const Instant&)> cell;
};

std::string known(const std::optional<double>& value, int digits) {
  return value ? fixed(*value, digits) : std::string();
}

std::vector<InstantColumn> instantColumns(const plan::Plan& plan, Columns wanted) {
  // Metres are told once, in the header; feet and inches tell themselves. A spreadsheet computes with numbers.
  const bool feet = unitOf(plan) == units::LengthUnit::feet && wanted == Columns::few;
  const std::string unit = feet ? "" : " m";
  const auto length = [&plan, feet](double value) { return feet ? lengthText(plan, value) : fixed(value, 2); };
  const auto focal = [=](const Instant& i, double value) { return i.focus.known ? length(value) : std::string(); };
  return {
      {">s", true, [](const Instant& i) { return fixed(i.time, 3); }},
      {"timecode", false, [](const Instant& i) { return i.timecode; }},
      {">x m", true, [](const Instant& i) { return fixed(i.camera.sensor.at.x, 2); }},
      {">y m", true, [](const Instant& i) { return fixed(i.camera.sensor.at.y, 2); }},
      {">z" + unit, false, [=](const Instant& i) { return length(i.camera.sensor.at.z); }},
      {">bearing", true, [](const Instant& i) { return fixed(i.camera.sensor.bearing, 1); }},
      {">tilt", false, [](const Instant& i) { return fixed(i.camera.sensor.tilt, 1); }},
      {">mm", true, [](const Instant& i) { return i.lens ? fixed(i.lens->focal, 1) : std::string(); }},
      {">hfov", false, [](const Instant& i) { return i.lens ? fixed(i.lens->hfov, 1) : std::string(); }},
      {"on", true, [&plan](const Instant& i) { return focusNames(plan, i.focus); }},
      {">wanted" + unit, true, [=](const Instant& i) { return focal(i, i.focus.wantedDistance); }},
      {">near" + unit, true, [=](const Instant& i) { return focal(i, i.focus.wantedBand.near); }},
      {">far" + unit, true, [=](const Instant& i) { return focal(i, i.focus.wantedBand.far); }},
      {">set" + unit, true, [=](const Instant& i) { return focal(i, i.focus.setDistance); }},
      {">barrel", false, [](const Instant& i) { return i.focus.known ? fixed(i.focus.barrel, 2) : std::string(); }},
      {">T set", true, [](const Instant& i) { return fixed(i.iris.set, 2); }},
      {">T needed", false, [](const Instant& i) { return known(i.iris.needed, 2); }},
      {">warmth", true, [](const Instant& i) { return known(i.focus.warmth, 2); }},
  };
}

}  // namespace

TextTable instantsTable(const answers::Take& take, const std::vector<Instant>& instants, Columns wanted) {
  std::vector<InstantColumn> columns;
  for (auto& column : instantColumns(take.plan(), wanted))
    if (column.few || wanted == Columns::all) columns.push_back(std::move(column));
  std::vector<std::string> headers;
  for (const auto& column : columns) headers.push_back(column.header);
  TextTable table(std::move(headers));
  for (const auto& instant : instants) {
    std::vector<Cell> cells;
    for (const auto& column : columns) cells.push_back(column.cell(instant));
    table.add(std::move(cells));
  }
  return table;
}

TextTable movesTable(const plan::Plan& plan, const Evidence& evidence) {
  TextTable table(
      {">#", "axis", ">at", ">over", "~who", ">from", ">to", ">barrel", ">peak", "trigger", ">hands", "~cover"});
  std::size_t number = 0;
  for (const auto& move : evidence.moves) {
    table.add({std::to_string(++number), wordOf(move.axis), secondsText(move.from), secondsText(move.until - move.from),
               move.on.empty() ? "" : subjectName(plan, move.on), valueText(plan, move.axis, move.valueBefore),
               valueText(plan, move.axis, move.valueAfter),
               move.axis == Move::Axis::focus ? fixed(move.barrelAfter - move.barrelBefore, 0) + "\u00b0" : "",
               rateText(move), triggerText(move.beat, move.plus), std::to_string(move.hands), coverText(move)});
  }
  return table;
}

namespace {

/// How far the degrees of barrel can be trusted.
std::string ringText(const plan::Plan& plan, const Evidence& evidence) {
  const std::string uncharted = unchartedText(plan);
  if (!uncharted.empty()) return "barrel: " + uncharted + "\n";
  std::string beyond;
  std::size_t number = 0;
  for (const auto& move : evidence.moves) {
    ++number;
    if (move.axis == Move::Axis::focus && (beyondMarks(plan, move.valueBefore) || beyondMarks(plan, move.valueAfter)))
      beyond += (beyond.empty() ? "" : ", ") + std::to_string(number);
  }
  return beyond.empty() ? "" : "barrel: beyond the marks of the focus ring the degrees are a guess: " + beyond + "\n";
}

std::string feathersText(const plan::Plan& plan, const Evidence& evidence) {
  std::string text;
  std::size_t number = 0;
  for (const auto& move : evidence.moves) {
    ++number;
    if (move.axis != Move::Axis::zoom || move.cut()) continue;
    const auto feather = answers::zoomFeather(plan, move);
    if (feather[0] <= 0 && feather[1] <= 0) continue;
    text += "feather " + std::to_string(number) + ": " + secondsText(feather[0]) + " s in, " + secondsText(feather[1]) +
            " s out\n";
  }
  return text;
}

}  // namespace

std::string pullsText(const plan::Plan& plan, const Evidence& evidence) {
  std::string text = movesTable(plan, evidence).text();
  for (const auto& unmet : evidence.unmet) text += "unmet " + spanText(unmet.span) + ": " + unmet.reason + "\n";
  std::size_t number = 0;
  for (const auto& move : evidence.moves) {
    ++number;
    if (move.exposed && move.exposed->worst > 1 && !pulls::hidesInFlow(move.flowShare))
      text += "shows " + std::to_string(number) +
              (move.cut() ? " at once" : " for " + secondsText(move.exposed->seconds) + " s") +
              (move.better ? ", would hide in " + spanText(move.better->span) + ": " + move.betterCover : "") + "\n";
  }
  return text + ringText(plan, evidence) + feathersText(plan, evidence) + hotText(plan, evidence);
}

std::string noGroundText(const answers::Take& take, geometry::Point pos, double height) {
  const auto none = answers::noGroundAt(take, pos, height);
  if (!none) return {};
  return none->id.empty() ? "outside of everything drawn" : "inside " + nameOf(take.plan(), none->id);
}

namespace {

std::string closedText(const plan::Plan& plan, const plan::Area& area) {
  const std::string name = nameOf(plan, area.id.text()), use = answers::closedWord(area);
  return "to the crew: it touches " + name +
         (use == "hazard"    ? ", a hazard"
          : use == "keepOut" ? ", which is kept out of"
                             : ", an exit lane, in which nobody stands");
}

}  // namespace

std::string spotTakenText(const answers::Take& take, geometry::Point pos, double height, double t) {
  std::string text;
  for (const auto& taken : answers::takenOver(take, pos, height))
    if (taken.span.contains(t))
      text += "inside " + nameOf(take.plan(), taken.by) + " until " + fixed(taken.span.until, 1) + "; ";
  for (const auto* area : answers::closedAt(take.plan(), pos, take.plan().sightRules.radius))
    text += "closed " + closedText(take.plan(), *area) + "; ";
  return text;
}

std::string spotText(const answers::Take& take, geometry::Point pos, double height, const SightOf& sight,
                     const std::vector<PaneMirror>& panes) {
  const plan::Plan& plan = take.plan();
  std::string text =
      "a person of " + lengthText(plan, height) + " at " + fixed(pos.x, 2) + ", " + fixed(pos.y, 2) + "\n";
  if (const std::string none = noGroundText(take, pos, height); !none.empty())
    text += "nobody can stand there: it is " + none + "\n";
  for (const auto& taken : answers::takenOver(take, pos, height))
    text += "taken  " + spanText(taken.span) + "  inside " + nameOf(plan, taken.by) + "\n";
  for (const auto* area : answers::closedAt(plan, pos, plan.sightRules.radius))
    text += "closed " + closedText(plan, *area) + "\n";
  for (const auto& seen : sight.seen) text += "seen   " + spanText(seen.span) + "  " + howText(plan, seen) + "\n";
  for (const auto& pane : panes)
    text += "shows  " + spanText(pane.span) + "  in " + nameOf(plan, pane.pane) + ", which by the light returns " +
            fixed(pane.returned, 1) + " of the brightness behind it\n";
  for (const auto& clear : sight.clear)
    text += "clear  " + spanText(clear.span) + "  " + marginText(clear.marginDeg) + "\n";
  if (!panes.empty()) text += "clear is told without that glass\n";
  if (sight.clear.empty())
    text += "never clear, with " + secondsText(plan.sightRules.early) + " s before and " +
            secondsText(plan.sightRules.late) + " s after every sight\n";
  return text;
}

std::string spotNowText(const plan::Plan& plan, const SightOf& sight, double t) {
  const auto next = std::ranges::find_if(sight.seen, [t](const SeenSpan& seen) { return seen.span.until >= t; });
  if (next != sight.seen.end() && next->span.from <= t)
    return "in frame until " + fixed(next->span.until, 1) + ", " + howText(plan, *next);
  const std::string until = next == sight.seen.end()
                                ? "not seen again"
                                : "seen in " + secondsText(next->span.from - t) + " s, " + howText(plan, *next);
  const auto clear = std::ranges::find_if(sight.clear, [t](const ClearSpan& span) { return span.span.contains(t); });
  if (clear == sight.clear.end()) return "too near a sight; " + until;
  return "clear until " + fixed(clear->span.until, 1) + ", " + marginText(clear->marginDeg) + "; " + until;
}

std::string windowsText(const plan::Plan& plan, const Evidence& evidence) {
  if (!evidence.sightKnown) return "sight unknown: the plan has no lens\n";
  TextTable table({"crew, gear", "seen", "how"});
  for (const auto& sight : evidence.sight) {
    const std::string name = sight.id == "camera" ? "the rig" : nameOf(plan, sight.id);
    if (sight.seen.empty()) table.add({name, "never", ""});
    for (const auto& seen : sight.seen) table.add({name, spanText(seen.span), howText(plan, seen)});
  }
  return table.text();
}

namespace {

std::string routeText(const RouteOf& route) {
  std::string text = route.id + "  " + route.role + "\n";
  if (route.carried) return text + "  goes along with the camera\n";
  if (!route.drawn && !route.sought) return text + "  no route drawn, and none looked for\n";
  if (route.sought && !route.why.empty()) text += "  NO ROUTE\n" + indentedLines(route.why);
  if (route.sought && route.why.empty()) text += "  found, not drawn; " + routeRoom(route) + "\n";
  for (const auto& note : route.notes) text += indentedLines(note);
  for (const auto& line : routeLines(route)) {
    text += "  " + line.words + "\n";
    if (!line.way.empty()) text += indentedLines("by way of " + line.way);
  }
  return text;
}

}  // namespace

std::string routesText(const std::vector<RouteOf>& routes) {
  std::string text;
  for (const auto& route : routes) text += routeText(route);
  return text;
}

}  // namespace wend::sheets
