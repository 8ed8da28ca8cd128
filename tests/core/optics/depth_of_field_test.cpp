#include "core/optics/depth_of_field.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

struct Draw {
  explicit Draw(std::uint64_t seed) : random(seed) {}
  double uniform(double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; }
  Optics optics() { return {uniform(12, 200), std::exp2(uniform(0, 4)), uniform(0.01, 0.06)}; }
  double distance() { return std::exp(uniform(std::log(0.4), std::log(200))); }
  std::mt19937_64 random;
};

TEST(Blur, IsNoneInTheSettingAndGrowsAwayFromIt) {
  const Optics lens{50, 2.8, 0.025};
  EXPECT_EQ(blurOf(3, 3, lens), 0);
  EXPECT_LT(blurOf(2.8, 3, lens), blurOf(2.7, 3, lens));
  EXPECT_LT(blurOf(3.2, 3, lens), blurOf(3.3, 3, lens));
  EXPECT_LT(blurOf(100, 3, lens), blurOf(kInfinity, 3, lens));
}

TEST(Blur, IsContinuousTowardsInfinity) {
  const Optics lens{35, 4, 0.025};
  EXPECT_NEAR(blurOf(1e12, 2, lens), blurOf(kInfinity, 2, lens), 1e-12);
  EXPECT_NEAR(blurOf(2, 1e12, lens), blurOf(2, kInfinity, lens), 1e-12);
  EXPECT_EQ(blurOf(kInfinity, kInfinity, lens), 0);
}

TEST(DepthOfField, BlurAtBothLimitsIsTheBlurCircle) {
  Draw draw(101);
  for (int i = 0; i < 5000; ++i) {
    const Optics lens = draw.optics();
    const double s = draw.distance();
    const Range sharp = depthOfField(s, lens);
    ASSERT_LT(sharp.near, s);
    ASSERT_GT(sharp.far, s);
    ASSERT_NEAR(blurOf(sharp.near, s, lens), lens.blurCircle, 1e-11) << "seed 101, round " << i;
    if (std::isinf(sharp.far))
      ASSERT_LE(blurOf(kInfinity, s, lens), lens.blurCircle * (1 + 1e-12)) << "seed 101, round " << i;
    else
      ASSERT_NEAR(blurOf(sharp.far, s, lens), lens.blurCircle, 1e-11) << "seed 101, round " << i;
  }
}

TEST(DepthOfField, FarLimitIsInfiniteFromTheHyperfocalDistanceOn) {
  const Optics lens{35, 4, 0.025};
  const double h = hyperfocal(lens);
  EXPECT_FALSE(std::isinf(depthOfField(h * 0.999999, lens).far));
  EXPECT_TRUE(std::isinf(depthOfField(h * 1.000001, lens).far));
  EXPECT_NEAR(depthOfField(h * (1 + 1e-12), lens).near, h / 2, 1e-9);
}

TEST(DepthOfField, LensAtInfinityIsSharpFromTheHyperfocalDistanceLessAFocalLength) {
  const Optics lens{50, 8, 0.033};
  const Range sharp = depthOfField(kInfinity, lens);
  EXPECT_NEAR(sharp.near, hyperfocal(lens) - 0.050, 1e-12);
  EXPECT_EQ(sharp.far, kInfinity);
}

TEST(Slack, KeepsTheBlurWithinItsShare) {
  Draw draw(202);
  for (int i = 0; i < 5000; ++i) {
    const Optics lens = draw.optics();
    const double u = draw.distance(), share = draw.uniform(0.2, 1.2), closest = 0.4;
    const auto slack = slackOf(u, lens, share, closest);
    ASSERT_TRUE(slack);
    ASSERT_TRUE(slack->contains(u));
    const double limit = share * lens.blurCircle;
    if (slack->near > closest)
      ASSERT_NEAR(blurOf(u, slack->near, lens), limit, 1e-11) << "seed 202, round " << i;
    else
      ASSERT_LE(blurOf(u, closest, lens), limit * (1 + 1e-9)) << "seed 202, round " << i;
    if (std::isinf(slack->far))
      ASSERT_LE(blurOf(u, kInfinity, lens), limit * (1 + 1e-9)) << "seed 202, round " << i;
    else
      ASSERT_NEAR(blurOf(u, slack->far, lens), limit, 1e-11) << "seed 202, round " << i;
  }
}

TEST(Slack, AndDepthOfFieldAreTwoSidesOfOneThing) {
  Draw draw(303);
  for (int i = 0; i < 5000; ++i) {
    const Optics lens = draw.optics();
    const double u = draw.distance(), s = draw.distance();
    const auto slack = slackOf(u, lens, 1, 0.3);
    // A subject is sharp at a setting exactly when the setting is in the subject's slack; leave the very edge out.
    if (std::abs(blurOf(u, s, lens) - lens.blurCircle) < 1e-9) continue;
    ASSERT_EQ(slack->contains(s), depthOfField(s, lens).contains(u)) << "seed 303, round " << i;
  }
}

