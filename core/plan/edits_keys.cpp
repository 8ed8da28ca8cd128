#include "core/plan/edits_keys.h"

#include "core/plan/edits_beats.h"
#include "core/plan/edits_parts.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Result;

constexpr double kPlainFocal = 35;  ///< mm, where no lens says otherwise

template <class Change>
Result<Plan> changedTime(const Plan& plan, const KeyRef& ref, Change change) {
  return changedAxis(plan, ref.axis, ref.id, [&](auto& keys) -> Trouble {
    if (Trouble trouble = missingKey(keys, ref.index)) return trouble;
    return troubleOf(change, keys[ref.index].time);
  });
}

/// Calls change(Key&) on a key of the list.
template <class Key, class Change>
Trouble changeKey(std::vector<Key>& keys, std::size_t index, Change change) {
  if (Trouble trouble = missingKey(keys, index)) return trouble;
  return troubleOf(change, keys[index]);
}

template <class Change>
Result<Plan> changedAim(const Plan& plan, std::size_t key, Change change) {
  return changedCamera(plan, [&](Camera& camera) { return changeKey(camera.aims, key, change); });
}
template <class Change>
Result<Plan> changedZoom(const Plan& plan, std::size_t key, Change change) {
  return changedPart(plan, &Plan::zoom, "/zoom", [&](Zoom& zoom) { return changeKey(zoom.keys, key, change); });
}

Problem wrongTarget(const std::string& where, const std::string& expected) {
  return {"wrong-target", where, "another kind of target", expected, "Choose one of these."};
}

/// A bearing key that is copied stands where it stands; turns are a way of getting there and are not copied.
template <class Key>
void clearCopy(Key& key) {
  key.extra.clear();
  if constexpr (requires { key.turns; }) key.turns = 0;
  if constexpr (requires { key.name; }) key.name.clear();
  if constexpr (requires { key.by; }) key.by.clear();
}

void startTake(KeyTime& time) {
  time.at = {};
  time.over = 0;
}

}  // namespace

Result<Plan> keyTimeSet(const Plan& plan, const KeyRef& key, double seconds) {
  return retimedMoment(plan, KeyStart{key}, seconds);
}

Result<Plan> keyOverSet(const Plan& plan, const KeyRef& key, double seconds) {
  return changedTime(plan, key, [&](KeyTime& time) { time.over = seconds; });
}

Result<Plan> keyPaceSet(const Plan& plan, const KeyRef& key, Pace pace) {
  return changedTime(plan, key, [&](KeyTime& time) { time.pace = pace; });
}

Result<Plan> insertedKey(const Plan& plan, Axis axis, double seconds, double over, const std::string& id) {
  const double start = quantised(seconds, kinds::kMoment);
  return changedAxis(plan, axis, id, [&](auto& keys) -> Trouble {
    if (keys.empty()) {
      auto& first = keys.emplace_back();
      if constexpr (requires { first.focal; }) first.focal = plan.lens ? plan.lens->focal[0] : kPlainFocal;
      return std::nullopt;
    }
    std::size_t i = 0;
    while (i < keys.size() && secondsOf(plan, keys[i].time.at) <= start + kSameTime) ++i;
    auto key = keys[i > 0 ? i - 1 : 0];
    clearCopy(key);
    key.time = KeyTime{{"", start}, over, Pace::even};
    keys.insert(keys.begin() + static_cast<std::ptrdiff_t>(i), key);
    return std::nullopt;
  });
}

Result<Plan> removedKey(const Plan& plan, const KeyRef& key) {
  return changedAxis(plan, key.axis, key.id, [&](auto& keys) -> Trouble {
    if (Trouble trouble = missingKey(keys, key.index)) return trouble;
    keys.erase(keys.begin() + static_cast<std::ptrdiff_t>(key.index));
    if (key.index == 0 && !keys.empty()) startTake(keys.front().time);
    return std::nullopt;
  });
}

Result<Plan> aimTargetSet(const Plan& plan, std::size_t key, Target on) {
  if (std::holds_alternative<OnSplit>(on) || std::holds_alternative<OnDistance>(on))
    return wrongTarget("/camera/aims/" + std::to_string(key) + "/on", "a performer, prop, point, bearing or travel");
  return changedAim(plan, key, [&](AimKey& aim) { aim.on = on; });
}

Result<Plan> aimPlaceSet(const Plan& plan, std::size_t key, std::array<double, 2> place) {
  return changedAim(plan, key, [&](AimKey& aim) { aim.place = place; });
}

