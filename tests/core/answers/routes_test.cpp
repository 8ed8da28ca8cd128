// Routes found past a camera: held against sight itself, instant by instant, and against the check of drawn routes.
#include "core/answers/routes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/answers/on_found_routes.h"
#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/base/text.h"
#include "core/sight/body.h"
#include "tests/core/answers/two_rooms.h"

namespace wend::answers {
namespace {

/// True when a person on the route's place of `t` would be seen at `s`.
bool seenAt(const Take& take, const plan::Crew& crew, Point pos, double s) {
  const auto eye = take.eyeAt(s, take.plan().sightRules.margin);
  const double floor = take.people().floorAt(pos);
  return sight::bodySight(take.scene().at(s), *eye, {pos, crew.radius, floor, floor + crew.height}).seen;
}

/// Instants, a hundred a second, at which the person of the route is seen, within two seconds sooner and one later too.
int instantsSeen(const Take& take, const plan::Crew& crew, const FoundRoute& route, double bars) {
  int seen = 0;
  for (int k = 0; k <= int(100 * take.length()); ++k) {
    const double t = std::min(k / 100.0, take.length());
    const Point pos = route.at(t);
    bool any = seenAt(take, crew, pos, t);
    for (double s = t - 1 * bars; s <= t + 2 * bars && !any; s += 0.1)
      if (s >= 0 && s <= take.length()) any = seenAt(take, crew, pos, s);
    seen += any;
  }
  return seen;
}

TEST(FoundRoutes, AreSeenAtNoInstantNorWithinTheAllowancesByCountingAHundredASecond) {
  const TakePtr take = takeOf(withNeeds(
      twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 18), need(plan::Stays{"ka"}, 24, 30)}));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_TRUE(route.found) << route.why;
  EXPECT_EQ(route.walks.size(), 2u);
  EXPECT_TRUE(route.breaks.empty());
  EXPECT_EQ(instantsSeen(*take, take->plan().crew[0], route, 1), 0);
  // The count can fail: one who stays where the route starts is seen while the camera looks round.
  FoundRoute stays = route;
  stays.walks.clear();
  EXPECT_GT(instantsSeen(*take, take->plan().crew[0], stays, 0), 50);
}

TEST(FoundRoutes, KeepAwayFromWallsAndTheRig) {
  const TakePtr take = takeOf(withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)}));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_TRUE(route.found) << route.why;
  const double radius = take->plan().crew[0].radius;
  for (double t = 0; t <= 30; t += 0.01) {
    const Point p = route.at(t);
    EXPECT_GE(std::min({p.x, 9 - p.x, p.y, 4 - p.y}), 0.05 + radius - 1e-9) << t;
    EXPECT_GE(geometry::distance(p, Point{2, 1.2}), 0.4 + radius - 1e-9) << t;
    // Between the rooms only the door is open, from 2.6 to 3.6 up the wall.
    if (std::abs(p.x - 5) < 0.05) {
      EXPECT_GE(p.y, 2.6 + radius - 1e-9) << t;
      EXPECT_LE(p.y, 3.6 - radius + 1e-9) << t;
    }
  }
}

TEST(FoundRoutes, KeepAsMuchRoomAsTheNarrowestPlaceOnTheWayLeaves) {
  const auto roomOf = [](double from, double until, double tight) {
    plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)});
    plan::Opening door = plan.set.openings[0];
    door.along = {from, until};
    plan.set.openings.replace(0, door);
    plan.thresholds["clearance-tight"] = tight;
    const FoundRoute route = found(*takeOf(plan)).people.at(0);
    EXPECT_TRUE(route.found) << route.whole();
    return route.room;
  };
  EXPECT_DOUBLE_EQ(roomOf(2.3, 3.8, 1), 0.30) << "1.5 m wide";
  EXPECT_DOUBLE_EQ(roomOf(2.6, 3.76, 1), 0.15) << "1.16 m wide";
  EXPECT_DOUBLE_EQ(roomOf(2.6, 3.5, 1), 0) << "0.9 m wide";
  EXPECT_DOUBLE_EQ(roomOf(2.3, 3.8, 0.5), 0.15) << "comfortable is what the plan says";
}

