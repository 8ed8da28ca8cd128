// For those who turn the lens: does a change hide, who is sharp, what two hands can do, when things change hands.
#include <algorithm>
#include <cmath>

#include "core/answers/dimmers.h"
#include "core/answers/lens_work.h"
#include "core/answers/move_cover.h"
#include "core/answers/who_is_sharp.h"
#include "core/answers/zoom_feather.h"
#include "core/base/text.h"
#include "core/optics/depth_of_field.h"
#include "core/optics/distance.h"
#include "core/plan/rig_balance.h"
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
using pulls::Hidden;
using units::secondsText;

namespace {

/// A stop halves the light, optical density is the logarithm to base 10.
const double kOpticalPerStop = std::log10(2.0);

/// "1.0 (optical density 0.3)".
std::string densityText(double stops) {
  return fixed(stops, 1) + " (optical density " + fixed(stops * kOpticalPerStop, 1) + ")";
}

std::string limitText(Move::Axis axis, double rate) {
  if (std::isinf(rate)) return "anything";
  if (rate <= 0) return "nothing";
  return axis == Move::Axis::zoom ? fixed(rate, 1) + " %/s" : fixed(rate, 2) + " stop/s";
}

std::string rateKey(const std::string& name, Move::Axis axis) {
  return name + (axis == Move::Axis::zoom ? "PercentPerSecond" : "StopsPerSecond");
}

Cell limitCell(const std::string& name, Move::Axis axis, double rate) {
  return figure(limitText(axis, rate), rateKey(name, axis), rate);
}

Cell worstCell(const Move& move) {
  return {limitText(move.axis, move.exposed->rate) + " at " + secondsText(move.exposed->at),
          {{rateKey("worst", move.axis), move.exposed->rate}, {"worstAtSeconds", move.exposed->at}}};
}

std::string verdictText(const Move& move) {
  if (!move.exposed) return "unknown";
  if (move.exposed->worst <= 1) return "hides";
  if (pulls::hidesInFlow(move.flowShare)) return "hides in the picture's flow";
  if (move.cut()) return "shows at once";
  return "shows for " + secondsText(move.exposed->seconds) + " s";
}

Cell betterCell(const Move& move) {
  if (!move.exposed || move.exposed->worst <= 1 || pulls::hidesInFlow(move.flowShare)) return "\u2013";
  if (!move.better) return "none found: 0.5 to 6 s between its neighbours, values as they are";
  const Span& span = move.better->span;
  return {spanText(span) + " " + move.betterCover, {{"fromSeconds", span.from}, {"untilSeconds", span.until}}};
}

/// The shot size of whoever the focus is on, of the first in frame of a split, "\u2013" for no person in frame.
std::string sizeAt(const answers::Take& take, double t) {
  const Instant instant = answers::sampleAt(take, t);
  if (instant.focus.on.empty()) return "\u2013";
  const auto on = base::split(instant.focus.on.back(), '+');
  for (const auto& at : instant.performers)
    if (std::find(on.begin(), on.end(), at.id) != on.end() && at.inFrame != optics::Showing::out) return at.size;
  return "\u2013";
}

TextTable hidingMoves(const Answers& answers) {
  TextTable table({">#", "axis", ">rate", ">hides up to", "so it", "~better"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus || !move.exposed) continue;
    table.add({count("move", number), wordOf(move.axis), worstCell(move),
               limitCell("allowed", move.axis, move.exposed->allowed),
               figure(verdictText(move), "shownSeconds", move.exposed->seconds), betterCell(move)});
  }
  return table;
}

TextTable zoomSizes(const Answers& answers) {
  TextTable table(
      {">#", ">from", ">to", "size before", "after", ">ratio", ">feather in", ">out", ">own share of the flow"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis != Move::Axis::zoom) continue;
    const double ratio = move.valueAfter / move.valueBefore;
    const auto feather = answers::zoomFeather(answers.take->plan(), move);
    table.add(
        {count("move", number), valueCell(answers.take->plan(), "from", move.axis, move.valueBefore),
         valueCell(answers.take->plan(), "to", move.axis, move.valueAfter), sizeAt(*answers.take, move.from),
         sizeAt(*answers.take, move.until), figure("\u00d7" + fixed(ratio, 2), "ratio", ratio),
         secondsCell("featherIn", feather[0]), secondsCell("featherOut", feather[1]),
         figure(move.flowShare ? fixed(100 * *move.flowShare, 0) + " %" : "unknown", "flowShare", move.flowShare)});
  }
  return table;
}

/// What is sharp with the focus where it is set on arrival, at one focal length and stop or another.
Cell sharpWith(const Answers& answers, const std::string& name, const Move& move, double value) {
  const plan::Plan& plan = answers.take->plan();
  const Instant end = answers::sampleAt(*answers.take, move.until);
  const auto cell = [&](const std::string& words, std::optional<double> near, std::optional<double> far) {
    return Cell(words, {{name + "NearMetres", near}, {name + "FarMetres", far}});
  };
  if (!end.lens || !end.focus.known) return cell("unknown", std::nullopt, std::nullopt);
  const bool zoom = move.axis == Move::Axis::zoom;
  const auto optics = answers::opticsOf(plan, zoom ? value : end.lens->focal, zoom ? end.iris.set : value);
  const double ahead = plan.lens->pupilAhead, set = optics::fromPupil(end.focus.setDistance, ahead);
  if (set <= optics.focal / 1000) return cell("unknown", std::nullopt, std::nullopt);
  const optics::Range sharp = optics::depthOfField(set, optics);
  const BandAt band{sharp.near + ahead, sharp.far + ahead};
  return cell(bandText(plan, band), band.near, band.far);
}

TextTable bandChanges(const Answers& answers) {
  TextTable table({">#", "axis", ">from", ">to", ">sharp before", ">and after, focus as on arrival"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis == Move::Axis::focus || move.axis == Move::Axis::density) continue;
    table.add(
        {count("move", number), wordOf(move.axis), valueCell(answers.take->plan(), "from", move.axis, move.valueBefore),
         valueCell(answers.take->plan(), "to", move.axis, move.valueAfter),
         sharpWith(answers, "before", move, move.valueBefore), sharpWith(answers, "after", move, move.valueAfter)});
  }
  return table;
}

std::string shiftText(double metres) {
  const std::string mm = fixed(1000 * std::abs(metres), 1) + " mm";
  return std::abs(metres) < 5e-5 ? "not" : mm + (metres > 0 ? " forward" : " back");
}

/// How far each zoom moves the balance of the rig. Empty where nobody measured it.
TextTable balanceMoves(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table(
      {">#", ">from", ">to", ">balance moves", ">to hold, N\u00b7m", ">best balanced at", ">then most off"});
  if (!plan.lens || plan.lens->balance.constant()) return table;
  const auto kg = plan::rigMass(plan.camera.rig);
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis != Move::Axis::zoom) continue;
    const double shift = plan.lens->balance.at(move.valueAfter) - plan.lens->balance.at(move.valueBefore);
    const auto [shortest, longest] = std::minmax(move.valueBefore, move.valueAfter);
    const auto best = plan::bestBalance(plan.lens->balance, shortest, longest);
    const auto hold = kg ? std::optional(plan::balanceMoment(*kg, std::abs(shift))) : std::nullopt;
    table.add({count("move", number), valueCell(plan, "from", move.axis, move.valueBefore),
               valueCell(plan, "to", move.axis, move.valueAfter), figure(shiftText(shift), "forwardMetres", shift),
               figure(hold ? fixed(*hold, 2) : "unknown", "holdNewtonMetres", hold),
               figure(fixed(best.focal, 0) + " mm", "bestFocalMm", best.focal),
               figure(fixed(1000 * best.most, 1) + " mm", "thenOffMetres", best.most)});
  }
  return table;
}

