// Cables, shadows, exit lanes and ground outside, of whole plans.
#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

plan::Cable cableAlong(std::vector<geometry::Point> points) {
  plan::Cable cable;
  cable.id = base::Id<plan::Cable>("k1");
  cable.points = std::move(points);
  return cable;
}

/// The camera walks 6 m plan south in six seconds, looking north.
plan::Plan backing() {
  plan::Plan plan = smallPlan();
  plan.camera.marks.push_back(markAt("c2", {0, -6}, 6));
  plan.camera.marks.back().height = 1.5;
  return plan;
}

TEST(CrossingsOf, TellCablesUnderACameraThatWalksBackwards) {
  plan::Plan plan = backing();
  plan.cables.add(cableAlong({{-2, -3}, {2, -3}}));
  const auto crossings = crossingsOf(*takeOf(plan));
  ASSERT_EQ(crossings.size(), 1u);
  EXPECT_EQ(crossings[0].place, "k1");
  EXPECT_EQ(crossings[0].who, "camera");
  EXPECT_TRUE(crossings[0].backwards);
  EXPECT_NEAR(crossings[0].time, 3, 1e-3);
  EXPECT_EQ(crossings[0].height, 0.02);
}

TEST(CrossingsOf, CountWhoIsCarriedAndPerformersOverCablesOnly) {
  plan::Plan plan = backing();
  plan.cables.add(cableAlong({{-2, -3}, {2, -3}}));
  plan::Crew op;
  op.id = base::Id<plan::Crew>("op");
  plan.crew.add(op);
  plan.camera.bodies.push_back({"op", 1, 0, {}});
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {1, 0}, 0), markAt("n2", {1, -6}, 6)};
  plan.performers.replace(0, nora);
  const auto crossings = crossingsOf(*takeOf(plan));
  ASSERT_EQ(crossings.size(), 3u);
  EXPECT_EQ(crossings[0].who, "op");
  EXPECT_NEAR(crossings[0].time, 2, 1e-3) << "a metre behind the lens is a metre ahead of the walk";
  EXPECT_TRUE(crossings[0].backwards);
}

TEST(CrossingsOf, LeaveOutACableThatIsNotThereYet) {
  plan::Plan plan = backing();
  plan::Cable late = cableAlong({{-2, -3}, {2, -3}});
  late.from = plan::Moment{"", 3.5};
  plan.cables.add(late);
  EXPECT_TRUE(crossingsOf(*takeOf(plan)).empty());
}

/// A wall with a door through which a cable runs.
plan::Plan cableInADoor() {
  plan::Plan plan = smallPlan();
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{4, -5}, {4, 5}};
  plan.set.walls.add(wall);
  plan::Opening door;
  door.id = base::Id<plan::Opening>("d1");
  door.wall = "w1";
  door.along = {4.5, 5.5};
  door.fill = plan::OpeningFill::solid;
  door.open = {{{{"", 0}, 0, plan::Pace::even}, 1, "", "", {}}, {{{"", 5}, 1, plan::Pace::even}, 0, "", "", {}}};
  plan.set.openings.add(door);
  plan.cables.add(cableAlong({{2, 0}, {6, 0.1}}));
  return plan;
}

TEST(CablesShutIn, AreToldFromTheInstantTheDoorIsShut) {
  const auto found = cablesShutIn(*takeOf(cableInADoor()));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].opening, "d1");
  EXPECT_NEAR(found[0].time, 6, 1.0 / 24);
  EXPECT_NEAR(found[0].pos.x, 4, 1e-9);
}

TEST(CablesShutIn, AreNoneBesideTheDoorUnderACurtainOrOnceTheCableIsGone) {
  plan::Plan beside = cableInADoor();
  beside.cables.replace(0, cableAlong({{2, 2}, {6, 2}}));
  EXPECT_TRUE(cablesShutIn(*takeOf(beside)).empty());
  plan::Plan curtain = cableInADoor();
  plan::Opening opening = curtain.set.openings[0];
  opening.fill = plan::OpeningFill::curtain;
  curtain.set.openings.replace(0, opening);
  EXPECT_TRUE(cablesShutIn(*takeOf(curtain)).empty());
  plan::Plan gone = cableInADoor();
  plan::Cable cable = gone.cables[0];
  cable.until = plan::Moment{"", 4};
  gone.cables.replace(0, cable);
  EXPECT_TRUE(cablesShutIn(*takeOf(gone)).empty());
}

