#include "core/motion/limits.h"

#include <gtest/gtest.h>

namespace wend::motion {
namespace {

Track walk(std::vector<TrackMark> marks, bool eased = false) {
  for (TrackMark& mark : marks) mark.leg.eased = eased;
  return *trackThrough(std::move(marks));
}

TEST(OffAxis, ForgetsTurnsAndSides) {
  EXPECT_NEAR(offAxis({0, 1}, 0), 0, 1e-12);
  EXPECT_NEAR(offAxis({0, 1}, 540), 180, 1e-12);
  EXPECT_NEAR(offAxis({1, 0}, -360), 90, 1e-12);
  EXPECT_NEAR(offAxis({-1, 0}, -360), 90, 1e-12);
}

TEST(FasterThan, AnEvenLegCountsWholeOrNotAtAll) {
  const Track track =
      walk({{0, 0, {0, 0}, 0, {}}, {4, 4, {2, 0}, 0, {}}, {5, 5, {4, 0}, 0, {}}, {9, 9, {5, 0}, 0, {}}});
  EXPECT_EQ(fasterThan(track, 1.3, {0, 9}), (geometry::Spans{{4, 5}}));
  EXPECT_TRUE(fasterThan(track, 2.0, {0, 9}).empty()) << "at the limit is not over it";
  EXPECT_EQ(fasterThan(track, 0.3, {0, 9}), (geometry::Spans{{0, 5}})) << "neighbours join";
  EXPECT_EQ(fasterThan(track, 0.3, {1, 3}), (geometry::Spans{{1, 3}}));
}

TEST(FasterThan, AMarkMovedTwoSecondsForwardHurriesTheLegBeforeIt) {
  const auto camera = [](double at) {
    return walk({{88, 88, {5.6, 5.2}, 1.5, {}}, {91, 91, {7.2, 4.2}, 1.5, {}}, {at, at, {8.5, 3.75}, 1.5, {}}});
  };
  EXPECT_TRUE(fasterThan(camera(94), 1.3, {0, 168}).empty());
  EXPECT_EQ(fasterThan(camera(92), 1.3, {0, 168}), (geometry::Spans{{91, 92}}));
  EXPECT_NEAR(camera(92).peakSpeed({91, 92}), 1.3757, 5e-5) << "1.30 m by 0.45 m in 1 s";
}

TEST(FasterThan, AnEasedLegCountsRoundItsMiddle) {
  const Track track = walk({{0, 0, {0, 0}, 0, {}}, {4, 4, {2, 0}, 0, {}}}, true);
  const geometry::Spans fast = fasterThan(track, 0.5625, {0, 4});
  ASSERT_EQ(fast.size(), 1u);
  EXPECT_NEAR(fast[0].from, 1, 1e-9);
  EXPECT_NEAR(fast[0].until, 3, 1e-9);
  EXPECT_TRUE(fasterThan(track, 0.75, {0, 4}).empty());
}

TEST(FasterThan, AgreesWithTheSpeedAtEveryInstant) {
  const Track track = walk({{0, 0, {0, 0}, 0, {}},
                            {3, 3, {2, 1}, 0, {}},
                            {4, 6, {4, 0}, 0, {}},
                            {8, 8, {4, 6}, 0, {}},
                            {11, 11, {5, 6}, 0, {}}},
                           true);
  for (const double limit : {0.2, 0.5, 0.9, 1.4, 2.0}) {
    const geometry::Spans fast = fasterThan(track, limit, {0, 12});
    for (double t = 0.0007; t < 12; t += 0.0113)
      if (std::abs(track.speed(t) - limit) > 1e-9) {
        EXPECT_EQ(contains(fast, t), track.speed(t) > limit) << limit << " at " << t;
      }
  }
}

TEST(Backwards, NeedsBothAMoveAndALensThatLooksAway) {
  const Track track = walk({{0, 0, {0, 0}, 0, {}}, {4, 6, {0, 4}, 0, {}}, {10, 10, {0, 4.1}, 0, {}}});
  const auto looking = [](double t) { return t < 2 ? 30.0 : 180.0; };
  const geometry::Spans spans = backwards(track, looking, {0, 12});
  ASSERT_EQ(spans.size(), 1u) << "the last leg is slower than a move";
  EXPECT_NEAR(spans[0].from, 2, 1e-3);
  EXPECT_NEAR(spans[0].until, 4, 1e-3);
  EXPECT_TRUE(backwards(track, [](double) { return 119.9; }, {0, 12}).empty());
  EXPECT_EQ(backwards(track, [](double) { return -120.1; }, {0, 12}).size(), 1u);
}

TEST(Backwards, ARetreatBeforeAWalkerReadsBackwardsAllTheWay) {
  // The lens leads somebody out and looks back at them: travel and bearing are opposite.
  const Track track = walk({{141, 141, {18, 3}, 1.5, {}}, {160, 160, {30, 3}, 1.5, {}}});
  const geometry::Spans spans = backwards(track, [](double) { return -90 - 360; }, {131, 168});
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_NEAR(spans[0].from, 141, 1e-3);
  EXPECT_NEAR(spans[0].until, 160, 1e-3);
}

}  // namespace
}  // namespace wend::motion
