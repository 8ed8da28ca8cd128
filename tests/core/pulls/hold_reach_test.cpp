#include "core/pulls/hold_reach.h"

#include <gtest/gtest.h>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

TEST(HoldReach, StandsUntilNoValueIsLeft) {
  const Tube tube{{0, 0, 4}, {1, 1, 5}, {2, 3, 6}, {3, 5, 8}};
  const HoldReach reach(tube);
  const Standing all = reach.standingFrom(0, {0, 4});
  EXPECT_EQ(all.last, 2u);
  EXPECT_EQ(all.left.lo, 3);
  EXPECT_EQ(all.left.hi, 4);
  EXPECT_EQ(reach.standingFrom(0, {0, 0.5}).last, 0u);
  EXPECT_EQ(reach.standingFrom(2, {5.5, 6}).last, 3u);
}

TEST(HoldReach, AgreesWithLookingAtEverySample) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Draw draw(seed);
    const Tube tube = randomTube(seed, {.samples = 20 + draw.below(200), .drift = 5, .gaps = 0, .narrowest = 3});
    const HoldReach reach(tube);
    for (std::size_t first = 0; first < tube.size(); ++first) {
      Choice left{tube[first].lo, tube[first].hi};
      if (draw.chance(0.5)) left.lo = draw.uniform(left.lo, left.hi);
      const Standing found = reach.standingFrom(first, left);
      std::size_t last = first;
      while (last + 1 < tube.size() && !left.cut(tube[last + 1].lo, tube[last + 1].hi).empty()) {
        ++last;
        left = left.cut(tube[last].lo, tube[last].hi);
      }
      ASSERT_EQ(found.last, last) << "seed " << seed << " from " << first;
      ASSERT_EQ(found.left.lo, left.lo) << "seed " << seed << " from " << first;
      ASSERT_EQ(found.left.hi, left.hi) << "seed " << seed << " from " << first;
    }
  }
}

}  // namespace
}  // namespace wend::pulls
