// Sheets for those who turn the lens and those who light: focus and light.
#include <algorithm>
#include <cmath>

#include "core/answers/lens_work.h"
#include "core/answers/light_window.h"
#include "core/base/text.h"
#include "core/light/colour.h"
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
    table.add({std::to_string(number), move.on.empty() ? "unknown" : nameOf(plan, move.on),
               valueText(plan, move.axis, move.valueBefore), valueText(plan, move.axis, move.valueAfter),
               secondsText(move.from), callByText(move), secondsText(move.until - move.from),
               sharpBy(plan, end.focus, end.focus.setBand.near), sharpBy(plan, end.focus, end.focus.setBand.far),
               end.focus.warmth ? heatWord(*end.focus.warmth) : "unknown", triggerText(move.beat, move.plus),
               pullerStands(plan, start)});
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

TextTable otherMoves(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", "axis", ">from", ">to", ">at", ">over", ">peak", "trigger", "~cover"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus) continue;
    table.add({std::to_string(number), wordOf(move.axis), valueText(plan, move.axis, move.valueBefore),
               valueText(plan, move.axis, move.valueAfter), secondsText(move.from), secondsText(move.until - move.from),
               rateText(move), triggerText(move.beat, move.plus), move.cover.empty() ? "none" : move.cover});
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

struct Cue {
  double at = 0;
  std::vector<std::string> cells;
};

std::string percent(double share) {
  return fixed(100 * share, 0) + " %";
}

class CueList {
 public:
  explicit CueList(const plan::Plan& plan) : plan_(plan) {}

  void add(const plan::KeyTime& time, const std::string& cue, const std::string& what, const std::string& to,
           const std::string& by) {
    const double at = plan::secondsOf(plan_, time.at);
    const std::string trigger = time.at.beat.empty() ? secondsText(at) : triggerText(time.at.beat, time.at.seconds);
    cues_.push_back({at,
                     {secondsText(at), secondsText(time.over), cue.empty() ? "\u2013" : cue, what, to, trigger,
                      by.empty() ? "unknown" : nameOf(plan_, by)}});
  }

  TextTable table() {
    std::stable_sort(cues_.begin(), cues_.end(), [](const Cue& a, const Cue& b) { return a.at < b.at; });
    TextTable table({">at", ">over", "cue", "what", ">to", "trigger", "by"});
    for (auto& cue : cues_) table.add(std::move(cue.cells));
    return table;
  }

 private:
  const plan::Plan& plan_;
  std::vector<Cue> cues_;
};

TextTable lightCues(const plan::Plan& plan) {
  CueList cues(plan);
  for (const auto& fixture : plan.fixtures)
    for (const auto& key : fixture.level) cues.add(key.time, key.name, fixture.name, percent(key.share), key.by);
  for (const auto& area : plan.set.areas)
    for (const auto& state : area.states) {
      double most = 0;
      for (const auto& reading : state.readings) most = std::max(most, reading.stop);
      cues.add(state.time, state.name, area.name, most > 0 ? units::stopText(most) : "off", state.by);
    }
  for (const auto& opening : plan.set.openings)
    for (const auto& key : opening.open) cues.add(key.time, key.name, opening.name, percent(key.share), key.by);
  return cues.table();
}

TextTable faceOffsets(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"beat", ">at", "who", "in frame", ">needs", ">set", ">face", ">brightest", ">darkest"});
  for (const auto& beat : plan.beats) {
    const auto instant = answers::instantAt(*answers.take, std::min(beat.time, answers.take->length()));
    const auto& behind = instant.background;
    for (const auto& at : instant.performers) {
      if (!at.present || at.inFrame == optics::Showing::out) continue;
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

/// From when until when the light is the plan's, and how many goes that makes.
void addHours(const Answers& answers, TextTable& table) {
  const auto window = answers::lightWindow(*answers.take);
  if (!window || window->empty()) return;
  const plan::Clock& clock = answers.take->plan().clock;
  for (const auto& span : *window) {
    std::string goes;
    if (clock.cycleMinutes)
      goes = ", " + std::to_string(light::goesFrom(span, *clock.cycleMinutes * 60)) + " goes, one every " +
             fixed(*clock.cycleMinutes, 0) + " minutes";
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

void addColours(const plan::Plan& plan, TextTable& table) {
  // Less than this few people see between two shots, let alone in one. Common practice, no source.
  constexpr double kLeastMired = 20;
  std::vector<std::optional<double>> kelvin;
  std::vector<std::string> names;
  for (const auto& area : plan.set.areas)
    for (const auto& state : area.states) {
      if (!state.kelvin) continue;
      kelvin.push_back(state.kelvin);
      names.push_back(area.name + (state.name.empty() ? "" : ", " + state.name));
    }
  for (const auto& jump : light::colourJumps(kelvin, kLeastMired))
    table.add({"Colour jumps", names[jump.before] + " (" + fixed(*kelvin[jump.before], 0) + " K) to " +
                                   names[jump.after] + " (" + fixed(*kelvin[jump.after], 0) +
                                   " K): " + fixed(std::abs(jump.mired), 0) + " mired " +
                                   (jump.mired > 0 ? "warmer" : "cooler")});
}

TextTable hoursAndColours(const Answers& answers) {
  TextTable table({"what", "~figure"});
  addHours(answers, table);
  addMains(answers.take->plan(), table);
  addColours(answers.take->plan(), table);
  return table;
}

void add(std::vector<SheetPart> parts, DeptSheet& sheet) {
  for (auto& part : parts) sheet.parts.push_back(std::move(part));
}

}  // namespace

DeptSheet focusSheet(const Answers& answers) {
  DeptSheet sheet{"focus",
                  "Focus pull sheet",
                  {{"Pulls; the band and its warmth are those on arrival", focusMoves(answers)},
                   {"Iris and zoom", otherMoves(answers)}}};
  add(hidingParts(answers), sheet);
  if (TextTable eased = easedMoves(answers); !eased.empty())
    sheet.parts.push_back({"Seconds over which pulls may start and end softly, half of it outside", std::move(eased)});
  sheet.parts.push_back({"The focus can be left alone", restStretches(answers)});
  sheet.parts.push_back({"Hot and unmet stretches", hotStretches(answers)});
  add(sharpParts(answers), sheet);
  add(handsParts(answers), sheet);
  if (TextTable marks = witnessMarks(answers); !marks.empty())
    sheet.parts.push_back({"Marks on the ring nearest to each pull's ends", std::move(marks)});
  return sheet;
}

DeptSheet lightSheet(const Answers& answers) {
  DeptSheet sheet{"light",
                  "Light cue sheet",
                  {{"Cues of lamps, lit areas (their highest reading) and openings", lightCues(answers.take->plan())},
                   {"Faces in frame at each beat, and the background's tenths, in stops against the set stop",
                    faceOffsets(answers)},
                   {"Iris and zoom", otherMoves(answers)}}};
  add(hidingParts(answers), sheet);
  add(coverParts(answers), sheet);
  sheet.parts.push_back({"Hours, mains and colours", hoursAndColours(answers)});
  return sheet;
}

}  // namespace wend::sheets
