/// What every edit is built from: copy the one part, change it, put its new numbers on their steps, look for what
/// broke. Private to core/plan.
#pragma once

#include <algorithm>
#include <cmath>
#include <type_traits>
#include <utility>

#include "core/base/result.h"
#include "core/base/text.h"
#include "core/plan/invariants.h"
#include "core/plan/numbers.h"
#include "core/plan/references.h"

namespace wend::plan {

/// What stands in the way of a change, if anything does.
using Trouble = std::optional<base::Problem>;

/// Where the entities of a kind are kept, and how the file calls the place.
template <class T>
struct Home;
#define WEND_HOME(Type, path, member)                                            \
  template <>                                                                    \
  struct Home<Type> {                                                            \
    static constexpr const char* kPath = path;                                   \
    static base::Table<Type>& in(Plan& plan) { return plan.member; }             \
    static const base::Table<Type>& in(const Plan& plan) { return plan.member; } \
  };
WEND_HOME(Beat, "/beats", beats)
WEND_HOME(Room, "/set/rooms", set.rooms)
WEND_HOME(Wall, "/set/walls", set.walls)
WEND_HOME(Opening, "/set/openings", set.openings)
WEND_HOME(Piece, "/set/pieces", set.pieces)
WEND_HOME(Area, "/set/areas", set.areas)
WEND_HOME(Prop, "/props", props)
WEND_HOME(Performer, "/performers", performers)
WEND_HOME(Fixture, "/fixtures", fixtures)
WEND_HOME(Crew, "/crew", crew)
WEND_HOME(Shelter, "/shelters", shelters)
WEND_HOME(Gear, "/gear", gear)
WEND_HOME(Cable, "/cables", cables)
WEND_HOME(Pole, "/poles", poles)
WEND_HOME(Link, "/links", links)
#undef WEND_HOME

inline base::Problem notThere(const std::string& where, const std::string& found, const std::string& expected) {
  return {"not-there", where, found, expected, "It may have been taken out; choose again."};
}

/// The numbers of a part before an edit, for telling which ones the edit brought in.
class KnownNumbers {
 public:
  KnownNumbers() = default;
  template <class Part>
  explicit KnownNumbers(Part part) {
    eachNumber(part, [&](double& value, const NumberKind& kind, const char* name) {
      values_.push_back(value);
      if (!inRange(value, kind)) outside_.emplace_back(name, value);
    });
    std::sort(values_.begin(), values_.end());
  }
  static bool inRange(double value, const NumberKind& kind) { return value >= kind.least && value <= kind.most; }
  bool holds(double value) const {
    return std::isfinite(value) && std::binary_search(values_.begin(), values_.end(), value);
  }
  /// True when the part came with that very number out of its range.
  bool cameOutside(double value, const char* name) const {
    return std::find(outside_.begin(), outside_.end(), std::pair<std::string, double>(name, value)) != outside_.end();
  }

