// Random yards before panes: the ground that shows in turned glass is what the rule tells of a crew of whom one stands on
// each cell.
#include <gtest/gtest.h>

#include <random>

#include "tests/core/answers/dark_window.h"
#include "tests/core/answers/glass_by_rule.h"

namespace wend::answers {
namespace {

class Random {
 public:
  explicit Random(std::uint64_t seed) : bits_(seed) {}
  double uniform(double low, double high) {
    return low + (high - low) * (static_cast<double>(bits_() >> 11) * 0x1.0p-53);
  }
  bool chance(double share) { return uniform(0, 1) < share; }
  Point in(double low, double high) { return {uniform(low, high), uniform(low, high)}; }

 private:
  std::mt19937_64 bits_;
};

/// A screen, a column or a box of any height, some of them mirrors.
plan::Piece pieceOf(Random& random, int number) {
  plan::Piece piece;
  piece.id = base::Id<plan::Piece>("piece" + std::to_string(number));
  const Point at = random.in(-3.5, 3.5), to = at + geometry::Vec{random.uniform(-1.5, 1.5), random.uniform(-1.5, 1.5)};
  if (random.chance(0.5))
    piece.shape = plan::Line{{at, to}};
  else if (random.chance(0.5))
    piece.shape = plan::Disc{at, random.uniform(0.1, 0.6)};
  else
    piece.shape = plan::Outline{{at, {to.x, at.y}, to, {at.x, to.y}}};
  piece.bottom = random.chance(0.7) ? 0 : random.uniform(0.5, 1.8);
  piece.top = piece.bottom + random.uniform(0.3, 2.2);
  if (std::holds_alternative<plan::Line>(piece.shape) && random.chance(0.4)) piece.surface = plan::Surface::mirror;
  return piece;
}

/// A glass door in the wall to the right, which opens at 2 s or stays shut.
void addSideDoor(plan::Plan& plan, Random& random) {
  plan::Wall side;
  side.id = base::Id<plan::Wall>("side");
  side.points = {{5, 4}, {5, -9}};
  side.thickness = 0.15;
  plan.set.walls.add(side);
  plan::Opening door;
  door.id = base::Id<plan::Opening>("door");
  door.wall = "side";
  door.along = {random.uniform(1, 2), random.uniform(2.5, 4)};
  door.sill = 0;
  door.head = 2.1;
  door.fill = plan::OpeningFill::glass;
  door.moves = plan::LeafMoves{plan::LeafKind::swing, plan::LeafHinge::start, plan::WallSide::right, 90, {}};
  if (random.chance(0.5)) door.open = {{{{"", 2}, 1}, random.uniform(0.2, 1), "", "", {}}};
  plan.set.openings.add(door);
  plan.set.areas.add(lightArea("beyond", {{5, -9}, {9, -9}, {9, 4}, {5, 4}}, random.uniform(1.4, 4)));
}

plan::Plan yardOf(std::uint64_t seed) {
  Random random(seed);
  plan::Plan plan = darkWindow(random.uniform(1.4, 3.5));
  plan.clock.length = 4;
  plan.sightRules.cell = 0.7;
  plan.camera.marks = {markAt("c1", random.in(-2, 2)), markAt("c2", random.in(-2, 2), random.uniform(1, 4))};
  for (plan::Mark& mark : plan.camera.marks) mark.height = random.uniform(0.8, 1.9);
  plan.camera.aims = {{{}, plan::OnBearing{random.uniform(-30, 60), random.uniform(-8, 5)}, {0, 0}, 0, {}}};
  plan.lens->focal = {24, 24};
  if (random.chance(0.7)) addSideDoor(plan, random);
  for (int i = 0; i < 4; ++i) plan.set.pieces.add(pieceOf(random, i));
  if (random.chance(0.5)) {
    plan::Room pit;
    pit.id = base::Id<plan::Room>("pit");
    pit.outline = {{-5, -9}, {0, -9}, {0, -1}, {-5, -1}};
    pit.floor = random.uniform(-0.5, 0.3);
    pit.ceiling = 4;
    plan.set.rooms.add(pit);
  }
  return plan;
}

TEST(GlassGroundOfRandomYards, IsWhatTheRuleTellsOfWhoStandsThere) {
  std::size_t told = 0, yards = 0;
  for (std::uint64_t seed = 8101; seed < 8151; ++seed) {
    std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
    SCOPED_TRACE("seed " + std::to_string(seed));
    const std::size_t here = heldAgainstTheRule(yardOf(seed));
    told += here;
    yards += here > 0 ? 1 : 0;
  }
  EXPECT_GT(told, 1000U);
  EXPECT_GT(yards, 20U);
}

}  // namespace
}  // namespace wend::answers
