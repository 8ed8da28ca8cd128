// When the crew has to be gone, held against the exact sight of a body on the same spot.
#include "core/sheets/now_calls.h"

#include <gtest/gtest.h>

#include "core/answers/routes.h"
#include "core/answers/whole_take.h"
#include "core/base/text.h"
#include "core/sheets/crew_sheet.h"
#include "core/sheets/now_drawing.h"
#include "core/sheets/text_tables.h"
#include "core/sheets/text_width.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

class GoneByCalls : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    plan::Plan plan = samplePlan("links-and-booms.wend");
    // Coarse cells: what is held here holds on any.
    plan.sightRules.cell = 0.2;
    auto made = std::make_shared<answers::Answers>();
    made->take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
    made->ground = *answers::groundOf(*made->take, {plan.sightRules.height});
    answers_ = made;
  }
  static void TearDownTestSuite() { answers_.reset(); }
  const answers::Take& take() const { return *answers_->take; }
  answers::Instant at(double t) const { return answers::instantAt(take(), t); }

  inline static answers::AnswersPtr answers_;
};

TEST_F(GoneByCalls, ComeNoLaterThanThePersonIsSeenLessTheEarlyMargin) {
  const auto& rules = take().plan().sightRules;
  int calls = 0;
  for (double t = 0; t < take().length(); t += 1.7) {
    const auto instant = at(t);
    for (const auto& call : goneBy(*answers_, instant)) {
      const auto who =
          std::find_if(instant.crew.begin(), instant.crew.end(), [&](const auto& crew) { return crew.id == call.id; });
      ASSERT_NE(who, instant.crew.end());
      EXPECT_FALSE(who->walking || who->carried) << call.id;
      EXPECT_GT(call.seen, t);
      EXPECT_DOUBLE_EQ(call.by, call.seen - rules.early);
      const auto exact = answers::sightOfSpot(take(), who->pos, rules.height, rules.radius);
      for (const auto& seen : exact.seen) {
        if (seen.span.until <= t) continue;
        EXPECT_LE(call.seen, seen.span.from + 1e-6) << call.id << " at " << t;
        break;
      }
      ++calls;
    }
  }
  EXPECT_GT(calls, 0) << "the sample has somebody who has to go";
}

TEST_F(GoneByCalls, ComeSoonestFirst) {
  for (double t = 0; t < take().length(); t += 2.3) {
    const auto calls = goneBy(*answers_, at(t));
    for (std::size_t i = 1; i < calls.size(); ++i) EXPECT_LE(calls[i - 1].by, calls[i].by);
  }
}

TEST_F(GoneByCalls, AreEmptyWithoutTheGround) {
  answers::Answers bare;
  bare.take = answers_->take;
  EXPECT_TRUE(goneBy(bare, at(1)).empty());
}

// An independent sampler that looked ten times a second, and at the floor plan alone, first sees somebody there at 49.8
// s. The map of the ground speaks for a whole cell and whole frames, and is early by what that gives away.
TEST(GoneByOfFirstBatch, TellsTheAssistantBesideTheDoorTheLastSecond) {
  answers::Answers answers;
  answers.take = *answers::Take::of(sharedSample("first-batch.wend"));
  answers.ground = *answers::groundOf(*answers.take, {answers.take->plan().sightRules.height});
  const auto calls = goneBy(answers, answers::instantAt(*answers.take, 42));
  const auto assistant = std::find_if(calls.begin(), calls.end(), [](const auto& call) { return call.id == "ac1"; });
  ASSERT_NE(assistant, calls.end());
  const auto exact = answers::sightOfSpot(*answers.take, answers.take->plan().shelters.find("KX")->pos, 1.8, 0.28);
  ASSERT_EQ(exact.seen.size(), 1u);
  EXPECT_GT(exact.seen[0].span.from, 49.7);
  EXPECT_LE(exact.seen[0].span.from, 49.8);
  EXPECT_LE(assistant->by, exact.seen[0].span.from - 2);
  EXPECT_GE(assistant->by, exact.seen[0].span.from - 2 - 2.0 / 24);
}

// The slip from KX is drawn from 44 s on; how late it may start is what the crew sheet prints.
TEST(GoneByOfFirstBatch, TellsTheLatestLeaveOfTheDrawnSlipWhereThatIsSooner) {
  auto answers = std::make_shared<answers::Answers>();
  answers->take = *answers::Take::of(sharedSample("first-batch.wend"));
  answers->ground = *answers::groundOf(*answers->take, {answers->take->plan().sightRules.height});
  const auto callOf = [](const answers::Answers& of) {
    const auto calls = goneBy(of, answers::instantAt(*of.take, 42));
    return *std::find_if(calls.begin(), calls.end(), [](const auto& call) { return call.id == "ac1"; });
  };
  EXPECT_FALSE(callOf(*answers).slip) << "nobody knows of slips yet";
  const auto routes = *answers::withRoutes(answers);
  double printed = 0;
  for (const auto& route : routesOf(*routes))
    for (const auto& walk : route.walks)
      if (route.id == "ac1" && walk.span.from == 44) printed = walk.latestLeave.value();
  const GoneBy call = callOf(*routes);
  EXPECT_TRUE(call.slip);
  EXPECT_DOUBLE_EQ(call.by, printed);
  EXPECT_LT(call.by, callOf(*answers).by);
}