Result<Plan> aimTurnsSet(const Plan& plan, std::size_t key, int turns) {
  if (turns < -100 || turns > 100)
    return Problem{"out-of-range", "/camera/aims/" + std::to_string(key) + "/turns", std::to_string(turns),
                   "from -100 to 100", "Type a number in that range."};
  return changedAim(plan, key, [&](AimKey& aim) { aim.turns = turns; });
}

Result<Plan> focusTargetSet(const Plan& plan, std::size_t key, Target on) {
  const auto* split = std::get_if<OnSplit>(&on);
  if (std::holds_alternative<OnBearing>(on) || std::holds_alternative<OnTravel>(on) || (split && split->who.size() < 2))
    return wrongTarget("/focus/keys/" + std::to_string(key) + "/on",
                       "a performer, prop, point, distance, or a split of two or more");
  return changedPart(plan, &Plan::focus, "/focus",
                     [&](Focus& focus) { return changeKey(focus.keys, key, [&](FocusKey& k) { k.on = on; }); });
}

Result<Plan> zoomFocalSet(const Plan& plan, std::size_t key, double focal) {
  return changedZoom(plan, key, [&](ZoomKey& zoom) {
    zoom.focal = focal;
    zoom.size.clear();
    zoom.of = OnPerformer{};
  });
}

Result<Plan> zoomSizeSet(const Plan& plan, std::size_t key, const std::string& size, Target of) {
  const std::string where = "/zoom/keys/" + std::to_string(key);
  if (size.empty()) return Problem{"size", where + "/size", "no size", "a shot size's name", "Choose a size."};
  if (!std::holds_alternative<OnPerformer>(of)) return wrongTarget(where + "/of", "a performer");
  return changedZoom(plan, key, [&](ZoomKey& zoom) {
    zoom.focal = 0;
    zoom.size = size;
    zoom.of = of;
  });
}

Result<Plan> irisStopSet(const Plan& plan, std::size_t key, double stop) {
  return changedPart(plan, &Plan::iris, "/iris",
                     [&](Iris& iris) { return changeKey(iris.keys, key, [&](IrisKey& k) { k.stop = stop; }); });
}

Result<Plan> zoomKeysSet(const Plan& plan, std::vector<ZoomKey> keys) {
  return changedPart(plan, &Plan::zoom, "/zoom", [&](Zoom& zoom) { zoom.keys = std::move(keys); });
}

Result<Plan> irisKeysSet(const Plan& plan, std::vector<IrisKey> keys) {
  return changedPart(plan, &Plan::iris, "/iris", [&](Iris& iris) { iris.keys = std::move(keys); });
}

Result<Plan> densityStopsSet(const Plan& plan, std::size_t key, double stops) {
  return changedCamera(
      plan, [&](Camera& camera) { return changeKey(camera.nd, key, [&](DensityKey& k) { k.stops = stops; }); });
}

Result<Plan> pieceMoveSet(const Plan& plan, const std::string& piece, std::size_t key, geometry::Vec offset,
                          double turn) {
  return changed<Piece>(plan, piece, [&](Piece& p) {
    return changeKey(p.moved, key, [&](PieceKey& k) {
      k.offset = offset;
      k.turn = turn;
    });
  });
}

Result<Plan> keyShareSet(const Plan& plan, const KeyRef& key, double share) {
  return changedAxis(plan, key.axis, key.id, [&](auto& keys) -> Trouble {
    if (Trouble trouble = missingKey(keys, key.index)) return trouble;
    if constexpr (requires { keys[0].share; }) {
      keys[key.index].share = share;
      return std::nullopt;
    }
    return wrongTarget("", "a door's or a level's key");
  });
}

Result<Plan> readingsSet(const Plan& plan, const std::string& area, std::size_t state, std::vector<Reading> readings) {
  return changed<Area>(
      plan, area, [&](Area& a) { return changeKey(a.states, state, [&](AreaState& s) { s.readings = readings; }); });
}

Result<Plan> keyNamed(const Plan& plan, const KeyRef& key, const std::string& name, const std::string& by) {
  if (Trouble trouble = textTrouble(name + by, "")) return *trouble;
  return changedAxis(plan, key.axis, key.id, [&](auto& keys) -> Trouble {
    if (Trouble trouble = missingKey(keys, key.index)) return trouble;
    if constexpr (requires { keys[0].name; }) {
      keys[key.index].name = name;
      keys[key.index].by = by;
      return std::nullopt;
    }
    return wrongTarget("", "the key of a door, a light, a level or a piece");
  });
}

}  // namespace wend::plan
