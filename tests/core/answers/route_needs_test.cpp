// Needs of links and poles over the ground, against the check of single places and against every route there is.
#include "core/answers/route_needs.h"

#include <gtest/gtest.h>

#include "core/answers/radio.h"
#include "core/answers/route_ground.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/two_rooms.h"
#include "tests/core/crew/route_reference.h"

namespace wend::answers {
namespace {

constexpr double kMhz = 2400;

/// A link from the camera to the assistant, who starts beside the camera and has to hold it all along. A wall takes
/// 10 dB.
plan::Plan linked(double budget) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Holds{"l1"}, 0, 30)});
  plan::Link link;
  link.id = base::Id<plan::Link>("l1");
  link.name = "focus link";
  link.from = "ac";
  link.to = plan::kCameraEnd;
  link.mhz = kMhz;
  link.budget = budget;
  plan.links.add(link);
  return plan;
}

/// Reaches four metres through a wall.
const double kThroughAWall = crew::freeSpaceLoss(kMhz, 4.0) + 10;

/// NORA speaks from the first second to the sixth, beside the wall between the rooms; the assistant holds the pole.
plan::Plan speaking(double reach) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Reaches{"p1"}, 0, 30)});
  plan::Performer nora;
  nora.id = base::Id<plan::Performer>("nora");
  nora.name = "NORA";
  plan::Mark mark;
  mark.id = "n1";
  mark.pos = {4.2, 2};
  nora.marks = {mark};
  plan.performers.add(nora);
  plan::Pole pole;
  pole.id = base::Id<plan::Pole>("p1");
  pole.crew = "ac";
  pole.reach = reach;
  plan.poles.add(pole);
  plan.speech.push_back({"nora", {"", 1}, {"", 6}, "Here."});
  return plan;
}

/// How often a need's ground says Yes or No, against the check at the cell's centre at both ends of the step.
struct Agreement {
  int falseYes = 0, falseNo = 0, yes = 0, no = 0;
};

Agreement agreementOf(const Take& take, std::size_t need, const geometry::Grid& grid, const crew::StepClock& clock) {
  const auto grounds = needGrounds(take, 0, grid, clock, {});
  plan::Plan only = take.plan();
  plan::Crew crew = only.crew[0];
  crew.needs = {crew.needs[need]};
  only.crew.replace(0, crew);
  const TakePtr alone = takeOf(only);
  Agreement found;
  for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
    const auto breaks = needBreaks(*alone, 0, [&](double) { return grid.centre(cell); });
    for (std::size_t step = 0; step < clock.steps; ++step) {
      bool fails = false;
      for (const double t : {clock.at(step), clock.at(step + 1)})
        for (const auto& broken : breaks)
          fails = fails || (t > broken.span.from - 0.02 && t < broken.span.until + 0.02);
      const bool met = grounds->at(need).met.at(cell, step);
      (met ? found.yes : found.no) += 1;
      found.falseYes += met && fails;
      found.falseNo += !met && !fails;
    }
  }
  return found;
}

const geometry::Grid kCoarse{{0.2, 0.2}, 0.4, 22, 9};

TEST(LinkNeed, IsWhatTheCheckOfEveryPlaceSays) {
  const TakePtr take = takeOf(linked(kThroughAWall));
  const Agreement found = agreementOf(*take, 1, kCoarse, crew::clockFor({0, 30}, 1.1, 0.4));
  EXPECT_EQ(found.falseYes, 0);
  EXPECT_LE(found.falseNo, (found.yes + found.no) / 50) << "of " << found.yes + found.no;
  EXPECT_GT(found.yes, 1000);
  EXPECT_GT(found.no, 500);
}

