// The side elevation's geometry: by hand, and against sight itself.
#include "core/sheets/side_view.h"

#include <gtest/gtest.h>

#include <random>

#include "core/base/text.h"
#include "core/sheets/side_drawing.h"
#include "core/sight/ray.h"
#include "tests/core/answers/small_plan.h"

namespace wend::sheets {
namespace {

using answers::smallPlan;
using answers::standing;
using answers::takeOf;
using geometry::Point;

/// The lens of the small plan covers a fifth of the distance up and down and looks north from the origin.
constexpr double kEdge = 0.2;

plan::Plan withLensAt(double height) {
  plan::Plan plan = smallPlan();
  plan.performers = {};
  plan.camera.marks[0].height = height;
  return plan;
}

void addPiece(plan::Plan& plan, const std::string& id, double from, double until, double bottom, double top) {
  plan::Piece piece;
  piece.id = base::Id<plan::Piece>(id);
  piece.shape = plan::Outline{{{-1, from}, {1, from}, {1, until}, {-1, until}}};
  piece.bottom = bottom;
  piece.top = top;
  plan.set.pieces.add(piece);
}

/// A wall across the view, 0.2 m thick, with a window.
void addWindowedWall(plan::Plan& plan, double y, double sill, double head) {
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("front");
  wall.points = {{-5, y}, {5, y}};
  wall.top = 3;
  wall.thickness = 0.2;
  plan.set.walls.add(wall);
  if (head <= sill) return;
  plan::Opening window;
  window.id = base::Id<plan::Opening>("w1");
  window.wall = "front";
  window.along = {4, 6};
  window.sill = sill;
  window.head = head;
  window.fill = plan::OpeningFill::glass;
  plan.set.openings.add(window);
}

SideView viewOf(const plan::Plan& plan) {
  const auto take = takeOf(plan);
  return sideView(*take, answers::instantAt(*take, 0));
}

TEST(SideView, IsOpenOverAWallAsHighAsTheRoomOnlyInAYard) {
  const auto seen = [](bool openAbove) {
    plan::Plan plan = withLensAt(1.5);
    plan::Room room;
    room.id = base::Id<plan::Room>("r1");
    room.outline = {{-6, -2}, {6, -2}, {6, 9}, {-6, 9}};
    room.ceiling = 3;
    room.openAbove = openAbove;
    plan.set.rooms.add(room);
    addPiece(plan, "partition", 8, 8.2, 0, 2.97);
    return viewOf(plan);
  };
  const SideView indoors = seen(false), yard = seen(true);
  ASSERT_TRUE(indoors.closedAt) << "its last 3 cm are taken for touching";
  EXPECT_NEAR(*indoors.closedAt, 8, 1e-9);
  EXPECT_TRUE(indoors.floors.front().ceiling);
  EXPECT_FALSE(yard.closedAt) << "the upper edge is at 3.1 m there";
  ASSERT_EQ(yard.grazes.size(), 1u);
  EXPECT_NEAR(yard.grazes[0].slope, 1.47 / 8, 1e-9);
  EXPECT_FALSE(yard.floors.front().ceiling);
}

TEST(SideView, ShowsHowFarALensSeesOverACounter) {
  const auto graze = [](double lens) {
    plan::Plan plan = withLensAt(lens);
    addPiece(plan, "counter", 2, 2.7, 0, 1);
    const SideView view = viewOf(plan);
    EXPECT_NEAR(view.upper, kEdge, 1e-9);
    EXPECT_NEAR(view.lower, -kEdge, 1e-9);
    EXPECT_EQ(view.grazes.size(), 1u) << lens;
    return view.grazes.at(0);
  };
  // Similar triangles: 0.2 m down over 2.7 m, so 1.2 m down over 16.2.
  const SideGraze low = graze(1.2);
  EXPECT_EQ(low.id, "counter");
  EXPECT_NEAR(low.corner.x, 2.7, 1e-9);
  EXPECT_NEAR(low.slope, -0.2 / 2.7, 1e-9);
  ASSERT_TRUE(low.floorFrom.has_value());
  EXPECT_NEAR(*low.floorFrom, 16.2, 1e-6);
  EXPECT_NEAR(*graze(1.5).floorFrom, 8.1, 1e-6);
  // From under its top the near edge is what counts, and no floor comes back.
  const SideGraze under = graze(0.9);
  EXPECT_NEAR(under.corner.x, 2, 1e-9);
  EXPECT_NEAR(under.slope, 0.05, 1e-9);
  EXPECT_FALSE(under.floorFrom.has_value());
}

TEST(SideView, CutsSillsAndHeadsAndEndsWhereNothingMoreIsSeen) {
  plan::Plan plan = withLensAt(1.5);
  addWindowedWall(plan, 5, 0.6, 2.3);
  const SideView view = viewOf(plan);
  ASSERT_EQ(view.grazes.size(), 2u);
  EXPECT_NE(view.grazes[0].over, view.grazes[1].over);
  EXPECT_FALSE(view.closedAt.has_value());
  EXPECT_EQ(view.reach, kMost);
  std::size_t walls = 0, glass = 0;
  for (const auto& thing : view.things) {
    walls += thing.kind == SideThing::Kind::wall ? 1u : 0u;
    glass += thing.kind == SideThing::Kind::glass || thing.kind == SideThing::Kind::leaf ? 1u : 0u;
    EXPECT_NEAR(thing.near, thing.kind == SideThing::Kind::wall ? 4.9 : thing.near, 1e-9);
  }
  EXPECT_EQ(walls, 2u) << "under the sill and over the head";
  EXPECT_LE(glass, 1u);
  plan::Plan shut = withLensAt(1.5);
  addWindowedWall(shut, 5, 0, 0);
  addPiece(shut, "beyond", 7, 8, 0, 1);
  const SideView closed = viewOf(shut);
  ASSERT_TRUE(closed.closedAt.has_value());
  EXPECT_NEAR(*closed.closedAt, 4.9, 1e-9);
  EXPECT_NEAR(closed.reach, 5.4, 1e-9);
  EXPECT_EQ(closed.things.size(), 1u) << "what lies behind is left out";
  addPiece(shut, "counter", 2, 2.7, 0, 1);
  EXPECT_FALSE(viewOf(shut).grazes.at(0).floorFrom.has_value()) << "8.1 m on, which the wall hides";
}

TEST(SideView, EndsAtAWallThatReachesTheCeilingHoweverHighTheFrameLooks) {
  plan::Plan plan = withLensAt(1.5);
  addWindowedWall(plan, 9, 0, 0);
  EXPECT_FALSE(viewOf(plan).closedAt.has_value()) << "a wall of 3 m in the open: the frame looks over it from 7.5 m on";
  plan::Room room;
  room.id = base::Id<plan::Room>("room");
  room.outline = {{-5, -2}, {5, -2}, {5, 8.9}, {-5, 8.9}};
  room.ceiling = 3;
  plan.set.rooms.add(room);
  const SideView view = viewOf(plan);
  ASSERT_TRUE(view.closedAt.has_value());
  EXPECT_NEAR(*view.closedAt, 8.9, 1e-9);
  EXPECT_EQ(view.floors.front().ceiling, 3);
  EXPECT_FALSE(view.floors.back().ceiling.has_value());
}

TEST(SideView, HoldsPeopleAndLampsBesideThePlaneInTrueHeights) {
  plan::Plan plan = smallPlan();
  plan.camera.aims[0].on = plan::OnBearing{90, 0};
  plan::Performer nora = plan.performers[0];
  nora.stature = 1.7;
  nora.marks[0].pos = {3, -0.3};
  plan.performers.replace(0, nora);
  plan.crew.add(standing("op", {-0.5, 0}));
  plan.crew.add(standing("far", {2, 1}));
  for (const double y : {-0.4, 0.7}) {
    plan::Fixture lamp;
    lamp.id = base::Id<plan::Fixture>(y < 0 ? "near" : "aside");
    lamp.pos = {2, y};
    lamp.height = 2.2;
    plan.fixtures.add(lamp);
  }
  const SideView view = viewOf(plan);
  ASSERT_EQ(view.people.size(), 2u);
  EXPECT_EQ(view.people[0].id, "nora");
  EXPECT_NEAR(view.people[0].ahead, 3, 1e-9);
  EXPECT_NEAR(view.people[0].aside, 0.3, 1e-9) << "south is right of east";
  EXPECT_NEAR(*view.people[0].eyes, 0.935 * 1.7, 1e-9);
  EXPECT_NEAR(view.people[1].ahead, -0.5, 1e-9);
  ASSERT_EQ(view.lamps.size(), 1u);
  EXPECT_EQ(view.lamps[0].id, "near");
  EXPECT_EQ(view.lamps[0].height, 2.2);
}

TEST(SideView, FollowsTheFloor) {
  plan::Plan plan = withLensAt(1.5);
  plan::Area pit;
  pit.id = base::Id<plan::Area>("pit");
  pit.shape = plan::Outline{{{-2, 3}, {2, 3}, {2, 5}, {-2, 5}}};
  pit.use = {plan::AreaUse::hazard};
  pit.floor = -0.5;
  plan.set.areas.add(pit);
  const SideView view = viewOf(plan);
  ASSERT_EQ(view.floors.size(), 3u);
  EXPECT_EQ(view.floors[1].height, -0.5);
  EXPECT_NEAR(view.floors[1].along.from, 3, 0.06);
  EXPECT_NEAR(view.floors[1].along.until, 5, 0.06);
}

/// Beyond everything that stands, a point of the plane is seen exactly when it lies between the grazing lines.
TEST(SideView, AgreesWithSightBeyondACounterUnderALintelAndABeam) {
  for (const double lens : {0.9, 1.2, 1.5, 1.9}) {
    plan::Plan plan = withLensAt(lens);
    addPiece(plan, "counter", 2, 2.7, 0, 1);
    addPiece(plan, "bench", 3.2, 4, 0, 0.7);
    addPiece(plan, "beam", 1.5, 1.7, 1.75, 4);
    addWindowedWall(plan, 6, 0.5, 2.4);
    const auto take = takeOf(plan);
    const SideView view = sideView(*take, answers::instantAt(*take, 0));
    double low = view.lower, high = view.upper;
    for (const auto& graze : view.grazes) (graze.over ? low : high) = graze.slope;
    ASSERT_FALSE(view.closedAt.has_value()) << lens;
    std::mt19937 random(7);
    std::uniform_real_distribution<double> along(6.5, 18), height(0, 5);
    int seen = 0;
    for (int i = 0; i < 2000; ++i) {
      const double x = along(random), z = height(random), slope = (z - lens) / x;
      if (std::min(std::abs(slope - low), std::abs(slope - high)) < 1e-6) continue;
      const bool open = sight::pointSight(take->scene().at(0), *take->eyeAt(0, 0), {0, x, z}).seen();
      EXPECT_EQ(open, low < slope && slope < high) << lens << " " << x << " " << z;
      seen += open;
    }
    EXPECT_GT(seen, 50) << lens;
  }
}

TEST(SideDrawing, IsToOneScaleAndDrawsTheFrameEdgesThroughTheLens) {
  plan::Plan plan = withLensAt(1.2);
  addPiece(plan, "counter", 2, 2.7, 0, 1);
  const auto take = takeOf(plan);
  const auto instant = answers::instantAt(*take, 0);
  const SideFit fit = sideFit(sideView(*take, instant), {1600, 700, false});
  const auto answers = answers::answersOf(take);
  const geometry::Drawing drawing = sideDrawing(**answers, instant, {1600, 700, false});
  int counters = 0, edges = 0;
  for (const auto& shape : drawing.shapes) {
    if (const auto* box = std::get_if<geometry::Box>(&shape)) {
      const Point corner = fit.toPicture({2, 1});
      counters += geometry::distance(box->topLeft, corner) < 1e-6 &&
                  std::abs(box->width - 0.7 * fit.pxPerMetre) < 1e-6 && std::abs(box->height - fit.pxPerMetre) < 1e-6;
    }
    if (const auto* path = std::get_if<geometry::Path>(&shape)) {
      if (path->rings.empty() || path->rings[0].size() != 2) continue;
      const geometry::Vec way = path->rings[0][1] - path->rings[0][0];
      const bool fromLens = geometry::distance(path->rings[0][0], fit.toPicture({0, 1.2})) < 1e-6;
      edges += fromLens && std::abs(std::abs(way.y / way.x) - kEdge) < 1e-9;
    }
  }
  EXPECT_GE(counters, 1);
  EXPECT_EQ(edges, 2);
}

/// 20 m of open ground in the small picture of the window.
TEST(SideDrawing, IsCutPastEverybodyWhereItWouldBeTooSmallAndSaysSo) {
  constexpr SidePicture kSmall{344, 190, false};
  plan::Plan plan = smallPlan();
  plan::Performer nora = plan.performers[0];
  const auto drawnAt = [&](double ahead) {
    nora.marks[0].pos = {0, ahead};
    plan.performers.replace(0, nora);
    const auto take = takeOf(plan);
    const auto instant = answers::instantAt(*take, 0);
    return std::pair(sideView(*take, instant), sideDrawing(**answers::answersOf(take), instant, kSmall));
  };
  const auto words = [](const geometry::Drawing& drawing) {
    std::string all;
    for (const auto& shape : drawing.shapes)
      if (const auto* text = std::get_if<geometry::Text>(&shape)) all += text->text + "\n";
    return all;
  };
  for (const double ahead : {2.0, 5.0, 11.0}) {
    const auto [view, drawing] = drawnAt(ahead);
    ASSERT_EQ(view.reach, kMost);
    const double shown = shownReach(view, kSmall);
    EXPECT_GE(shown, ahead + 1);
    EXPECT_LT(shown, kMost);
    const SideFit fit = sideFit(view, kSmall);
    EXPECT_TRUE(ahead > 3 || 1.7 * fit.pxPerMetre >= 70) << "who is near is read: " << fit.pxPerMetre;
    EXPECT_LE(fit.toPicture({shown, 0}).x, kSmall.width);
    EXPECT_NE(words(drawing).find("cut at " + base::fixed(shown, 2) + " m of 20.00 m"), std::string::npos)
        << words(drawing);
    EXPECT_EQ(shownReach(view, {1600, 700, true}), kMost) << "paper has room";
  }
  const auto [near, whole] = drawnAt(19.5);
  EXPECT_EQ(shownReach(near, kSmall), kMost);
  EXPECT_EQ(words(whole).find("cut at"), std::string::npos);
}

}  // namespace
}  // namespace wend::sheets