/// Which lamps of the plan would do instead, each alone; else all of them.
std::string lampsText(const Answers& answers, const Move& move) {
  const answers::LampsInstead lamps = answers::lampsInstead(*answers.take, move);
  if (!lamps.known) return "unknown";
  if (!lamps.anyLight) return "no: none lights this face";
  const auto percent = [](double share) { return fixed(100 * share, 0) + " %"; };
  std::string text;
  for (const auto& one : lamps.alone)
    text += (text.empty() ? "" : ", or ") + nameOf(answers.take->plan(), one.lamp) + " from " + percent(one.from) +
            " to " + percent(one.to);
  if (!text.empty()) return text;
  if (lamps.together) return "no one alone; all of the plan together to " + percent(*lamps.together);
  return "no: beyond the plan's lamps";
}

/// Density in front of the lens that would do instead: what goes in, or out again of what is in then. An iris that
/// opens further than that leaves none.
Cell densityInstead(const Answers& answers, const Move& move, double stops) {
  const double now = answers::sampleAt(*answers.take, move.from).iris.density, then = now + stops;
  if (then < 0)
    return figure(now > 0 ? "none: only " + densityText(now) + " is in" : "none: it has to open, and none is in",
                  "densityStops", std::nullopt);
  return {fixed(now, 1) + " to " + densityText(then),
          {{"fromDensityStops", now}, {"densityStops", then}, {"opticalDensity", then * kOpticalPerStop}}};
}

