#include "core/answers/footing.h"

#include <algorithm>
#include <cmath>

#include "core/answers/cells_in.h"
#include "core/answers/route_ground.h"
#include "core/answers/set_scene.h"
#include "core/crew/obstacles.h"
#include "core/geometry/band.h"
#include "core/geometry/nearest.h"

namespace wend::answers {

using geometry::Extent;

namespace {

/// Rooms are drawn along the faces of walls, or nearly.
constexpr double kNearly = 0.05;

/// All that somebody has said something of, doorways included.
std::vector<std::vector<Point>> groundOutlines(const plan::Plan& plan) {
  auto outlines = knownOutlines(plan);
  for (auto& floor : doorwayFloors(plan)) outlines.push_back(std::move(floor));
  return outlines;
}

/// Everything that stands in the way of somebody of that height all along.
std::vector<crew::Obstacle> standing(const Take& take, double height) {
  const FloorRange floors = floorsOf(take.plan());
  auto obstacles = crew::obstaclesOf(take.scene(), namesOf(take.plan()));
  std::erase_if(obstacles, [&](const crew::Obstacle& obstacle) {
    return obstacle.top <= floors.lowest + kStepOver || obstacle.bottom >= floors.highest + height;
  });
  return obstacles;
}

bool holds(const crew::Obstacle& obstacle, Point p) {
  if (obstacle.closed && geometry::edgeDistance(p, obstacle.points).inward > 0) return true;
  const auto nearest =
      obstacle.closed ? geometry::nearestOnRing(p, obstacle.points) : geometry::nearestOnLine(p, obstacle.points);
  return nearest.distance < obstacle.radius;
}

Extent reachOf(const crew::Obstacle& obstacle) {
  return grown(geometry::extentOf(obstacle.points), obstacle.radius);
}

bool outside(const plan::Plan& plan, const std::vector<std::vector<Point>>& outlines, Point p) {
  return !plan.set.rooms.empty() && offKnownGround(p, outlines, plan) > kNearly;
}

}  // namespace

std::vector<std::vector<Point>> doorwayFloors(const plan::Plan& plan) {
  std::vector<std::vector<Point>> floors;
  for (const auto& opening : plan.set.openings) {
    const plan::Wall* wall = plan.set.walls.find(opening.wall);
    if (!wall) continue;
    for (const auto& quad : geometry::bandAround(geometry::Course(wall->points), wall->thickness, opening.along))
      floors.emplace_back(quad.begin(), quad.end());
  }
  return floors;
}

std::optional<NoGround> noGroundAt(const Take& take, Point place, double height) {
  for (const auto& obstacle : standing(take, height))
    if (holds(obstacle, place)) return NoGround{obstacle.id};
  if (outside(take.plan(), groundOutlines(take.plan()), place)) return NoGround{};
  return std::nullopt;
}

std::vector<std::uint8_t> groundCells(const Take& take, const geometry::Grid& grid, double height) {
  const plan::Plan& plan = take.plan();
  std::vector<std::uint8_t> ground(grid.cells(), plan.set.rooms.empty() ? 1 : 0);
  // Of each outline and shelter only the cells it may reach are asked.
  const auto reach = [&](const Extent& box, const auto& off) {
    eachCellIn(grid, grown(box, kNearly), [&](std::size_t cell) {
      if (!ground[cell]) ground[cell] = off(grid.centre(cell)) <= kNearly;
    });
  };
  for (const auto& outline : groundOutlines(plan))
    reach(geometry::extentOf(outline), [&](Point p) { return offOutline(p, outline); });
  for (const auto& shelter : plan.shelters)
    reach(grown({shelter.pos, shelter.pos}, shelter.radius), [&](Point p) { return offShelter(p, shelter); });
  for (const auto& obstacle : standing(take, height))
    eachCellIn(grid, reachOf(obstacle), [&](std::size_t cell) {
      if (ground[cell] && holds(obstacle, grid.centre(cell))) ground[cell] = 0;
    });
  return ground;
}

}  // namespace wend::answers
