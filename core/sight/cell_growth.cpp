#include "core/sight/cell_growth.h"

#include <cmath>
#include <span>

#include "core/sight/row_kernels.h"

namespace wend::sight {

namespace {

/// The half width of a disc at each distance from its middle row, in cells; the last entry is that of its top row.
std::vector<int> halfWidths(double radius) {
  std::vector<int> widths;
  for (int off = 0; off <= radius; ++off) widths.push_back(static_cast<int>(std::sqrt(radius * radius - off * off)));
  return widths;
}

/// One column of words at a time.
class Growth {
 public:
  Growth(const CellBits& from, const WordBox& box, double radius, CellBits& out)
      : from_(from),
        box_(box),
        // A word holds 64 cells: a wider disc would reach past its neighbours.
        widths_(halfWidths(std::min(radius, 63.0))),
        none_(rows(), 0),
        out_(out) {}

  int reach() const { return static_cast<int>(widths_.size()) - 1; }
  /// Writes to that column of `out` alone.
  void addColumn(int word) const;

 private:
  std::size_t rows() const { return static_cast<std::size_t>(box_.rowUntil - box_.rowFrom); }
  /// The rows of the box in a column of words, from the south.
  std::span<const std::uint64_t> rowsOf(int word) const {
    if (word < box_.wordFrom || word >= box_.wordUntil) return none_;
    return {from_.column(word) + box_.rowFrom, rows()};
  }
  /// Adds the rows of the box, moved north by so many.
  void add(const std::vector<std::uint64_t>& grown, int by, std::uint64_t* column) const;

  const CellBits& from_;
  WordBox box_;
  std::vector<int> widths_;
  std::vector<std::uint64_t> none_;
  CellBits& out_;
  const RowKernels& kernels_ = rowKernels();
};

void Growth::addColumn(int word) const {
  const std::span<const std::uint64_t> west = rowsOf(word - 1), here = rowsOf(word), east = rowsOf(word + 1);
  const auto empty = [](std::span<const std::uint64_t> column) {
    return std::ranges::all_of(column, [](std::uint64_t bits) { return bits == 0; });
  };
  if (empty(here) && empty(west) && empty(east)) return;
  std::vector<std::uint64_t> grown(here.begin(), here.end());
  std::uint64_t* const column = out_.column(word);
  int width = 0;
  for (int off = reach(); off >= 0; --off) {
    while (width < widths_[static_cast<std::size_t>(off)])
      kernels_.widen(west.data(), here.data(), east.data(), ++width, static_cast<int>(rows()), grown.data());
    add(grown, -off, column);
    if (off > 0) add(grown, off, column);
  }
  const int columns = out_.grid().nx;
  if (word != columns / 64) return;
  const std::uint64_t inGrid = (std::uint64_t{1} << (columns % 64)) - 1;
  for (int row = 0; row < out_.grid().ny; ++row) column[row] &= inGrid;
}

void Growth::add(const std::vector<std::uint64_t>& grown, int by, std::uint64_t* column) const {
  const int from = std::max(0, box_.rowFrom + by), until = std::min(out_.grid().ny, box_.rowUntil + by);
  if (from < until) kernels_.unite(grown.data() + (from - by - box_.rowFrom), until - from, column + from);
}

}  // namespace

WordBox addGrown(const CellBits& from, const WordBox& box, double radius, CellBits& out, base::Team& team) {
  if (box.empty()) return {};
  const Growth growth(from, box, radius, out);
  const WordBox all = out.box();
  const WordBox grown{std::max(0, box.rowFrom - growth.reach()), std::min(all.rowUntil, box.rowUntil + growth.reach()),
                      std::max(0, box.wordFrom - 1), std::min(all.wordUntil, box.wordUntil + 1)};
  team.each(static_cast<std::size_t>(grown.wordUntil - grown.wordFrom),
            [&](std::size_t i) { growth.addColumn(grown.wordFrom + static_cast<int>(i)); });
  return grown;
}

}  // namespace wend::sight