/// The same change on a face by lamps or by density while the iris holds. Lamps dimmed by voltage turn warmer.
TextTable insteadOfIris(const Answers& answers) {
  TextTable table({">#", ">hold", ">over", ">all light there to", "~or stops of density", "~or lamp by lamp"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.axis != Move::Axis::iris) continue;
    const double stops = answers::stopsOf(move.valueAfter) - answers::stopsOf(move.valueBefore);
    table.add({count("move", number), stopCell("hold", move.valueBefore), secondsCell("over", move.until - move.from),
               figure(fixed(100 * std::exp2(-stops), 0) + " %", "lightShare", std::exp2(-stops)),
               densityInstead(answers, move, stops), lampsText(answers, move)});
  }
  return table;
}

/// A pan that is as fast as a faster kind all along says nothing new.
bool partOfFasterPan(const std::vector<pulls::CoverSpan>& covers, const pulls::CoverSpan& cover) {
  const auto pans = [](pulls::CoverKind kind) {
    return kind == pulls::CoverKind::pan || kind == pulls::CoverKind::fastPan || kind == pulls::CoverKind::swish;
  };
  return pans(cover.kind) && std::any_of(covers.begin(), covers.end(), [&](const pulls::CoverSpan& other) {
           return pans(other.kind) && other.kind > cover.kind && other.span.from <= cover.span.from + 0.1 &&
                  other.span.until >= cover.span.until - 0.1;
         });
}

TextTable covers(const Answers& answers) {
  TextTable table({"seconds", "~what", ">iris up to", ">zoom up to"});
  // What moves all the time is no cover to wait for.
  constexpr double kWorthWaiting = answers::kShortestCover;
  for (const auto& cover : answers.evidence->covers) {
    const double iris = pulls::rateUnder(cover.kind, Hidden::iris);
    if (cover.kind == pulls::CoverKind::travel || iris < kWorthWaiting) continue;
    if (cover.span.length() < kWorthWaiting && !std::isinf(iris)) continue;
    if (partOfFasterPan(answers.evidence->covers, cover)) continue;
    table.add({spanCell(cover.span), answers::wordsOf(cover), limitCell("iris", Move::Axis::iris, iris),
               limitCell("zoom", Move::Axis::zoom, pulls::rateUnder(cover.kind, Hidden::zoom))});
  }
  return table;
}

TextTable whoIsSharp(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"who", "~followed", "~sharp besides"});
  for (const auto& performer : plan.performers) {
    std::string followed, besides;
    for (const auto& sharp : answers.evidence->sharp) {
      if (sharp.who != performer.id.text()) continue;
      std::string& list = sharp.followed ? followed : besides;
      list += (list.empty() ? "" : ", ") + spanText(sharp.span);
    }
    table.add({nameOf(plan, performer.id.text()), followed.empty() ? "never" : followed,
               besides.empty() ? "never" : besides});
  }
  return table;
}

std::string splitText(const plan::Plan& plan, const Together& group) {
  if (group.settings)
    return "set " + lengthText(plan, group.settings->near) + " to " + lengthText(plan, group.settings->far);
  if (group.holds) return "yes, the setting moving with them";
  if (!group.stop) return "no: one is too close";
  const plan::Lens& lens = *plan.lens;
  // What has to be reached and what must not be passed are rounded so that they still do.
  const std::string stop = "T" + base::fixedUp(*group.stop, 1) +
                           (*group.stop > lens.stop[1] ? " (the lens ends at T" + fixed(lens.stop[1], 0) + ")" : "");
  const std::string focal =
      base::fixedDown(*group.focal, *group.focal < 10 ? 1 : 0) + " mm" +
      (*group.focal < lens.focal[0] ? " (the lens begins at " + fixed(lens.focal[0], 0) + " mm)" : "");
  return "no: it would take " + stop + ", or " + focal;
}

Cell splitCell(const plan::Plan& plan, const Together& group) {
  Cell cell(splitText(plan, group));
  if (group.settings)
    cell.figures = {{"settingNearMetres", group.settings->near}, {"settingFarMetres", group.settings->far}};
  if (!group.holds && group.stop) cell.figures = {{"wouldTStop", group.stop}, {"wouldMm", group.focal}};
  return cell;
}

