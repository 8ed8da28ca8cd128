// Who is sharp on First Batch, and whom one setting would hold, against the blur of a thin lens at every sample.
#include "core/answers/who_is_sharp.h"

#include <algorithm>
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

/// The largest blur of a group with the lens set there, in blur circles.
double blurOfAll(const Instant& instant, const snags::Together& group, double setting, const optics::Optics& optics) {
  const plan::Plan& plan = firstBatch().take->plan();
  double most = 0;
  for (const auto& who : group.who)
    most = std::max(
        most, optics::blurOf(driving(plan, of(instant, who).distances), setting, optics) / plan.camera.blurCircle);
  return most;
}

TEST(Together, TheSettingsNamedHoldAllAtEverySample) {
  const plan::Plan& plan = firstBatch().take->plan();
  ASSERT_EQ(plan.lens->pupilAhead, 0) << "distances below are from the sensor";
  int looked = 0;
  for (const auto& group : firstBatch().evidence->together) {
    if (!group.settings) continue;
    EXPECT_TRUE(group.holds);
    for (const Instant& instant : firstBatch().evidence->samples) {
      if (!group.span.contains(instant.time)) continue;
      const auto optics = opticsOf(plan, instant.lens->focal, instant.iris.set);
      for (const double setting : {group.settings->near, group.settings->far}) {
        EXPECT_LE(blurOfAll(instant, group, setting, optics), plan.focus.blurShare * (1 + 1e-6)) << instant.time;
        ++looked;
      }
    }
  }
  EXPECT_GT(looked, 100);
}

TEST(Together, TheStopNamedWouldJustHoldThem) {
  const plan::Plan& plan = firstBatch().take->plan();
  int looked = 0;
  for (const auto& group : firstBatch().evidence->together) {
    if (group.holds || !group.stop) continue;
    double hardest = 0;
    for (const Instant& instant : firstBatch().evidence->samples) {
      if (!group.span.contains(instant.time)) continue;
      std::vector<double> distances;
      for (const auto& who : group.who) distances.push_back(driving(plan, of(instant, who).distances));
      const double a = *std::min_element(distances.begin(), distances.end());
      const double b = *std::max_element(distances.begin(), distances.end()), set = 2 * a * b / (a + b);
      EXPECT_GT(blurOfAll(instant, group, set, opticsOf(plan, instant.lens->focal, instant.iris.set)),
                plan.focus.blurShare * (1 - 1e-9))
          << instant.time;
      hardest = std::max(hardest, blurOfAll(instant, group, set, opticsOf(plan, instant.lens->focal, *group.stop)));
    }
    EXPECT_NEAR(hardest, plan.focus.blurShare, 1e-6) << group.who.size() << " from " << group.span.from;
    ++looked;
  }
  EXPECT_GT(looked, 0);
}

}  // namespace
}  // namespace wend::answers