TEST(FoundRoutes, LeaveOnlyTheOneInTheNarrowDoorLessRoom) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)});
  plan::Opening door = plan.set.openings[0];
  door.along = {2.6, 3.5};
  plan.set.openings.replace(0, door);
  plan::Crew second = plan.crew[0];
  second.id = base::Id<plan::Crew>("ac2");
  second.needs = {};
  plan.crew.add(second);
  const FoundRoutes routes = found(*takeOf(plan));
  ASSERT_TRUE(routes.people.at(0).found && routes.people.at(1).found);
  EXPECT_DOUBLE_EQ(routes.people[0].room, 0);
  EXPECT_DOUBLE_EQ(routes.people[1].room, 0.30) << "who passes no door keeps comfortable room";
  for (double t = 0; t <= 30; t += 0.01)
    EXPECT_GE(geometry::distance(routes.people[0].at(t), routes.people[1].at(t)), 0.56 + 0.30 - 1e-6) << t;
}

TEST(FoundRoutes, WalkAtSilentPaceWhereThatGetsThemThrough) {
  const auto peak = [](double from) {
    plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, from, 14)});
    plan::Shelter kb = *plan.shelters.find("kb");
    kb.pos.x = 7.7;
    plan::Crew brisk = plan.crew[0];
    brisk.speed = 1.3;
    plan.crew.replace(0, brisk);
    plan.shelters.replace(plan.shelters.indexOf("kb"), kb);
    const FoundRoute route = found(*takeOf(plan)).people.at(0);
    EXPECT_TRUE(route.found) << route.whole();
    double most = 0;
    for (const auto& walk : route.walks) most = std::max(most, walk.walk.peakSpeed);
    return most;
  };
  EXPECT_LE(peak(12), 1 + 1e-6);
  EXPECT_GT(peak(7.5), 1 + 1e-6) << "3.3 m from shelter to shelter in eight steps of 0.38 s";
}

TEST(FoundRoutes, StandWhereTheyHaveToStayAndBindWalksToSecondsThatHold) {
  const TakePtr take = takeOf(withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)}));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_EQ(route.walks.size(), 1u);
  const crew::Walk& walk = route.walks[0].walk;
  EXPECT_LE(walk.peakSpeed, 1.1 + 1e-9);
  EXPECT_GE(walk.span.from, 4);
  ASSERT_TRUE(walk.latestLeave && walk.earliestArrive);
  // Left at its latest, the walk still comes in time for the second shelter; both are good to a hundredth of a second.
  EXPECT_LE(*walk.latestLeave + walk.span.length(), 12.01);
  EXPECT_GE(*walk.earliestArrive - walk.span.length(), 3.99);
  EXPECT_EQ(route.stands.front().shelter, "ka");
  EXPECT_EQ(route.stands.back().shelter, "kb");
}

TEST(FoundRoutes, SayWhyThereIsNoneWithFiguresThatSightConfirms) {
  const TakePtr take = takeOf(withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 30)}));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_FALSE(route.found);
  ASSERT_TRUE(route.stuck && route.stuck->least);
  EXPECT_EQ(route.stuck->needs, std::vector<std::size_t>{0});
  // Whoever stands in the middle of the shelter is seen so long, and barred three seconds longer.
  int steps = 0;
  double first = 30;
  for (double t = 0; t <= 30; t += 0.01)
    if (seenAt(*take, take->plan().crew[0], {4, 3}, t)) ++steps, first = std::min(first, t);
  EXPECT_GT(steps, 100);
  EXPECT_LE(route.stuck->least->seconds, steps * 0.01 + 3 + 2 * 0.46);
  EXPECT_GE(route.stuck->least->seconds, 3);
  EXPECT_NEAR(route.stuck->until, first - 2, 1.2);
  for (const char* part : {"nobody unseen gets past", "at best seen", "any of these frees it: not staying at ka"})
    EXPECT_NE(route.whole().find(part), std::string::npos) << route.whole();
  EXPECT_EQ(route.whole().find("more places"), std::string::npos) << route.whole();
  ASSERT_EQ(route.notes.size(), 1u);
  EXPECT_NE(route.notes[0].find("cells of 0.10 m in steps of 0.45 s"), std::string::npos) << route.notes[0];
}

