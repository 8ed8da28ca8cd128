// Sheets for those who turn the lens and those who light: focus and light.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/answers/colour_at.h"
#include "core/answers/lens_work.h"
#include "core/answers/light_window.h"
#include "core/base/text.h"
#include "core/light/flicker.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;
using units::secondsText;

namespace {

std::string pullerStands(const plan::Plan& plan, const Instant& instant) {
  const std::string who = answers::holderOf(plan, Move::Axis::focus, instant.time);
  for (const auto& at : instant.crew)
    if (at.id == who && at.present)
      return who + " " + (at.shelter.empty() ? placeText(at.pos) : at.shelter) + (at.walking ? ", walking" : "");
  return who.empty() ? "unknown" : who + " unknown";
}

/// How much is sharp on that side of where the lens is set.
Cell sharpBy(const plan::Plan& plan, const std::string& name, const FocusAt& focus, double limit) {
  return metresCell(plan, name, focus.known ? std::optional(std::abs(limit - focus.setDistance)) : std::nullopt);
}

/// From the cue to the first turn of the ring, seconds. Common practice, no source.
constexpr double kReaction = 0.25;

/// When a hand has to be told at the latest: the latest start less the time it takes to begin.
Cell callBy(const Move& move) {
  return secondsCell("callBy", move.latest ? std::optional(*move.latest - kReaction) : std::nullopt, "\u2013");
}

TextTable focusMoves(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table(
      {">#", "~who", ">from", ">to", ">at", ">call by", ">over", ">band -", ">+", "warmth", "trigger", "~puller at"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis != Move::Axis::focus) continue;
    const auto start = answers::instantAt(*answers.take, move.from);
    const auto end = answers::instantAt(*answers.take, move.until);
    table.add({count("move", number), move.on.empty() ? "unknown" : subjectName(plan, move.on),
               valueCell(plan, "from", move.axis, move.valueBefore), valueCell(plan, "to", move.axis, move.valueAfter),
               secondsCell("at", move.from), callBy(move), secondsCell("over", move.until - move.from),
               sharpBy(plan, "bandBefore", end.focus, end.focus.setBand.near),
               sharpBy(plan, "bandBehind", end.focus, end.focus.setBand.far),
               figure(end.focus.warmth ? heatWord(*end.focus.warmth) : "unknown", "bandOverWobble", end.focus.warmth),
               triggerCell(move), pullerStands(plan, start)});
  }
  return table;
}

/// Stop and focal length, under `name`.
Cell setAt(const Answers& answers, const std::string& name, double t) {
  const Instant instant = answers::sampleAt(*answers.take, t);
  Cell cell = stopCell(name, instant.iris.set);
  if (!instant.lens) return cell;
  cell.words += ", " + fixed(instant.lens->focal, 0) + " mm";
  cell.figures.push_back({name + "Mm", instant.lens->focal});
  return cell;
}

/// What the band hangs on, which may change under the hand.
TextTable opticsOfPulls(const Answers& answers) {
  TextTable table({">#", ">at the start", ">at the end"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus)
      table.add({count("move", number), setAt(answers, "start", move.from), setAt(answers, "end", move.until)});
  }
  return table;
}

/// How softly the slack lets planned pulls start and end, seconds.
TextTable easedMoves(const Answers& answers) {
  TextTable table({">#", ">start", ">end"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus && move.ease)
      table.add({count("move", number), figure(fixed(move.ease->front(), 1), "startSeconds", move.ease->front()),
                 figure(fixed(move.ease->back(), 1), "endSeconds", move.ease->back())});
  }
  return table;
}

TextTable otherMoves(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", "axis", ">from", ">to", ">at", ">over", ">peak", "trigger", "~cover"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus) continue;
    table.add({count("move", number), wordOf(move.axis), valueCell(plan, "from", move.axis, move.valueBefore),
               valueCell(plan, "to", move.axis, move.valueAfter), secondsCell("at", move.from),
               secondsCell("over", move.until - move.from), peakCell(move), triggerCell(move),
               move.cover.empty() ? "none" : coverText(move)});
  }
  return table;
}

