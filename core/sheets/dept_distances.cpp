// Pulls and marks at which the distance that the focus goes by is not the one that a tape, or the lens' field, has.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/dept_sheets.h"
#include "core/snags/distances_apart.h"
#include "core/snags/stretch.h"
#include "core/snags/thresholds.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;

namespace {

Cell distanceCell(const plan::Plan& plan, const NamedDistance& distance) {
  return figure(lengthText(plan, distance.metres) + " " + distance.name, distance.name + std::string("Metres"),
                distance.metres);
}

class Apart {
 public:
  explicit Apart(const Answers& answers) : answers_(answers) {}

  /// A row where the two are far apart at t; `who` has to be followed then, if named.
  void lookAt(double t, const std::string& what, const std::string& who = {}) {
    const Instant instant = answers::sampleAt(*answers_.take, std::clamp(t, 0.0, answers_.take->length()));
    const auto share = apartOverBand(plan_, instant);
    if (!share || *share <= limit_ || (!who.empty() && instant.focus.on.back() != who)) return;
    table_.add({secondsCell("at", instant.time), what, nameOf(plan_, instant.focus.on.back()),
                distanceCell(plan_, usedDistance(plan_, instant.focus.wanted)),
                distanceCell(plan_, otherDistance(plan_, instant.focus.wanted)),
                figure(base::fixed(*share, 1), "apartOverNearerHalf", *share)});
  }

  TextTable table() && { return std::move(table_); }

 private:
  const Answers& answers_;
  const plan::Plan& plan_ = answers_.take->plan();
  double limit_ = threshold(plan_, "distances-apart").value;
  TextTable table_{{">at", "~what", "~who", ">the focus goes by", ">it would be taken for", ">of the nearer half"}};
};

}  // namespace

std::vector<SheetPart> distanceParts(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  // At its very ends a pull may still be between two subjects.
  const double frame = 1 / answers.take->rate();
  Apart apart(answers);
  std::size_t number = 0;
  for (const Move& move : answers.evidence->moves) {
    ++number;
    if (move.axis != Move::Axis::focus) continue;
    apart.lookAt(move.from - frame, "pull " + std::to_string(number) + " starts");
    apart.lookAt(move.until + frame, "pull " + std::to_string(number) + " arrives");
  }
  for (const auto& performer : plan.performers)
    for (std::size_t i = 0; i < performer.marks.size(); ++i)
      apart.lookAt(plan::secondsOf(plan, performer.marks[i].at), "mark " + std::to_string(i + 1), performer.id.text());
  TextTable table = std::move(apart).table();
  if (table.empty()) return {};
  return {{"Distances that are not one: apart by so much of the sharp band's nearer half", std::move(table)}};
}

}  // namespace wend::sheets
