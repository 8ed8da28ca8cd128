#include "core/sight/cell_growth.h"

#include <cmath>

namespace wend::sight {

namespace {

/// The half width of a disc at each distance from its middle row, in cells; the last entry is that of its top row.
std::vector<int> halfWidths(double radius) {
  std::vector<int> widths;
  for (int off = 0; off <= radius; ++off) widths.push_back(static_cast<int>(std::sqrt(radius * radius - off * off)));
  return widths;
}

/// A row of one column of words with its two neighbours: the bits that come to `word` when the row moves both ways.
struct Neighbours {
  std::uint64_t west, word, east;
  std::uint64_t moved(int by) const { return (word << by) | (west >> (64 - by)) | (word >> by) | (east << (64 - by)); }
};

class Growth {
 public:
  Growth(const CellBits& from, const WordBox& box, std::vector<int> widths, CellBits& out)
      : from_(from), box_(box), widths_(std::move(widths)), out_(out), inGrid_(out.box()) {}

  void addRow(int word, int row) {
    const Neighbours n{at(word - 1, row), at(word, row), at(word + 1, row)};
    if ((n.west | n.word | n.east) == 0) return;
    std::uint64_t grown = n.word;
    int width = 0;
    for (int off = static_cast<int>(widths_.size()) - 1; off >= 0; --off) {
      while (width < widths_[static_cast<std::size_t>(off)]) grown |= n.moved(++width);
      add(word, row - off, grown);
      if (off > 0) add(word, row + off, grown);
    }
  }

 private:
  std::uint64_t at(int word, int row) const {
    return word >= box_.wordFrom && word < box_.wordUntil ? from_.column(word)[row] : 0;
  }
  void add(int word, int row, std::uint64_t bits) {
    if (row < 0 || row >= inGrid_.rowUntil) return;
    const int columns = out_.grid().nx;
    if (word == columns / 64) bits &= (std::uint64_t{1} << (columns % 64)) - 1;
    out_.column(word)[row] |= bits;
  }

  const CellBits& from_;
  WordBox box_;
  std::vector<int> widths_;
  CellBits& out_;
  WordBox inGrid_;
};

}  // namespace

WordBox addGrown(const CellBits& from, const WordBox& box, double radius, CellBits& out) {
  if (box.empty()) return {};
  // A word holds 64 cells: a wider disc would reach past its neighbours.
  const std::vector<int> widths = halfWidths(std::min(radius, 63.0));
  const int reach = static_cast<int>(widths.size()) - 1;
  const WordBox all = out.box();
  const WordBox grown{std::max(0, box.rowFrom - reach), std::min(all.rowUntil, box.rowUntil + reach),
                      std::max(0, box.wordFrom - 1), std::min(all.wordUntil, box.wordUntil + 1)};
  Growth growth(from, box, widths, out);
  for (int word = grown.wordFrom; word < grown.wordUntil; ++word)
    for (int row = box.rowFrom; row < box.rowUntil; ++row) growth.addRow(word, row);
  return grown;
}

}  // namespace wend::sight