TextTable restStretches(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", ">set and leave at", ">sharp from", ">to", ">hyperfocal"});
  for (const auto& rest : answers.evidence->rests)
    table.add({spanCell(rest.span), metresCell(plan, "setting", rest.setting), metresCell(plan, "near", rest.near),
               figure("\u221e", "farMetres", kInfinity), metresCell(plan, "hyperfocal", rest.hyperfocal)});
  return table;
}

TextTable hotStretches(const Answers& answers) {
  TextTable table({"seconds", "~what"});
  for (const auto& snag : *answers.snags)
    if (snag.rule == "hot-focus" && !snag.accepted) table.add({spanCell({snag.from, snag.until}), snag.text});
  for (const auto& unmet : answers.evidence->unmet) table.add({spanCell(unmet.span), unmet.reason});
  return table;
}

std::string percent(double share) {
  return fixed(100 * share, 0) + " %";
}

Cell shareCell(double share) {
  return figure(percent(share), "toShare", share);
}

Cell highestReading(const plan::AreaState& state) {
  double most = 0;
  for (const auto& reading : state.readings) most = std::max(most, reading.stop);
  Cell cell = most > 0 ? stopCell("to", most) : figure("off", "toTStop", std::nullopt);
  if (!state.kelvin || most <= 0) return cell;
  cell.words += ", " + kelvinText(state.kelvin);
  cell.figures.push_back({"toKelvin", state.kelvin});
  return cell;
}

/// What lamps, lit areas and openings are from a time on.
struct Cue {
  plan::KeyTime time;
  std::string name, what;
  Cell to;
  std::string by;
};

/// Lamps first, then areas, then openings, each in the plan's order.
std::vector<Cue> cuesOf(const plan::Plan& plan) {
  std::vector<Cue> cues;
  for (const auto& fixture : plan.fixtures)
    for (const auto& key : fixture.level)
      cues.push_back({key.time, key.name, nameOf(plan, fixture.id.text()), shareCell(key.share), key.by});
  for (const auto& area : plan.set.areas)
    for (const auto& state : area.states)
      cues.push_back({state.time, state.name, nameOf(plan, area.id.text()), highestReading(state), state.by});
  for (const auto& opening : plan.set.openings)
    for (const auto& key : opening.open)
      cues.push_back({key.time, key.name, nameOf(plan, opening.id.text()), shareCell(key.share), key.by});
  return cues;
}

bool atStart(const plan::Plan& plan, const Cue& cue) {
  return plan::secondsOf(plan, cue.time.at) <= 0 && cue.time.over == 0;
}

/// With the colour that the clock gives it then, where some of its readings tell one.
Cell byClockCell(const plan::Plan& plan, const plan::Area& area) {
  const auto kelvin = answers::clockColour(plan, area, 0);
  if (!kelvin) return "by the clock";
  return figure("by the clock, " + kelvinText(kelvin), "toKelvin", kelvin);
}

TextTable lightAtStart(const plan::Plan& plan) {
  TextTable table({"what", ">is", "why"});
  for (const Cue& cue : cuesOf(plan))
    if (atStart(plan, cue)) table.add({cue.what, cue.to, cue.name.empty() ? "\u2013" : cue.name});
  for (const auto& area : plan.set.areas)
    if (!area.byClock.empty()) table.add({nameOf(plan, area.id.text()), byClockCell(plan, area), "daylight"});
  return table;
}

TextTable lightCues(const plan::Plan& plan) {
  std::vector<Cue> cues = cuesOf(plan);
  std::erase_if(cues, [&](const Cue& cue) { return atStart(plan, cue); });
  std::stable_sort(cues.begin(), cues.end(), [&](const Cue& a, const Cue& b) {
    return plan::secondsOf(plan, a.time.at) < plan::secondsOf(plan, b.time.at);
  });
  TextTable table({">at", ">over", "cue", "what", ">to", "trigger", "by"});
  for (const Cue& cue : cues) {
    const double at = plan::secondsOf(plan, cue.time.at);
    const bool onBeat = !cue.time.at.beat.empty();
    table.add({secondsCell("at", at), secondsCell("over", cue.time.over), cue.name.empty() ? "\u2013" : cue.name,
               cue.what, cue.to, onBeat ? triggerText(cue.time.at.beat, cue.time.at.seconds) : secondsText(at),
               cue.by.empty() ? "unknown" : nameOf(plan, cue.by)});
  }
  return table;
}