TEST(Slack, IsNotTheSharpRangeItself) {
  // Half the blur is not half the range: the settings for half the blur circle are those of a circle half as large.
  const Optics lens{50, 2.8, 0.025}, strict{50, 2.8, 0.0125};
  EXPECT_EQ(slackOf(3, lens, 0.5, 0.4)->near, slackOf(3, strict, 1, 0.4)->near);
  EXPECT_EQ(slackOf(3, lens, 0.5, 0.4)->far, slackOf(3, strict, 1, 0.4)->far);
}

TEST(Slack, OfSomethingAtInfinityReachesInfinity) {
  const Optics lens{35, 4, 0.025};
  const auto slack = slackOf(kInfinity, lens, 1, 0.4);
  EXPECT_NEAR(slack->near, hyperfocal(lens), 1e-12);
  EXPECT_EQ(slack->far, kInfinity);
}

TEST(Slack, EndsAtClosestFocusAndIsEmptyNearer) {
  const Optics lens{24, 8, 0.025};
  EXPECT_EQ(slackOf(0.7, lens, 1, 0.65)->near, 0.65);
  EXPECT_FALSE(slackOf(0.6, lens, 1, 0.65));
  EXPECT_FALSE(slackOf(0.6499, lens, 1, 0.65));
  EXPECT_TRUE(slackOf(0.65, lens, 1, 0.65));
}

TEST(SplitFocus, SetsTheHarmonicMeanOfTwo) {
  const Optics lens{50, 4, 0.025};
  EXPECT_DOUBLE_EQ(splitFocus({2, 3}, lens, 1, 0.4).setting, 2.4);
  EXPECT_DOUBLE_EQ(splitFocus({3, 2}, lens, 1, 0.4).setting, 2.4);
  EXPECT_DOUBLE_EQ(splitFocus({2, kInfinity}, lens, 1, 0.4).setting, 4);
  EXPECT_DOUBLE_EQ(splitFocus({2}, lens, 1, 0.4).setting, 2);
  EXPECT_EQ(splitFocus({kInfinity, kInfinity}, lens, 1, 0.4).setting, kInfinity);
}

TEST(SplitFocus, NoSettingHasASmallerLargestBlur) {
  Draw draw(404);
  for (int i = 0; i < 500; ++i) {
    const Optics lens = draw.optics();
    std::vector<double> subjects;
    for (int k = 0; k < 2 + i % 4; ++k) subjects.push_back(draw.distance());
    const Split split = splitFocus(subjects, lens, 0.7, 0.35);
    const auto worst = [&](double s) {
      double blur = 0;
      for (const double u : subjects) blur = std::max(blur, blurOf(u, s, lens));
      return blur;
    };
    ASSERT_NEAR(split.largestBlur, worst(split.setting), 1e-12) << "seed 404, round " << i;
    for (double s = 0.35; s < 400; s *= 1.01) ASSERT_GE(worst(s), split.largestBlur - 1e-12) << "seed 404, round " << i;
  }
}

TEST(SplitFocus, SlackIsWhatEverySubjectAllows) {
  Draw draw(505);
  int possible = 0;
  for (int i = 0; i < 3000; ++i) {
    const Optics lens = draw.optics();
    const double a = draw.distance(), b = a * draw.uniform(1, 1.6), c = a * draw.uniform(1, 1.6);
    const Split split = splitFocus({a, b, c}, lens, 0.7, 0.35);
    Range all{0, kInfinity};
    for (const double u : {a, b, c}) {
      const auto slack = slackOf(u, lens, 0.7, 0.35);
      all = {std::max(all.near, slack->near), std::min(all.far, slack->far)};
    }
    ASSERT_EQ(split.slack.has_value(), all.near <= all.far) << "seed 505, round " << i;
    // It can be done exactly when the best setting does it.
    ASSERT_EQ(split.slack.has_value(), split.largestBlur <= 0.7 * lens.blurCircle) << "seed 505, round " << i;
    if (!split.slack) continue;
    ++possible;
    ASSERT_EQ(*split.slack, all) << "seed 505, round " << i;
    ASSERT_TRUE(split.slack->contains(split.setting)) << "seed 505, round " << i;
  }
  EXPECT_GT(possible, 300);
  EXPECT_LT(possible, 2700);
}

TEST(SplitFocus, CannotReachASubjectNearerThanTheLensFocuses) {
  EXPECT_FALSE(splitFocus({0.3, 0.5}, {24, 16, 0.025}, 1, 0.4).slack);
}

TEST(TransmissionNumbers, UndoEachOther) {
  EXPECT_NEAR(tNumberOf(fNumberOf(2.8, 0.83), 0.83), 2.8, 1e-15);
  EXPECT_EQ(fNumberOf(4, 1), 4);
}

}  // namespace
}  // namespace wend::optics
