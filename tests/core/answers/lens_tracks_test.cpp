#include "core/answers/lens_tracks.h"

#include <cmath>

#include "core/pulls/ease.h"
#include "core/pulls/least_miss.h"
#include "core/snags/rules.h"
#include "tests/core/answers/small_plan.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

/// NORA at 3 m all take, the iris by hand.
plan::Plan sharpPlan() {
  plan::Plan plan = smallPlan();
  plan.lens->closeFocus = 0.6;
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.focus.distance = plan::DistanceKind::floor;
  plan.iris.keys.push_back({{}, 2.8, {}});
  return plan;
}

/// One light over all the set, from `t` on another.
void light(plan::Plan& plan, double before, double t, double after) {
  plan::Area area;
  area.id = base::Id<plan::Area>("light");
  area.shape = plan::Outline{{{-20, -20}, {20, -20}, {20, 20}, {-20, 20}}};
  area.states = {{{}, "", "", {{{0, 3}, before, {}}}}, {{{"", t}, 0, {}}, "", "", {{{0, 3}, after, {}}}}};
  plan.set.areas.add(area);
}

std::vector<snags::Unmet> unmetOf(const plan::Plan& plan) {
  return takeOf(plan)->lens().unmet();
}

// The slack by the textbook: settings s whose blur of a subject at u is k c, N the f-number.
TEST(HandPulls, AreHeldAgainstTheSlack) {
  plan::Plan plan = sharpPlan();
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 4}, 1, 6, {}}, {{"", 7}, 1, 3, {}}};
  const auto unmet = unmetOf(plan);
  ASSERT_EQ(unmet.size(), 1u);
  EXPECT_EQ(unmet[0].axis, "focus");
  const double f = 0.035, n = 2.8, blur = plan.focus.blurShare * plan.camera.blurCircle / 1000, u = 3;
  const double far = u * (f * f - n * blur * f) / (f * f - n * blur * u);
  // An uncharted barrel: 180 degrees / distance for a close focus of 0.6 m. It leaves 60 at 4 s and runs 30 a second.
  const double edge = 180 / far, leaves = 4 + (60 - edge) / 30, comes = 8 - (60 - edge) / 30;
  EXPECT_NEAR(unmet[0].span.from, leaves, 1.0 / 24);
  EXPECT_NEAR(unmet[0].span.until, comes, 1.0 / 24);
  EXPECT_EQ(unmet[0].reason,
            "the barrel is set by hand up to " + std::to_string(std::lround(edge - 30)) + " degrees outside the slack");
}

TEST(HandPulls, InsideTheSlackAreNoTrouble) {
  plan::Plan plan = sharpPlan();
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 4}, 1, 3.1, {}}};
  EXPECT_TRUE(unmetOf(plan).empty());
}

TEST(HandPulls, MayBeAnywhereDuringAChangeOfSubject) {
  plan::Plan plan = sharpPlan();
  plan::Performer tom = plan.performers[0];
  tom.id = base::Id<plan::Performer>("tom");
  tom.marks = {markAt("t1", {0.5, 6})};
  plan.performers.add(tom);
  plan.focus.keys.push_back({{{"", 4}, 2, {}}, plan::OnPerformer{"tom"}, {}});
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 4.05}, 1.9, 6, {}}};
  EXPECT_TRUE(unmetOf(plan).empty());
  plan.focus.pulls[1].at.seconds = 5;
  const auto late = unmetOf(plan);
  ASSERT_EQ(late.size(), 1u);
  EXPECT_NEAR(late[0].span.from, 6, 1.0 / 24) << "sharp on neither when the change is done";
}

