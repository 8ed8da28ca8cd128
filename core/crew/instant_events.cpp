#include "core/crew/instant_events.h"

#include <algorithm>
#include <bit>

#include "core/base/check.h"

namespace wend::crew {

InstantQueue::InstantQueue(std::int64_t span) {
  const std::size_t count = std::bit_ceil(std::max<std::size_t>(64, static_cast<std::size_t>(span) + 1));
  buckets_.assign(count, -1);
  occupied_.assign(count / 64, 0);
}

InstantBlock* InstantQueue::room(std::size_t blocks) {
  if (used_ + blocks > pool_.size()) pool_.resize(std::max(pool_.size() * 2, used_ + blocks + 4096));
  return pool_.data() + used_;
}

void InstantQueue::push(std::int64_t cost, std::uint32_t cell, std::uint8_t mode, BlockRange range) {
  const std::size_t slot = static_cast<std::size_t>(cost) & (buckets_.size() - 1);
  InstantEvent event{cost, used_, cell, buckets_[slot], 0, 0, mode};
  event.from = static_cast<std::uint16_t>(range.from);
  event.until = static_cast<std::uint16_t>(range.until);
  WEND_CHECK(event.next < 0 || events_[static_cast<std::size_t>(event.next)].cost == cost);
  buckets_[slot] = static_cast<std::int32_t>(events_.size());
  occupied_[slot / 64] |= std::uint64_t{1} << (slot % 64);
  events_.push_back(event);
  used_ += range.until - range.from;
  ++waiting_;
}

std::size_t InstantQueue::slotAfter(std::size_t slot) const {
  std::uint64_t word = occupied_[slot / 64] & (~std::uint64_t{0} << (slot % 64));
  std::size_t w = slot / 64;
  while (word == 0) {
    w = (w + 1) & (occupied_.size() - 1);
    word = occupied_[w];
  }
  return w * 64 + static_cast<std::size_t>(std::countr_zero(word));
}

std::optional<std::int32_t> InstantQueue::take() {
  if (waiting_ == 0) return std::nullopt;
  slot_ = slotAfter(slot_);
  const std::int32_t index = buckets_[slot_];
  buckets_[slot_] = events_[static_cast<std::size_t>(index)].next;
  if (buckets_[slot_] < 0) occupied_[slot_ / 64] &= ~(std::uint64_t{1} << (slot_ % 64));
  --waiting_;
  return index;
}

}  // namespace wend::crew
