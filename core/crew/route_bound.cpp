#include "core/crew/route_bound.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/crew/cost_lanes.h"
#include "core/crew/route_sweep.h"

namespace wend::crew {
namespace {

constexpr std::size_t kWordBlocks = 64 / RouteBound::kBlock;

/// One bit for each four that has any.
std::uint64_t anyOfFour(std::uint64_t bits) {
  bits |= bits >> 1;
  bits |= bits >> 2;
  return bits & 0x1111111111111111;
}

}  // namespace

RouteBound::RouteBound(const BorderedGrid& grid, const Input& input) : words_(grid.words()), wordRows_(grid.rows()) {
  addWays(input);
  for (const Way& way : ways_)
    rowBorder_ =
        std::max<std::size_t>(rowBorder_, static_cast<std::size_t>(std::max(std::abs(way.dx), std::abs(way.dy))));
  columnBorder_ = (rowBorder_ + 7) / 8 * 8;
  wide_ = words_ * kWordBlocks + 2 * columnBorder_;
  blocks_ = wide_ * (wordRows_ / kBlock + 1 + 2 * rowBorder_);
  stand_.assign(blocks_ * (input.steps + 1), kNever<float>);
  walk_ = stand_;
  onStand_.assign(blocks_, kNever<float>);
  onWalk_ = onStand_;
  any_.assign(blocks_, 0);
  cellMillimetres_ = static_cast<float>(input.cell * 1000);
  blockMillimetres_ = cellMillimetres_ * kBlock;
  haul_.assign(blocks_, 0);
  begin(grid, input);
  for (std::size_t step = input.steps; step-- > 0;) goBack(step, input);
}

/// For each block some blocks away, the shortest of the moves that can lead there.
void RouteBound::addWays(const Input& input) {
  const int block = static_cast<int>(kBlock);
  const int reach = (input.moves.reach() + block - 1) / block;
  for (int dy = -reach; dy <= reach; ++dy) {
    for (int dx = -reach; dx <= reach; ++dx) {
      Way way{dx, dy, kNever<float>, kNever<float>};
      for (const Move& move : input.moves.moves()) {
        if (std::abs(move.to.dx - dx * block) >= block || std::abs(move.to.dy - dy * block) >= block) continue;
        float& least = move.brisk ? way.brisk : way.slow;
        least = std::min(least, static_cast<float>(millimetres(move.cells * input.cell)));
      }
      if (std::min(way.brisk, way.slow) < kNever<float>) ways_.push_back(way);
    }
  }
}

std::size_t RouteBound::placeOf(std::size_t word) const {
  return (word / words_ / kBlock + rowBorder_) * wide_ + columnBorder_ + word % words_ * kWordBlocks;
}

void RouteBound::begin(const BorderedGrid& grid, const Input& input) {
  float* stand = stand_.data() + input.steps * blocks_;
  const auto open = [&](std::size_t bit) { stand[placeOf(bit / 64) + bit % 64 / kBlock] = 0; };
  for (const std::size_t bit : input.ends) open(bit);
  for (std::size_t bit = 0; input.ends.empty() && bit < grid.bits(); bit += kBlock) open(bit);
  widenHaul(stand);
  std::copy_n(stand, blocks_, walk_.data() + input.steps * blocks_);
}

/// Widens the reach of what must still be walked: from the blocks to where a later instant allows.
void RouteBound::widenHaul(const float* stand) {
  std::size_t west = wide_, east = 0, south = blocks_, north = 0;
  for (std::size_t b = 0; b < blocks_; ++b) {
    if (stand[b] == kNever<float>) continue;
    west = std::min(west, b % wide_), east = std::max(east, b % wide_);
    south = std::min(south, b / wide_), north = std::max(north, b / wide_);
  }
  const auto gap = [&](std::size_t at, std::size_t low, std::size_t high) {
    const std::size_t blocks = at < low ? low - at : at > high ? at - high : 0;
    return blocks > 0 ? blockMillimetres_ * static_cast<float>(blocks) - (blockMillimetres_ - cellMillimetres_) : 0;
  };
  std::vector<float> across(wide_);
  for (std::size_t column = 0; column < wide_; ++column) across[column] = gap(column, west, east);
  for (std::size_t row = 0; row < blocks_ / wide_; ++row) {
    const float up = gap(row, south, north);
    for (std::size_t column = 0; column < wide_; ++column) {
      const float squared = up * up + across[column] * across[column];
      float& haul = haul_[row * wide_ + column];
      if (squared > haul * haul) haul = std::sqrt(squared);
    }
  }
}

void RouteBound::readMap(const std::uint64_t* map, std::vector<std::uint8_t>& any) const {
  for (std::size_t row = 0; row < wordRows_; row += kBlock) {
    for (std::size_t w = 0; w < words_; ++w) {
      std::uint64_t bits = 0;
      for (std::size_t r = row; r < std::min(row + kBlock, wordRows_); ++r) bits |= map[r * words_ + w];
      bits = anyOfFour(bits);
      std::uint8_t* blocks = any.data() + placeOf(row * words_ + w);
      for (std::size_t i = 0; i < kWordBlocks; ++i) blocks[i] = (bits >> (kBlock * i)) & 1;
    }
  }
}

void RouteBound::goBack(std::size_t step, const Input& input) {
  float *stand = stand_.data() + step * blocks_, *walk = walk_.data() + step * blocks_;
  const float *laterStand = stand + blocks_, *laterWalk = walk + blocks_;
  readMap(input.move.at(step), any_);
  // A move may end only where its step may be moved in, and start there too.
  for (std::size_t b = 0; b < blocks_; ++b) {
    onStand_[b] = any_[b] ? laterStand[b] : kNever<float>;
    onWalk_[b] = any_[b] ? laterWalk[b] : kNever<float>;
  }
  for (const Way& way : ways_) {
    const std::ptrdiff_t to = way.dy * static_cast<std::ptrdiff_t>(wide_) + way.dx;
    const std::size_t from = rowBorder_ * wide_ + columnBorder_, until = blocks_ - from;
    for (std::size_t b = from; b + 8 <= until; b += 8) {
      const auto there = static_cast<std::size_t>(static_cast<std::ptrdiff_t>(b) + to);
      if (way.brisk < kNever<float>) lowerEight(walk + b, &onWalk_[there], way.brisk);
      if (way.slow < kNever<float>) lowerEight(walk + b, &onStand_[there], way.slow);
    }
  }
  for (std::size_t b = 0; b < blocks_; ++b)
    if (!any_[b]) walk[b] = kNever<float>;
  readMap(input.stand.at(step), any_);
  for (std::size_t b = 0; b < blocks_; ++b) {
    stand[b] = std::min(any_[b] ? laterStand[b] : kNever<float>, walk[b] + input.perWalk);
    walk[b] = std::min(walk[b], stand[b]);
  }
  widenHaul(stand);
  for (std::size_t b = 0; b < blocks_; ++b) {
    // Each of the moves still to come may have been rounded down by half a millimetre, and the roots a little.
    const float haul = haul_[b] * 0.99999F - 0.5F * static_cast<float>(input.steps - step) - 1;
    if (haul <= 0) continue;
    stand[b] = std::max(stand[b], haul + input.perWalk);
    walk[b] = std::max(walk[b], haul);
  }
}

}  // namespace wend::crew
