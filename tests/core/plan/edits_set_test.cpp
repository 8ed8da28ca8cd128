#include "core/plan/edits_set.h"

#include <gtest/gtest.h>

#include "core/plan/edits_entities.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::smallPlan;

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

const Wall& wallOf(const base::Result<Plan>& plan) {
  return plan->set.walls[0];
}

TEST(WallPoints, MoveComeAndGo) {
  EXPECT_EQ(wallOf(movedWallPoint(smallPlan(), "w1", 2, {10, 9.00001})).points[2], (Point{10, 9}));
  EXPECT_EQ(wallOf(insertedWallPoint(smallPlan(), "w1", 2, {10, 4})).points.size(), 4u);
  EXPECT_EQ(wallOf(insertedWallPoint(smallPlan(), "w1", 99, {12, 8})).points.back(), (Point{12, 8}));
  EXPECT_EQ(wallOf(removedWallPoint(smallPlan(), "w1", 2)).points.size(), 2u);
  EXPECT_EQ(codeOf(movedWallPoint(smallPlan(), "w1", 3, {1, 1})), "not-there");
  EXPECT_EQ(codeOf(removedWallPoint(smallPlan(), "w1", 3)), "not-there");
  EXPECT_EQ(codeOf(movedWallPoint(smallPlan(), "w9", 0, {1, 1})), "not-there");
}

TEST(WallPoints, KeepApartAndKeepTwo) {
  EXPECT_EQ(codeOf(movedWallPoint(smallPlan(), "w1", 1, {10, 8.0004})), "line-short");
  const auto two = removedWallPoint(smallPlan(), "w1", 2);
  ASSERT_TRUE(two.ok());
  EXPECT_EQ(codeOf(removedWallPoint(*two, "w1", 1)), "line-short");
}

TEST(WallPoints, LeaveNoOpeningInTheAir) {
  const auto two = removedWallPoint(smallPlan(), "w1", 2);
  ASSERT_TRUE(two.ok());
  const auto shorter = movedWallPoint(*two, "w1", 1, {2.5, 0});
  ASSERT_FALSE(shorter.ok());
  EXPECT_EQ(shorter.problems().front().code, "opening-off-wall");
  EXPECT_EQ(shorter.problems().front().where, "/set/openings/0/along");
  EXPECT_NE(shorter.problems().front().found.find("D1"), std::string::npos);
}

TEST(MovedWall, TakesItsOpeningsAlong) {
  const Plan plan = smallPlan();
  const auto moved = movedWall(plan, "w1", {1, -1});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(wallOf(moved).points[0], (Point{1, -1}));
  EXPECT_EQ(moved->set.openings.ref(0), plan.set.openings.ref(0));
}

TEST(WallSizes, StayTheRightWayUp) {
  EXPECT_EQ(wallOf(wallHeightsSet(smallPlan(), "w1", 0.5, 2.5)).bottom, 0.5);
  EXPECT_EQ(codeOf(wallHeightsSet(smallPlan(), "w1", 3, 2)), "top-below-bottom");
  EXPECT_EQ(wallOf(wallThicknessSet(smallPlan(), "w1", 0.12345)).thickness, 0.1235);
  EXPECT_EQ(codeOf(wallThicknessSet(smallPlan(), "w1", 0)), "out-of-range");
}

TEST(Openings, KeepToTheirWall) {
  EXPECT_EQ(openingAlongSet(smallPlan(), "d1", {4, 5.2})->set.openings[0].along, (geometry::Span{4, 5.2}));
  EXPECT_EQ(codeOf(openingAlongSet(smallPlan(), "d1", {5, 5})), "opening-narrow");
  EXPECT_EQ(codeOf(openingAlongSet(smallPlan(), "d1", {17, 18.5})), "opening-off-wall");
  EXPECT_EQ(codeOf(openingAlongSet(smallPlan(), "d1", {-1, 1})), "out-of-range");
}

TEST(Openings, KeepTheirHeadAboveTheirSill) {
  EXPECT_EQ(openingSillSet(smallPlan(), "d1", 0.9)->set.openings[0].sill, 0.9);
  EXPECT_EQ(openingHeadSet(smallPlan(), "d1", 2.2)->set.openings[0].head, 2.2);
  EXPECT_EQ(codeOf(openingHeadSet(smallPlan(), "d1", 0)), "top-below-bottom");
  EXPECT_EQ(openingThresholdSet(smallPlan(), "d1", 0.04)->set.openings[0].threshold, 0.04);
}

TEST(Openings, TakeALeafAndAFill) {
  LeafMoves slide;
  slide.kind = LeafKind::slide;
  EXPECT_EQ(openingLeafSet(smallPlan(), "d1", slide)->set.openings[0].moves, slide);
  EXPECT_EQ(openingLeafSet(smallPlan(), "d1", std::nullopt)->set.openings[0].moves, std::nullopt);
  slide.full = 200;
  EXPECT_EQ(codeOf(openingLeafSet(smallPlan(), "d1", slide)), "out-of-range");
  EXPECT_EQ(openingFillSet(smallPlan(), "d1", OpeningFill::glass)->set.openings[0].fill, OpeningFill::glass);
}

