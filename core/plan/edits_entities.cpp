#include "core/plan/edits_entities.h"

#include "core/base/check.h"
#include "core/plan/edits_parts.h"

namespace wend::plan {

using base::Result;

template <class T>
Result<Plan> added(const Plan& plan, T entity, std::optional<std::size_t> at) {
  const base::Table<T>& table = Home<T>::in(plan);
  const std::size_t index = std::min(at.value_or(table.size()), table.size());
  const std::string where = std::string(Home<T>::kPath) + "/" + std::to_string(index);
  const std::string id = entity.id.text();
  if (table.find(id))
    return base::Problem{"id-twice", where + "/id", "\"" + id + "\"", "each id once in the plan", "Choose another id."};
  if (Trouble trouble = settle(KnownNumbers(), entity, where)) return *trouble;
  Plan next = plan;
  Home<T>::in(next).insert(index, std::move(entity));
  return kept(plan, std::move(next));
}

template <class T>
Result<Plan> replaced(const Plan& plan, T entity) {
  const std::string id = entity.id.text();
  return changed<T>(plan, id, [&](T& old) { old = std::move(entity); });
}

template <class T>
Result<Plan> removed(const Plan& plan, const std::string& id) {
  const std::size_t i = Home<T>::in(plan).indexOf(id);
  if (i == Home<T>::in(plan).size())
    return notThere(Home<T>::kPath, "\"" + id + "\"", "the id of something in this list");
  Plan next = plan;
  Home<T>::in(next).remove(i);
  return kept(plan, std::move(next));
}

template <class T>
Result<Plan> reordered(const Plan& plan, const std::string& id, std::size_t to) {
  const base::Table<T>& table = Home<T>::in(plan);
  const std::size_t from = table.indexOf(id);
  if (from == table.size() || to >= table.size())
    return notThere(Home<T>::kPath, "\"" + id + "\"", "the id and the place of something in this list");
  if (from == to) return plan;
  Plan next = plan;
  Home<T>::in(next).move(from, to);
  return next;
}

#define WEND_ENTITY(T)                                                     \
  template Result<Plan> added(const Plan&, T, std::optional<std::size_t>); \
  template Result<Plan> replaced(const Plan&, T);                          \
  template Result<Plan> removed<T>(const Plan&, const std::string&);       \
  template Result<Plan> reordered<T>(const Plan&, const std::string&, std::size_t);
WEND_ENTITY(Beat)
WEND_ENTITY(Room)
WEND_ENTITY(Wall)
WEND_ENTITY(Opening)
WEND_ENTITY(Piece)
WEND_ENTITY(Area)
WEND_ENTITY(Prop)
WEND_ENTITY(Performer)
WEND_ENTITY(Fixture)
WEND_ENTITY(Crew)
WEND_ENTITY(Shelter)
WEND_ENTITY(Gear)
WEND_ENTITY(Cable)
WEND_ENTITY(Pole)
WEND_ENTITY(Link)
#undef WEND_ENTITY

namespace {

template <class T>
bool holds(const Plan& plan, const std::string& id) {
  return Home<T>::in(plan).find(id) != nullptr;
}

bool names(const std::vector<Mark>& marks, const std::string& id) {
  return std::any_of(marks.begin(), marks.end(), [&](const Mark& mark) { return mark.id == id; });
}

bool markNamed(const Plan& plan, const std::string& id) {
  for (const Crew& who : plan.crew)
    if (names(who.marks, id)) return true;
  return names(plan.camera.marks, id);
}

bool taken(const Plan& plan, const std::string& id) {
  return id == kEndBeat || holds<Beat>(plan, id) || holds<Room>(plan, id) || holds<Wall>(plan, id) ||
         holds<Opening>(plan, id) || holds<Piece>(plan, id) || holds<Area>(plan, id) || holds<Prop>(plan, id) ||
         holds<Performer>(plan, id) || holds<Fixture>(plan, id) || holds<Crew>(plan, id) || holds<Shelter>(plan, id) ||
         holds<Gear>(plan, id) || holds<Cable>(plan, id) || holds<Pole>(plan, id) || holds<Link>(plan, id) ||
         markNamed(plan, id);
}

}  // namespace

std::string freshId(const Plan& plan, const std::string& stem) {
  WEND_CHECK(base::isId(stem) && stem.size() <= 50);
  const bool numbered = stem.back() >= '0' && stem.back() <= '9';
  if (numbered && !taken(plan, stem)) return stem;
  for (std::size_t n = numbered ? 2 : 1;; ++n) {
    std::string id = stem + (numbered ? "x" : "") + std::to_string(n);
    if (!taken(plan, id)) return id;
  }
}

}  // namespace wend::plan