/// The camera goes through a door of its own height that shuts behind it, its cable trailing.
plan::Plan throughADoor(double shutAt) {
  plan::Plan plan = backing();
  plan.camera.cable = plan::TrailingCable{{3, 0}, 20, {}};
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{-5, -3}, {5, -3}};
  plan.set.walls.add(wall);
  plan::Opening door;
  door.id = base::Id<plan::Opening>("d1");
  door.wall = "w1";
  door.along = {4, 6};
  door.fill = plan::OpeningFill::solid;
  door.open = {{{{"", 0}, 0, plan::Pace::even}, 1, "", "", {}},
               {{{"", shutAt - 1}, 1, plan::Pace::even}, 0, "", "", {}}};
  plan.set.openings.add(door);
  return plan;
}

TEST(CablesShutIn, HeedTheWayTheCameraHasGone) {
  const auto found = cablesShutIn(*takeOf(throughADoor(5)));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].cable, "camera");
  EXPECT_NEAR(found[0].time, 5, 1.0 / 24);
  EXPECT_NEAR(found[0].pos.y, -3, 1e-9);
  plan::Plan radio = throughADoor(5);
  radio.camera.cable.reset();
  EXPECT_TRUE(cablesShutIn(*takeOf(radio)).empty());
  // Shut and open again before the camera comes: nothing lies there yet.
  plan::Plan early = throughADoor(1.5);
  plan::Opening door = early.set.openings[0];
  door.open.push_back({{{"", 2}, 0.5, plan::Pace::even}, 1, "", "", {}});
  early.set.openings.replace(0, door);
  EXPECT_TRUE(cablesShutIn(*takeOf(early)).empty());
}

TEST(CrossingsOf, TellTheCamerasOwnCableUnderThoseWhoComeAfterIt) {
  plan::Plan plan = backing();
  plan.camera.cable = plan::TrailingCable{{0, 1}, 20, {}};
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {2, -2}, 7), markAt("n2", {-2, -2}, 9)};
  plan.performers.replace(0, nora);
  plan::Crew early = standing("grip", {2, -3});
  early.marks[0].until = {"", 1};
  early.marks.push_back(markAt("g2", {-2, -3}, 5));
  plan.crew.add(early);
  const auto crossings = crossingsOf(*takeOf(plan));
  ASSERT_EQ(crossings.size(), 1u) << "the grip crosses before the camera has laid it";
  EXPECT_EQ(crossings[0].who, "nora");
  EXPECT_EQ(crossings[0].place, "camera");
  EXPECT_NEAR(crossings[0].time, 8, 1e-3);
}

TEST(CameraCableOut, CountsFromTheAnchorAlongTheWay) {
  plan::Plan plan = backing();
  plan.camera.cable = plan::TrailingCable{{3, 0}, 7, {}};
  const auto out = cameraCableOut(*takeOf(plan));
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->time, 4, 2.0 / 24) << "3 m to the first mark and 4 of the way";
  EXPECT_NEAR(out->most, 9, 1e-6);
  plan.camera.cable->length = 9.1;
  EXPECT_FALSE(cameraCableOut(*takeOf(plan)));
  plan.camera.cable.reset();
  EXPECT_FALSE(cameraCableOut(*takeOf(plan)));
}

std::vector<snags::ShadowOn> shadowsOf(const plan::Plan& plan) {
  const auto take = takeOf(plan);
  return shadowsOn(*take, samplesOf(*take), boomLines(*take, samplesOf(*take)));
}

TEST(ShadowsOn, TellWhoStandsBetweenALampAndAFace) {
  EXPECT_TRUE(shadowsOf(litBySideLamp()).empty());
  plan::Plan plan = litBySideLamp();
  plan.crew.add(standing("grip", {1.5, 1.5}));
  const auto shadows = shadowsOf(plan);
  ASSERT_EQ(shadows.size(), 1u);
  EXPECT_EQ(shadows[0].by, "grip");
  EXPECT_EQ(shadows[0].lamp, "f1");
  EXPECT_NEAR(shadows[0].share, 1, 1e-9) << "there is no other light";
  EXPECT_NEAR(shadows[0].span.from, 0, 1e-9);
  EXPECT_NEAR(shadows[0].span.until, 10, 0.11);
}

