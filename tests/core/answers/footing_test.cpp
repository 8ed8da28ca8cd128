// What is ground in two rooms with a wall, a doorway, a counter, a rug and a lamp between them.
#include "core/answers/footing.h"

#include <gtest/gtest.h>

#include "tests/core/answers/two_rooms.h"

namespace wend::answers {
namespace {

plan::Piece box(const std::string& id, double x, double bottom, double top) {
  plan::Piece piece;
  piece.id = base::Id<plan::Piece>(id);
  piece.shape = plan::Outline{{{x, 1}, {x + 1, 1}, {x + 1, 2}, {x, 2}}};
  piece.bottom = bottom;
  piece.top = top;
  return piece;
}

TakePtr furnished() {
  plan::Plan plan = twoRooms();
  plan.set.pieces.add(box("counter", 1, 0, 1));
  plan.set.pieces.add(box("rug", 2.5, 0, 0.02));
  plan.set.pieces.add(box("lamp", 6.5, 1.9, 2.3));
  return takeOf(plan);
}

std::optional<std::string> takenAt(Point place) {
  const auto none = noGroundAt(*furnished(), place, 1.8);
  return none ? std::optional(none->id) : std::nullopt;
}

TEST(Footing, IsTakenByWallsAndPieces) {
  EXPECT_EQ(takenAt({5, 1}), "between");
  EXPECT_EQ(takenAt({5.04, 1}), "between") << "half of its thickness is 5 cm";
  EXPECT_EQ(takenAt({5.06, 1}), std::nullopt);
  EXPECT_EQ(takenAt({1.5, 1.5}), "counter");
  EXPECT_EQ(takenAt({2.05, 1.5}), std::nullopt);
}

TEST(Footing, IsLeftByWhatIsSteppedOnOrHangsOverTheHead) {
  EXPECT_EQ(takenAt({3, 1.5}), std::nullopt);
  EXPECT_EQ(takenAt({7, 1.5}), std::nullopt);
  EXPECT_EQ(noGroundAt(*furnished(), {7, 1.5}, 2)->id, "lamp") << "for somebody of two metres";
}

TEST(Footing, IsThereInADoorwayAndNotBeyondTheRooms) {
  EXPECT_EQ(takenAt({5, 3}), std::nullopt);
  EXPECT_EQ(takenAt({12, 3}), "") << "outside of everything drawn";
  EXPECT_EQ(takenAt({9.15, 3}), "") << "behind the outer wall";
  plan::Plan roomless = twoRooms();
  roomless.set.rooms = {};
  EXPECT_FALSE(noGroundAt(*takeOf(roomless), {12, 3}, 1.8)) << "nobody said what is outside";
}

TEST(Footing, IsTheSameCellByCell) {
  const TakePtr take = furnished();
  const geometry::Grid grid{{-1.03, -1.02}, 0.11, 105, 60};
  const auto ground = groundCells(*take, grid, 1.8);
  std::size_t none = 0;
  for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
    const bool taken = noGroundAt(*take, grid.centre(cell), 1.8).has_value();
    EXPECT_EQ(ground[cell] == 0, taken) << cell;
    none += taken;
  }
  EXPECT_GT(none, 1000u);
}

}  // namespace
}  // namespace wend::answers