std::string namesOf(const plan::Plan& plan, const std::vector<std::string>& who) {
  std::string names;
  for (std::size_t i = 0; i < who.size(); ++i)
    names += std::string(i == 0 ? "" : i + 1 == who.size() ? " and " : ", ") + nameOf(plan, who[i]);
  return names;
}

TextTable groups(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "~who", "~one setting for all"});
  for (const auto& group : answers.evidence->together)
    table.add({spanCell(group.span), namesOf(plan, group.who), splitCell(plan, group)});
  return table;
}

std::string busyText(const pulls::Workload& load) {
  std::string text;
  geometry::Spans busy;
  for (const auto& stretch : load.stretches)
    if (stretch.hands > 1) busy.push_back(stretch.span);
  for (const auto& span : geometry::tidy(busy)) text += (text.empty() ? "" : ", ") + spanText(span);
  return text.empty() ? "never" : text;
}

std::string pressedText(const pulls::Workload& load) {
  std::string text;
  for (const auto& start : load.starts)
    if (start.pressed) text += (text.empty() ? "" : ", ") + secondsText(start.at);
  return text.empty() ? "never" : text;
}

TextTable work(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"~who", "~turns", ">hands", "~more than one", "~starts under 1 s apart", ">most in 10 s"});
  for (const auto& one : answers.evidence->work) {
    std::string axes;
    for (const auto axis : one.axes) axes += std::string(axes.empty() ? "" : ", ") + wordOf(axis);
    table.add({one.who.empty() ? "unknown" : nameOf(plan, one.who), axes,
               count("mostHands", static_cast<std::size_t>(one.load.mostHands)), busyText(one.load),
               pressedText(one.load), count("mostStarts", static_cast<std::size_t>(one.load.mostStarts))});
  }
  return table;
}

TextTable handovers(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"what", "~planned", "~quiet enough, 2 s and more"});
  for (const auto& windows : answers.evidence->handWindows) {
    std::string planned, quiet;
    for (const auto& handover : plan.handovers) {
      if (handover.what != windows.what) continue;
      const double at = plan::secondsOf(plan, handover.at);
      planned += (planned.empty() ? "" : "; ") + handover.from + " to " + handover.to + " " +
                 spanText({at, at + handover.over});
    }
    for (const auto& span : windows.spans)
      if (span.length() >= 2) quiet += (quiet.empty() ? "" : ", ") + spanText(span);
    table.add({windows.what, planned.empty() ? "none" : planned, quiet.empty() ? "never" : quiet});
  }
  return table;
}

void addPart(std::vector<SheetPart>& parts, const std::string& heading, TextTable table) {
  if (!table.empty()) parts.push_back({heading, std::move(table)});
}

}  // namespace

std::vector<SheetPart> hidingParts(const Answers& answers) {
  std::vector<SheetPart> parts;
  addPart(parts, "Does it hide? The rate at its worst instant against what covers it then", hidingMoves(answers));
  addPart(parts,
          "Zooms: shot sizes, seconds of feather, and how much of the picture's flow is theirs at most\n(a heuristic)",
          zoomSizes(answers));
  addPart(parts, "What each does to the sharp band", bandChanges(answers));
  return parts;
}

std::vector<SheetPart> coverParts(const Answers& answers) {
  std::vector<SheetPart> parts;
  addPart(parts, "What would hide a change of iris or zoom", covers(answers));
  addPart(parts, "Instead of the iris: the same change by lamps or by a variable density", insteadOfIris(answers));
  return parts;
}

std::vector<SheetPart> balanceParts(const Answers& answers) {
  std::vector<SheetPart> parts;
  addPart(parts, "What each zoom does to the balance of the rig, the lens level", balanceMoves(answers));
  return parts;
}

std::vector<SheetPart> sharpParts(const Answers& answers) {
  std::vector<SheetPart> parts;
  if (!answers.evidence->sharp.empty())
    addPart(parts,
            "Who is sharp for " + secondsText(answers::kShortestSharp) +
                " s and more: eyes in frame, within the blur circle",
            whoIsSharp(answers));
  addPart(parts,
          "Two or three in one frame, and whether one setting holds them within " +
              fixed(answers.take->plan().focus.blurShare, 2) + " of the\nblur circle, the slack of a pull",
          groups(answers));
  return parts;
}

std::vector<SheetPart> handsParts(const Answers& answers) {
  std::vector<SheetPart> parts;
  addPart(parts, "Whose hands", work(answers));
  addPart(parts, "Handing over", handovers(answers));
  return parts;
}

}  // namespace wend::sheets
