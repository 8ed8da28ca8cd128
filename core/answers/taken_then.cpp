#include "core/answers/taken_then.h"

#include <algorithm>

#include "core/answers/closed_ground.h"
#include "core/answers/route_ground.h"
#include "core/answers/set_scene.h"
#include "core/answers/span_log.h"
#include "core/plan/area_use.h"

namespace wend::answers {

using geometry::Point;

namespace {

/// What of these a person at that place would be inside of.
std::vector<std::string> around(const Take& take, Point place, double height,
                                const std::vector<crew::Obstacle>& obstacles) {
  const double floor = take.people().floorAt(place);
  std::vector<std::string> ids;
  for (const auto& obstacle : obstacles) {
    const auto clearance = crew::clearanceAt({"", place, 0, floor + kStepOver, floor + height}, 0,
                                             std::span<const crew::Obstacle>(&obstacle, 1), 0);
    const auto inside = [](const std::optional<crew::Gap>& gap) { return gap && gap->metres < 0; };
    if (inside(clearance.left) || inside(clearance.right)) ids.push_back(obstacle.id);
  }
  return ids;
}

}  // namespace

bool anyPieceMoves(const plan::Plan& plan) {
  for (const auto& piece : plan.set.pieces)
    if (!piece.moved.empty()) return true;
  return false;
}

std::vector<TakenSpan> takenOver(const Take& take, Point place, double height) {
  std::vector<TakenSpan> taken;
  if (anyPieceMoves(take.plan())) {
    const auto names = namesOf(take.plan());
    const auto& pieces = take.plan().set.pieces;
    const std::vector<double> times = take.frameTimes();
    // A frame that does not have it ends a span.
    SpanLog<std::string, TakenSpan> log(times.size() > 1 ? (times[1] - times[0]) / 2 : 0);
    for (const double t : times) {
      auto there = crew::leavesOf(take.scene().at(t), names);
      std::erase_if(there, [&](const auto& obstacle) { return !pieces.find(obstacle.id); });
      for (const auto& id : around(take, place, height, there)) log.add(t, id, {{}, id});
    }
    taken = log.inOrder();
  }
  for (const auto& gear : take.plan().gear)
    if (geometry::distance(gear.pos, place) < gear.radius)
      taken.insert(taken.begin(), {{0, take.length()}, gear.id.text()});
  return taken;
}

std::vector<const plan::Area*> closedAt(const plan::Plan& plan, Point place, double radius) {
  std::vector<const plan::Area*> closed;
  for (const auto& area : plan.set.areas)
    if ((isClosed(area) || isLane(area)) && touches(outlineOf(area.shape), place, radius)) closed.push_back(&area);
  return closed;
}

const char* closedWord(const plan::Area& area) {
  if (plan::usedAs(area, plan::AreaUse::hazard)) return "hazard";
  return plan::usedAs(area, plan::AreaUse::keepOut) ? "keepOut" : "exitLane";
}

}  // namespace wend::answers
