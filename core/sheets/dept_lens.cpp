// Sheets for those who turn the lens and those who light: focus and light.
#include <algorithm>
#include <cmath>

#include "core/answers/lens_work.h"
#include "core/answers/light_window.h"
#include "core/base/text.h"
#include "core/light/flicker.h"
#include "core/pulls/zoom_cover.h"
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
std::string sharpBy(const plan::Plan& plan, const FocusAt& focus, double limit) {
  if (!focus.known) return "unknown";
  return std::isfinite(limit) ? lengthText(plan, std::abs(limit - focus.setDistance)) : "\u221e";
}

/// When a hand has to be told at the latest: the latest start less the time it takes to begin.
std::string callByText(const Move& move) {
  // From the cue to the first turn of the ring a quarter of a second: common practice, no source.
  constexpr double kReaction = 0.25;
  return move.latest ? secondsText(*move.latest - kReaction) : "\u2013";
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
    table.add({std::to_string(number), move.on.empty() ? "unknown" : subjectName(plan, move.on),
               valueText(plan, move.axis, move.valueBefore), valueText(plan, move.axis, move.valueAfter),
               secondsText(move.from), callByText(move), secondsText(move.until - move.from),
               sharpBy(plan, end.focus, end.focus.setBand.near), sharpBy(plan, end.focus, end.focus.setBand.far),
               end.focus.warmth ? heatWord(*end.focus.warmth) : "unknown", triggerText(move.beat, move.plus),
               pullerStands(plan, start)});
  }
  return table;
}

std::string setAt(const Answers& answers, double t) {
  const Instant instant = answers::sampleAt(*answers.take, t);
  return units::stopText(instant.iris.set) + (instant.lens ? ", " + fixed(instant.lens->focal, 0) + " mm" : "");
}

/// What the band hangs on, which may change under the hand.
TextTable opticsOfPulls(const Answers& answers) {
  TextTable table({">#", ">at the start", ">at the end"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus)
      table.add({std::to_string(number), setAt(answers, move.from), setAt(answers, move.until)});
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
      table.add({std::to_string(number), fixed(move.ease->front(), 1), fixed(move.ease->back(), 1)});
  }
  return table;
}

/// What is over it, and whether that is enough: the table below says how fast it may be.
std::string coverText(const Move& move) {
  if (move.cover.empty()) return "none";
  const bool shows = move.exposed && move.exposed->worst > 1 && !pulls::hidesInFlow(move.flowShare);
  return move.cover + (shows ? " for a part" : "");
}

TextTable otherMoves(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", "axis", ">from", ">to", ">at", ">over", ">peak", "trigger", "~cover"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus) continue;
    table.add({std::to_string(number), wordOf(move.axis), valueText(plan, move.axis, move.valueBefore),
               valueText(plan, move.axis, move.valueAfter), secondsText(move.from), secondsText(move.until - move.from),
               rateText(move), triggerText(move.beat, move.plus), coverText(move)});
  }
  return table;
}

TextTable restStretches(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", ">set and leave at", ">sharp from", ">to", ">hyperfocal"});
  for (const auto& rest : answers.evidence->rests)
    table.add({spanText(rest.span), lengthText(plan, rest.setting), lengthText(plan, rest.near), "\u221e",
               lengthText(plan, rest.hyperfocal)});
  return table;
}

TextTable hotStretches(const Answers& answers) {
  TextTable table({"seconds", "~what"});
  for (const auto& snag : *answers.snags)
    if (snag.rule == "hot-focus" && !snag.accepted) table.add({spanText({snag.from, snag.until}), snag.text});
  for (const auto& unmet : answers.evidence->unmet) table.add({spanText(unmet.span), unmet.reason});
  return table;
}

std::string percent(double share) {
  return fixed(100 * share, 0) + " %";
}

std::string highestReading(const plan::AreaState& state) {
  double most = 0;
  for (const auto& reading : state.readings) most = std::max(most, reading.stop);
  return most > 0 ? units::stopText(most) : "off";
}

/// What lamps, lit areas and openings are from a time on.
struct Cue {
  plan::KeyTime time;
  std::string name, what, to, by;
};

