// Who is sharp on First Batch, and whom one setting would hold, against the blur of a thin lens at every sample.
#include "core/answers/who_is_sharp.h"

#include <cmath>
#include <set>

#include "tests/core/answers/first_batch.h"

namespace wend::answers {
namespace {

TEST(WhoIsSharp, AllThreeAreInTheLastPicture) {
  std::set<std::string> sharp;
  for (const auto& span : firstBatch().evidence->sharp)
    if (span.span.contains(160)) sharp.insert(span.who);
  EXPECT_EQ(sharp, (std::set<std::string>{"ilse", "tom", "mrsa"}));
}

const snags::PerformerAt& of(const Instant& instant, const std::string& who) {
  for (const auto& at : instant.performers)
    if (at.id == who) return at;
  throw std::runtime_error(who);
}

/// The larger blur of two people with the lens set there, in blur circles.
double blurOfBoth(const Instant& instant, const snags::Together& pair, double setting, const optics::Optics& optics) {
  const plan::Plan& plan = firstBatch().take->plan();
  double most = 0;
  for (const auto& who : {pair.a, pair.b})
    most = std::max(
        most, optics::blurOf(driving(plan, of(instant, who).distances), setting, optics) / plan.camera.blurCircle);
  return most;
}

TEST(Together, TheSettingsNamedHoldBothAtEverySample) {
  const plan::Plan& plan = firstBatch().take->plan();
  ASSERT_EQ(plan.lens->pupilAhead, 0) << "distances below are from the sensor";
  int looked = 0;
  for (const auto& pair : firstBatch().evidence->together) {
    if (!pair.settings) continue;
    EXPECT_TRUE(pair.holds);
    for (const Instant& instant : firstBatch().evidence->samples) {
      if (!pair.span.contains(instant.time)) continue;
      const auto optics = opticsOf(plan, instant.lens->focal, instant.iris.set);
      for (const double setting : {pair.settings->near, pair.settings->far}) {
        EXPECT_LE(blurOfBoth(instant, pair, setting, optics), plan.focus.blurShare * (1 + 1e-6)) << instant.time;
        ++looked;
      }
    }
  }
  EXPECT_GT(looked, 100);
}

TEST(Together, TheStopNamedWouldJustHoldThem) {
  const plan::Plan& plan = firstBatch().take->plan();
  int looked = 0;
  for (const auto& pair : firstBatch().evidence->together) {
    if (pair.holds || !pair.stop) continue;
    double hardest = 0;
    for (const Instant& instant : firstBatch().evidence->samples) {
      if (!pair.span.contains(instant.time)) continue;
      const double a = driving(plan, of(instant, pair.a).distances), b = driving(plan, of(instant, pair.b).distances);
      const double set = 2 * a * b / (a + b);
      EXPECT_GT(blurOfBoth(instant, pair, set, opticsOf(plan, instant.lens->focal, instant.iris.set)),
                plan.focus.blurShare * (1 - 1e-9))
          << instant.time;
      hardest = std::max(hardest, blurOfBoth(instant, pair, set, opticsOf(plan, instant.lens->focal, *pair.stop)));
    }
    EXPECT_NEAR(hardest, plan.focus.blurShare, 1e-6) << pair.a << " and " << pair.b << " from " << pair.span.from;
    ++looked;
  }
  EXPECT_GT(looked, 0);
}

}  // namespace
}  // namespace wend::answers
