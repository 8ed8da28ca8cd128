/// Threads kept for work that comes in rounds: of rounds that take less than a tenth of a millisecond, starting threads
/// anew for each would cost more than the work.
#pragma once

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <thread>
#include <vector>

namespace wend::base {

class Team {
 public:
  using Work = std::function<void(std::size_t)>;

  /// Of so many members, the calling thread among them; the others are started with the first round that asks for them.
  explicit Team(std::size_t members) : members_(members) {}
  Team(const Team&) = delete;
  Team& operator=(const Team&) = delete;
  ~Team();

  std::size_t members() const { return members_; }

  /// One round: calls work(0) on this thread and work(1), ... work(members - 1) on the others, and waits for all. What
  /// was written before is seen by all of them, and what they wrote by whoever called. Work throws nothing.
  /// Requires  1 <= members <= members()
  void run(std::size_t members, const Work& work);

  /// One round: calls work(i) once for each number below `count`, on whichever member is free.
  void each(std::size_t count, const Work& work);

 private:
  /// Takes part in every round after `round`.
  void follow(std::size_t member, std::uint32_t round);
  void startUpTo(std::size_t members);

  std::size_t members_;
  const Work* work_ = nullptr;  ///< of the round; null tells everybody to go
  std::size_t wanted_ = 0;      ///< members of the round
  std::atomic<std::uint32_t> round_{0};
  std::atomic<std::uint32_t> busy_{0};
  std::vector<std::jthread> others_;  // last: joined before what they use goes
};

}  // namespace wend::base
