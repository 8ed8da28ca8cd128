// Pulls whose puller does not see whom the lens is on.
#include "core/answers/blind_pulls.h"
#include "core/answers/shelter_at.h"
#include "core/base/text.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

std::vector<SheetPart> blindParts(const answers::Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", "who pulls", "from", "~on", ">at", ">over", ">out of sight"});
  for (const auto& pull : answers::blindPulls(*answers.take, answers.evidence->moves)) {
    const snags::Move& move = answers.evidence->moves[pull.move];
    const std::string shelter = answers::shelterAt(plan, pull.pos);
    table.add({count("move", pull.move + 1), pull.who, shelter.empty() ? placeText(pull.pos) : shelter,
               move.on.empty() ? "unknown" : snags::subjectName(plan, move.on), secondsCell("at", move.from),
               secondsCell("over", move.until - move.from), secondsCell("blind", pull.blind)});
  }
  if (table.empty()) return {};
  return {{"Out of the puller's sight, in seconds: pull by a picture, by calls, or from elsewhere", std::move(table)}};
}

}  // namespace wend::sheets
