// A list of readings by the clock that ends before the take begins: unknown on every face, and said so.
#include "core/answers/answers.h"
#include "core/answers/light_window.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// NORA in a yard whose list runs from 16:30 to 17:30; the take starts at `hour`, the iris is planned.
plan::Plan yardPlan(double hour) {
  plan::Plan plan = smallPlan();
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan::Area yard;
  yard.id = base::Id<plan::Area>("yard");
  yard.name = "yard";
  yard.shape = plan::Disc{{0, 3}, 20};
  yard.byClock = {{16.5 * 3600, 8}, {17.5 * 3600, 8}};
  plan.set.areas.add(yard);
  plan.clock.timeOfDay = hour * 3600;
  return plan;
}

TEST(UnknownLight, IsUnmetForAPlannedIris) {
  const auto unmet = takeOf(yardPlan(17 + 40.0 / 60))->lens().unmet();
  ASSERT_EQ(unmet.size(), 1u);
  EXPECT_EQ(unmet[0].axis, "iris");
  EXPECT_EQ(unmet[0].span.from, 0);
  EXPECT_EQ(unmet[0].span.until, 10);
  EXPECT_NE(unmet[0].reason.find("unknown"), std::string::npos) << unmet[0].reason;
  EXPECT_TRUE(takeOf(yardPlan(17))->lens().unmet().empty());
}

TEST(UnknownLight, IsNoneOfAnIrisByHand) {
  plan::Plan plan = yardPlan(18);
  plan.iris.keys.push_back({{}, 4, {}});
  EXPECT_TRUE(takeOf(plan)->lens().unmet().empty());
}

TEST(UnknownLight, IsASnagOfTheFaceThatShows) {
  const auto answers = answersOf(std::make_shared<const plan::Plan>(yardPlan(18)));
  ASSERT_TRUE(answers.ok());
  int told = 0;
  for (const auto& snag : *(*answers)->snags) told += snag.rule == "light-unknown";
  EXPECT_EQ(told, 1);
}

}  // namespace
}  // namespace wend::answers
