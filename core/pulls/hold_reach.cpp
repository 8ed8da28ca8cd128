#include "core/pulls/hold_reach.h"

#include "core/base/check.h"

namespace wend::pulls {

HoldReach::HoldReach(const Tube& tube) : size_(tube.size()), blocks_(1) {
  for (const TubeSample& s : tube) blocks_[0].push_back({s.lo, s.hi});
  while (blocks_.back().size() > 1) {
    const std::vector<Choice>& below = blocks_.back();
    std::vector<Choice> level;
    for (std::size_t i = 0; i + 1 < below.size(); i += 2)
      level.push_back(below[i].cut(below[i + 1].lo, below[i + 1].hi));
    blocks_.push_back(std::move(level));
  }
}

bool HoldReach::takes(std::size_t level, std::size_t at, Choice left) const {
  if (level >= blocks_.size() || at % (std::size_t{1} << level) != 0) return false;
  const std::size_t block = at >> level;
  return block < blocks_[level].size() && !left.cut(blocks_[level][block].lo, blocks_[level][block].hi).empty();
}

Standing HoldReach::standingFrom(std::size_t first, Choice values) const {
  WEND_CHECK(first < size_ && takes(0, first, values));
  std::size_t at = first, level = 0;
  while (at < size_) {
    while (takes(level + 1, at, values)) ++level;
    while (!takes(level, at, values)) {
      if (level == 0) return {at - 1, values};
      --level;
    }
    const Choice& block = blocks_[level][at >> level];
    values = values.cut(block.lo, block.hi);
    at += std::size_t{1} << level;
  }
  return {size_ - 1, values};
}

}  // namespace wend::pulls