TEST(FoundRoutes, FreesTheStartsThatANeedBarsWithTheNeed) {
  const FoundRoute route =
      found(*takeOf(withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 4.2, 14)})))
          .people.at(0);
  ASSERT_TRUE(route.stuck) << "two tenths of a second from shelter to shelter";
  EXPECT_EQ(route.stuck->needs, (std::vector<std::size_t>{0, 1})) << "without the first one starts in the second";
}

/// One who has to be in kb from 7 s on and walks too slowly for that.
plan::Plan tooSlow(double speed) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 7, 14)});
  plan::Crew slow = plan.crew[0];
  slow.speed = speed;
  plan.crew.replace(0, slow);
  return plan;
}

TEST(FoundRoutes, SayOfNoPaceThatItFreesButOneThePlanIsFreedBy) {
  int said = 0;
  for (const double speed : {0.7, 0.77, 0.83, 0.9, 0.97}) {
    const FoundRoute stuck = found(*takeOf(tooSlow(speed))).people.at(0);
    if (!stuck.stuck || !stuck.stuck->speed) continue;
    ++said;
    const double typed = std::stod(base::fixed(*stuck.stuck->speed, 2));
    EXPECT_TRUE(found(*takeOf(tooSlow(typed))).people.at(0).found) << speed << " freed by " << typed;
  }
  EXPECT_GT(said, 0);
}

TEST(FoundRoutes, SayNothingOfTimesPastTheTakesEnd) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 30)});
  plan::Crew crew = plan.crew[0];
  crew.speed = 0.83;  // in steps of 0.602 s the last ends after 30 s
  plan.crew.replace(0, crew);
  plan.camera.aims.back() = {{{"", 8}, 22, plan::Pace::even}, plan::OnBearing{410, 0}, {0, 0}, 0, {}};
  const FoundRoute route = found(*takeOf(plan)).people.at(0);
  ASSERT_TRUE(route.stuck && route.stuck->least) << "the lens looks at the shelter at the end";
  ASSERT_FALSE(route.stuck->exposures.empty());
  EXPECT_DOUBLE_EQ(route.stuck->exposures.back().span.until, 30);
  double seconds = 0;
  for (const auto& exposure : route.stuck->exposures) seconds += exposure.span.length();
  EXPECT_NEAR(route.stuck->least->seconds, seconds, 1e-6);
}

TEST(FoundRoutes, AreHeldAgainstTheRulesAsDrawnOnesAre) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)});
  plan::Cable cable;
  cable.id = base::Id<plan::Cable>("main");
  cable.points = {{5.5, -1}, {5.5, 5}};
  cable.height = 0.02;
  plan.cables.add(cable);
  const auto answers = *withRoutes(*answersOf(takeOf(plan)));
  ASSERT_TRUE(answers->routes->people.at(0).found);
  const bool told = std::any_of(answers->snags->begin(), answers->snags->end(),
                                [](const auto& snag) { return snag.rule == "step-crossed" && snag.who == "ac"; });
  EXPECT_TRUE(told) << "the cable lies across the way from room to room";
}

TEST(FoundRoutes, AreWhereTheyLeadOnceDrawnOut) {
  const auto answers = *withRoutes(
      *answersOf(takeOf(withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 14)}))));
  EXPECT_FALSE(instantAt(*answers->take, 13).crew[0].present);
  const auto drawn = *drawnOut(answers);
  for (const double t : {0.0, 6.5, 13.0, 30.0}) {
    const auto at = instantAt(*drawn->take, t).crew[0];
    ASSERT_TRUE(at.present) << t;
    EXPECT_LT(geometry::distance(at.pos, answers->routes->people[0].at(t)), 1e-6) << t;
  }
  EXPECT_EQ(instantAt(*drawn->take, 13).crew[0].shelter, "kb");
}

