#include "core/base/team.h"

#include <algorithm>

#include "core/base/check.h"

namespace wend::base {

namespace {

/// Looks so often before it lets the system put it to sleep: rounds follow each other closely, and waking takes longer
/// than most of the gaps between them.
constexpr int kLooks = 20000;

/// Waits while `value` is `old`; returns what it is then.
std::uint32_t waitWhile(const std::atomic<std::uint32_t>& value, std::uint32_t old) {
  for (int look = 0; look < kLooks; ++look)
    if (const std::uint32_t now = value.load(std::memory_order_acquire); now != old) return now;
  value.wait(old, std::memory_order_acquire);
  return value.load(std::memory_order_acquire);
}

}  // namespace

Team::~Team() {
  work_ = nullptr;
  round_.fetch_add(1, std::memory_order_release);
  round_.notify_all();
}

void Team::startUpTo(std::size_t members) {
  const std::uint32_t round = round_.load(std::memory_order_relaxed);
  while (others_.size() + 1 < members)
    others_.emplace_back([this, member = others_.size() + 1, round] { follow(member, round); });
}

void Team::run(std::size_t members, const Work& work) {
  WEND_CHECK(members >= 1 && members <= members_);
  if (members == 1) return work(0);
  startUpTo(members);
  work_ = &work, wanted_ = members;
  busy_.store(static_cast<std::uint32_t>(others_.size()), std::memory_order_relaxed);
  round_.fetch_add(1, std::memory_order_release);
  round_.notify_all();
  work(0);
  for (std::uint32_t busy = busy_.load(std::memory_order_acquire); busy > 0;) busy = waitWhile(busy_, busy);
}

void Team::each(std::size_t count, const Work& work) {
  std::atomic<std::size_t> next{0};
  run(std::clamp<std::size_t>(count, 1, members_), [&](std::size_t) {
    for (std::size_t i = next.fetch_add(1); i < count; i = next.fetch_add(1)) work(i);
  });
}

void Team::follow(std::size_t member, std::uint32_t round) {
  for (;;) {
    round = waitWhile(round_, round);
    if (work_ == nullptr) return;
    if (member < wanted_) (*work_)(member);
    if (busy_.fetch_sub(1, std::memory_order_acq_rel) == 1) busy_.notify_all();
  }
}

}  // namespace wend::base
