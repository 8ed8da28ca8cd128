// Why there is no route, as JSON: the figures behind the words that are printed.
#include "core/exchange/no_way_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/core/answers/drawn_out.h"
#include "tests/samples.h"

namespace wend::exchange {
namespace {

using answers::Freeing;

sheets::RouteOf soughtInVain() {
  sheets::RouteOf route;
  route.id = "ac1";
  route.sought = true;
  route.why = "nobody unseen gets past 4.0 s";
  route.none = sheets::NoWay{{3, 9}, geometry::Point{1, 2}, 2.5, {}, {}};
  return route;
}

TEST(NoWayJson, ComesOfTheSearchAndSaysWhatThePaperSays) {
  plan::Plan plan = samplePlan("first-batch.wend");
  answers::setMarks(plan, "ac1", {});
  plan::Crew crew = *plan.crew.find("ac1");
  crew.needs[0].what = plan::NearCamera{1};
  plan.crew.replace(plan.crew.indexOf("ac1"), crew);
  auto answers = std::make_shared<answers::Answers>();
  answers->take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
  const auto found = *answers::withRoutes(answers);
  const answers::FoundRoute& none = *found->routes->find("ac1");
  ASSERT_TRUE(none.stuck);
  const Json why = noWayJson(*sheets::soughtRouteOf(*found, "ac1"));
  EXPECT_EQ(why["words"], none.whole());
  EXPECT_EQ(why["kind"], none.stuck->least ? "seen" : "closed");
  EXPECT_EQ(why["exposures"].size(), none.stuck->exposures.size());
  ASSERT_FALSE(why["frees"].empty());
  EXPECT_EQ(why["frees"][0]["kind"], "need");
  EXPECT_TRUE(why["frees"][0]["figure"].is_null() && why["frees"][0]["unit"].is_null());
  for (const auto& free : why["frees"])
    EXPECT_NE(none.whole().find(free["words"].get<std::string>()), std::string::npos) << free["words"];
}

TEST(NoWayJson, TellsWhenWhereAndForHowLongAtBest) {
  sheets::RouteOf route = soughtInVain();
  route.none->exposures = {{{3, 4}, {1, 2}, 0.5, std::nullopt}, {{8, 9}, {5, 2}, std::nullopt, 0.25}};
  const Json why = noWayJson(route);
  EXPECT_EQ(why["kind"], "seen");
  EXPECT_EQ(why["when"], Json::parse(R"({"from": 3.0, "until": 9.0})"));
  EXPECT_EQ(why["where"], Json::parse("[1.0, 2.0]"));
  EXPECT_EQ(why["exposure"], 2.5);
  ASSERT_EQ(why["exposures"].size(), 2u);
  EXPECT_EQ(why["exposures"][0]["laterBy"], 0.5);
  EXPECT_TRUE(why["exposures"][0]["earlierBy"].is_null());
  EXPECT_EQ(why["exposures"][1]["pos"], Json::parse("[5.0, 2.0]"));
  EXPECT_EQ(why["exposures"][1]["earlierBy"], 0.25);
}

TEST(NoWayJson, GivesWhatFreesItsFigureInItsUnit) {
  sheets::RouteOf route = soughtInVain();
  route.none->frees = {{Freeing::Kind::speed, 1.43, "walking up to 1.43 m/s"},
                       {Freeing::Kind::early, 0.75, "0.8 s less before sight"},
                       {Freeing::Kind::late, 0.5, "0.5 s less after sight"},
                       {Freeing::Kind::anyEnd, {}, "ending anywhere"},
                       {Freeing::Kind::anyStand, {}, "standing or walking outside every room"}};
  const Json frees = noWayJson(route)["frees"];
  const auto is = [&](std::size_t i, const char* kind, const Json& figure, const Json& unit) {
    EXPECT_EQ(frees[i]["kind"], kind);
    EXPECT_EQ(frees[i]["figure"], figure) << kind;
    EXPECT_EQ(frees[i]["unit"], unit) << kind;
  };
  ASSERT_EQ(frees.size(), 5u);
  is(0, "speed", 1.43, "m/s");
  is(1, "early", 0.75, "s");
  is(2, "late", 0.5, "s");
  is(3, "anyEnd", nullptr, nullptr);
  is(4, "anyStand", nullptr, nullptr);
}

TEST(NoWayJson, TellsGroundThatIsClosedFromSightAndFromAMapThatDoesNotCover) {
  sheets::RouteOf route = soughtInVain();
  route.none->seen = std::nullopt;
  route.none->at = std::nullopt;
  const Json closed = noWayJson(route);
  EXPECT_EQ(closed["kind"], "closed");
  EXPECT_TRUE(closed["exposure"].is_null() && closed["where"].is_null());
  route.none = std::nullopt;
  const Json uncovered = noWayJson(route);
  EXPECT_EQ(uncovered["kind"], "uncovered");
  EXPECT_TRUE(uncovered["when"].is_null());
  EXPECT_EQ(uncovered["words"], route.why);
  EXPECT_TRUE(noWayJson({}).is_null()) << "a way is there, or none was looked for";
}

}  // namespace
}  // namespace wend::exchange
