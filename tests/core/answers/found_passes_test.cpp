// What somebody passes on the route found for them.
#include "core/answers/found_passes.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/answers/set_scene.h"
#include "core/answers/whole_take.h"
#include "core/base/text.h"
#include "core/geometry/polygon.h"
#include "tests/core/answers/van_street.h"

namespace wend::answers {
namespace {

AnswersPtr routed(const plan::Plan& plan) {
  return *withRoutes(*answersOf(takeOf(plan)));
}

const snags::Snag* clearanceOf(const Answers& answers) {
  for (const auto& snag : *answers.snags)
    if (snag.rule == "clearance" && snag.who == "ac") return &snag;
  return nullptr;
}

TEST(FoundPasses, TellHowNearARouteWithoutRoomComesToWhat) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)});
  plan::Opening door = plan.set.openings[0];
  door.along = {2.6, 3.5};
  plan.set.openings.replace(0, door);
  const auto answers = routed(plan);
  const FoundRoute& route = answers->routes->people.at(0);
  ASSERT_TRUE(route.found);
  ASSERT_DOUBLE_EQ(route.room, 0) << "else this plan tells nothing of it";
  ASSERT_TRUE(route.nearest);
  EXPECT_EQ(route.nearest->what, "between");
  EXPECT_GE(route.nearest->metres, -1e-6);
  EXPECT_LE(route.nearest->metres, 0.45 - 0.28 + 1e-6) << "half of the door less the body";
  const snags::Snag* snag = clearanceOf(*answers);
  ASSERT_TRUE(snag);
  EXPECT_NE(snag->text.find("passes " + base::fixed(route.nearest->metres, 2) + " m from"), std::string::npos)
      << snag->text;
  EXPECT_NE(snag->text.find("on the route found"), std::string::npos) << snag->text;
}

TEST(FoundPasses, APaceThatFreesLeavesRoomWhereOneDoes) {
  const FoundRoute stuck = found(*takeOf(vanStreet(1.75))).people.at(0);
  ASSERT_TRUE(stuck.stuck && stuck.stuck->speed) << stuck.whole();
  const double pace = *stuck.stuck->speed;
  const FoundRoute freed = found(*takeOf(vanStreet(pace))).people.at(0);
  ASSERT_TRUE(freed.found) << pace;
  const bool warned = std::any_of(stuck.notes.begin(), stuck.notes.end(),
                                  [](const auto& note) { return note.find("to spare") != std::string::npos; });
  EXPECT_EQ(freed.room < 0.15, warned) << pace << " leaves " << freed.room;
}

// Beside the flat there is room enough: the way leads round it once the van has gone, or keeps off while it goes.
TEST(FoundPasses, KeepComfortablyOffWhatIsMovedAndSayHowNearItComes) {
  const auto answers = routed(vanStreet(2.6));
  const Take& take = *answers->take;
  const FoundRoute& route = answers->routes->people.at(0);
  ASSERT_TRUE(route.found);
  double least = 10;
  for (double t = 4; t <= 10; t += 0.01) {
    const Point p = route.at(t);
    // The van is a box of 4 m by 2 m that goes west by 2 m/s on the whole, eased or not: its place comes from the take.
    for (const auto& piece : crew::leavesOf(take.scene().at(t), namesOf(take.plan()))) {
      if (piece.id != "van") continue;
      const auto box = geometry::extentOf(piece.points);
      const double dx = std::max({box.low.x - p.x, p.x - box.high.x, 0.0});
      const double dy = std::max({box.low.y - p.y, p.y - box.high.y, 0.0});
      least = std::min(least, std::hypot(dx, dy) - 0.28);
    }
  }
  EXPECT_GE(least, 0.30 - 1e-6) << "comfortable, though the flat leaves the way less";
  const bool told = std::any_of(route.notes.begin(), route.notes.end(), [](const auto& note) {
    return note.find("caution: the van is moved past, ") == 0 && note.ends_with("mind local rules");
  });
  EXPECT_EQ(told, least <= kMindful) << least;
}

}  // namespace
}  // namespace wend::answers
