/// Events of a search, waiting in order of cost: a cell gains instants in a mode.
///
/// Frame     instants are bits, 128 to a block, so that a machine without wider words keeps up.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace wend::crew {

struct InstantBlock {
  std::uint64_t word __attribute__((vector_size(16)));
  bool any() const { return (word[0] | word[1]) != 0; }
};

/// Blocks [from, until) of a cell's instants.
struct BlockRange {
  std::size_t from = 0, until = 0;
};

struct InstantEvent {
  std::int64_t cost = 0;
  std::size_t bits = 0;  ///< its first block in the pool
  std::uint32_t cell = 0;
  std::int32_t next = -1;  ///< in its list
  std::uint16_t from = 0, until = 0;
  std::uint8_t mode = 0;
  BlockRange range() const { return {from, until}; }
};

/// Buckets one millimetre wide, going round: nothing may be pushed dearer than `span` above the cheapest waiting.
///
/// Requires  costs pushed at least the cost last taken.
/// Ensures   `take` gives events in order of cost; of equal cost the last pushed first.
/// Cost      a push is constant; the next occupied bucket is found 64 at a time.
class InstantQueue {
 public:
  explicit InstantQueue(std::int64_t span);

  /// Memory for the bits of an event to be pushed; valid until asked again.
  InstantBlock* room(std::size_t blocks);
  /// The room's first blocks, as many as `range` holds, become those of a new event.
  void push(std::int64_t cost, std::uint32_t cell, std::uint8_t mode, BlockRange range);
  /// The cheapest event, out of its bucket: its place in `event`.
  std::optional<std::int32_t> take();

  InstantEvent& event(std::int32_t index) { return events_[static_cast<std::size_t>(index)]; }
  const InstantEvent& event(std::int32_t index) const { return events_[static_cast<std::size_t>(index)]; }
  InstantBlock* bits(const InstantEvent& event) { return pool_.data() + event.bits; }
  const InstantBlock* bits(const InstantEvent& event) const { return pool_.data() + event.bits; }
  std::size_t pushed() const { return events_.size(); }

 private:
  std::size_t slotAfter(std::size_t slot) const;

  std::vector<std::int32_t> buckets_;
  std::vector<std::uint64_t> occupied_;
  std::vector<InstantEvent> events_;
  std::vector<InstantBlock> pool_;
  std::size_t used_ = 0, waiting_ = 0, slot_ = 0;
};

}  // namespace wend::crew
