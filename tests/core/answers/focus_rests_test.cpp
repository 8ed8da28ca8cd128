// Stretches in which First Batch's focus can be left alone, and how late its pulls may start, each against the plain
// definitions at every sample.
#include "core/answers/focus_rests.h"

#include <cmath>

#include "tests/core/answers/first_batch.h"

namespace wend::answers {
namespace {

TEST(FocusRests, TheStreetIsHeldAtTheHyperfocalDistance) {
  const auto& rests = firstBatch().evidence->rests;
  ASSERT_FALSE(rests.empty());
  const snags::FocusRest& street = rests.back();
  // 24 mm at f/10, circle 0.025 mm: f^2/(N c) + f = 2.304 + 0.024 m. Held from half of that.
  EXPECT_NEAR(street.hyperfocal, 2.328, 1e-9);
  EXPECT_NEAR(street.setting, 2.328, 0.01);
  EXPECT_NEAR(street.near, 1.164, 0.01);
  EXPECT_GT(street.span.from, 129.5);
  EXPECT_LT(street.span.from, 131);
  EXPECT_EQ(street.span.until, 168);
}

TEST(FocusRests, BlurNobodyTheFocusIsOnAtAnySample) {
  const Take& take = *firstBatch().take;
  const plan::Plan& plan = take.plan();
  int looked = 0;
  for (const auto& rest : firstBatch().evidence->rests)
    for (const Instant& instant : firstBatch().evidence->samples) {
      if (!rest.span.contains(instant.time)) continue;
      const double focal = *take.view().focalAt(instant.time);
      const optics::Optics optics{
          focal, optics::fNumberOf(take.lens().irisAt(instant.time), plan.lens->transmission.at(focal)),
          plan.camera.blurCircle};
      const geometry::KeyBlend blend = take.subjects().blendAt(instant.time);
      for (const std::size_t key : {blend.before, blend.after})
        for (const double distance :
             take.subjects().drivingDistances(key, instant.time, take.view().sensorAt(instant.time))) {
          EXPECT_LE(optics::blurOf(distance, rest.setting, optics), plan.camera.blurCircle * (1 + 1e-6))
              << instant.time;
          ++looked;
        }
      EXPECT_LE(optics::blurOf(1e9, rest.setting, optics), plan.camera.blurCircle * (1 + 1e-6)) << instant.time;
    }
  EXPECT_GT(looked, 1000);
}

TEST(LatestStart, LeavesNoLessTimeThanTheMoveHasAndNeedsNoMoreThanTheLimit) {
  const Take& take = *firstBatch().take;
  int known = 0;
  for (const snags::Move& move : firstBatch().evidence->moves) {
    if (!move.latest) continue;
    ++known;
    EXPECT_NE(move.axis, snags::Move::Axis::zoom);
    EXPECT_GE(*move.latest, move.from - 1e-9);
    // Staying until then keeps the subject within the slack: the tube holds the value the move starts from.
    const auto& tube = move.axis == snags::Move::Axis::focus ? take.lens().focusTube() : take.lens().irisTube();
    const double held = move.axis == snags::Move::Axis::focus ? move.barrelBefore : stopsOf(move.valueBefore);
    for (const auto& sample : tube)
      if (!sample.open && sample.t > move.from && sample.t <= *move.latest) {
        EXPECT_GE(held, sample.lo - 1e-4) << move.from << " at " << sample.t;
        EXPECT_LE(held, sample.hi + 1e-4) << move.from << " at " << sample.t;
      }
  }
  EXPECT_GE(known, 8);
}

}  // namespace
}  // namespace wend::answers
