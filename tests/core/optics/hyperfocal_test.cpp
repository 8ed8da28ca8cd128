#include "core/optics/hyperfocal.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace wend::optics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
const Optics kWide{24, 10, 0.025};

TEST(SettingsToInfinity, AreThoseWhoseDepthOfFieldReachesBothEnds) {
  for (double nearest = 0.4; nearest < 6; nearest += 0.037) {
    const auto settings = settingsToInfinity(nearest, kWide, 0.35);
    for (double setting = 0.36; setting < 12; setting *= 1.01) {
      const Range sharp = depthOfField(setting, kWide);
      const bool does = sharp.near <= nearest && std::isinf(sharp.far);
      EXPECT_EQ(does, settings && settings->contains(setting)) << nearest << " " << setting;
    }
  }
}

TEST(SettingsToInfinity, BeginAtTheHyperfocalDistanceAndHoldHalfOfIt) {
  // Set at 20.8 ft all is sharp from 10.4 ft on, half of it: US Army subcourse SS0507, learning event 10,
  // armycommunications.tpub.com/SS0507/SS05070058.htm.
  const double h = hyperfocal(kWide);
  EXPECT_NEAR(h, 2.328, 5e-4);
  const auto settings = settingsToInfinity(h / 2, kWide, 0.6);
  ASSERT_TRUE(settings);
  EXPECT_DOUBLE_EQ(settings->near, h);
  EXPECT_NEAR(settings->far, h, 1e-9);
  EXPECT_FALSE(settingsToInfinity(h / 2 - 0.001, kWide, 0.6));
  EXPECT_EQ(settingsToInfinity(h, kWide, 0.6)->far, kInfinity);
}

TEST(SettingsToInfinity, AreNothingForTheTooClose) {
  EXPECT_FALSE(settingsToInfinity(0.5, {8, 22, 0.025}, 0.6));
}

TEST(FarRuns, EndWhereNoSettingServesAllOfThem) {
  std::vector<FarSample> samples;
  for (int i = 0; i <= 100; ++i) samples.push_back({i * 0.1, Range{2, i < 60 ? 5.0 : 3.0}, true});
  for (int i = 70; i <= 100; ++i) samples[static_cast<std::size_t>(i)].settings = Range{4, 6};
  const auto runs = farRuns(samples, 1);
  ASSERT_EQ(runs.size(), 2u);
  EXPECT_EQ(runs[0].first, 0u);
  EXPECT_EQ(runs[0].last, 69u);
  EXPECT_EQ(runs[0].setting, 2);
  EXPECT_EQ(runs[1].first, 70u);
  EXPECT_EQ(runs[1].setting, 4);
}

TEST(FarRuns, BeginAndEndWithALensAtRest) {
  std::vector<FarSample> samples;
  for (int i = 0; i <= 40; ++i) samples.push_back({i * 0.1, Range{2 + (i < 10 ? 0.1 * (10 - i) : 0), 9}, i >= 10});
  const auto runs = farRuns(samples, 1);
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_EQ(runs[0].first, 10u);
  EXPECT_EQ(runs[0].setting, 2);
}

TEST(FarRuns, AreMaximalAndServeEverySampleOfTheirs) {
  std::mt19937_64 random(72);
  const auto uniform = [&](double a, double b) { return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53; };
  for (int round = 0; round < 50; ++round) {
    std::vector<FarSample> samples;
    for (int i = 0; i < 200; ++i) {
      const double near = uniform(1, 2);
      FarSample sample{i * 0.1, Range{near, near + uniform(0.3, 2)}, true};
      if (uniform(0, 1) < 0.02) sample.settings.reset();
      samples.push_back(sample);
    }
    std::size_t after = 0;
    for (const FarRun& run : farRuns(samples, 0.5)) {
      EXPECT_GE(run.first, after);
      after = run.last + 1;
      double near = 0, far = kInfinity;
      for (std::size_t i = run.first; i <= run.last; ++i) {
        ASSERT_TRUE(samples[i].settings && samples[i].settings->contains(run.setting));
        near = std::max(near, samples[i].settings->near);
        far = std::min(far, samples[i].settings->far);
      }
      EXPECT_EQ(run.setting, near);
      if (after == samples.size() || !samples[after].settings) continue;
      EXPECT_GT(std::max(near, samples[after].settings->near), std::min(far, samples[after].settings->far));
    }
  }
}

}  // namespace
}  // namespace wend::optics
