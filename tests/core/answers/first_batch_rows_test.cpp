// What people of First Batch are told of the crew's ways: routes taken out, places overstayed, mirrors, counters.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/answers/routes.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/drawn_out.h"
#include "tests/core/answers/two_rooms.h"

namespace wend::answers {
namespace {

AnswersPtr answersOf(plan::Plan plan) {
  return *answers::answersOf(takeOf(std::move(plan)));
}

const Answers& asPlanned() {
  static const AnswersPtr answers = answersOf(samplePlan("first-batch.wend"));
  return *answers;
}

std::vector<snags::Snag> snagsOf(const Answers& answers, const std::string& rule, const std::string& who) {
  std::vector<snags::Snag> found;
  std::copy_if(answers.snags->begin(), answers.snags->end(), std::back_inserter(found),
               [&](const snags::Snag& snag) { return snag.rule == rule && (who.empty() || snag.who == who); });
  return found;
}

// The first assistant's slips taken out.
TEST(FirstBatchCrew, HasARouteForAnAssistantWithoutSlipsAndNobodySeesItDrawnOut) {
  plan::Plan plan = samplePlan("first-batch.wend");
  setMarks(plan, "ac1", {});
  const AnswersPtr answers = *withRoutes(answersOf(plan));
  const FoundRoute* route = answers->routes->find("ac1");
  ASSERT_TRUE(route && route->found) << (route ? route->whole() : "not looked for");
  EXPECT_TRUE(snagsOf(*answers, "route-impossible", "").empty());
  setMarks(plan, "ac1", marksOf(*route, plan.clock.length));
  const AnswersPtr drawn = answersOf(plan);
  EXPECT_EQ(route->room, 0.30) << "what the rule calls comfortable";
  // A glossy thing that may show them is a caution that no search keeps from.
  for (const auto& snag : *drawn->snags)
    if (snag.who == "ac1" && snag.rule != "gloss") ADD_FAILURE() << snag.key << " " << snag.from << " " << snag.text;
}

TEST(FirstBatchCrew, SaysWhyThereIsNoRouteForAnAssistantWhoMustStayInSight) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan::Crew crew = *plan.crew.find("ac1");
  crew.marks.clear();
  crew.needs = {need(plan::Stays{"KX"}, 44, 60)};
  plan.crew.replace(plan.crew.indexOf("ac1"), crew);
  const AnswersPtr answers = *withRoutes(answersOf(plan));
  const auto none = snagsOf(*answers, "route-impossible", "ac1");
  ASSERT_EQ(none.size(), 1u);
  EXPECT_EQ(none[0].severity, snags::Severity::stops);
  // Seen from 49.8 to 54.5 there, and nearly so from two seconds before to one after.
  EXPECT_NE(none[0].text.find("nobody unseen gets past"), std::string::npos) << none[0].text;
  EXPECT_NE(none[0].text.find("at best seen, or nearly, for"), std::string::npos) << none[0].text;
  EXPECT_GE(none[0].from, 49.8 - 2 - 0.5);
  EXPECT_LE(none[0].until, 54.5 + 1 + 0.5);
  EXPECT_NE(none[0].mend.find("not staying at KX"), std::string::npos) << none[0].mend;
}

TEST(FirstBatchCrew, NeverSeesTheAssistantAsPlannedAndSeesThemOverstayBesideTheDoor) {
  EXPECT_TRUE(snagsOf(asPlanned(), "crew-seen", "ac1").empty());
  plan::Plan plan = samplePlan("first-batch.wend");
  std::vector<plan::Mark> marks = plan.crew.find("ac1")->marks;
  marks.resize(5);
  ASSERT_EQ(marks.back().shelter, "KX");
  marks.back().until = plan::Moment{"end", 0};
  setMarks(plan, "ac1", marks);
  const AnswersPtr stays = answersOf(plan);
  const auto seen = snagsOf(*stays, "crew-seen", "ac1");
  ASSERT_FALSE(seen.empty());
  EXPECT_NEAR(seen[0].from, 49.8, 0.2);
  EXPECT_NEAR(seen[0].until, 54.5, 0.2);
}

TEST(FirstBatchCrew, TellsTheMirrorAndTheWindowThatShowTheOneOnThePavement) {
  const auto seen = snagsOf(asPlanned(), "crew-seen", "ad2");
  ASSERT_EQ(seen.size(), 2u);
  EXPECT_NEAR(seen[0].from, 121.8, 0.2);
  EXPECT_NEAR(seen[0].until, 123.6, 0.2);
  EXPECT_NE(seen[0].text.find("in M1, through W1"), std::string::npos) << seen[0].text;
  EXPECT_NEAR(seen[1].from, 133.1, 0.2);
  EXPECT_NEAR(seen[1].until, 138.5, 0.2);
  EXPECT_NE(seen[1].text.find("directly"), std::string::npos) << seen[1].text;
}

/// The same with the lens so high all through the shop.
plan::Plan withLensInShopAt(double height) {
  plan::Plan plan = samplePlan("first-batch.wend");
  for (auto& mark : plan.camera.marks) {
    const double at = plan::secondsOf(plan, mark.at);
    if (at >= 96 && at <= 126) mark.height = height;
  }
  // The glazed case stands on the counter and hides nobody; the counter is a metre high.
  return plan;
}

double secondsSeen(const plan::Plan& plan, Point pos, double height) {
  double seconds = 0;
  for (const auto& seen : sightOfSpot(*takeOf(plan), pos, height, 0.28).seen) seconds += seen.span.length();
  return seconds;
}

TEST(FirstBatchCrew, SeesOverTheCounterByTheHeightOfTheLens) {
  // Somebody crouching 0.9 m high beside the counter, on the side away from the camera at the window.
  const Point beside{10.8, 6.2};
  const double high = secondsSeen(withLensInShopAt(1.5), beside, 0.9),
               low = secondsSeen(withLensInShopAt(1.2), beside, 0.9);
  EXPECT_GT(high, low);
}

}  // namespace
}  // namespace wend::answers
