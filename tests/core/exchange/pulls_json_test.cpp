// What the JSON of the moves and of an instant has of hiding, feathers, cures and splits.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/exchange/verbs_json.h"
#include "core/pulls/zoom_cover.h"
#include "tests/samples.h"

namespace wend::exchange {
namespace {

TEST(PullsJson, SaysWhatTheTextSaysOfHidingFeathersAndHotPulls) {
  const auto answers = *answers::answersOf(sharedSample("first-batch.wend"));
  const auto json = nlohmann::json::parse(pullsJson(*answers));
  std::size_t inFlow = 0, zooms = 0;
  for (std::size_t i = 0; i < json["moves"].size(); ++i) {
    const auto& move = json["moves"][i];
    const snags::Move& of = answers->evidence->moves[i];
    if (of.exposed) {
      EXPECT_EQ(move["exposed"]["inFlow"].get<bool>(), pulls::hidesInFlow(of.flowShare));
      EXPECT_EQ(move["coversPart"].get<bool>(), !of.cover.empty() && of.exposed->worst > 1);
      inFlow += move["exposed"]["inFlow"].get<bool>();
    }
    if (move["axis"] != "zoom") continue;
    ++zooms;
    EXPECT_EQ(move["feather"].size(), 2u);
  }
  EXPECT_GT(zooms, 3u);
  EXPECT_GT(inFlow, 0u);
  ASSERT_FALSE(json["hot"].empty());
  std::size_t arrivals = 0;
  for (const auto& hot : json["hot"]) {
    EXPECT_LT(hot["warmth"].get<double>(), 1);
    EXPECT_FALSE(hot["cures"].empty());
    if (hot["move"].is_null()) continue;
    ++arrivals;
    EXPECT_EQ(json["moves"][hot["move"].get<std::size_t>() - 1]["axis"], "focus");
  }
  EXPECT_GT(arrivals, 0u);
}

TEST(InstantJson, HasTheCuresOfAHotFocusAndWhoIsTightestOfASplit) {
  const auto answers = *answers::answersOf(sharedSample("first-batch.wend"));
  snags::Instant hot = answers::instantAt(*answers->take, 20);
  auto json = nlohmann::json::parse(instantJson(answers->take->plan(), hot));
  EXPECT_TRUE(json["focus"]["tightest"].is_null());
  bool widen = false;
  for (const auto& cure : json["cures"])
    if (cure["change"] == "widen") {
      widen = true;
      EXPECT_TRUE(cure["enough"].get<bool>());
      EXPECT_NEAR(cure["value"].get<double>(), 35, 0.5);
    }
  EXPECT_TRUE(widen);
  hot.focus.tightest = "ilse";
  json = nlohmann::json::parse(instantJson(hot));
  EXPECT_EQ(json["focus"]["tightest"], "ilse");
}

}  // namespace
}  // namespace wend::exchange
