#include "core/sight/run_store.h"

#include <algorithm>
#include <array>

namespace wend::sight {

namespace {

/// The turns of the 64 cells of one word, each cell's in the order they are given.
class WordLists {
 public:
  /// Empties them. No cell turns more than `most` times.
  void begin(std::size_t most) {
    if (steps_.size() < 64 * most) steps_.resize(64 * most);
    stride_ = most;
    for (std::size_t bit = 0; bit < 64; ++bit) next_[bit] = steps_.data() + bit * most;
  }
  void push(std::size_t bit, std::uint32_t step) { *next_[bit]++ = step; }
  void push(TurnedCells cells, std::uint32_t step) {
    for (std::size_t bit = cells.from; bit < cells.until; ++bit) push(bit, step);
  }
  std::span<const std::uint32_t> of(std::size_t bit) const { return {steps_.data() + bit * stride_, next_[bit]}; }

 private:
  std::vector<std::uint32_t> steps_;
  std::array<std::uint32_t*, 64> next_{};
  std::size_t stride_ = 0;
};

}  // namespace

/// Writes columns of words, one after another. Columns share nothing, so that threads may take one each.
class ColumnWriter {
 public:
  ColumnWriter(const RunStore& old, RunStore::Anew& anew) : old_(old), anew_(anew) {}
  RunStore::Column write(int word);

 private:
  template <class Visit>
  void eachTurn(int word, Visit visit) const;
  template <class Visit>
  void eachOldTurn(int word, int row, Visit visit) const;
  std::size_t mostOldTurns(int word, int row) const;
  void order(int word);
  void add(std::size_t bit);

  const RunStore& old_;
  RunStore::Anew& anew_;
  struct Turn {
    TurnedCells cells;
    std::uint32_t step;
  };
  std::vector<Turn> turns_;  ///< by rows, and of each row by steps
  std::vector<std::uint32_t> rowEnds_;
  WordLists lists_;
  RunStore::Column column_;
};

/// Calls visit(stretch, step) for all that turns in the steps found anew, in the order of the steps.
template <class Visit>
void ColumnWriter::eachTurn(int word, Visit visit) const {
  const CellBits* last = &anew_.before;
  const auto seam = [&](const CellBits& next, std::uint32_t step) {
    ColumnTurns differ;
    for (int row = 0; row < old_.rows_; ++row) differ.push(row, last->column(word)[row] ^ next.column(word)[row]);
    differ.endStep(step);
    differ.each(visit);
  };
  for (const Turns& part : anew_.parts) {
    seam(part.first, part.range.from);
    part.columns[static_cast<std::size_t>(word)].each(visit);
    last = &part.last;
  }
  seam(anew_.after, anew_.range.until);
}

/// Calls visit(bit, step) for every old turn of a word.
template <class Visit>
void ColumnWriter::eachOldTurn(int word, int row, Visit visit) const {
  for (int bit = 0; bit < 64; ++bit)
    for (const StepRange run : old_.of(64 * word + bit, row))
      visit(static_cast<std::size_t>(bit), run.from), visit(static_cast<std::size_t>(bit), run.until);
}

std::size_t ColumnWriter::mostOldTurns(int word, int row) const {
  std::size_t most = 0;
  for (int bit = 0; bit < 64; ++bit) most = std::max<std::size_t>(most, 2 * old_.of(64 * word + bit, row).size());
  return most;
}

void ColumnWriter::order(int word) {
  // Counted two rows further on, so that placing moves each row's start to where its end is wanted.
  rowEnds_.assign(static_cast<std::size_t>(old_.rows_) + 2, 0);
  eachTurn(word, [&](TurnedCells cells, std::uint32_t) { ++rowEnds_[cells.row + std::size_t{2}]; });
  for (std::size_t i = 2; i < rowEnds_.size(); ++i) rowEnds_[i] += rowEnds_[i - 1];
  turns_.resize(rowEnds_.back());
  eachTurn(word, [&](TurnedCells cells, std::uint32_t step) {
    turns_[rowEnds_[cells.row + std::size_t{1}]++] = {cells, step};
  });
  for (Turns& part : anew_.parts) part.columns[static_cast<std::size_t>(word)] = {};
}

/// The next cell's turns. Every cell ends unseen, so they pair up.
void ColumnWriter::add(std::size_t bit) {
  const std::span<const std::uint32_t> steps = lists_.of(bit);
  const std::size_t before = column_.ends.size();
  column_.starts.push_back(static_cast<std::uint32_t>(before / 2));
  const auto append = [&](std::vector<std::uint16_t>& ends, int shift) {
    ends.resize(before + steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i) ends[before + i] = static_cast<std::uint16_t>(steps[i] >> shift);
  };
  append(column_.ends, 0);
  if (old_.wide_) append(column_.upper, 16);
}

RunStore::Column ColumnWriter::write(int word) {
  order(word);
  column_.starts.clear(), column_.ends.clear(), column_.upper.clear();
  const bool any = !old_.columns_[static_cast<std::size_t>(word)].ends.empty();
  std::uint32_t next = 0;
  for (int row = 0; row < old_.rows_; ++row) {
    const std::uint32_t end = rowEnds_[static_cast<std::size_t>(row) + 1];
    const auto keep = [&](auto wanted) {
      if (any)
        eachOldTurn(word, row, [&](std::size_t bit, std::uint32_t step) {
          if (wanted(step)) lists_.push(bit, step);
        });
    };
    lists_.begin(end - next + (any ? mostOldTurns(word, row) : 0));
    keep([&](std::uint32_t step) { return step < anew_.range.from; });
    for (; next < end; ++next) lists_.push(turns_[next].cells, turns_[next].step);
    keep([&](std::uint32_t step) { return step > anew_.range.until; });
    for (std::size_t bit = 0; bit < 64; ++bit) add(bit);
  }
  column_.starts.push_back(static_cast<std::uint32_t>(column_.ends.size() / 2));
  return column_;  // a copy, of just the size
}

RunStore::RunStore(const geometry::Grid& grid, std::uint32_t steps)
    : rows_(grid.ny), wide_(steps > 65535), columns_(static_cast<std::size_t>(grid.nx / 64 + 1)) {
  for (Column& column : columns_) column.starts.assign(64 * static_cast<std::size_t>(rows_) + 1, 0);
}

RunStore RunStore::with(Anew anew, int threads) const {
  RunStore store;
  store.rows_ = rows_, store.wide_ = wide_;
  store.columns_.resize(columns_.size());
  shareOut(columns_.size(), threads, [&] {
    return [&, writer = std::make_shared<ColumnWriter>(*this, anew)](std::size_t word) {
      store.columns_[word] = writer->write(static_cast<int>(word));
    };
  });
  return store;
}

std::size_t RunStore::size() const {
  std::size_t ends = 0;
  for (const Column& column : columns_) ends += column.ends.size();
  return ends / 2;
}

std::size_t RunStore::bytes() const {
  std::size_t bytes = 0;
  for (const Column& column : columns_)
    bytes += column.starts.size() * sizeof(std::uint32_t) +
             (column.ends.size() + column.upper.size()) * sizeof(std::uint16_t);
  return bytes;
}

}  // namespace wend::sight
