#include "core/crew/move_set.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "core/geometry/point.h"

namespace wend::crew {
namespace {

using Cells = std::vector<CellOffset>;

TEST(CellsPassed, AreThoseOfTheStraightWay) {
  EXPECT_EQ(cellsPassed({3, 0}), (Cells{{0, 0}, {1, 0}, {2, 0}, {3, 0}}));
  EXPECT_EQ(cellsPassed({0, -2}), (Cells{{0, 0}, {0, -1}, {0, -2}}));
  EXPECT_EQ(cellsPassed({2, 1}), (Cells{{0, 0}, {1, 0}, {1, 1}, {2, 1}}));
  EXPECT_EQ(cellsPassed({-2, 2}), (Cells{{0, 0}, {-1, 1}, {-2, 2}})) << "through corners";
}

/// Dense points of the way lie in the cells passed, and every cell holds some.
TEST(CellsPassed, AgreesWithDensePoints) {
  for (int dx = -9; dx <= 9; ++dx) {
    for (int dy = -9; dy <= 9; ++dy) {
      std::set<std::pair<int, int>> dense, passed;
      for (int i = 0; i < 4001; ++i) {
        const double share = (i + 0.4137) / 4001;  // meets no corner
        dense.insert({int(std::lround(dx * share)), int(std::lround(dy * share))});
      }
      for (const CellOffset o : cellsPassed({dx, dy})) passed.insert({o.dx, o.dy});
      ASSERT_EQ(passed, dense) << dx << ' ' << dy;
    }
  }
}

TEST(MoveSet, HasEveryMoveWithinItsRadius) {
  // Gauss's circle problem: 81 points of the grid lie within 5 of one, itself included (OEIS A000328).
  EXPECT_EQ(MoveSet(5).moves().size(), 80u);
  EXPECT_EQ(MoveSet(1).moves().size(), 4u);
  EXPECT_EQ(MoveSet(10).moves().size(), 316u);
}

TEST(MoveSet, BriskMovesAreHalfTheRadiusOrMore) {
  const MoveSet set(5);
  for (const Move& move : set.moves()) EXPECT_EQ(move.brisk, std::hypot(move.to.dx, move.to.dy) >= 2.5);
}

TEST(MoveSet, ItsTreePassesTheCellsOfEveryMove) {
  for (const double radius : {1.0, 2.3, 5.0, 7.5}) {
    const MoveSet set(radius);
    std::vector<int> seen(set.moves().size(), 0);
    Cells open;
    for (std::size_t i = 0; i < set.tree().size(); ++i) {
      const MoveSet::Node& node = set.tree()[i];
      open.resize(static_cast<std::size_t>(node.depth));
      open.push_back(node.at);
      ASSERT_GT(node.after, i);
      for (std::size_t below = i + 1; below < node.after; ++below) ASSERT_GT(set.tree()[below].depth, node.depth);
      ASSERT_TRUE(node.after == set.tree().size() || set.tree()[node.after].depth <= node.depth);
      if (node.move < 0) continue;
      const auto move = static_cast<std::size_t>(node.move);
      ++seen[move];
      ASSERT_EQ(open, cellsPassed(set.moves()[move].to));
    }
    EXPECT_EQ(seen, std::vector<int>(seen.size(), 1));
  }
}

TEST(MoveSet, SaysWhatItGivesAway) {
  EXPECT_NEAR(MoveSet(3).longest(), 1 / std::cos(std::atan2(1, 2) / 2), 1e-12) << "between (1, 0) and (2, 1)";
  EXPECT_NEAR(MoveSet(5).longest(), 1 / std::cos(std::atan2(1, 4) / 2), 1e-12) << "between (1, 0) and (4, 1)";
}

/// No direction is slower than said: in as many steps as it takes, a far place is in reach.
TEST(MoveSet, TheSlowestDirectionIsAsSaid) {
  // A diamond; between (3, 0) and (2, 2); between (5, 0) and (4, 3).
  for (const auto& [radius, said] :
       {std::pair{1.0, std::sqrt(0.5)}, {3.0, 6 / std::sqrt(5) / 3}, {5.0, 15 / std::sqrt(10) / 5}}) {
    const MoveSet set(radius);
    double slowest = 1;
    for (double degree = 0; degree < 360; degree += 0.5) {
      // The furthest of the hull along a direction, by its supporting lines: the least of (support / cosine).
      const auto dir = geometry::direction(degree);
      double reach = 1e9;
      for (double k = -89; k <= 89; k += 0.5) {
        const auto normal = geometry::direction(degree + k);
        double support = 0;
        for (const Move& m : set.moves()) support = std::max(support, m.to.dx * normal.x + m.to.dy * normal.y);
        reach = std::min(reach, support / geometry::dot(normal, dir));
      }
      slowest = std::min(slowest, reach / radius);
    }
    EXPECT_NEAR(slowest, said, 2e-3) << radius;
  }
}

}  // namespace
}  // namespace wend::crew