const snags::Snag* routeSnag(const Answers& answers) {
  for (const auto& snag : *answers.snags)
    if (snag.rule == "route-impossible") return &snag;
  return nullptr;
}

TEST(FoundRoutes, BecomeASnagWhereThereIsNoneAndNoneWhereThereIs) {
  const auto answersOfNeed = [](plan::Need only) {
    return *withRoutes(*answersOf(takeOf(withNeeds(twoRooms(), {std::move(only)}))));
  };
  const AnswersPtr stuck = answersOfNeed(need(plan::Stays{"ka"}, 0, 30));
  const snags::Snag* snag = routeSnag(*stuck);
  ASSERT_TRUE(snag);
  EXPECT_EQ(snag->who, "ac");
  const crew::Stuck& figures = *stuck->routes->find("ac")->stuck;
  EXPECT_EQ(snag->from, figures.exposures.front().span.from);
  EXPECT_EQ(snag->until, figures.exposures.back().span.until);
  // Seen there, by sight itself, at some instant within the bars of the span the snag tells.
  bool seen = false;
  for (double t = snag->from - 1; t <= snag->until + 2; t += 0.02)
    seen = seen || seenAt(*stuck->take, stuck->take->plan().crew[0], *snag->pos, t);
  EXPECT_TRUE(seen);
  EXPECT_NE(snag->mend.find("not staying at ka"), std::string::npos) << snag->mend;
  EXPECT_EQ(routeSnag(*answersOfNeed(need(plan::Stays{"ka"}, 0, 4))), nullptr);
}

TEST(FoundRoutes, SendNobodyToStandOutsideEveryRoom) {
  plan::Plan plan = withNeeds(twoRooms(), {});
  plan.set.rooms.remove(plan.set.rooms.indexOf("east"));
  plan.shelters.remove(plan.shelters.indexOf("kb"));
  plan::Crew slow = plan.crew[0];
  slow.speed = 0.2;  // too slow to keep behind the camera while it turns
  plan.crew.replace(0, slow);
  const FoundRoute none = found(*takeOf(plan)).people.at(0);
  ASSERT_FALSE(none.found);
  EXPECT_NE(none.cures().find("standing or walking outside every room"), std::string::npos) << none.whole();

  const auto standsEast = [](const plan::Plan& with) {
    const FoundRoute route = found(*takeOf(with)).people.at(0);
    return route.found && std::any_of(route.stands.begin(), route.stands.end(),
                                      [](const FoundStand& stand) { return stand.pos.x > 5.05; });
  };
  EXPECT_FALSE(standsEast(plan));
  plan::Plan sheltered = plan;
  sheltered.shelters.add(*twoRooms().shelters.find("kb"));
  EXPECT_TRUE(standsEast(sheltered)) << "in the shelter";
  plan::Shelter atDoor = *twoRooms().shelters.find("kb");
  atDoor.pos = {5.8, 3.1};
  atDoor.radius = 0.6;
  sheltered.shelters.replace(1, atDoor);
  EXPECT_TRUE(standsEast(sheltered)) << "past the doorway, whose ground is no room's";
  plan::Plan yard = plan;
  plan::Area area;
  area.id = base::Id<plan::Area>("yard");
  area.shape = plan::Outline{{{5, 0}, {9, 0}, {9, 4}, {5, 4}}};
  area.use = {plan::AreaUse::outside};
  yard.set.areas.add(area);
  EXPECT_TRUE(standsEast(yard));
  area.use = {plan::AreaUse::outside, plan::AreaUse::exitLane};
  yard.set.areas.replace(0, area);
  EXPECT_FALSE(standsEast(yard)) << "a lane that has to stay free";
  plan::Plan roomless = plan;
  roomless.set.rooms = {};
  EXPECT_TRUE(found(*takeOf(roomless)).people.at(0).found) << "without rooms nothing is outside";
}

/// The two rooms with ground of a use over what somebody who stays at kb from 12 s on would stand on.
plan::Plan withGround(plan::AreaUse use, std::vector<Point> outline) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 30)});
  plan::Area area;
  area.id = base::Id<plan::Area>("ground");
  area.shape = plan::Outline{std::move(outline)};
  area.use = {use};
  plan.set.areas.add(area);
  return plan;
}

