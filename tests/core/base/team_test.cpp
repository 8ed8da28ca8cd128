#include "core/base/team.h"

#include <gtest/gtest.h>

#include <numeric>

namespace wend::base {
namespace {

TEST(Team, CallsEveryMemberOnceARoundAndWaitsForAll) {
  constexpr std::size_t kMembers = 4, kRounds = 2000;
  Team team(kMembers);
  std::vector<std::size_t> calls(kMembers);
  for (std::size_t round = 0; round < kRounds; ++round) {
    // Of differing sizes, so that some sit rounds out and some start late.
    const std::size_t members = 1 + (round / 7) % kMembers;
    std::vector<std::size_t> before = calls;
    team.run(members, [&](std::size_t member) { ++calls[member]; });
    for (std::size_t member = 0; member < kMembers; ++member)
      ASSERT_EQ(calls[member], before[member] + (member < members)) << round;
  }
}

TEST(Team, SeesInARoundWhatTheOneBeforeWrote) {
  Team team(3);
  std::vector<std::size_t> written(3, 1);
  for (int round = 0; round < 500; ++round) {
    const std::size_t sum = std::accumulate(written.begin(), written.end(), std::size_t{0}) % 1000;
    std::vector<std::size_t> next(3);
    team.run(3, [&](std::size_t member) {
      next[member] = std::accumulate(written.begin(), written.end(), std::size_t{0}) % 1000 + member;
    });
    EXPECT_EQ(next, (std::vector<std::size_t>{sum, sum + 1, sum + 2}));
    written = next;
  }
}

TEST(Team, TakesEachNumberOnce) {
  Team team(3);
  for (std::size_t count = 0; count < 200; ++count) {
    std::vector<int> taken(count);
    team.each(count, [&](std::size_t i) { ++taken[i]; });
    EXPECT_EQ(taken, std::vector<int>(count, 1));
  }
}

TEST(Team, OfOneWorksOnTheCallingThread) {
  Team team(1);
  std::thread::id worked;
  team.run(1, [&](std::size_t) { worked = std::this_thread::get_id(); });
  EXPECT_EQ(worked, std::this_thread::get_id());
}

}  // namespace
}  // namespace wend::base