TEST(ShadowsOn, TellTheCameraAndLeaveOutWhoStandsAside) {
  plan::Plan aside = litBySideLamp();
  aside.crew.add(standing("grip", {2.5, 2.5}));
  EXPECT_TRUE(shadowsOf(aside).empty());
  plan::Plan behind = litBySideLamp();
  plan::Fixture lamp = behind.fixtures[0];
  lamp.pos = {0, -2};
  lamp.height = 1.5;
  lamp.bearing = 0;
  behind.fixtures.replace(0, lamp);
  const auto shadows = shadowsOf(behind);
  ASSERT_EQ(shadows.size(), 1u);
  EXPECT_EQ(shadows[0].by, "camera");
}

/// Ground 2 m wide to the right of the camera.
plan::Area groundOf(plan::AreaUse use) {
  plan::Area area;
  area.id = base::Id<plan::Area>("a1");
  area.shape = plan::Outline{{{3, -5}, {5, -5}, {5, 5}, {3, 5}}};
  area.use = {use};
  return area;
}

TEST(LeavesMet, TellOfPerformersWhoGoThroughWhatIsShut) {
  const auto metWith = [](double share) {
    plan::Plan plan = smallPlan();
    plan::Wall wall;
    wall.id = base::Id<plan::Wall>("w1");
    wall.points = {{-3, 3}, {3, 3}};
    wall.thickness = 0.1;
    plan.set.walls.add(wall);
    plan::Opening door;
    door.id = base::Id<plan::Opening>("d1");
    door.wall = "w1";
    door.along = {2.5, 3.5};
    door.fill = plan::OpeningFill::solid;
    plan::OpenKey key;
    key.share = share;
    door.open = {key};
    plan.set.openings.add(door);
    plan::Performer nora = plan.performers[0];
    nora.marks.resize(1);
    nora.marks[0].at = {"", 0};
    nora.marks[0].until.reset();
    nora.marks[0].pos = {0, 2};
    plan::Mark there;
    there.at = {"", 2};
    there.pos = {0, 4};
    nora.marks.push_back(there);
    plan.performers.replace(0, nora);
    const auto take = takeOf(plan);
    return leavesMet(*take, samplesOf(*take));
  };
  const auto met = metWith(0);
  ASSERT_EQ(met.size(), 1u);
  EXPECT_EQ(met[0].who, "nora");
  EXPECT_EQ(met[0].opening, "d1");
  EXPECT_NEAR(met[0].time, 1, 0.1);
  EXPECT_TRUE(metWith(1).empty()) << "open";
}

TEST(LanesTaken, ListWhatStandsInThem) {
  plan::Plan plan = smallPlan();
  plan.set.areas.add(groundOf(plan::AreaUse::exitLane));
  plan.crew.add(standing("grip", {2.8, 0}));
  plan.crew.add(standing("aside", {2, 0}));
  plan::Gear cart;
  cart.id = base::Id<plan::Gear>("cart");
  cart.pos = {4, 1};
  plan.gear.add(cart);
  plan::Piece bench;
  bench.id = base::Id<plan::Piece>("bench");
  bench.shape = plan::Outline{{{0, 2}, {8, 2}, {8, 2.4}, {0, 2.4}}};
  plan.set.pieces.add(bench);
  bench.id = base::Id<plan::Piece>("beam");
  bench.bottom = 2.4;
  bench.top = 2.6;
  plan.set.pieces.add(bench);
  const auto take = takeOf(plan);
  std::vector<std::string> by;
  for (const auto& lane : lanesTaken(*take, samplesOf(*take))) by.push_back(lane.by);
  EXPECT_EQ(by, (std::vector<std::string>{"cart", "bench", "grip"}));
}