/// The least distance of somebody's edge from x metres on, on their way and where they stand.
struct Nearest {
  double going = 1e9, standing = 1e9;
};
Nearest nearestTo(double x, const FoundRoute& route, double radius) {
  Nearest nearest;
  for (double t = 0; t <= 30; t += 0.01) nearest.going = std::min(nearest.going, x - radius - route.at(t).x);
  for (const auto& stand : route.stands) nearest.standing = std::min(nearest.standing, x - radius - stand.pos.x);
  return nearest;
}

TEST(FoundRoutes, SendNobodyToStandInALaneOrIntoClosedGround) {
  const std::vector<Point> half{{7.5, -1}, {10, -1}, {10, 5}, {7.5, 5}};
  for (const auto use : {plan::AreaUse::exitLane, plan::AreaUse::hazard, plan::AreaUse::keepOut}) {
    const FoundRoute route = found(*takeOf(withGround(use, half))).people.at(0);
    ASSERT_TRUE(route.found) << route.whole();
    EXPECT_GE(nearestTo(7.5, route, 0.28).standing, -1e-9);
    const double going = use == plan::AreaUse::exitLane ? 0 : nearestTo(7.5, route, 0.28).going;
    EXPECT_GE(going, -1e-9);
    ASSERT_EQ(route.notes.size(), 1u);
    EXPECT_EQ(route.notes[0], "behind the wall reaches into ground, where nobody is sent to stand");
  }
  const FoundRoute free = found(*takeOf(withGround(plan::AreaUse::noisy, half))).people.at(0);
  EXPECT_TRUE(free.notes.empty());
}

TEST(FoundRoutes, LetNobodyPaceInAShelterAllOfWhichIsALane) {
  const FoundRoute route =
      found(*takeOf(withGround(plan::AreaUse::exitLane, {{5.5, -1}, {10, -1}, {10, 5}, {5.5, 5}}))).people.at(0);
  EXPECT_FALSE(route.found);
}

TEST(FoundRoutes, WalkThroughALaneButNotThroughClosedGround) {
  const std::vector<Point> across{{5.3, -1}, {5.9, -1}, {5.9, 5}, {5.3, 5}};
  EXPECT_TRUE(found(*takeOf(withGround(plan::AreaUse::exitLane, across))).people.at(0).found);
  EXPECT_FALSE(found(*takeOf(withGround(plan::AreaUse::keepOut, across))).people.at(0).found);
  EXPECT_FALSE(found(*takeOf(withGround(plan::AreaUse::hazard, across))).people.at(0).found);
}

TEST(FoundRoutes, WhoIsSeenFromTheStartOnHasALeastExposureAndNotNowhereToStart) {
  std::string text = kTwoRooms;
  text.replace(text.find("270"), 3, "70");
  const FoundRoute route =
      found(*takeOf(withNeeds(file::readPlan(text)->plan, {need(plan::Stays{"ka"}, 0, 4)}))).people.at(0);
  ASSERT_TRUE(route.stuck) << "the shelter is in frame from the start";
  EXPECT_DOUBLE_EQ(route.stuck->until, 0);
  ASSERT_TRUE(route.stuck->least) << route.why;
  EXPECT_GE(route.stuck->least->seconds, 4);
  EXPECT_EQ(route.stuck->needs, std::vector<std::size_t>{0});
}

TEST(FoundRoutes, TwoPeopleShareNoShelterThatHoldsOne) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"kb"}, 2, 4)});
  plan::Crew second = plan.crew[0];
  second.id = base::Id<plan::Crew>("ac2");
  second.needs = {need(plan::Stays{"kb"}, 20, 22)};
  plan.crew.add(second);
  const FoundRoutes routes = found(*takeOf(plan));
  ASSERT_TRUE(routes.people.at(0).found && routes.people.at(1).found);
  for (double t = 0; t <= 30; t += 0.01)
    EXPECT_GE(geometry::distance(routes.people[0].at(t), routes.people[1].at(t)), 0.56 - 1e-6) << t;
}

