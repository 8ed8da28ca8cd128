#include "core/base/text.h"
#include "core/plan/invariants_parts.h"
#include "core/plan/lens_marks.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Problems;

std::string at(const char* list, std::size_t i) {
  return std::string(list) + "/" + std::to_string(i);
}

template <class Mark>
void addMarks(const std::vector<Mark>& marks, const char* where, Problems& problems) {
  const std::size_t row = firstTurningBack(marks);
  if (row == marks.size()) return;
  problems.push_back({"marks-turn-back", at(where, row), "row " + std::to_string(row + 1) + " turning back",
                      "rows that go one way, in value and in degrees",
                      "Look at row " + std::to_string(row + 1) + " and the one before it."});
}

void addRows(const OverFocal& over, const char* where, Problems& problems) {
  const std::size_t row = firstNotRising(over.rows);
  if (row == over.rows.size()) return;
  problems.push_back({"rows-not-rising", at(where, row), base::shortest(over.rows[row].focal) + " mm",
                      "more than " + base::shortest(over.rows[row - 1].focal) + " mm, the row before",
                      "Put the rows in order of focal length."});
}

void addLens(const Lens& lens, Problems& problems) {
  addRows(lens.transmission, "/lens/transmission", problems);
  addRows(lens.breathing, "/lens/breathing", problems);
  addRows(lens.balance, "/lens/balance", problems);
  addMarks(lens.focusMarks, "/lens/focusMarks", problems);
  addMarks(lens.irisMarks, "/lens/irisMarks", problems);
  addMarks(lens.zoomMarks, "/lens/zoomMarks", problems);
}

void addPole(const Pole& pole, const std::string& where, Problems& problems) {
  if (pole.gap[0] <= pole.gap[1]) return;
  problems.push_back({"gap-backwards", where + "/gap",
                      base::shortest(pole.gap[0]) + " m to " + base::shortest(pole.gap[1]) + " m",
                      "the smaller distance first", "Type the two the other way round."});
}

void addLink(const Link& link, const std::string& where, Problems& problems) {
  if (link.from != link.to) return;
  problems.push_back(
      {"link-one-end", where + "/to", "\"" + link.to + "\" at both ends", "two different ends", "Choose another end."});
}

}  // namespace

void addEquipmentProblems(const Plan& plan, const Fresh& fresh, Problems& problems) {
  if (plan.lens) addLens(*plan.lens, problems);
  for (std::size_t i = 0; i < plan.poles.size(); ++i)
    if (fresh(&Plan::poles, plan.poles, i)) addPole(plan.poles[i], at("/poles", i), problems);
  for (std::size_t i = 0; i < plan.links.size(); ++i)
    if (fresh(&Plan::links, plan.links, i)) addLink(plan.links[i], at("/links", i), problems);
}

}  // namespace wend::plan
