#include "core/pulls/pinned.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/pulls/fewest_moves.h"
#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

TEST(CutOut, CutsBetweenSamplesWhereTheTubeIsClosed) {
  const Tube tube{{0, 0, 2}, {1, 4, 10}, {2, 0, 0, true}, {3, 5, 6}};
  const Tube part = cutOut(tube, {0.25, 2.5});
  ASSERT_EQ(part.size(), 4u);
  EXPECT_EQ(part[0].t, 0.25);
  EXPECT_EQ(part[0].lo, 1);
  EXPECT_EQ(part[0].hi, 4);
  EXPECT_EQ(part[1].t, 1);
  EXPECT_TRUE(part[2].open);
  EXPECT_EQ(part[3].t, 2.5);
  EXPECT_TRUE(part[3].open) << "next to an open sample";
}

TEST(CutOut, OfTheWholeIsTheWhole) {
  const Tube tube = randomTube(3, {.samples = 50});
  const Tube part = cutOut(tube, {tube.front().t, tube.back().t});
  ASSERT_EQ(part.size(), tube.size());
  for (std::size_t i = 0; i < tube.size(); ++i) EXPECT_EQ(part[i].lo, tube[i].lo);
}

TEST(Pinned, IsTheConeOfWhatThePinsReach) {
  Tube tube;
  for (int i = 0; i <= 4; ++i) tube.push_back({static_cast<double>(i), -100, 100});
  const Tube result = pinned(tube, {0, 10}, 5);
  const double lo[] = {0, -5, 0, 5, 10}, hi[] = {0, 5, 10, 15, 10};
  for (std::size_t i = 0; i <= 4; ++i) {
    EXPECT_NEAR(result[i].lo, lo[i], 1e-6) << i;
    EXPECT_NEAR(result[i].hi, hi[i], 1e-6) << i;
  }
}

TEST(Pinned, AsksForTheNearestThatCanBeReachedWhereNothingOfTheTubeCan) {
  const Tube tube{{0, 20, 30}, {1, 20, 30}, {2, 20, 30}, {3, 6, 4}, {4, 20, 30}};
  const Tube result = pinned(tube, {0, std::nullopt}, 6);
  EXPECT_EQ(result[0].lo, 0);
  EXPECT_NEAR(result[1].lo, 6, 1e-6);
  EXPECT_NEAR(result[1].hi, 6, 1e-6);
  EXPECT_NEAR(result[2].hi, 12, 1e-6);
  EXPECT_GT(result[3].lo, result[3].hi) << "no value would do, and the middle can be reached";
  EXPECT_NEAR(result[4].lo, 20, 1e-6);
  EXPECT_NEAR(result[4].hi, 24, 1e-6);
}

TEST(Pinned, HoldsEveryTrackOfTheTubeFromPinToPin) {
  int tried = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const Tube tube = randomTube(seed, {.samples = 120, .drift = 60});
    const double rate = 120;
    const Track track = fewestMoves(tube, {.rate = rate});
    if (!track.unmet.empty()) continue;
    ++tried;
    const Pins pins{track.knots.front().value, track.knots.back().value};
    const Tube result = pinned(tube, pins, rate);
    const double end = tube.back().t;
    ASSERT_EQ(result.front().lo, *pins.from);
    ASSERT_EQ(result.back().hi, *pins.until);
    for (std::size_t i = 0; i < tube.size(); ++i) {
      const TubeSample& s = result[i];
      if (s.open) continue;
      const double value = track.valueAt(s.t);
      ASSERT_GE(value, s.lo - 1e-6) << "seed " << seed << " at " << s.t;
      ASSERT_LE(value, s.hi + 1e-6) << "seed " << seed << " at " << s.t;
      for (const double bound : {s.lo, s.hi}) {
        ASSERT_LE(std::abs(bound - *pins.from), rate * s.t + 1e-9) << "seed " << seed;
        ASSERT_LE(std::abs(bound - *pins.until), rate * (end - s.t) + 1e-9) << "seed " << seed;
      }
    }
    const Track again = fewestMoves(result, {.rate = rate});
    ASSERT_NEAR(again.knots.front().value, *pins.from, 1e-9) << "seed " << seed;
    ASSERT_NEAR(again.knots.back().value, *pins.until, 1e-9) << "seed " << seed;
    ASSERT_LE(again.leastRamps, track.ramps()) << "seed " << seed << ": this very track goes from pin to pin";
  }
  EXPECT_GT(tried, 150);
}

}  // namespace
}  // namespace wend::pulls
