// Sight from room to room, by the plan's own names.
#include <algorithm>
#include <map>

#include "core/answers/footing.h"
#include "core/answers/whole_take.h"
#include "core/sight/through.h"

namespace wend::answers {

using namespace snags;

namespace {

/// The floor in a doorway belongs to no room, and is nobody's ground to lock up: it is handed over as rooms of its own,
/// tagged from `firstTag` on, and what is seen of them or from them is left out.
void addDoorways(const plan::Plan& plan, int firstTag, std::vector<sight::RoomGround>& rooms) {
  for (auto& floor : doorwayFloors(plan)) rooms.push_back({std::move(floor), firstTag});
}

/// One finding a room and number of openings: what is interrupted for less than this goes on.
constexpr double kSameSight = 1.0;

using Way = std::pair<int, bool>;  ///< room, through two openings or more

std::vector<ThroughSight> merged(const plan::Plan& plan, const std::vector<sight::ThroughSight>& found, int doorway) {
  std::map<Way, std::vector<ThroughSight>> ways;
  for (const auto& sight : found) {
    if (sight.openings.empty() || sight.room == doorway || sight.from == doorway) continue;
    std::vector<std::string> openings;
    for (const int tag : sight.openings) openings.push_back(plan.set.openings[static_cast<std::size_t>(tag)].id.text());
    const std::string room =
        sight.room == sight::kOutside ? "outside" : plan.set.rooms[static_cast<std::size_t>(sight.room)].id.text();
    auto& spans = ways[{sight.room, sight.openings.size() >= 2}];
    if (!spans.empty() && sight.time.from - spans.back().span.until <= kSameSight) {
      spans.back().span.until = std::max(spans.back().span.until, sight.time.until);
      if (openings.size() < spans.back().openings.size()) spans.back().openings = openings;
      continue;
    }
    spans.push_back({sight.time, room, openings});
  }
  std::vector<ThroughSight> all;
  for (const auto& [way, spans] : ways) all.insert(all.end(), spans.begin(), spans.end());
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return all;
}

}  // namespace

std::optional<std::vector<ThroughSight>> throughSights(const Take& take, const base::Cancel& cancel,
                                                       const Before* before, std::vector<sight::ThroughStep>* steps) {
  const plan::Plan& plan = take.plan();
  std::vector<sight::RoomGround> rooms;
  for (std::size_t i = 0; i < plan.set.rooms.size(); ++i)
    rooms.push_back({plan.set.rooms[i].outline, static_cast<int>(i)});
  const int doorway = static_cast<int>(rooms.size());
  addDoorways(plan, doorway, rooms);
  sight::ThroughSpec spec;
  spec.take = {0, take.length()};
  // Coarse enough for every edit: what comes in sight between is looked for closer.
  spec.step = 0.2;
  spec.ground.top = plan.sightRules.height;
  spec.ground.sectorDegrees = 1;
  spec.ground.range = 40;
  std::optional<sight::KnownThroughs> known;
  if (before != nullptr && before->evidence.known)
    known = {before->evidence.known->throughs, [&](double t) { return sameEyeAt(take, before->take, t, 0); }};
  auto found = sight::throughSights(
      take.scene(), rooms, [&](double t) { return take.eyeAt(t, 0); }, spec, cancel, known ? &*known : nullptr);
  if (!found) return std::nullopt;
  if (steps != nullptr) *steps = std::move(found->steps);
  return merged(plan, found->sights, doorway);
}

}  // namespace wend::answers
