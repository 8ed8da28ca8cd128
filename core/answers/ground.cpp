// The map of the ground: a standing person in each cell, over the extent of the set and a little more.
#include <algorithm>
#include <cmath>

#include "core/answers/answers.h"
#include "core/answers/clear_ground.h"
#include "core/answers/footing.h"
#include "core/answers/hiders.h"
#include "core/answers/route_ground.h"
#include "core/answers/set_scene.h"
#include "core/answers/sight_steps.h"
#include "core/sight/ground_map.h"

namespace wend::answers {

namespace {

/// Ground beyond everything that is drawn does not count as the set's.
constexpr double kBorder = 1.0;
/// The map's answer is the same on any number.
constexpr int kThreads = 2;
/// Cells at most; larger sets get larger cells.
constexpr double kMostCells = 150000;

}  // namespace

geometry::Extent extentOfSet(const Take& take) {
  std::vector<Point> points;
  const auto add = [&](const std::vector<Point>& more) { points.insert(points.end(), more.begin(), more.end()); };
  const plan::Plan& plan = take.plan();
  for (const auto& room : plan.set.rooms) add(room.outline);
  for (const auto& wall : plan.set.walls) add(wall.points);
  for (const auto& piece : plan.set.pieces) add(outlineOf(piece.shape));
  for (const auto& area : plan.set.areas) add(outlineOf(area.shape));
  for (const auto& mark : take.people().camera().marks()) points.push_back(mark.pos);
  for (const auto& shelter : plan.shelters) points.push_back(shelter.pos);
  return geometry::extentOf(points);
}

geometry::Grid groundGrid(const Take& take) {
  const geometry::Extent extent = extentOfSet(take);
  const double area = (extent.high.x - extent.low.x + 2 * kBorder) * (extent.high.y - extent.low.y + 2 * kBorder);
  return geometry::gridOver(extent, std::max(take.plan().sightRules.cell, std::sqrt(area / kMostCells)), kBorder);
}

namespace {

base::Result<sight::GroundMapSpec> groundSpec(const Take& take, const GroundQuestion& question) {
  if (!take.plan().lens)
    return base::Problem{"no-lens", "/lens", "no lens", "a lens", "without one nothing is known of sight; add it"};
  sight::GroundMapSpec spec;
  spec.grid = groundGrid(take);
  spec.take = {0, take.length()};
  spec.step = 1 / sightRate(take);
  spec.radius = take.plan().sightRules.radius;
  // One map serves whoever stands on any floor of the plan.
  const FloorRange floors = floorsOf(take.plan());
  spec.floor = floors.lowest;
  spec.top = question.height + floors.highest;
  return spec;
}

sight::EyeAt crewEye(const Take& take) {
  return [&take, margin = take.plan().sightRules.margin](double t) { return take.eyeAt(t, margin); };
}

base::Problem cancelled() {
  return {"cancelled", "", "", "", "a newer plan took its place"};
}

}  // namespace

base::Result<std::shared_ptr<const sight::GroundMap>> groundOf(const Take& take, const GroundQuestion& question,
                                                               const base::Cancel& cancel,
                                                               const sight::GroundMap* earlier) {
  const auto spec = groundSpec(take, question);
  if (!spec) return spec.problems();
  auto map = sight::GroundMap::over(take.scene(), crewEye(take), *spec, kThreads, cancel, earlier);
  if (!map) return cancelled();
  return std::shared_ptr<const sight::GroundMap>(std::make_shared<sight::GroundMap>(std::move(*map)));
}

std::vector<std::uint8_t> ClearGround::clearFloor() const {
  std::vector<std::uint8_t> floor(cells.size());
  for (std::size_t cell = 0; cell < cells.size(); ++cell) floor[cell] = cells[cell] && ground[cell];
  return floor;
}

base::Result<ClearGround> clearGroundOf(const Take& take, const GroundQuestion& question, geometry::Span span,
                                        const base::Cancel& cancel) {
  const auto spec = groundSpec(take, question);
  if (!spec) return spec.problems();
  const plan::SightRules& rules = take.plan().sightRules;
  const auto clear =
      sight::clearGround(take.scene(), crewEye(take), *spec, span, rules.early, rules.late, kThreads, cancel);
  if (!clear) return cancelled();
  ClearGround ground{spec->grid, std::vector<std::uint8_t>(spec->grid.cells()),
                     groundCells(take, spec->grid, question.height)};
  for (std::size_t cell = 0; cell < ground.cells.size(); ++cell) ground.cells[cell] = clear->at(cell);
  return ground;
}

}  // namespace wend::answers