TEST(PoleNeed, IsWhatTheCheckOfEveryPlaceSays) {
  const TakePtr take = takeOf(speaking(1.6));
  const crew::StepClock clock = crew::clockFor({0, 30}, 1.1, 0.4);
  const Agreement found = agreementOf(*take, 0, kCoarse, clock);
  EXPECT_EQ(found.falseYes, 0);
  // Reach counts for every point of a cell, the check for its centre.
  EXPECT_LE(found.falseNo, (found.yes + found.no) / 20) << "of " << found.yes + found.no;
  EXPECT_GT(found.no, 200);
  // Beside her within reach, beyond the wall within reach, and out of reach.
  const auto ground = needGrounds(*take, 0, kCoarse, clock, {})->at(0).met;
  EXPECT_TRUE(ground.at(*kCoarse.cellAt({3.6, 2}), 1));
  EXPECT_FALSE(ground.at(*kCoarse.cellAt({5.5, 1.2}), 1)) << "the wall stands in the pole's way";
  EXPECT_FALSE(ground.at(*kCoarse.cellAt({1, 2}), 1));
  EXPECT_TRUE(ground.at(*kCoarse.cellAt({1, 2}), 8)) << "nobody speaks any more";
}

/// The cheapest route over the ground with needs checked place by place, by a plain search over every state.
std::optional<std::int64_t> costBySearchOfAll(const Take& take, const RouteMaps& maps, double& found) {
  const FoundRoutes routes = **foundRoutes(take, maps);
  const FoundRoute& route = routes.people.at(0);
  const crew::GroundTime ground = memberGround(take, *maps.upright, 0, route.room);
  crew::CellTimes met(ground.grid().cells(), ground.clock().steps, true);
  for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell) {
    for (const auto& broken : needBreaks(take, 0, [&](double) { return ground.grid().centre(cell); }))
      met.set(cell, ground.clock().meeting(broken.span), false);
  }
  crew::RouteTask task;
  task.ground = &ground;
  task.speed = take.plan().crew[0].speed;
  task.needs = {&met};
  for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell)
    if (ground.stand().at(cell, 0) && ground.clear().at(cell, 0) && met.at(cell, 0)) task.starts.push_back(cell);
  if (task.starts.empty()) return std::nullopt;
  found = route.found ? route.metres + 3.0 * static_cast<double>(route.walks.size()) : -1;
  return crew::reference::dijkstra(crew::reference::Graph(task)).cost;
}

plan::Plan coarse(plan::Plan plan) {
  plan.sightRules.cell = 0.25;
  return plan;
}

TEST(LinkNeed, GivesTheCheapestOfAllRoutesThatHoldIt) {
  const TakePtr take = takeOf(coarse(linked(crew::freeSpaceLoss(kMhz, 5.0) + 10)));
  double found = 0;
  const auto cost = costBySearchOfAll(*take, *routeGroundOf(*take), found);
  ASSERT_TRUE(cost.has_value());
  EXPECT_NEAR(found, static_cast<double>(*cost) / 1000, 0.26) << "a cell, where fans are half a degree apart";
  EXPECT_GT(found, 3);
}

TEST(PoleNeed, GivesTheCheapestOfAllRoutesThatServeIt) {
  const TakePtr take = takeOf(coarse(speaking(2)));
  double found = 0;
  const auto cost = costBySearchOfAll(*take, *routeGroundOf(*take), found);
  ASSERT_TRUE(cost.has_value());
  EXPECT_NEAR(found, static_cast<double>(*cost) / 1000, 0.26);
}

TEST(LinkNeed, HoldsAtEveryFrameOfTheRoute) {
  const TakePtr take = takeOf(linked(kThroughAWall));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_TRUE(route.found) << route.whole();
  EXPECT_TRUE(route.breaks.empty());
  EXPECT_TRUE(route.notes.empty());
  const plan::Link& link = *take->plan().links.find("l1");
  double least = 100;
  bool behind = false;
  for (double t = 0; t <= 30; t += 0.02) {
    least = std::min(least, Radio(*take, t).over(link, take->plan().crew[0], route.at(t))->margin);
    behind = behind || route.at(t).x > 5.1;
  }
  EXPECT_GE(least, -1e-9);
  EXPECT_TRUE(behind) << "the wall is between them at times";
}