TEST(Pieces, MoveWholeWhateverTheirShape) {
  EXPECT_EQ(std::get<Outline>(movedPiece(smallPlan(), "bench", {1, 0})->set.pieces[0].shape).points[0], (Point{4, 3}));
  EXPECT_EQ(std::get<Line>(movedPiece(smallPlan(), "m1", {0, 1})->set.pieces[1].shape).points[1], (Point{9, 5}));
  EXPECT_EQ(std::get<Disc>(movedPiece(smallPlan(), "column", {-1, 0})->set.pieces[2].shape).centre, (Point{6, 6}));
}

TEST(Pieces, TakeAnotherShapeOrAnotherCorner) {
  EXPECT_TRUE(pieceReshaped(smallPlan(), "column", Disc{{7, 6}, 0.5}).ok());
  EXPECT_EQ(codeOf(pieceReshaped(smallPlan(), "column", Disc{{7, 6}, 0})), "out-of-range");
  EXPECT_EQ(codeOf(pieceReshaped(smallPlan(), "bench", Outline{{{0, 0}, {1, 1}, {2, 2}}})), "outline-empty");
  EXPECT_EQ(std::get<Outline>(movedPiecePoint(smallPlan(), "bench", 1, {6, 3})->set.pieces[0].shape).points[1],
            (Point{6, 3}));
  EXPECT_EQ(codeOf(movedPiecePoint(smallPlan(), "bench", 4, {6, 3})), "not-there");
  EXPECT_EQ(codeOf(movedPiecePoint(smallPlan(), "column", 1, {6, 3})), "not-there");
}

TEST(Pieces, AreNoRoundMirrors) {
  EXPECT_EQ(codeOf(pieceSurfaceSet(smallPlan(), "column", Surface::mirror)), "mirror-round");
  EXPECT_EQ(codeOf(pieceReshaped(smallPlan(), "m1", Disc{{1, 1}, 1})), "mirror-round");
  EXPECT_EQ(pieceSurfaceSet(smallPlan(), "m1", Surface::glass)->set.pieces[1].reflects, std::nullopt);
}

TEST(Pieces, StandTheRightWayUp) {
  EXPECT_EQ(pieceHeightsSet(smallPlan(), "bench", 0.1, 0.9)->set.pieces[0].top, 0.9);
  EXPECT_EQ(codeOf(pieceHeightsSet(smallPlan(), "bench", 1, 1)), "top-below-bottom");
}

TEST(Areas, MoveWithTheirReadings) {
  const auto moved = movedArea(smallPlan(), "pool", {1, 1});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(std::get<Disc>(moved->set.areas[0].shape).centre, (Point{5, 5}));
  EXPECT_EQ(moved->set.areas[0].states[1].readings[0].pos, (Point{5, 5}));
}

TEST(Areas, EncloseGround) {
  Area byClock = *smallPlan().set.areas.find("pool");
  byClock.byClock = {{21600, 4, 999}};
  EXPECT_EQ(codeOf(replaced(smallPlan(), byClock)), "out-of-range") << "no light is as warm as that";
  byClock.byClock[0].kelvin = 5600;
  EXPECT_TRUE(replaced(smallPlan(), byClock).ok());
  EXPECT_TRUE(areaReshaped(smallPlan(), "pool", Outline{{{0, 0}, {1, 0}, {0, 1}}}).ok());
  EXPECT_EQ(codeOf(areaReshaped(smallPlan(), "pool", Line{{{0, 0}, {1, 0}}})), "area-line");
  EXPECT_EQ(std::get<Disc>(movedAreaPoint(smallPlan(), "pool", 0, {3, 3})->set.areas[0].shape).centre, (Point{3, 3}));
}

TEST(Rooms, KeepAFloorBelowTheirCeiling) {
  EXPECT_EQ(movedRoomPoint(smallPlan(), "hall", 2, {11, 8})->set.rooms[0].outline[2], (Point{11, 8}));
  EXPECT_EQ(roomHeightsSet(smallPlan(), "hall", -0.2, 2.8)->set.rooms[0].floor, -0.2);
  EXPECT_EQ(codeOf(roomHeightsSet(smallPlan(), "hall", 3, 3)), "top-below-bottom");
}

TEST(UnderlaySet, StaysBelowThePlansFolder) {
  Underlay picture;
  picture.file = "floor/hall.png";
  EXPECT_EQ(underlaySet(smallPlan(), picture)->set.underlay, picture);
  for (const char* file : {"", "/etc/passwd", "../hall.png", "floor/../../hall.png", "floor\\hall.png"}) {
    picture.file = file;
    EXPECT_EQ(codeOf(underlaySet(smallPlan(), picture)), "file-outside") << file;
  }
  EXPECT_EQ(underlaySet(smallPlan(), std::nullopt)->set.underlay, std::nullopt);
}

}  // namespace
}  // namespace wend::plan
