/// A pane that turns into a mirror as the light beyond it goes.
#pragma once

#include "tests/core/answers/small_plan.h"
#include "tests/samples.h"

namespace wend::answers {

inline plan::Area lightArea(const std::string& id, std::vector<geometry::Point> outline, double stop) {
  plan::Area area;
  area.id = base::Id<plan::Area>(id);
  area.shape = plan::Outline{std::move(outline)};
  area.use = {plan::AreaUse::light};
  area.states = {{{}, "", "", {{{0, 0}, stop, {}}}}};
  return area;
}

/// The camera looks square through a window 4 m away into a garden; T8 in the room.
inline plan::Plan darkWindow(double garden) {
  plan::Plan plan = smallPlan();
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("north");
  wall.points = {{-5, 4}, {5, 4}};
  wall.thickness = 0.2;
  plan.set.walls.add(wall);
  plan::Opening pane;
  pane.id = base::Id<plan::Opening>("w1");
  pane.name = "W1";
  pane.wall = "north";
  pane.along = {4, 6};
  pane.sill = 0.8;
  pane.head = 2.2;
  pane.fill = plan::OpeningFill::glass;
  plan.set.openings.add(pane);
  plan.set.areas.add(lightArea("room", {{-5, -9}, {5, -9}, {5, 4}, {-5, 4}}, 8));
  plan.set.areas.add(lightArea("garden", {{-5, 4}, {5, 4}, {5, 20}, {-5, 20}}, garden));
  return plan;
}

/// The street outside the shop window at one stop, by day and night.
inline plan::Plan firstBatchWithStreetAt(double stop) {
  plan::Plan plan = samplePlan("first-batch.wend");
  const std::size_t at = plan.set.areas.indexOf("street");
  plan::Area street = plan.set.areas[at];
  street.byClock.clear();
  street.states = {{{}, "", "", {{{20, 4}, stop, {}}}}};
  plan.set.areas.replace(at, street);
  return plan;
}

}  // namespace wend::answers