TextTable faceOffsets(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"beat", ">at", "who", "in frame", ">needs", ">set", ">face", ">brightest", ">darkest"});
  for (const auto& beat : plan.beats) {
    const auto instant = answers::instantAt(*answers.take, std::min(beat.time, answers.take->length()));
    const auto& behind = instant.background;
    for (const auto& at : instant.performers) {
      if (!optics::shows(at.inFrame)) continue;
      table.add({beatText(plan, beat.id.text(), 0), secondsCell("at", beat.time), nameOf(plan, at.id),
                 wordOf(at.inFrame), stopCell("needs", at.needed), stopCell("set", instant.iris.set),
                 stopsCell("face", at.offset),
                 stopsCell("brightest", behind ? std::optional(behind->brightest) : std::nullopt),
                 stopsCell("darkest", behind ? std::optional(behind->darkest) : std::nullopt)});
    }
  }
  return table;
}

/// Which marks on the ring a pull starts and ends at, where the lens has any.
TextTable witnessMarks(const Answers& answers) {
  TextTable table({">#", ">from", "mark", ">off it", ">to", "mark ", ">off it "});
  std::vector<plan::FocusMark> marks;
  if (answers.take->plan().lens) marks = answers.take->plan().lens->focusMarks;
  std::erase_if(marks, [](const plan::FocusMark& mark) { return mark.witness.empty(); });
  if (marks.empty()) return table;
  const auto nearest = [&](double degrees) {
    return *std::min_element(marks.begin(), marks.end(), [&](const auto& a, const auto& b) {
      return std::abs(a.deg - degrees) < std::abs(b.deg - degrees);
    });
  };
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis != Move::Axis::focus) continue;
    std::vector<Cell> cells{count("move", number)};
    for (const auto& [name, t] : {std::pair{"from", move.from}, std::pair{"to", move.until}}) {
      const double degrees = answers.take->lens().barrelAt(t);
      const plan::FocusMark mark = nearest(degrees);
      cells.push_back(degreesCell(name, degrees));
      cells.push_back(mark.witness);
      cells.push_back(degreesCell(name + std::string("OffMark"), degrees - mark.deg));
    }
    table.add(std::move(cells));
  }
  return table;
}

std::string goesText(int goes, double cycleMinutes) {
  const std::string cycle = fixed(cycleMinutes, 0) + " minutes";
  return goes == 1 ? ", one take at a cycle of " + cycle : ", " + std::to_string(goes) + " takes, one every " + cycle;
}

/// From when until when the light is the plan's, and how many goes that makes.
void addHours(const Answers& answers, TextTable& table) {
  const auto window = answers::lightWindow(*answers.take);
  if (!window) return;
  if (window->empty()) table.add({"The take may start", "unknown: the light is not known even at the plan's own hour"});
  const plan::Clock& clock = answers.take->plan().clock;
  for (const auto& span : *window) {
    std::optional<int> takes;
    if (clock.cycleMinutes) takes = light::goesFrom(span, *clock.cycleMinutes * 60);
    const std::string goes = takes ? goesText(*takes, *clock.cycleMinutes) : "";
    Cell cell("from " + units::timeOfDayText(std::round(span.from)) + " until " +
                  units::timeOfDayText(std::round(span.until)) + goes,
              {{"startFromClockSeconds", span.from}, {"startUntilClockSeconds", span.until}});
    if (takes) cell.figures.push_back({"takes", *takes});
    table.add({"The take may start", std::move(cell)});
  }
}

/// The shutters at which every frame sees as many pulses, in degrees and as a time, "172.8\u00b0 (1/50 s)".
Cell steadyCell(const std::vector<light::SteadyShutter>& steady, int mains) {
  Cell cell("");
  for (const auto& one : steady) {
    const int common = std::gcd(one.pulses, 2 * mains);
    cell.words += (cell.words.empty() ? "" : ", ") + fixed(one.degrees, 1) + "\u00b0 (" +
                  std::to_string(one.pulses / common) + "/" + std::to_string(2 * mains / common) + " s)";
    cell.figures.push_back({"pulses" + std::to_string(one.pulses) + "Degrees", one.degrees});
  }
  return cell;
}