TEST(FoundRoutes, SeeWhoTheyHaveToSee) {
  plan::Plan plan = samplePlan("one-room.wend");
  plan::Crew boom = plan.crew[plan.crew.indexOf("boom")];
  boom.marks.clear();
  boom.needs = {need(plan::Sees{"nora"}, 0, 20)};
  plan.crew.replace(plan.crew.indexOf("boom"), boom);
  const TakePtr take = takeOf(plan);
  const FoundRoutes routes = found(*take);
  const FoundRoute* route = routes.find("boom");
  ASSERT_TRUE(route && route->found) << (route ? route->why : "");
  EXPECT_TRUE(route->breaks.empty());
  EXPECT_EQ(routes.find("op"), nullptr);
  // A person behind the eastern wall sees nobody, and the check says so over the whole of the need.
  const auto blind = needBreaks(*take, plan.crew.indexOf("boom"), [](double) { return Point{7.5, 2}; });
  ASSERT_EQ(blind.size(), 1u);
  EXPECT_EQ(blind[0].why, snags::NeedFails::blind);
  EXPECT_NEAR(blind[0].span.length(), 20, 0.05);
}

TEST(FoundRoutes, TellWhatIsNotPlannedFor) {
  const TakePtr take = takeOf(withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4)}));
  EXPECT_TRUE(found(*take).people.at(0).notes.empty());
  const auto notes = needsLeftOut(withNeeds(twoRooms(), {need(plan::Holds{"l1"}, 0, 4)}), 0);
  EXPECT_EQ(notes, std::vector<std::string>{"not planned for: holding the link l1, at neither end of which they are"});
}

TEST(FoundRoutes, AreNotLookedForWhereEverybodyHasTheirWay) {
  EXPECT_FALSE(routesWanted(*takeOf(samplePlan("first-batch.wend"))));
  EXPECT_TRUE(routesWanted(*takeOf(twoRooms())));
  EXPECT_EQ(routeGroundOf(*takeOf(samplePlan("first-batch.wend"))).problems().front().code, "nobody");
}

TEST(FoundRoutes, LeaveOutThoseForWhomTheMapIsTooNarrowAndStopWhenCancelled) {
  const TakePtr take = takeOf(twoRooms());
  const auto ground = routeGroundOf(*take);
  plan::Plan wide = twoRooms();
  plan::Crew crew = wide.crew[0];
  crew.radius = 0.4;
  wide.crew.replace(0, crew);
  const auto routes = foundRoutes(*takeOf(wide), *ground);
  EXPECT_FALSE((*routes)->people.at(0).found);
  EXPECT_NE((*routes)->people.at(0).why.find("wider"), std::string::npos);
  const auto stopped = foundRoutes(*take, *ground, base::Cancel::atPoll(1));
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.problems().front().code, "cancelled");
}

plan::Plan firstBatchWithout(const char* id) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan::Crew crew = plan.crew[plan.crew.indexOf(id)];
  crew.marks.clear();
  plan.crew.replace(plan.crew.indexOf(id), crew);
  return plan;
}

TEST(FoundRoutes, KeepTheFirstAssistantOfFirstBatchUnseenAndNearTheCamera) {
  const TakePtr take = takeOf(firstBatchWithout("ac1"));
  const FoundRoutes routes = found(*take);
  const FoundRoute* route = routes.find("ac1");
  ASSERT_TRUE(route && route->found) << (route ? route->why : "");
  EXPECT_TRUE(route->breaks.empty());
  const plan::Crew& crew = *take->plan().crew.find("ac1");
  EXPECT_EQ(instantsSeen(*take, crew, *route, 0), 0);
  const double until = plan::secondsOf(take->plan(), *crew.needs[0].until);
  for (double t = 0; t <= until; t += 0.01)
    EXPECT_LE(geometry::distance(route->at(t), take->people().camera().place(t)), 9 + 1e-9) << t;
}

}  // namespace
}  // namespace wend::answers
