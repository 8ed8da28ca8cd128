// A split is on everybody it names: who is lost, who is sharp, how much room each has, what would hold both.
#include <cmath>

#include "core/answers/answers.h"
#include "core/answers/who_is_sharp.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// NORA at 3 m and TOM at 3.6 m, both in frame; the focus is split between them. Distances along the floor.
plan::Plan splitPlan() {
  plan::Plan plan = smallPlan();
  plan::Performer tom = plan.performers[0];
  tom.id = base::Id<plan::Performer>("tom");
  tom.name = "TOM";
  tom.marks = {markAt("t1", {0.5, 3.6})};
  plan.performers.add(tom);
  plan.focus.distance = plan::DistanceKind::floor;
  plan.focus.keys.push_back({{}, plan::OnSplit{{"nora", "tom"}}, {}});
  plan.iris.keys.push_back({{}, 4, {}});
  return plan;
}

/// Thin lens: a point at d is blurred by f^2 |d - s| / (N d (s - f)) with the lens set at s.
struct Band {
  double near, far;
};
Band bandAt(double s, double f, double n, double c) {
  return {s * f * f / (f * f + n * c * (s - f)), s * f * f / (f * f - n * c * (s - f))};
}

TEST(SplitWarmth, IsThatOfWhoeverHasLeastRoom) {
  const plan::Plan plan = splitPlan();
  const auto take = takeOf(plan);
  const Instant now = sampleAt(*take, 5);
  ASSERT_TRUE(now.focus.warmth && now.focus.wobble);
  const double a = 3, b = std::hypot(0.5, 3.6), set = 2 * a * b / (a + b);
  const Band band = bandAt(set, 0.035, 4, plan.camera.blurCircle / 1000);
  // Nobody is taped and the camera stands: both land off by the same.
  const double nora = (a - band.near) / *now.focus.wobble, tom = (band.far - b) / *now.focus.wobble;
  ASSERT_GT(nora, 0);
  EXPECT_NEAR(*now.focus.warmth, std::min(nora, tom), 1e-9);
  EXPECT_EQ(now.focus.tightest, nora < tom ? "nora" : "tom");
  ASSERT_EQ(now.focus.split.size(), 2u);
  EXPECT_NEAR(now.focus.split[1].distance, b, 1e-9);
}

TEST(SplitWarmth, OfTwoAtOneDistanceIsThatOfOne) {
  plan::Plan plan = splitPlan(), alone = splitPlan();
  plan::Performer tom = plan.performers[1];
  tom.marks = {markAt("t1", {std::sqrt(9 - 2.9 * 2.9), 2.9})};
  plan.performers.replace(1, tom);
  alone.focus.keys[0].on = plan::OnPerformer{"nora"};
  EXPECT_NEAR(*sampleAt(*takeOf(plan), 5).focus.warmth, *sampleAt(*takeOf(alone), 5).focus.warmth, 1e-9);
}

TEST(SplitSubjects, AreEachLostAndEachFollowed) {
  plan::Plan plan = splitPlan();
  // The camera looks away from second 6 on.
  plan.camera.aims.push_back({{{"", 6}, 0.5, plan::Pace::even}, plan::OnBearing{120, 0}, {0, 0}, 0, {}});
  const auto answers = answersOf(std::make_shared<const plan::Plan>(plan));
  ASSERT_TRUE(answers.ok());
  std::vector<std::string> lost;
  for (const auto& snag : *(*answers)->snags)
    if (snag.rule == "subject-lost") lost.push_back(snag.who);
  EXPECT_EQ(lost, (std::vector<std::string>{"nora", "tom"}));
  int followed = 0;
  for (const auto& sharp : (*answers)->evidence->sharp) followed += sharp.followed;
  EXPECT_GE(followed, 1) << "whoever is sharp is so because the focus is on them";
  for (const auto& sharp : (*answers)->evidence->sharp) EXPECT_TRUE(sharp.followed) << sharp.who;
}

TEST(SplitSubjects, AreEachLookedAtForBeingTooClose) {
  plan::Plan plan = splitPlan();
  plan.lens->closeFocus = 1;
  plan::Performer tom = plan.performers[1];
  tom.marks = {markAt("t1", {0.1, 0.6})};
  plan.performers.replace(1, tom);
  const auto take = takeOf(plan);
  const snags::FocusAt focus = sampleAt(*take, 1).focus;
  ASSERT_EQ(focus.split.size(), 2u);
  EXPECT_GT(focus.wantedDistance, 1) << "their middle is not too close";
  EXPECT_TRUE(focus.tooClose) << "TOM is";
  EXPECT_FALSE(focus.warmth);
}

TEST(SplitSubjects, AreCalledByNameWhereTheFocusIsHot) {
  plan::Plan plan = splitPlan();
  plan.lens->focal = {80, 80};
  const auto answers = answersOf(std::make_shared<const plan::Plan>(plan));
  ASSERT_TRUE(answers.ok());
  const snags::Snag* hot = nullptr;
  for (const auto& snag : *(*answers)->snags)
    if (snag.rule == "hot-focus") hot = &snag;
  ASSERT_TRUE(hot);
  EXPECT_TRUE(hot->text.starts_with("hot focus on NORA + TOM: ")) << hot->text;
  EXPECT_NE(hot->mend.find("bring them nearer to one distance"), std::string::npos) << hot->mend;
}

// N = f^2 (b - a) / (k c (a + b) (s - f)) at the focal length that is set, T = N / sqrt(transmission there): closing
// the iris leaves the zoom where it is.
TEST(Together, AsksForAStopAtTheFocalLengthThatIsSet) {
  plan::Plan plan = splitPlan();
  plan.lens->focal = {20, 80};
  plan.lens->transmission = plan::OverFocal({{20, 0.9}, {80, 0.5}});
  plan::ZoomKey zoom;
  zoom.focal = 80;
  plan.zoom.keys = {zoom};
  plan::Performer tom = plan.performers[1];
  tom.marks = {markAt("t1", {0.2, 3.8})};
  plan.performers.replace(1, tom);
  const auto take = takeOf(plan);
  const auto groups = togetherInFrame(*take, samplesOf(*take));
  ASSERT_EQ(groups.size(), 1u);
  ASSERT_TRUE(groups[0].stop);
  const double a = 3, b = std::hypot(0.2, 3.8), s = 2 * a * b / (a + b), f = 0.08;
  const double n = f * f * (b - a) / (plan.focus.blurShare * plan.camera.blurCircle / 1000 * (a + b) * (s - f));
  EXPECT_NEAR(*groups[0].stop, n / std::sqrt(0.5), 1e-6);
}

}  // namespace
}  // namespace wend::answers
