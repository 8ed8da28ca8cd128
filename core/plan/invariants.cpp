#include "core/plan/invariants.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/text.h"
#include "core/plan/invariants_parts.h"

namespace wend::plan {

std::string called(const std::string& name, const std::string& id) {
  return name.empty() ? id : name;
}

std::string secondsText(double seconds) {
  return base::shortest(std::round(seconds * 1000) / 1000 + 0.0) + " s";
}

Point placeOf(const Plan& plan, const Mark& mark) {
  if (mark.shelter.empty()) return mark.pos;
  const Shelter* shelter = plan.shelters.find(mark.shelter);
  return shelter ? shelter->pos : mark.pos;
}

namespace {

void addId(const std::string& id, const std::string& where, std::map<std::string, std::string>& seen,
           base::Problems& problems) {
  if (!base::isId(id))
    problems.push_back({"id-word", where, "\"" + id + "\"", "1 to 64 letters and digits",
                        "Use letters and digits without blanks or signs."});
  else if (const auto [at, added] = seen.emplace(id, where); !added)
    problems.push_back({"id-twice", where, "\"" + id + "\", which is also " + at->second, "each id once in the plan",
                        "Choose another id."});
}

template <class T>
void addIds(const base::Table<T>& table, const std::string& where, std::map<std::string, std::string>& seen,
            base::Problems& problems) {
  for (std::size_t i = 0; i < table.size(); ++i)
    addId(table[i].id.text(), where + "/" + std::to_string(i) + "/id", seen, problems);
}

void addIds(const std::vector<Mark>& marks, const std::string& where, std::map<std::string, std::string>& seen,
            base::Problems& problems) {
  for (std::size_t i = 0; i < marks.size(); ++i)
    if (!marks[i].id.empty()) addId(marks[i].id, where + "/" + std::to_string(i) + "/id", seen, problems);
}

template <class T>
bool sameIds(const base::Table<T>& a, const base::Table<T>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (a.ref(i) != b.ref(i) && a[i].id != b[i].id) return false;
  return true;
}

template <class T>
bool sameRows(const base::Table<T>& a, const base::Table<T>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (a.ref(i) != b.ref(i)) return false;
  return true;
}

bool sameIds(const std::vector<Mark>& a, const std::vector<Mark>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Mark& m, const Mark& n) { return m.id == n.id; });
}

/// Of the camera and of crew, where the tables are known to hold the same people.
bool sameMarkIds(const Plan& a, const Plan& b) {
  for (std::size_t i = 0; i < a.crew.size(); ++i)
    if (a.crew.ref(i) != b.crew.ref(i) && !sameIds(a.crew[i].marks, b.crew[i].marks)) return false;
  return sameIds(a.camera.marks, b.camera.marks);
}

bool sameDocumentIds(const Plan& a, const Plan& b) {
  return sameIds(a.beats, b.beats) && sameIds(a.set.rooms, b.set.rooms) && sameIds(a.set.walls, b.set.walls) &&
         sameIds(a.set.openings, b.set.openings) && sameIds(a.set.pieces, b.set.pieces) &&
         sameIds(a.set.areas, b.set.areas) && sameIds(a.props, b.props) && sameIds(a.performers, b.performers) &&
         sameIds(a.fixtures, b.fixtures) && sameIds(a.crew, b.crew) && sameIds(a.shelters, b.shelters) &&
         sameIds(a.gear, b.gear) && sameIds(a.cables, b.cables) && sameIds(a.poles, b.poles) &&
         sameIds(a.links, b.links) && sameMarkIds(a, b);
}

/// Things other parts of the plan hang on: when they change, everything is looked at again.
bool sameAnchors(const Plan& a, const Plan& b) {
  return sameRows(a.beats, b.beats) && a.clock.length == b.clock.length && sameRows(a.set.walls, b.set.walls) &&
         sameRows(a.shelters, b.shelters);
}

base::Problems found(const Plan& plan, const Fresh& fresh, bool ids) {
  base::Problems problems;
  if (ids) addIdProblems(plan, problems);
  addReferenceProblems(plan, fresh, problems);
  if (problems.empty()) addTimeProblems(plan, fresh, problems);
  addSetProblems(plan, fresh, problems);
  addEquipmentProblems(plan, fresh, problems);
  return problems;
}

}  // namespace

void addIdProblems(const Plan& plan, base::Problems& problems) {
  std::map<std::string, std::string> seen;
  addIds(plan.beats, "/beats", seen, problems);
  addIds(plan.set.rooms, "/set/rooms", seen, problems);
  addIds(plan.set.walls, "/set/walls", seen, problems);
  addIds(plan.set.openings, "/set/openings", seen, problems);
  addIds(plan.set.pieces, "/set/pieces", seen, problems);
  addIds(plan.set.areas, "/set/areas", seen, problems);
  addIds(plan.props, "/props", seen, problems);
  addIds(plan.performers, "/performers", seen, problems);
  addIds(plan.fixtures, "/fixtures", seen, problems);
  addIds(plan.crew, "/crew", seen, problems);
  addIds(plan.shelters, "/shelters", seen, problems);
  addIds(plan.gear, "/gear", seen, problems);
  addIds(plan.cables, "/cables", seen, problems);
  addIds(plan.poles, "/poles", seen, problems);
  addIds(plan.links, "/links", seen, problems);
  addIds(plan.camera.marks, "/camera/marks", seen, problems);
  for (std::size_t i = 0; i < plan.crew.size(); ++i)
    addIds(plan.crew[i].marks, "/crew/" + std::to_string(i) + "/marks", seen, problems);
  if (plan.beats.find(kEndBeat) != nullptr)
    problems.push_back({"id-reserved", "/beats", "a beat called \"end\"", "another id",
                        "\"end\" is the take's end; give the beat another id."});
}

base::Problems problemsOf(const Plan& plan) {
  return found(plan, Fresh(), true);
}

base::Problems brokenBy(const Plan& before, const Plan& after) {
  const bool ids = !sameDocumentIds(before, after);
  base::Problems problems = found(after, Fresh(before, ids || !sameAnchors(before, after)), ids);
  if (problems.empty()) return problems;
  const base::Problems old = problemsOf(before);
  std::erase_if(problems, [&](const base::Problem& problem) {
    return std::any_of(old.begin(), old.end(), [&](const base::Problem& known) {
      return known.code == problem.code && known.where == problem.where;
    });
  });
  return problems;
}

}  // namespace wend::plan
