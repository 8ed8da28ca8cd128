// What would cool a hot focus: for each hot stretch at its worst instant, for each pull as it arrives.
#include "core/base/text.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/cures.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace snags;
using base::fixed;

namespace {

std::string whichText(const HotSpot& spot) {
  return spot.move == 0 ? "worst of " + spanText(spot.span) : "pull " + std::to_string(spot.move) + " arrives";
}

Cell warmthCell(const std::string& name, const std::optional<double>& warmth, const char* without) {
  return figure(warmth ? fixed(*warmth, 2) : without, name, warmth);
}

Cell cureBand(const plan::Plan& plan, const HotCure& cure) {
  if (!cure.band) return "as it is";
  return {bandText(plan, *cure.band), {{"bandNearMetres", cure.band->near}, {"bandFarMetres", cure.band->far}}};
}

/// The value under a key that says what it is.
Cell changeCell(const plan::Plan& plan, const HotCure& cure) {
  Cell cell(changeText(plan, cure));
  if (cure.moreLight) cell.words += ", +" + fixed(*cure.moreLight, 1) + " stops of light";
  if (cure.change == HotCure::Change::backOff) cell.figures = {{"backOffMetres", cure.value}};
  if (cure.change == HotCure::Change::widen) cell.figures = {{"widenMm", cure.value}};
  if (cure.change == HotCure::Change::stopDown)
    cell.figures = {{"stopDownTStop", cure.value}, {"moreLightStops", cure.moreLight}};
  return cell;
}

}  // namespace

std::vector<SheetPart> hotParts(const answers::Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">at", "~when", "~on", ">warmth", "~change", ">sharp then", ">warmth then", "enough"});
  for (const HotSpot& spot : hotSpots(*answers.evidence))
    for (const HotCure& cure : spot.cures) {
      const bool known = cure.warmth.has_value();
      table.add({secondsCell("at", spot.at->time), whichText(spot), subjectName(plan, spot.at->focus.on.front()),
                 warmthCell("bandOverWobble", spot.at->focus.warmth, "unknown"), changeCell(plan, cure),
                 cureBand(plan, cure), warmthCell("bandOverWobbleThen", cure.warmth, "\u2013"),
                 !known        ? "\u2013"
                 : cure.enough ? "yes"
                               : "no"});
    }
  if (table.empty()) return {};
  return {{"What would cool it: each change alone, at the instant told; warmth is the band over the wobble",
           std::move(table)}};
}

std::string hotText(const plan::Plan& plan, const Evidence& evidence) {
  std::string text;
  for (const HotSpot& spot : hotSpots(evidence))
    text += "hot at " + units::secondsText(spot.at->time) + ", " + whichText(spot) + ", on " +
            subjectName(plan, spot.at->focus.on.front()) + ", " + fixed(*spot.at->focus.warmth, 2) +
            " \u00d7 wobble:\n" + indentedLines(curesText(plan, spot.cures));
  return text;
}

}  // namespace wend::sheets