TEST(HandPulls, TooFastForTheBarrelAreASnag) {
  plan::Plan plan = sharpPlan();
  plan.focus.keys.clear();
  plan.focus.pulls = {{{"", 0}, 0, 3, {}}, {{"", 4}, 0.5, 0.9, {}}};
  // From 60 to 200 degrees of barrel in half a second.
  EXPECT_NEAR(takeOf(plan)->lens().barrelRateAt(4.25), 280, 1e-6);
  const auto snagsOf = [](const plan::Plan& p) {
    int found = 0;
    const auto evidence = evidenceOf(*takeOf(p));
    for (const auto& snag : snags::snagsOf(**evidence)) found += snag.rule == "barrel-fast";
    return found;
  };
  EXPECT_EQ(snagsOf(plan), 1);
  plan.focus.pulls[1].over = 1.4;
  EXPECT_EQ(snagsOf(plan), 0) << "100 a second, under the limit of 120";
}

TEST(IrisKeys, AreHeldAgainstTheSlackAndTheLimit) {
  plan::Plan plan = sharpPlan();
  light(plan, 4, 5, 5.6);
  plan.iris.keys = {{{}, 4, {}}, {{{"", 5}, 2, {}}, 5.6, {}}};
  const auto late = takeOf(plan)->lens().iris().unmet;
  ASSERT_EQ(late.size(), 1u);
  // 2 log2(5.6 / 4) = 0.971 stops in two seconds; within 0.33 of the end after 1.32 s.
  const double stops = 2 * std::log2(5.6 / 4);
  EXPECT_NEAR(late[0].span.from, 5, 1.0 / 24);
  EXPECT_NEAR(late[0].span.until, 5 + 2 * (1 - plan.iris.slackStops / stops), 1.0 / 24);
  EXPECT_NEAR(late[0].worst, stops - plan.iris.slackStops, 0.02);
  EXPECT_TRUE(unmetOf(plan).empty());
  plan.iris.keys[1].time = {{"", 4.999}, 0.001, {}};
  const auto fast = unmetOf(plan);
  ASSERT_EQ(fast.size(), 1u);
  EXPECT_EQ(fast[0].axis, "iris");
  EXPECT_EQ(fast[0].reason, "the iris would have to turn faster than its limit");
}

TEST(PlannedIris, SaysWhereItsLimitDoesNotLetItFollow) {
  plan::Plan plan = sharpPlan();
  plan.iris.keys.clear();
  light(plan, 4, 5, 16);
  const auto unmet = unmetOf(plan);
  ASSERT_EQ(unmet.size(), 1u);
  EXPECT_EQ(unmet[0].axis, "iris");
  EXPECT_EQ(unmet[0].reason,
            "no move keeps the stop inside its slack: the iris would have to turn faster than its limit");
}

/// Counts the moves with a soft end and how far the eased track leaves the tube where the straight one does not.
struct Softness {
  std::size_t soft = 0;
  double outside = 0;
};

Softness softnessOf(const pulls::Track& track, const pulls::Tube& tube) {
  Softness found;
  for (const auto& move : track.moves) found.soft += move.easeIn > 0.05 || move.easeOut > 0.05 ? 1 : 0;
  for (std::size_t i = 0; i + 1 < tube.size(); ++i)
    for (const double share : {0.0, 0.25, 0.5, 0.75}) {
      const double t = geometry::lerp(tube[i].t, tube[i + 1].t, share);
      const auto bounds = pulls::sampleAt(tube, t);
      const double straight = pulls::missAt(bounds, track.valueAt(t)), eased = pulls::missAt(bounds, easedAt(track, t));
      if (straight <= 1e-6) found.outside = std::max(found.outside, eased);
    }
  return found;
}

TEST(PlannedPulls, EasedStayInsideTheirSlack) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan.focus.pulls.clear();
  plan.iris.keys.clear();
  const auto take = takeOf(plan);
  const Softness focus = softnessOf(take->lens().focus(), take->lens().focusTube());
  EXPECT_GE(focus.soft, 3u) << "of " << take->lens().focus().moves.size();
  EXPECT_LE(focus.outside, 2e-6);
  const Softness iris = softnessOf(take->lens().iris(), take->lens().irisTube());
  EXPECT_GE(iris.soft, 1u) << "of " << take->lens().iris().moves.size();
  EXPECT_LE(iris.outside, 2e-6);
}

}  // namespace
}  // namespace wend::answers