void addMains(const plan::Plan& plan, TextTable& table) {
  if (!plan.clock.mainsHz) return;
  const double rate = plan.clock.rate(), shutter = plan.camera.shutterDeg;
  const std::string mains = std::to_string(*plan.clock.mainsHz) + " Hz";
  if (light::inStep(rate, *plan.clock.mainsHz))
    return table.add({"Lamps on " + mains, "in step with the frames: any shutter is steady"});
  const auto steady = light::steadyShutters(rate, *plan.clock.mainsHz);
  const double ripple = light::rippleStops(shutter, rate, *plan.clock.mainsHz);
  std::string text =
      fixed(shutter, 1) + "\u00b0 lets a lamp that goes out between pulses vary by " + fixed(ripple, 2) + " stop";
  if (steady.empty()) return table.add({"Lamps on " + mains, figure(text, "rippleStops", ripple)});
  const double nearest = light::nearestSteady(shutter, steady);
  text += "; nearest steady " + fixed(nearest, 1) + "\u00b0";
  table.add({"Lamps on " + mains, Cell(text, {{"rippleStops", ripple}, {"nearestSteadyDegrees", nearest}})});
  table.add({"Steady shutters", steadyCell(steady, *plan.clock.mainsHz)});
}

TextTable hoursAndMains(const Answers& answers) {
  TextTable table({"what", "~figure"});
  addHours(answers, table);
  addMains(answers.take->plan(), table);
  return table;
}

void add(std::vector<SheetPart> parts, DeptSheet& sheet) {
  for (auto& part : parts) sheet.parts.push_back(std::move(part));
}

}  // namespace

DeptSheet focusSheet(const Answers& answers) {
  DeptSheet sheet{"focus", "Focus pull sheet", setupParts(answers)};
  sheet.parts.push_back(
      {"Pulls, in steps of a tape; on arrival the band about where the ring is set and the warmth of who\nit is on; "
       "call "
       "by: " +
           fixed(kReaction, 2) + " s before the latest start",
       focusMoves(answers)});
  if (TextTable optics = opticsOfPulls(answers); !optics.empty())
    sheet.parts.push_back({"Stop and focal length as each pull starts and ends", std::move(optics)});
  add(blindParts(answers), sheet);
  add(distanceParts(answers), sheet);
  sheet.parts.push_back({"Iris, zoom and density", otherMoves(answers)});
  add(ringParts(answers), sheet);
  add(hidingParts(answers), sheet);
  add(balanceParts(answers), sheet);
  if (TextTable eased = easedMoves(answers); !eased.empty())
    sheet.parts.push_back(
        {"How softly pulls may go: seconds to get up to speed and to rest, half of each outside its time",
         std::move(eased)});
  sheet.parts.push_back({"The focus can be left alone", restStretches(answers)});
  sheet.parts.push_back({"Hot and unmet stretches", hotStretches(answers)});
  add(hotParts(answers), sheet);
  add(sharpParts(answers), sheet);
  add(handsParts(answers), sheet);
  if (TextTable marks = witnessMarks(answers); !marks.empty())
    sheet.parts.push_back({"Marks on the ring nearest to each pull's ends", std::move(marks)});
  return sheet;
}

DeptSheet lightSheet(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  DeptSheet sheet{"light", "Light cue sheet", setupParts(answers)};
  sheet.parts.push_back(
      {"As the take starts: lamps, lit areas (their highest reading) and openings", lightAtStart(plan)});
  add(lampParts(answers), sheet);
  sheet.parts.push_back({"Cues", lightCues(plan)});
  sheet.parts.push_back({"Faces that show at each beat, and the background's tenths, in stops against the set stop",
                         faceOffsets(answers)});
  sheet.parts.push_back({"Iris, zoom and density", otherMoves(answers)});
  add(hidingParts(answers), sheet);
  add(coverParts(answers), sheet);
  if (TextTable hours = hoursAndMains(answers); !hours.empty())
    sheet.parts.push_back(
        {"Hours and mains; the hours keep every face in daylight within a third of a stop of what this plan\ngives it",
         std::move(hours)});
  add(colourParts(answers), sheet);
  return sheet;
}

}  // namespace wend::sheets