TEST(FoundRoutes, PutLinksAndPolesWhereTheyLead) {
  plan::Plan plan = linked(kThroughAWall);
  plan::Plan loose = plan;
  plan::Crew crew = loose.crew[0];
  crew.needs = {need(plan::Stays{"kb"}, 12, 14)};
  loose.crew.replace(0, crew);
  plan::Link link = *loose.links.find("l1");
  link.budget = crew::freeSpaceLoss(kMhz, 1.9);
  loose.links.replace(loose.links.indexOf("l1"), link);
  const TakePtr take = takeOf(loose);
  const AnswersPtr before = *answersOf(take);
  const AnswersPtr after = *withRoutes(before);
  const FoundRoute& route = *after->routes->find("ac");
  ASSERT_TRUE(route.found) << route.whole();
  EXPECT_EQ(after->evidence->routed, std::vector<std::string>{"ac"});
  ASSERT_EQ(after->evidence->links.size(), 1u);
  int worse = 0;
  for (std::size_t k = 0; k < before->evidence->samples.size(); ++k) {
    const double t = before->evidence->samples[k].time;
    EXPECT_FALSE(before->evidence->links[0].at[k]) << "nowhere before, so unknown";
    const double margin = Radio(*take, t).over(link, take->plan().crew[0], route.at(t))->margin;
    ASSERT_TRUE(after->evidence->links[0].at[k]) << t;
    EXPECT_NEAR(after->evidence->links[0].at[k]->margin, margin, 1e-6) << t;
    worse += margin < 0;
  }
  EXPECT_GT(worse, 24);
  const auto isLost = [](const snags::Snag& snag) { return snag.rule == "link-lost"; };
  EXPECT_EQ(std::count_if(before->snags->begin(), before->snags->end(), isLost), 0);
  const auto lost = std::find_if(after->snags->begin(), after->snags->end(), isLost);
  ASSERT_NE(lost, after->snags->end());
  EXPECT_NE(lost->text.find("on the route found"), std::string::npos) << lost->text;
}

TEST(LinkNeed, FreesARouteWhereItIsWhatKeepsItFromBeing) {
  const FoundRoute route = found(*takeOf(linked(crew::freeSpaceLoss(kMhz, 1.9)))).people.at(0);
  ASSERT_FALSE(route.found);
  EXPECT_NE(route.cures().find("not holding the link focus link"), std::string::npos) << route.whole();
}

TEST(PoleNeed, IsServedAtEveryFrameOfTheLine) {
  const TakePtr take = takeOf(speaking(1.2));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_TRUE(route.found) << route.whole();
  for (double t = 1; t <= 6; t += 0.02) EXPECT_LE(geometry::distance(route.at(t), Point{4.2, 2}), 1.2 + 1e-9) << t;
  EXPECT_TRUE(route.breaks.empty());
  EXPECT_FALSE(needBreaks(*take, 0, [](double) { return Point{1, 3}; }).empty());
}

TEST(PoleNeed, TellsOfAGapThatTheFrameLeavesNoWhere) {
  const auto gaps = [](double focal) {
    plan::Plan plan = speaking(1.6);
    plan.lens->focal = {focal, focal};
    plan.camera.aims = {{plan.camera.aims[0]}};
    plan.camera.aims[0].on = plan::OnBearing{geometry::degrees(std::atan2(2.2, 0.8)), 0};
    const FoundRoute route = found(*takeOf(plan)).people.at(0);
    EXPECT_TRUE(route.found) << route.whole();
    double seconds = 0;
    for (const auto& stop : route.breaks) seconds += stop.why == snags::NeedFails::gap ? stop.span.length() : 0;
    return seconds;
  };
  EXPECT_NEAR(gaps(6), 5, 0.1) << "all of the line: the frame ends 2.8 m up and more";
  EXPECT_EQ(gaps(50), 0) << "a long lens";
}

TEST(DrawnRoutes, HaveTheirUnmetNeedsInTheEvidence) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::NearCamera{2}, 10, 20), need(plan::Stays{"ka"}, 0, 4)});
  plan::Crew crew = plan.crew[0];
  plan::Mark mark;
  mark.pos = {4, 3};
  crew.marks = {mark};
  plan.crew.replace(0, crew);
  const auto unmet = (*answersOf(takeOf(plan)))->evidence->unmetNeeds;
  ASSERT_EQ(unmet.size(), 1u) << "in the shelter, but 2.7 m from the camera";
  EXPECT_EQ(unmet[0].who, "ac");
  EXPECT_EQ(unmet[0].why, snags::NeedFails::far);
  EXPECT_NEAR(unmet[0].span.from, 10, 0.05);
  EXPECT_NEAR(unmet[0].span.until, 20, 0.05);
  crew.marks.clear();
  plan.crew.replace(0, crew);
  EXPECT_TRUE((*answersOf(takeOf(plan)))->evidence->unmetNeeds.empty()) << "nothing is drawn";
}

