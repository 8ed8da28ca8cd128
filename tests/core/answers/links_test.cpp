// Links of a whole plan: where the aerials are and what stands between them.
#include "core/answers/whole_take.h"
#include "core/crew/link.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

constexpr double kMhz = 2400;

/// A link from the camera to an assistant 4 m to the east.
plan::Plan linked() {
  plan::Plan plan = smallPlan();
  plan.crew.add(standing("ac1", {4, 0}));
  plan::Link link;
  link.id = base::Id<plan::Link>("l1");
  link.from = plan::kCameraEnd;
  link.to = "ac1";
  link.mhz = kMhz;
  link.budget = 60;
  plan.links.add(link);
  return plan;
}

std::optional<snags::LinkAt> firstOf(const plan::Plan& plan) {
  const auto take = takeOf(plan);
  const auto links = linksOver(*take, {sampleAt(*take, 0)});
  return links.at(0).at.at(0);
}

/// Between the two.
plan::Wall wallBetween() {
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{2, -3}, {2, 3}};
  return wall;
}

TEST(LinksOver, MeasureFromTheSensorToTwoThirdsOfAPersonsHeight) {
  const auto at = firstOf(linked());
  ASSERT_TRUE(at);
  EXPECT_NEAR(at->metres, std::hypot(4, 1.5 - 1.2), 1e-9);
  EXPECT_NEAR(at->margin, 60 - crew::freeSpaceLoss(kMhz, at->metres), 1e-9);
}

TEST(LinksOver, TakeThePlansLossOfAWallOrElseTenDecibels) {
  const double open = firstOf(linked())->margin;
  plan::Plan plan = linked();
  plan::Wall wall = wallBetween();
  plan.set.walls.add(wall);
  EXPECT_NEAR(firstOf(plan)->margin, open - 10, 1e-9);
  wall.radioLoss = 3;
  plan.set.walls.replace(0, wall);
  EXPECT_NEAR(firstOf(plan)->margin, open - 3, 1e-9);
  EXPECT_EQ(firstOf(plan)->walls, 1);
}

TEST(LinksOver, TakeShutLeavesByWhatFillsThem) {
  const double open = firstOf(linked())->margin;
  const auto through = [](plan::OpeningFill fill, std::optional<double> loss) {
    plan::Plan plan = linked();
    plan.set.walls.add(wallBetween());
    plan::Opening door;
    door.id = base::Id<plan::Opening>("d1");
    door.wall = "w1";
    door.along = {2, 4};
    door.fill = fill;
    door.radioLoss = loss;
    plan.set.openings.add(door);
    return firstOf(plan)->margin;
  };
  EXPECT_NEAR(through(plan::OpeningFill::open, {}), open, 1e-9);
  EXPECT_NEAR(through(plan::OpeningFill::curtain, {}), open, 1e-9);
  EXPECT_NEAR(through(plan::OpeningFill::solid, {}), open - 6, 1e-9);
  EXPECT_NEAR(through(plan::OpeningFill::glass, {}), open - 6, 1e-9);
  EXPECT_NEAR(through(plan::OpeningFill::solid, 30), open - 30, 1e-9) << "a steel fire door";
}

TEST(LinksOver, CountEverybodyInTheWayButThoseAtTheEnds) {
  plan::Plan plan = linked();
  const double open = firstOf(plan)->margin;
  plan.crew.add(standing("grip", {2, 0}));
  EXPECT_EQ(firstOf(plan)->bodies, 1);
  EXPECT_NEAR(firstOf(plan)->margin, open - 6, 1e-9);
}

TEST(LinksOver, AreUnknownWhileAnEndIsNowhere) {
  plan::Plan plan = linked();
  plan::Crew absent = plan.crew[0];
  absent.marks.clear();
  plan.crew.replace(0, absent);
  EXPECT_FALSE(firstOf(plan));
}

TEST(LinksOver, EndAtTheTopOfAPieceOfGear) {
  plan::Plan plan = linked();
  plan::Gear receiver;
  receiver.id = base::Id<plan::Gear>("rx");
  receiver.pos = {0, -6};
  receiver.height = 2.5;
  plan.gear.add(receiver);
  plan::Link link = plan.links[0];
  link.to = "rx";
  plan.links.replace(0, link);
  EXPECT_NEAR(firstOf(plan)->metres, std::hypot(6, 1), 1e-9);
}

TEST(LinksOver, BecomeSnagsOfTheTake) {
  plan::Plan plan = linked();
  plan::Link link = plan.links[0];
  link.budget = 40;
  plan.links.replace(0, link);
  const auto answers = answersOf(takeOf(plan));
  ASSERT_TRUE(answers.ok());
  EXPECT_EQ(std::count_if((*answers)->snags->begin(), (*answers)->snags->end(),
                          [](const auto& snag) { return snag.key == "link-lost/l1///1"; }),
            1);
}

}  // namespace
}  // namespace wend::answers
