// When things may change hands: the sheet of First Batch suggests 132 to 134 for the focus and refuses 125.
#include "core/answers/hand_windows.h"

#include <algorithm>

#include "tests/core/answers/first_batch.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

using geometry::Span;

const std::vector<Span>& windowsFor(const std::vector<snags::HandWindows>& windows, const std::string& what) {
  for (const auto& one : windows)
    if (one.what == what) return one.spans;
  throw std::runtime_error("no windows for " + what);
}

bool holds(const std::vector<Span>& spans, Span wanted) {
  return std::any_of(spans.begin(), spans.end(),
                     [&](Span span) { return span.from <= wanted.from && span.until >= wanted.until; });
}

TEST(HandWindows, FocusGoesOverWhereItIsCool) {
  const auto& focus = windowsFor(firstBatch().evidence->handWindows, "focus");
  EXPECT_TRUE(holds(focus, {132, 134}));
  EXPECT_FALSE(holds(focus, {125, 125}));
}

plan::Plan handing(double at, double over) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan.handovers[0].at = {"", at};
  plan.handovers[0].over = over;
  return plan;
}

snags::Snags handoverSnags(const plan::Plan& plan) {
  snags::Snags found = *(*answersOf(std::make_shared<const plan::Plan>(plan)))->snags;
  std::erase_if(found, [](const snags::Snag& snag) { return snag.rule != "handover-hot"; });
  return found;
}

TEST(HandWindows, AHandoverInAHotPullIsRefusedWithTheNearestThatWouldDo) {
  EXPECT_TRUE(handoverSnags(handing(132, 2)).empty());
  const auto snags = handoverSnags(handing(124.5, 1));
  ASSERT_EQ(snags.size(), 1u);
  EXPECT_EQ(snags[0].severity, snags::Severity::risks);
  EXPECT_NE(snags[0].mend.find("hand over within"), std::string::npos) << snags[0].mend;
}

TEST(HandWindows, TheRigGoesOverWhereTheCameraStands) {
  plan::Plan plan = smallPlan();
  plan.camera.marks[0].until = plan::Moment{"", 4};
  auto second = markAt("c2", {0, 2}, 6);
  second.height = 1.5;
  plan.camera.marks.push_back(second);
  const auto take = takeOf(plan);
  const auto windows = handWindows(*take, samplesOf(*take), {});
  const auto& rig = windowsFor(windows, "rig");
  ASSERT_EQ(rig.size(), 2u);
  EXPECT_EQ(rig[0].from, 0);
  EXPECT_NEAR(rig[0].until, 4 - kQuietAside, 0.1);
  EXPECT_NEAR(rig[1].from, 6 + kQuietAside, 0.1);
  EXPECT_EQ(rig[1].until, 10);
  EXPECT_TRUE(std::none_of(windows.begin(), windows.end(), [](const auto& one) { return one.what == "boom"; }))
      << "nobody speaks, and no boom is asked for";
}

}  // namespace
}  // namespace wend::answers
