// Shadows by the sun on the floor plan.
#include "core/sheets/plan_sun.h"

#include <algorithm>

#include "tests/core/answers/sunlit.h"

namespace wend::sheets {
namespace {

using namespace answers;

geometry::Drawing drawn(const plan::Plan& plan, const PlanView& view) {
  const auto answers = answersOf(takeOf(plan));
  EXPECT_TRUE(answers.ok());
  Layer layer = sunLayer(**answers, instantAt(*(*answers)->take, 0), view);
  placeLabels(layer.drawing, std::move(layer.writing.labels));
  return layer.drawing;
}

template <class Shape>
std::vector<Shape> all(const geometry::Drawing& drawing) {
  std::vector<Shape> found;
  for (const auto& shape : drawing.shapes)
    if (const auto* one = std::get_if<Shape>(&shape)) found.push_back(*one);
  return found;
}

/// How far a ring of the picture reaches from a place of the plan, away from the sun.
double reachOf(const geometry::Path& path, const PlanView& view, geometry::Point from, double sunBearing) {
  const geometry::Vec away = geometry::direction(sunBearing + 180);
  double most = 0;
  for (const geometry::Point p : path.rings[0]) most = std::max(most, geometry::dot(view.toPlan(p) - from, away));
  return most;
}

// 1.75 m / tan 38 degrees = 2.2399 m.
TEST(SunOnThePlan, DrawsTheShadowOfSomebodyOf175UnderASunOf38DegreesTo224) {
  const plan::Plan plan = sunlit(38);
  PlanView view;
  view.centre = {0, 2};
  const geometry::Drawing drawing = drawn(plan, view);
  const auto paths = all<geometry::Path>(drawing);
  ASSERT_EQ(paths.size(), 2u) << "the camera's and NORA's";
  // The ring touches her round body from outside, half a per cent of its radius too wide.
  const double radius = plan.performers[0].radius;
  EXPECT_NEAR(reachOf(paths[1], view, {0, 3}, sunBearing(plan)), 2.2399 + radius, 0.005);
  const auto texts = all<geometry::Text>(drawing);
  ASSERT_EQ(texts.size(), 1u);
  EXPECT_EQ(texts[0].text, "2.24 m");
}

TEST(SunOnThePlan, DrawsNothingUnderARoofAtNightOrWithoutASite) {
  plan::Plan plan = sunlit(38);
  plan::Room hall;
  hall.id = base::Id<plan::Room>("hall");
  hall.outline = {{-9, -9}, {9, -9}, {9, 9}, {-9, 9}};
  plan::Plan roofed = plan;
  roofed.set.rooms.add(hall);
  EXPECT_TRUE(drawn(roofed, {}).shapes.empty());
  plan::Plan nowhere = plan;
  nowhere.site.reset();
  EXPECT_TRUE(drawn(nowhere, {}).shapes.empty());
  plan.clock.timeOfDay = 0;
  EXPECT_TRUE(drawn(plan, {}).shapes.empty());
}

}  // namespace
}  // namespace wend::sheets
