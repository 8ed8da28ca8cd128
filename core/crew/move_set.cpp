#include "core/crew/move_set.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "core/base/check.h"

namespace wend::crew {
namespace {

int sign(int value) {
  return (value > 0) - (value < 0);
}

double angleOf(CellOffset o) {
  return std::atan2(double(o.dy), double(o.dx));
}

/// Ways as sequences of cells, so that those with a common start stand together.
struct Passed {
  std::vector<CellOffset> cells;
  int move = 0;
};

bool before(CellOffset a, CellOffset b) {
  return a.dx != b.dx ? a.dx < b.dx : a.dy < b.dy;
}

bool passesBefore(const Passed& a, const Passed& b) {
  return std::lexicographical_compare(a.cells.begin(), a.cells.end(), b.cells.begin(), b.cells.end(), before);
}

}  // namespace

std::vector<CellOffset> cellsPassed(CellOffset to) {
  const int columns = std::abs(to.dx), rows = std::abs(to.dy);
  std::vector<CellOffset> passed{{0, 0}};
  // The i-th border between columns is crossed at (2i - 1) / (2 columns) of the way, and rows alike.
  for (int i = 1, j = 1; i <= columns || j <= rows;) {
    const int column = i <= columns ? (2 * i - 1) * std::max(rows, 1) : 0;
    const int row = j <= rows ? (2 * j - 1) * std::max(columns, 1) : 0;
    const bool east = i <= columns && (j > rows || column <= row);
    const bool north = j <= rows && (i > columns || row <= column);
    i += east;
    j += north;
    passed.push_back({(i - 1) * sign(to.dx), (j - 1) * sign(to.dy)});
  }
  return passed;
}

MoveSet::MoveSet(double radius) : radius_(radius) {
  WEND_CHECK(radius >= 1 && radius < 64);
  const double squared = radius * radius + 1e-9;
  const int reachCells = reach();
  std::vector<Passed> ways;
  for (int dy = -reachCells; dy <= reachCells; ++dy) {
    for (int dx = -reachCells; dx <= reachCells; ++dx) {
      const int length = dx * dx + dy * dy;
      if (length == 0 || length > squared) continue;
      ways.push_back({cellsPassed({dx, dy}), static_cast<int>(moves_.size())});
      moves_.push_back({{dx, dy}, std::sqrt(double(length)), 4 * length >= radius * radius - 1e-9});
    }
  }
  std::sort(ways.begin(), ways.end(), passesBefore);
  std::vector<std::size_t> open;  // the nodes on the way to the current one
  for (const Passed& way : ways) {
    std::size_t shared = 0;
    while (shared < open.size() && shared < way.cells.size() && tree_[open[shared]].at == way.cells[shared]) ++shared;
    for (; open.size() > shared; open.pop_back()) tree_[open.back()].after = tree_.size();
    for (; shared < way.cells.size(); ++shared) {
      open.push_back(tree_.size());
      tree_.push_back({way.cells[shared], static_cast<int>(shared), -1, 0});
    }
    tree_[open.back()].move = way.move;
    depth_ = std::max(depth_, static_cast<int>(way.cells.size()));
  }
  for (; !open.empty(); open.pop_back()) tree_[open.back()].after = tree_.size();
}

double MoveSet::longest() const {
  std::vector<double> angles;
  for (const Move& move : moves_)
    if (move.brisk) angles.push_back(angleOf(move.to));
  std::sort(angles.begin(), angles.end());
  double widest = angles.front() + 2 * std::numbers::pi - angles.back();
  for (std::size_t i = 1; i < angles.size(); ++i) widest = std::max(widest, angles[i] - angles[i - 1]);
  return 1 / std::cos(widest / 2);
}

}  // namespace wend::crew
