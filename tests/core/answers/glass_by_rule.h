/// The ground that shows in glass against the rule's own way of finding whom glass shows: all glass in one scene, nobody
/// left out beforehand.
#pragma once

#include <algorithm>
#include <tuple>

#include "core/answers/glass_ground.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {

/// Every cell of the map against what the rule tells of a crew of whom one stands on each cell, over the whole take; how
/// often it tells of one.
inline std::size_t heldAgainstTheRule(plan::Plan plan) {
  plan.crew = {};
  const GlassGround ground = *glassGroundOf(*takeOf(plan), {1.8, {0, plan.clock.length}, {}});
  for (std::size_t cell = 0; cell < ground.grid.cells(); ++cell)
    plan.crew.add(standing("c" + std::to_string(cell), ground.grid.centre(cell)));
  std::vector<GlassGround::Showing> told;
  const auto mirrors = paneMirrors(*takeOf(plan), {});
  for (const auto& mirror : *mirrors) {
    if (mirror.who.empty() || mirror.who[0] != 'c' || mirror.who == "camera") continue;
    const auto pane = std::find(ground.panes.begin(), ground.panes.end(), mirror.pane);
    told.push_back(
        {std::stoul(mirror.who.substr(1)), static_cast<std::size_t>(pane - ground.panes.begin()), mirror.span});
  }
  const auto byCell = [](const auto& a, const auto& b) {
    return std::tuple(a.cell, a.span.from, a.pane) < std::tuple(b.cell, b.span.from, b.pane);
  };
  auto mapped = ground.showings;
  std::sort(told.begin(), told.end(), byCell);
  std::sort(mapped.begin(), mapped.end(), byCell);
  EXPECT_EQ(mapped, told) << mapped.size() << " on the map, " << told.size() << " by the rule";
  return told.size();
}

}  // namespace wend::answers