/// Lamps first, then areas, then openings, each in the plan's order.
std::vector<Cue> cuesOf(const plan::Plan& plan) {
  std::vector<Cue> cues;
  for (const auto& fixture : plan.fixtures)
    for (const auto& key : fixture.level)
      cues.push_back({key.time, key.name, nameOf(plan, fixture.id.text()), percent(key.share), key.by});
  for (const auto& area : plan.set.areas)
    for (const auto& state : area.states)
      cues.push_back({state.time, state.name, nameOf(plan, area.id.text()), highestReading(state), state.by});
  for (const auto& opening : plan.set.openings)
    for (const auto& key : opening.open)
      cues.push_back({key.time, key.name, nameOf(plan, opening.id.text()), percent(key.share), key.by});
  return cues;
}

bool atStart(const plan::Plan& plan, const Cue& cue) {
  return plan::secondsOf(plan, cue.time.at) <= 0 && cue.time.over == 0;
}

TextTable lightAtStart(const plan::Plan& plan) {
  TextTable table({"what", ">is", "why"});
  for (const Cue& cue : cuesOf(plan))
    if (atStart(plan, cue)) table.add({cue.what, cue.to, cue.name.empty() ? "\u2013" : cue.name});
  for (const auto& area : plan.set.areas)
    if (!area.byClock.empty()) table.add({nameOf(plan, area.id.text()), "by the clock", "daylight"});
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
    const std::string at = secondsText(plan::secondsOf(plan, cue.time.at));
    table.add({at, secondsText(cue.time.over), cue.name.empty() ? "\u2013" : cue.name, cue.what, cue.to,
               cue.time.at.beat.empty() ? at : triggerText(cue.time.at.beat, cue.time.at.seconds),
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
      if (at.inFrame != optics::Showing::whole && at.inFrame != optics::Showing::part) continue;
      table.add({beatText(plan, beat.id.text(), 0), secondsText(beat.time), nameOf(plan, at.id), wordOf(at.inFrame),
                 stopOr(at.needed), units::stopText(instant.iris.set), signedStops(at.offset),
                 behind ? units::stopsText(behind->brightest) : "unknown",
                 behind ? units::stopsText(behind->darkest) : "unknown"});
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
    std::vector<std::string> cells{std::to_string(number)};
    for (const double degrees : {answers.take->lens().barrelAt(move.from), answers.take->lens().barrelAt(move.until)}) {
      const plan::FocusMark mark = nearest(degrees);
      for (auto& cell : {fixed(degrees, 0) + "\u00b0", mark.witness, fixed(degrees - mark.deg, 0) + "\u00b0"})
        cells.push_back(cell);
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
    std::string goes;
    if (clock.cycleMinutes) goes = goesText(light::goesFrom(span, *clock.cycleMinutes * 60), *clock.cycleMinutes);
    table.add({"The take may start", "from " + units::timeOfDayText(std::round(span.from)) + " until " +
                                         units::timeOfDayText(std::round(span.until)) + goes});
  }
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
  if (!steady.empty()) text += "; steady at " + fixed(light::nearestSteady(shutter, steady), 1) + "\u00b0";
  table.add({"Lamps on " + mains, text});
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
      {"Pulls, in steps of a tape; band and warmth on arrival; call by: the latest word in time", focusMoves(answers)});
  if (TextTable optics = opticsOfPulls(answers); !optics.empty())
    sheet.parts.push_back({"Stop and focal length as each pull starts and ends", std::move(optics)});
  sheet.parts.push_back({"Iris, zoom and density", otherMoves(answers)});
  add(ringParts(answers), sheet);
  add(hidingParts(answers), sheet);
  add(balanceParts(answers), sheet);
  if (TextTable eased = easedMoves(answers); !eased.empty())
    sheet.parts.push_back(
        {"How softly pulls may go: seconds to get up to speed and to rest, half of them outside the times above",
         std::move(eased)});
  sheet.parts.push_back({"The focus can be left alone", restStretches(answers)});
  sheet.parts.push_back({"Hot and unmet stretches", hotStretches(answers)});
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
        {"Hours and mains; the hours keep every face that is followed within a third of a stop", std::move(hours)});
  add(colourParts(answers), sheet);
  return sheet;
}

}  // namespace wend::sheets
