// Cures on the focus sheet and in the text of the verbs, on First Batch.
#include <gtest/gtest.h>

#include "core/sheets/dept_sheets.h"
#include "core/snags/cures.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

answers::AnswersPtr firstBatch() {
  static const answers::AnswersPtr answers = *answers::answersOf(sharedSample("first-batch.wend"));
  return answers;
}

/// The thin lens' nearer limit u f^2 / (f^2 + N c (u - f)), all from the pupil, metres.
double nearLimit(double u, double f, double n, double c) {
  return u * f * f / (f * f + n * c * (u - f));
}

TEST(HotParts, SayWhatWidensEnoughAsTheFocusStandsAtTwentySeconds) {
  const auto answers = firstBatch();
  const plan::Plan& plan = answers->take->plan();
  const snags::Instant now = answers::instantAt(*answers->take, 20);
  const auto cures = snags::curesAt(plan, now);
  const auto widen = std::find_if(cures.begin(), cures.end(), [](const snags::HotCure& cure) {
    return cure.change == snags::HotCure::Change::widen;
  });
  ASSERT_NE(widen, cures.end());
  EXPECT_TRUE(widen->enough);
  // From 45 mm: the band's nearer half over the wobble has to come from 0.60 to 1.
  EXPECT_NEAR(now.lens->focal, 45, 1e-6);
  const double ahead = plan.lens->pupilAhead, u = now.focus.wantedDistance - ahead, f = *widen->value / 1000;
  const double n = now.iris.set * std::sqrt(plan.lens->transmission.at(now.lens->focal));
  const double near = nearLimit(u, f, n, plan.camera.blurCircle / 1000);
  EXPECT_NEAR(u - near, *now.focus.wobble, 1e-4);
  EXPECT_NEAR(widen->band->near, near + ahead, 1e-4);
  // From 45 mm to 35, not passed when rounded.
  EXPECT_EQ(snags::changeText(plan, *widen), "widen to 34.6 mm");
  EXPECT_NE(instantText(*answers->take, now).find("widen to 34.6 mm (band "), std::string::npos);
}

TEST(HotParts, TellEachSpotsInstantOnSheetAndInText) {
  const auto answers = firstBatch();
  const auto spots = snags::hotSpots(*answers->evidence);
  std::size_t rows = 0, arrivals = 0, stretches = 0;
  for (const auto& spot : spots) rows += spot.cures.size(), (spot.move == 0 ? stretches : arrivals) += 1;
  EXPECT_GT(arrivals, 0u);
  EXPECT_GT(stretches, 0u);
  const auto parts = hotParts(*answers);
  ASSERT_EQ(parts.size(), 1u);
  const auto cells = parts[0].table.cells();
  EXPECT_EQ(cells.size(), rows + 1);
  std::size_t worst = 0;
  for (const auto& row : cells) worst += row[1].starts_with("worst of ");
  EXPECT_GE(worst, stretches);
  const std::string text = pullsText(answers->take->plan(), *answers->evidence);
  EXPECT_NE(text.find("hot at "), std::string::npos);
  EXPECT_NE(text.find(", pull 3 arrives, on hands at the lock"), std::string::npos) << text;
}

}  // namespace
}  // namespace wend::sheets
