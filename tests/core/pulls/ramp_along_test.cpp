// Straight ramps inside a sloping tube, against a plain search over pairs of values.
#include "core/pulls/ramp_along.h"

#include <gtest/gtest.h>

#include <optional>

#include "tests/core/pulls/random_tube.h"

namespace wend::pulls {
namespace {

bool inside(const Tube& tube, geometry::Span span, Ends ends, double give) {
  for (const TubeSample& at : tube) {
    if (at.open || at.t < span.from || at.t > span.until) continue;
    const double value = geometry::lerp(ends.before, ends.after, (at.t - span.from) / span.length());
    if (value < at.lo - give || value > at.hi + give) return false;
  }
  return true;
}

/// The slowest of a grid of pairs.
std::optional<double> slowestOnGrid(const Tube& tube, geometry::Span span, Choice before, Choice after) {
  constexpr int kSteps = 24;
  std::optional<double> slowest;
  for (int i = 0; i <= kSteps; ++i)
    for (int k = 0; k <= kSteps; ++k) {
      const Ends ends{geometry::lerp(before.lo, before.hi, double(i) / kSteps),
                      geometry::lerp(after.lo, after.hi, double(k) / kSteps)};
      if (inside(tube, span, ends, 0) && (!slowest || ends.rateOver(span) < *slowest)) slowest = ends.rateOver(span);
    }
  return slowest;
}

TEST(RampAlong, IsInsideAndAsSlowAsAnyPairOnAGrid) {
  int found = 0, none = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    TubeStyle style;
    style.samples = 48;
    style.narrowest = 5;
    const Tube tube = randomTube(seed, style);
    Draw draw(seed + 1000);
    const geometry::Span span{draw.uniform(0, 0.8), draw.uniform(1, 1.9)};
    const TubeSample first = sampleAt(tube, span.from), last = sampleAt(tube, span.until);
    if (first.open || last.open) continue;
    const Choice before{first.lo, first.hi}, after{last.lo, last.hi};
    const auto slowest = slowestOnGrid(tube, span, before, after);
    const auto middle = rampAlong(tube, span, before, after, 1e9);
    if (!slowest) {
      none += !middle;
      continue;
    }
    ++found;
    ASSERT_TRUE(middle) << seed;
    EXPECT_TRUE(inside(tube, span, *middle, 1e-8)) << seed;
    const auto slow = rampAlong(tube, span, before, after, *slowest + 1e-6);
    ASSERT_TRUE(slow) << seed << ": the grid found one of " << *slowest;
    EXPECT_TRUE(inside(tube, span, *slow, 1e-8)) << seed;
    EXPECT_LE(slow->rateOver(span), *slowest + 2e-6) << seed;
  }
  EXPECT_GT(found, 100);
  EXPECT_GT(none, 3);
}

TEST(RampAlong, IsNoneWhereTheTubeTurnsTooSharply) {
  const Tube tube{{0, 0, 1, false}, {1, 4, 5, false}, {2, 0, 1, false}};
  EXPECT_FALSE(rampAlong(tube, {0, 2}, {0, 1}, {0, 1}, 1e9));
  EXPECT_FALSE(rampAlong(tube, {0, 1}, {0, 1}, {4, 5}, 2.9)) << "3 is the least";
  EXPECT_TRUE(rampAlong(tube, {0, 1}, {0, 1}, {4, 5}, 3.1));
}

}  // namespace
}  // namespace wend::pulls
