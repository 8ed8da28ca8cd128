#include "core/answers/spaced.h"

#include <gtest/gtest.h>

namespace wend::answers {
namespace {

std::vector<snags::Instant> samples(double rate, int count) {
  std::vector<snags::Instant> all(static_cast<std::size_t>(count));
  for (int k = 0; k < count; ++k) all[static_cast<std::size_t>(k)].time = k / rate;
  return all;
}

std::vector<double> visited(const std::vector<snags::Instant>& all, double step) {
  std::vector<double> times;
  eachSpaced(all, step, [&](const snags::Instant& instant) { times.push_back(instant.time); });
  return times;
}

TEST(EachSpaced, LooksAsOftenAsItSaysWhereFramesFallBesideTheStep) {
  // Ten times a second over ten seconds of 24 frames: a tenth is 2.4 frames.
  const auto all = samples(24, 241);
  const auto times = visited(all, 0.1);
  EXPECT_EQ(times.size(), 101u);
  for (std::size_t i = 1; i < times.size(); ++i) {
    EXPECT_LE(times[i] - times[i - 1], spacing(all, 0.1) + 1e-12);
    EXPECT_LT(times[i] - 0.1 * static_cast<double>(i), 1.0 / 24);
  }
}

TEST(EachSpaced, VisitsEverySampleOnceWhereTheyAreFurtherApart) {
  EXPECT_EQ(visited(samples(5, 11), 0.1).size(), 11u);
  EXPECT_EQ(visited(samples(10, 11), 0.1).size(), 11u) << "and where they fall on the step";
  EXPECT_TRUE(visited({}, 0.1).empty());
}

}  // namespace
}  // namespace wend::answers
