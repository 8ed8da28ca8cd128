#include "core/sight/known_ground.h"

#include <cmath>

#include "core/sight/cell_growth.h"

namespace wend::sight {

void DeepGround::look(const CellBits& seen, const WordBox& box, base::Team& team) {
  nearUnseen_.clear(near_);
  box_ = box, near_ = {};
  // A place is sampled every `spacing`, and stands for the cell it lies in.
  const double reach = radius_ + 0.01 + spacing_ / 2 + 0.7072;
  usable_ = reach < 63 && !box.empty();
  if (!usable_) return;
  const int rows = static_cast<int>(reach) + 1;
  const WordBox all = seen.box();
  const WordBox around{std::max(0, box.rowFrom - rows), std::min(all.rowUntil, box.rowUntil + rows),
                       std::max(0, box.wordFrom - 1), std::min(all.wordUntil, box.wordUntil + 1)};
  for (int word = around.wordFrom; word < around.wordUntil; ++word) {
    const std::uint64_t inGrid = word == grid_.nx / 64 ? (std::uint64_t{1} << (grid_.nx % 64)) - 1 : ~std::uint64_t{0};
    for (int row = around.rowFrom; row < around.rowUntil; ++row)
      unseen_.column(word)[row] = ~seen.column(word)[row] & inGrid;
  }
  near_ = addGrown(unseen_, around, reach, nearUnseen_, team);
  nearFirst_ = nearUnseen_.column(box.wordFrom) + box.rowFrom;
  nearStride_ = static_cast<std::size_t>(nearUnseen_.view().stride);
}

bool DeepGround::holdsLine(Cells a, Cells b) const {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const int pieces = 1 + static_cast<int>(std::max(std::abs(dx), std::abs(dy)) * (1.4143 / spacing_));
  const double share = 1.0 / pieces, east = grid_.nx - 1.0, north = grid_.ny - 1.0;
  const auto rows = static_cast<unsigned>(box_.rowUntil - box_.rowFrom);
  const auto words = static_cast<unsigned>(box_.wordUntil - box_.wordFrom);
  for (int i = 0; i <= pieces; ++i) {
    // Of places outside the grid the nearest one inside is no further from any cell.
    const double x = std::min(std::max(a.x + dx * (share * i), 0.0), east);
    const double y = std::min(std::max(a.y + dy * (share * i), 0.0), north);
    const auto column = static_cast<unsigned>(static_cast<int>(x + 0.5));
    const auto row = static_cast<unsigned>(static_cast<int>(y + 0.5)) - static_cast<unsigned>(box_.rowFrom);
    const unsigned word = column / 64 - static_cast<unsigned>(box_.wordFrom);
    if (row >= rows || word >= words) return false;
    if ((nearFirst_[word * nearStride_ + row] >> (column % 64)) & 1) return false;
  }
  return true;
}

bool DeepGround::holds(const RegionSlice& slice) const {
  if (!usable_) return false;
  const auto count = static_cast<std::size_t>(slice.corners);
  double twiceArea = 0, around = 0;
  Cells a = cellsOf(slice.corner[count - 1]);
  const Cells first = a;
  for (std::size_t i = 0; i < count; ++i) {
    const Cells b = cellsOf(slice.corner[i]);
    if (!holdsLine(a, b)) return false;
    twiceArea += (a.x - first.x) * (b.y - first.y) - (a.y - first.y) * (b.x - first.x);
    around += std::max(std::abs(b.x - a.x), std::abs(b.y - a.y));
    a = b;
  }
  // No place of a convex area lies deeper in it than twice its area over its outline.
  return std::abs(twiceArea) <= radius_ * around;
}

void UnseenWords::look(const CellBits& seen) {
  const WordBox all = seen.box();
  const int columns = seen.grid().nx;
  stride_ = static_cast<std::size_t>(all.wordUntil) + 1;
  before_.assign(stride_ * (static_cast<std::size_t>(all.rowUntil) + 1), 0);
  for (int word = 0; word < all.wordUntil; ++word) {
    const std::uint64_t inGrid = word == columns / 64 ? (std::uint64_t{1} << (columns % 64)) - 1 : ~std::uint64_t{0};
    std::uint32_t inColumn = 0;
    for (int row = 0; row < all.rowUntil; ++row) {
      inColumn += (~seen.column(word)[row] & inGrid) != 0;
      before_[slot(word + 1, row + 1)] = before_[slot(word, row + 1)] + inColumn;
    }
  }
}

bool UnseenWords::any(const WordBox& box) const {
  return !box.empty() && before_[slot(box.wordUntil, box.rowUntil)] - before_[slot(box.wordFrom, box.rowUntil)] !=
                             before_[slot(box.wordUntil, box.rowFrom)] - before_[slot(box.wordFrom, box.rowFrom)];
}

}  // namespace wend::sight
