#include "core/sight/ways_through.h"

#include <gtest/gtest.h>

#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

/// A wall across, five metres north, with one opening in it: the eye's own room before it, room 2 behind.
struct TwoRooms {
  Scene scene;
  std::vector<RoomGround> rooms;
  TwoRooms(double width, std::vector<PieceIn> pieces = {}) {
    SceneInput input;
    input.walls.push_back(world::wall({{-10, 5}, {10, 5}}, 0.02));
    OpeningCut cut;
    cut.along = {10 - width / 2, 10 + width / 2};
    cut.tag = 7;
    input.openings.push_back(cut);
    input.pieces = std::move(pieces);
    scene = Scene(input);
    rooms = {{{{-10, -10}, {10, -10}, {10, 5}, {-10, 5}}, 1}, {{{-10, 5}, {10, 5}, {10, 70}, {-10, 70}}, 2}};
  }
  WaysSeen seen(const GroundAsked& asked = {}, double bearing = 0) const {
    return WaysThrough(scene, rooms, asked).at(world::eyeAt({0, 0, 1.5}, bearing), 0);
  }
};

TEST(WaysThrough, FindASlotNarrowerThanASector) {
  const TwoRooms slot(0.01);  // a ninth of a degree
  const WaysSeen seen = slot.seen({.sectorDegrees = 1, .narrowest = 0.05});
  EXPECT_EQ(seen.ways, (std::vector<RoomWay>{{1, 2, {7}}}));
  EXPECT_EQ(seen.inSight, (std::vector<int>{7}));
}

TEST(WaysThrough, LeaveOutWhatIsNarrowerThanAsked) {
  const TwoRooms slot(0.01);
  EXPECT_TRUE(slot.seen({.narrowest = 0.2}).ways.empty());
  EXPECT_EQ(TwoRooms(0.05).seen({.narrowest = 0.2}).ways.size(), 1u);
}

TEST(WaysThrough, AddUpSectorsThatPartAWaySeenWithoutABreak) {
  // Posts behind the ground asked about part the view into sectors and hide nothing of it.
  std::vector<PieceIn> posts;
  for (int i = -20; i < 20; ++i) posts.push_back(world::box({0.02 * i, 20}, {0.02 * i + 0.02, 20.1}, 0, 3));
  EXPECT_EQ(TwoRooms(0.5, posts).seen({.narrowest = 1}).ways.size(), 1u);
}

TEST(WaysThrough, AskForGroundAsDeepAsAsked) {
  const TwoRooms door(1, {world::box({-2, 5.6}, {2, 5.7}, 0, 3)});
  EXPECT_EQ(door.seen({.shallowest = 0.5}).ways.size(), 1u);
  EXPECT_TRUE(door.seen({.shallowest = 0.8}).ways.empty());
}

TEST(WaysThrough, SeeNothingByAnOpeningOutOfFrameOrShut) {
  const TwoRooms door(1);
  EXPECT_EQ(door.seen({}, 180), WaysSeen{});
  const TwoRooms shut(1, {world::box({-2, 4.5}, {2, 4.6}, 0, 3)});
  EXPECT_EQ(shut.seen(), WaysSeen{});
}

TEST(Fans, AlongTurnsOfTheCallersMeetWhatTheEvenOnesMeet) {
  const TwoRooms door(1, {world::disc({1, 3}, 0.3, 0, 1.7), world::box({-2, 2}, {-1, 3}, 0, 1)});
  const Frame frame(world::eyeAt({0, 0, 1.5}, 10));
  const SceneAt now = door.scene.at(0);
  Fan even, own;
  even.spread(now, frame, geometry::radians(1), 40);
  std::vector<double> turns;
  for (std::size_t i = 0; i < even.size(); ++i)
    turns.push_back(geometry::angleBetween(frame.axis(), even.direction(i)));
  own.spread(now, frame, turns, 40);
  ASSERT_EQ(own.size(), even.size());
  for (std::size_t i = 0; i < even.size(); ++i) {
    ASSERT_EQ(own.hits(i).size(), even.hits(i).size()) << i;
    for (std::size_t k = 0; k < even.hits(i).size(); ++k) {
      EXPECT_EQ(own.hits(i)[k].prism, even.hits(i)[k].prism);
      EXPECT_NEAR(own.hits(i)[k].box.near, even.hits(i)[k].box.near, 1e-9);
    }
  }
}

}  // namespace
}  // namespace wend::sight
