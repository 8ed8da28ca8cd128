// Tables of what the trade trips over: booms, radio links, ground to lock up.
#include <algorithm>

#include "core/base/text.h"
#include "core/crew/boom.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/sheets/trap_figures.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;

namespace {

/// What does not hold of a line at any of its instants, in words; "holds" where everything is known and does.
std::string verdictOf(const plan::Pole& pole, const BoomLine& line) {
  const auto any = [&](auto what) { return std::any_of(line.at.begin(), line.at.end(), what); };
  std::string words;
  const auto add = [&](bool fails, const char* word) {
    if (fails) words += (words.empty() ? "" : ", ") + std::string(word);
  };
  add(any([&](const BoomAt& at) { return at.gap && crew::beyond(*at.gap, pole.gap[1]); }), "too far off the mouth");
  add(any([&](const BoomAt& at) { return at.reach && crew::beyond(*at.reach, pole.reach); }), "out of reach");
  add(isWalled(line), "through the set");
  add(line.at.empty() || any([](const BoomAt& at) { return !at.gap || !at.reach; }), "unknown");
  return words.empty() ? "holds" : words;
}

TextTable boomTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "who", "pole", ">to mouth", ">reach", ">to a lamp", "~so it"});
  for (const auto& line : answers.evidence->boom) {
    table.add({spanCell(line.span), nameOf(plan, line.who), nameOf(plan, line.pole),
               metresCell(plan, "toMouth", mostGapOf(line)), metresCell(plan, "reach", mostReachOf(line)),
               metresCell(plan, "toLamp", nearestLampOf(line), "\u2013"),
               verdictOf(*plan.poles.find(line.pole), line)});
  }
  return table;
}

TextTable linkTable(const Answers& answers) {
  const Evidence& evidence = *answers.evidence;
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"link", "from", "to", ">least dB", ">at", ">apart", ">walls", ">doors", ">bodies"});
  for (const auto& link : evidence.links) {
    const plan::Link& planned = *plan.links.find(link.id);
    const auto least = weakestOf(link);
    std::vector<Cell> cells = {nameOf(plan, link.id), nameOf(plan, planned.from), nameOf(plan, planned.to)};
    if (!least) cells.push_back(figure("unknown", "leastDecibels", std::nullopt));
    if (least) {
      const LinkAt& at = *link.at[*least];
      const auto number = [](const char* key, int n) { return count(key, static_cast<std::size_t>(n)); };
      for (Cell& cell :
           std::vector<Cell>{figure(fixed(at.margin, 0), "leastDecibels", at.margin),
                             secondsCell("at", evidence.samples[*least].time), metresCell(plan, "apart", at.metres),
                             number("walls", at.walls), number("leaves", at.leaves), number("bodies", at.bodies)})
        cells.push_back(std::move(cell));
    }
    table.add(std::move(cells));
  }
  return table;
}

TextTable lockUpTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"seconds", "ground outside the set that the lens sees"});
  for (const auto& seen : answers.evidence->outside) table.add({spanCell(seen.span), nameOf(plan, seen.area)});
  return table;
}

}  // namespace

std::vector<SheetPart> boomAndLinkParts(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  std::vector<SheetPart> parts;
  if (plan.poles.size() > 0)
    parts.push_back({"Booms: the most each line of speech asks of its pole", boomTable(answers)});
  if (plan.links.size() > 0)
    parts.push_back({"Radio links where they are weakest, dB left of the budget; walk them with the real aerials",
                     linkTable(answers)});
  return parts;
}

std::vector<SheetPart> lockUpParts(const Answers& answers) {
  if (answers.evidence->outside.empty()) return {};
  return {{"To lock up", lockUpTable(answers)}};
}

}  // namespace wend::sheets