/// A half wall beside the camera, 1.3 m high, and a shelter behind it; the
/// lens, 1.5 m high, looks over it on its way round.
plan::Plan behindAHalfWall(double crouch) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"kc"}, 0, 30)});
  plan::Piece half;
  half.id = base::Id<plan::Piece>("half");
  half.shape = plan::Outline{{{3, 0.1}, {3.3, 0.1}, {3.3, 2.4}, {3, 2.4}}};
  half.top = 1.3;
  plan.set.pieces.add(half);
  plan::Shelter shelter;
  shelter.id = base::Id<plan::Shelter>("kc");
  shelter.pos = {3.75, 1.2};
  shelter.radius = 0.3;
  plan.shelters.add(shelter);
  plan::Crew crew = plan.crew[0];
  crew.crouch = crouch;
  plan.crew.replace(0, crew);
  return plan;
}

bool everSeen(const Take& take, Point pos, double height) {
  return !sightOfSpot(take, pos, height, take.plan().crew[0].radius).seen.empty();
}

TEST(Crouching, KeepsSomebodyOutOfSightWhereStandingDoesNot) {
  const TakePtr take = takeOf(behindAHalfWall(1.0));
  const FoundRoute route = found(*take).people.at(0);
  ASSERT_TRUE(route.found) << route.whole();
  for (const auto& stand : route.stands) {
    EXPECT_EQ(stand.shelter, "kc");
    EXPECT_FALSE(everSeen(*take, stand.pos, 1.0));
    EXPECT_EQ(stand.crouch, everSeen(*take, stand.pos, 1.8)) << "only where it has to be";
  }
  EXPECT_TRUE(std::any_of(route.stands.begin(), route.stands.end(), [](const auto& stand) { return stand.crouch; }));
  for (const auto& walk : route.walks) EXPECT_TRUE(walk.walk.latestLeave.has_value());
  // Who cannot go down so far has no route, and neither has who must be upright
  // for a link.
  EXPECT_FALSE(found(*takeOf(behindAHalfWall(1.8))).people.at(0).found);
  plan::Plan upright = behindAHalfWall(1.0);
  upright.links.add(linked(120).links[0]);
  plan::Crew crew = upright.crew[0];
  crew.needs.push_back(need(plan::Holds{"l1"}, 0, 30));
  upright.crew.replace(0, crew);
  EXPECT_FALSE(found(*takeOf(upright)).people.at(0).found);
}

TEST(Needs, SayWhichOfThemAreNotPlannedForAndWhy) {
  const auto notesOf = [](plan::Plan plan) { return needsLeftOut(plan, 0); };
  plan::Plan plan = linked(60);
  EXPECT_TRUE(notesOf(plan).empty());
  plan::Link link = plan.links[0];
  link.to = "nobody";
  link.from = plan::kCameraEnd;
  plan.links.replace(0, link);
  EXPECT_EQ(notesOf(plan)[0], "not planned for: holding the link focus link, at neither end of which they are");
  plan::Crew other = plan.crew[0];
  other.id = base::Id<plan::Crew>("ac2");
  plan.crew.add(other);
  link.from = "ac", link.to = "ac2";
  plan.links.replace(0, link);
  EXPECT_EQ(notesOf(plan)[0], "not planned for: holding the link focus link, whose other end has no marks");
  plan = speaking(2);
  EXPECT_TRUE(notesOf(plan).empty());
  plan::Pole pole = plan.poles[0];
  pole.crew = "ac2";
  plan.poles.replace(0, pole);
  EXPECT_EQ(notesOf(plan)[0], "not planned for: reaching with the pole p1, which somebody else holds");
  plan.handovers.push_back({"boom", "ac2", "ac", {"", 3}, 0, {}});
  EXPECT_TRUE(notesOf(plan).empty());
}

}  // namespace
}  // namespace wend::answers