 private:
  std::vector<double> values_;
  std::vector<std::pair<std::string, double>> outside_;
};

/// Puts the numbers an edit brought in on their steps and holds them against their ranges. What was in the part before
/// stays as it is: an edit answers for its own numbers only.
template <class Part>
Trouble settle(const KnownNumbers& known, Part& after, const std::string& where) {
  Trouble trouble;
  eachNumber(after, [&](double& value, const NumberKind& kind, const char* name) {
    if (!trouble && !KnownNumbers::inRange(value, kind) && !known.cameOutside(value, name))
      trouble = base::Problem{"out-of-range", where + "/" + name,
                              std::isfinite(value) ? base::shortest(value) : std::string("no number"), rangeText(kind),
                              "Type a number in that range."};
    if (!known.holds(value)) value = quantised(value, kind);
  });
  return trouble;
}

template <class Part>
Trouble settle(const Part& before, Part& after, const std::string& where) {
  return settle(KnownNumbers(before), after, where);
}

/// `after`, unless it broke something `before` kept.
inline base::Result<Plan> kept(const Plan& before, Plan after) {
  if (base::Problems broken = brokenBy(before, after); !broken.empty()) return broken;
  return after;
}

/// Calls change(part), which returns nothing or a Trouble.
template <class Part, class Change>
Trouble troubleOf(Change&& change, Part& part) {
  if constexpr (std::is_void_v<decltype(change(part))>) {
    change(part);
    return std::nullopt;
  } else {
    return change(part);
  }
}

/// The plan with the entity of that id changed. One that comes out equal leaves the plan as it is, pointers included.
template <class T, class Change>
base::Result<Plan> changed(const Plan& plan, const std::string& id, Change&& change) {
  const base::Table<T>& table = Home<T>::in(plan);
  const std::size_t i = table.indexOf(id);
  if (i == table.size()) return notThere(Home<T>::kPath, "\"" + id + "\"", "the id of something in this list");
  T after = table[i];
  const std::string where = std::string(Home<T>::kPath) + "/" + std::to_string(i);
  if (Trouble trouble = troubleOf(change, after)) return *trouble;
  if (Trouble trouble = settle(table[i], after, where)) return *trouble;
  if (after == table[i]) return plan;
  Plan next = plan;
  Home<T>::in(next).replace(i, std::move(after));
  return kept(plan, std::move(next));
}

/// The same for a part that is a value in the plan: changedPart(plan, &Plan::camera, "/camera", ...).
template <class Part, class Change>
base::Result<Plan> changedPart(const Plan& plan, Part Plan::*member, const std::string& where, Change&& change) {
  Part after = plan.*member;
  if (Trouble trouble = troubleOf(change, after)) return *trouble;
  if (Trouble trouble = settle(plan.*member, after, where)) return *trouble;
  if (after == plan.*member) return plan;
  Plan next = plan;
  next.*member = std::move(after);
  return kept(plan, std::move(next));
}

template <class Change>
base::Result<Plan> changedCamera(const Plan& plan, Change&& change) {
  return changedPart(plan, &Plan::camera, "/camera", std::forward<Change>(change));
}

/// The same for the lens, when there is one.
template <class Change>
base::Result<Plan> changedLens(const Plan& plan, Change&& change) {
  if (!plan.lens) return notThere("/lens", "no lens", "a lens");
  Lens after = *plan.lens;
  if (Trouble trouble = troubleOf(change, after)) return *trouble;
  if (Trouble trouble = settle(*plan.lens, after, "/lens")) return *trouble;
  if (after == *plan.lens) return plan;
  Plan next = plan;
  next.lens = std::move(after);
  return kept(plan, std::move(next));
}

/// Calls change(std::vector<Mark>&) on a track.
template <class Change>
base::Result<Plan> changedTrack(const Plan& plan, const TrackRef& track, Change&& change) {
  switch (track.owner) {
    case Owner::camera:
      return changedCamera(plan, [&](Camera& camera) { return troubleOf(change, camera.marks); });
    case Owner::performer:
      return changed<Performer>(plan, track.id, [&](Performer& who) { return troubleOf(change, who.marks); });
    case Owner::crew:
      return changed<Crew>(plan, track.id, [&](Crew& who) { return troubleOf(change, who.marks); });
  }
  return notThere("", "an unknown track", "a track");
}

/// Calls change(std::vector<Mark>&, index) when the mark exists.
template <class Change>
base::Result<Plan> changedMarkOf(const Plan& plan, const MarkRef& ref, Change&& change) {
  return changedTrack(plan, {ref.owner, ref.id}, [&](std::vector<Mark>& marks) -> Trouble {
    if (ref.index >= marks.size())
      return notThere("", "mark " + std::to_string(ref.index + 1), std::to_string(marks.size()) + " marks");
    return troubleOf([&](std::vector<Mark>& all) { return change(all, ref.index); }, marks);
  });
}

/// Calls change(Mark&).
template <class Change>
base::Result<Plan> changedMark(const Plan& plan, const MarkRef& ref, Change&& change) {
  return changedMarkOf(plan, ref, [&](std::vector<Mark>& marks, std::size_t i) { return change(marks[i]); });
}

/// Calls change(std::vector<Key>&) with the keys of an axis, whatever their type.
template <class Change>
base::Result<Plan> changedAxis(const Plan& plan, Axis axis, const std::string& id, Change&& change) {
  switch (axis) {
    case Axis::aim:
      return changedCamera(plan, [&](Camera& camera) { return change(camera.aims); });
    case Axis::focus:
      return changedPart(plan, &Plan::focus, "/focus", [&](Focus& focus) { return change(focus.keys); });
    case Axis::zoom:
      return changedPart(plan, &Plan::zoom, "/zoom", [&](Zoom& zoom) { return change(zoom.keys); });
    case Axis::iris:
      return changedPart(plan, &Plan::iris, "/iris", [&](Iris& iris) { return change(iris.keys); });
    case Axis::nd:
      return changedCamera(plan, [&](Camera& camera) { return change(camera.nd); });
    case Axis::door:
      return changed<Opening>(plan, id, [&](Opening& opening) { return change(opening.open); });
    case Axis::light:
      return changed<Area>(plan, id, [&](Area& area) { return change(area.states); });
    case Axis::level:
      return changed<Fixture>(plan, id, [&](Fixture& fixture) { return change(fixture.level); });
    case Axis::piece:
      return changed<Piece>(plan, id, [&](Piece& piece) { return change(piece.moved); });
  }
  return notThere("", "an unknown axis", "an axis");
}

/// `keys[index]` exists, or the trouble that says it does not.
template <class Key>
Trouble missingKey(const std::vector<Key>& keys, std::size_t index) {
  if (index < keys.size()) return std::nullopt;
  return notThere("", "key " + std::to_string(index + 1), std::to_string(keys.size()) + " keys");
}

inline constexpr std::size_t kMostText = 4096;  ///< bytes of one text

/// Text a file can hold: UTF-8 without control characters, of a length somebody reads.
inline Trouble textTrouble(const std::string& text, const std::string& where) {
  const bool control = std::any_of(
      text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t'; });
  if (base::isUtf8(text) && !control && text.size() <= kMostText) return std::nullopt;
  return base::Problem{"text", where, std::to_string(text.size()) + " bytes",
                       "UTF-8 text of at most " + std::to_string(kMostText) + " bytes", "Type the text again."};
}

}  // namespace wend::plan