TEST(GoneByOfFirstBatch, TellsTheLatestLeaveOfTheFoundRouteWhereThatIsSooner) {
  const auto route = [](double latest) {
    answers::FoundRoute found;
    found.id = "ac1";
    found.found = true;
    const geometry::Point at{1, 1}, there{2, 1};
    found.stands = {{{0, 44}, at, "", false}, {{50, 168}, there, "", false}};
    answers::FoundWalk walk;
    walk.walk.span = {44, 50};
    walk.walk.latestLeave = latest;
    walk.path = {{44, at}, {50, there}};
    found.walks = {walk};
    return found;
  };
  plan::Plan plan = *sharedSample("first-batch.wend");
  plan::Crew crew = *plan.crew.find("ac1");
  const geometry::Point door = plan.shelters.find("KX")->pos;
  crew.marks.clear();
  plan.crew.replace(plan.crew.indexOf("ac1"), crew);
  answers::Answers answers;
  answers.take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
  answers.ground = *answers::groundOf(*answers.take, {plan.sightRules.height});
  const auto callWith = [&](double latest) {
    answers::FoundRoute found = route(latest);
    found.stands[0].pos = found.walks[0].path[0].at = door;
    auto routes = std::make_shared<answers::FoundRoutes>();
    routes->people = {found};
    answers.routes = routes;
    const auto calls = goneBy(answers, answers::instantAt(*answers.take, 42));
    return *std::find_if(calls.begin(), calls.end(), [](const auto& call) { return call.id == "ac1"; });
  };
  EXPECT_TRUE(callWith(45).slip);
  EXPECT_DOUBLE_EQ(callWith(45).by, 45);
  EXPECT_FALSE(callWith(60).slip);
  EXPECT_LT(callWith(60).by, 49.8);
}

TEST(GoneByWords, SayWhenTheSecondIsPast) {
  const GoneBy call{"ac1", "FA", 49.8, 47.8};
  EXPECT_EQ(goneByWords(call, 41), "FA gone by 47.8");
  EXPECT_EQ(goneByWords(call, 48.5), "FA had to be gone by 47.8");
  const GoneBy slip{"ac1", "FA", 49.8, 45.6, true};
  EXPECT_EQ(goneByWords(slip, 41), "FA sets off by 45.6");
  EXPECT_EQ(goneByWords(slip, 46), "FA had to set off by 45.6");
}

TEST_F(GoneByCalls, AreTooLateInTheWordsOfAnInstantWithinTheEarlyMargin) {
  answers::Instant instant = at(0);
  ASSERT_FALSE(instant.crew.empty());
  auto& who = instant.crew[0];
  who.present = true;
  who.walking = who.carried = who.seen = false;
  who.nextSeen = 0.8;
  const double early = take().plan().sightRules.early;
  const std::string words = "had to be gone by " + base::fixed(0.8 - early, 1);
  EXPECT_NE(instantText(take(), instant).find(words), std::string::npos) << instantText(take(), instant);
  who.nextSeen = early + 0.1;
  EXPECT_EQ(instantText(take(), instant).find(words), std::string::npos);
}

/// What a cue changes from and to is never cut where the panel has a line for it.
TEST_F(GoneByCalls, StandOnThePanelBesideACueThatIsWhole) {
  const auto whole = *answers::answersOf(sharedSample("links-and-booms.wend"));
  auto answers = std::make_shared<answers::Answers>(*whole);
  const auto cues = nextCues(*answers, 0, 1);
  ASSERT_FALSE(cues.empty());
  for (const double height : {416.0, 560.0}) {
    const auto drawing = nowDrawing(*answers, answers::instantAt(*answers->take, 0), false, 240, height);
    bool found = false;
    for (const auto& shape : drawing.shapes)
      if (const auto* words = std::get_if<geometry::Text>(&shape)) {
        found = found || words->text == cues[0].change;
        const double width = typeWidth(words->text, words->size);
        const double left = words->align == geometry::Align::left    ? words->at.x
                            : words->align == geometry::Align::right ? words->at.x - width
                                                                     : words->at.x - width / 2;
        EXPECT_GE(left, 0) << words->text;
        EXPECT_LE(left + width, 240.5) << words->text;
      }
    EXPECT_TRUE(found) << cues[0].change << " at " << height;
  }
}

}  // namespace
}  // namespace wend::sheets