TEST(LanesTaken, HeedPiecesThatAreMoved) {
  plan::Plan plan = smallPlan();
  plan.set.areas.add(groundOf(plan::AreaUse::exitLane));
  // A trolley that stands in the lane, is pushed out of it from 2 s to 4 s and comes back at 8 s.
  plan::Piece trolley;
  trolley.id = base::Id<plan::Piece>("trolley");
  trolley.shape = plan::Outline{{{3.5, 0}, {4.5, 0}, {4.5, 1}, {3.5, 1}}};
  const auto key = [](double at, double over, double east) {
    plan::PieceKey made;
    made.time = {{"", at}, over, plan::Pace::even};
    made.offset = {east, 0};
    return made;
  };
  trolley.moved = {key(0, 0, 0), key(2, 2, 4), key(7, 1, 0)};
  plan.set.pieces.add(trolley);
  const auto take = takeOf(plan);
  const auto lanes = lanesTaken(*take, samplesOf(*take));
  ASSERT_EQ(lanes.size(), 2u);
  EXPECT_EQ(lanes[0].by, "trolley");
  EXPECT_NEAR(lanes[0].span.from, 0, 1e-9);
  EXPECT_NEAR(lanes[0].span.until, 2 + 2 * 1.5 / 4, 1.0 / 24) << "1.5 m of its 4 m on";
  EXPECT_NEAR(lanes[1].span.from, 7 + 2.5 / 4, 1.0 / 24);
  EXPECT_NEAR(lanes[1].span.until, 10, 1e-9);
}

TEST(LanesTaken, CountWhoWalksToAndFroButNotWhoWalksThrough) {
  const auto lanesOf = [](std::vector<Point> way) {
    plan::Plan plan = smallPlan();
    plan.set.areas.add(groundOf(plan::AreaUse::exitLane));
    plan::Crew crew = standing("grip", way[0]);
    crew.marks.clear();
    for (std::size_t i = 0; i < way.size(); ++i) {
      plan::Mark mark;
      mark.at = {"", double(i)};
      mark.pos = way[i];
      crew.marks.push_back(mark);
    }
    plan.crew.add(crew);
    const auto take = takeOf(plan);
    return lanesTaken(*take, samplesOf(*take));
  };
  EXPECT_TRUE(lanesOf({{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {5, 0}, {6, 0}}).empty());
  const auto lanes = lanesOf({{2, 0}, {3.6, 0}, {4.4, 0}, {3.6, 0}, {4.4, 0}, {3.6, 0}, {4.4, 0}, {6, 0}});
  ASSERT_EQ(lanes.size(), 1u);
  EXPECT_EQ(lanes[0].by, "grip");
  EXPECT_GE(lanes[0].span.from, 0.4) << "in the lane from 0.72 m on";
  EXPECT_LE(lanes[0].span.until, 7);
  EXPECT_GE(lanes[0].span.length(), 4);
}

TEST(LanesTaken, AreNoneOfGroundWithAnotherUse) {
  plan::Plan plan = smallPlan();
  plan.set.areas.add(groundOf(plan::AreaUse::noisy));
  plan.crew.add(standing("grip", {4, 0}));
  const auto take = takeOf(plan);
  EXPECT_TRUE(lanesTaken(*take, samplesOf(*take)).empty());
}

TEST(OutsideSeen, AreTheSpansInWhichTheLensMeetsTheGround) {
  plan::Plan plan = smallPlan();
  plan.set.areas.add(groundOf(plan::AreaUse::outside));
  EXPECT_TRUE(outsideSeen(*takeOf(plan), {})->empty()) << "the lens looks past it";
  plan.camera.aims.push_back({{{"", 4}, 0, plan::Pace::even}, plan::OnBearing{90, 0}, {0, 0}, 0, {}});
  const auto seen = outsideSeen(*takeOf(plan), {});
  ASSERT_EQ(seen->size(), 1u);
  EXPECT_EQ((*seen)[0].area, "a1");
  EXPECT_NEAR((*seen)[0].span.from, 4, 0.06);
  EXPECT_NEAR((*seen)[0].span.until, 10, 0.06);
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{2, -20}, {2, 20}};
  plan.set.walls.add(wall);
  EXPECT_TRUE(outsideSeen(*takeOf(plan), {})->empty()) << "behind a wall";
}

// Places on a grid over its box would all lie beside the two arms.
TEST(OutsideSeen, AreTheSpansOfGroundThatIsNarrowAndBendsToo) {
  plan::Plan plan = smallPlan();
  plan::Area area;
  area.id = base::Id<plan::Area>("a1");
  area.use = {plan::AreaUse::outside};
  area.shape = plan::Outline{{{-8, 4}, {8, 4}, {8, 20}, {7.5, 20}, {7.5, 4.5}, {-8, 4.5}}};
  plan.set.areas.add(area);
  const auto seen = outsideSeen(*takeOf(plan), {});
  ASSERT_EQ(seen->size(), 1u);
  EXPECT_NEAR((*seen)[0].span.length(), 10, 1e-6);
}

}  // namespace
}  // namespace wend::answers
