// What an axis has of what is asked: moves at the end of a ring that nobody needs, and rests beside it.
#include <gtest/gtest.h>

#include "core/pulls/fewest_moves.h"

namespace wend::pulls {
namespace {

// Stops from T1 are 2 log2 T: a lens that opens to T2.8 ends at 2.9709.
constexpr double kOpen = 2.9708536543404835, kClosed = 8.9188632372745;

/// A sample a second; each need within a third of a stop.
Tube asked(const std::vector<double>& needs) {
  Tube tube;
  for (std::size_t i = 0; i < needs.size(); ++i)
    tube.push_back({static_cast<double>(i), needs[i] - 0.33, needs[i] + 0.33, false});
  return tube;
}

Track trackFor(const std::vector<double>& needs) {
  return fewestMoves(heldWithin(asked(needs), kOpen, kClosed), {.rate = 2, .easyRate = 0.25, .easySeconds = 1},
                     asked(needs));
}

// T2 (2.0), T2.7 (2.87) and T2 again: wide open is the nearest to the first, inside the slack of the second.
TEST(EndOfARing, IsKeptWhereItServesThroughout) {
  const Track track = trackFor({2, 2, 2, 2.866, 2.866, 2.866, 2, 2, 2});
  EXPECT_TRUE(track.moves.empty()) << track.moves.size();
  for (const Knot& knot : track.knots) EXPECT_NEAR(knot.value, kOpen, 1e-8);
  EXPECT_TRUE(track.unmet.empty());
}

TEST(EndOfARing, MeetsANeedOfItsOwnExactly) {
  for (const double end : {kOpen, kClosed}) {
    const Track track = trackFor({end, end, end});
    EXPECT_TRUE(track.moves.empty());
    EXPECT_NEAR(track.knots.front().value, end, 1e-8) << "not in the middle of the half that is left";
  }
}

TEST(EndOfARing, IsLeftForWhatItCannotServe) {
  const Track track = trackFor({2, 2, 2, 4, 4, 4});
  ASSERT_EQ(track.moves.size(), 1u);
  EXPECT_NEAR(track.moves[0].valueBefore, kOpen, 1e-8);
  EXPECT_NEAR(track.moves[0].valueAfter, 4, 1e-8) << "the middle of what is asked";
}

TEST(HeldWithin, NeverLetsAnAxisFurtherThanRounding) {
  for (const auto& s : heldWithin(asked({-3, 2, 2.9, 5, 8.9, 12}), kOpen, kClosed)) {
    EXPECT_GE(s.lo, kOpen - kTubeRounding);
    EXPECT_LE(s.hi, kClosed + kTubeRounding);
    EXPECT_LE(s.lo, s.hi);
  }
  const Tube open = heldWithin({{0, 0, 0, true}}, kOpen, kClosed);
  EXPECT_TRUE(open[0].open);
}

}  // namespace
}  // namespace wend::pulls
