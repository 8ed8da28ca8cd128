// Routes that were found, on the plan and the score: followed like drawn ones, told from them by their dashes.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/sheets/now_calls.h"
#include "core/sheets/plan_view.h"
#include "core/sheets/score_drawing.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

using geometry::Drawing;

class FoundRoute : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    plan::Plan plan = samplePlan("first-batch.wend");
    plan::Crew crew = *plan.crew.find("ac1");
    crew.marks.clear();
    plan.crew.replace(plan.crew.indexOf("ac1"), crew);
    auto answers = std::make_shared<answers::Answers>();
    answers->take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
    sought_ = answers;
    answers_ = *answers::withRoutes(answers);
  }
  static void TearDownTestSuite() { sought_ = answers_ = nullptr; }
  static const answers::FoundRoute& route() { return *answers_->routes->find("ac1"); }
  static std::size_t index() { return answers_->take->plan().crew.indexOf("ac1"); }
  static const CrewSlab* slabAt(const PlanView& view, double t) {
    slabs_ = crewSlabs(*answers_, answers::instantAt(*answers_->take, t), view);
    const auto found = std::find_if(slabs_.begin(), slabs_.end(), [](const auto& s) { return s.crew == index(); });
    return found == slabs_.end() ? nullptr : &*found;
  }
  static bool says(const Layer& layer, const std::string& words) {
    return says(layer.drawing, words) || std::any_of(layer.writing.labels.begin(), layer.writing.labels.end(),
                                                     [&](const Label& label) { return label.text.text == words; });
  }
  static bool says(const Drawing& drawing, const std::string& words) {
    return std::any_of(drawing.shapes.begin(), drawing.shapes.end(), [&](const auto& shape) {
      const auto* text = std::get_if<geometry::Text>(&shape);
      return text && text->text == words;
    });
  }

  inline static answers::AnswersPtr sought_, answers_;
  inline static std::vector<CrewSlab> slabs_;
};

TEST_F(FoundRoute, HasItsPersonsSlabDashedWhereItLeadsAtEveryInstant) {
  ASSERT_TRUE(route().found);
  const PlanView view = wholeSet(*answers_->take, 1200, 700);
  for (double t = 0; t < answers_->take->length(); t += 3.7) {
    const CrewSlab* slab = slabAt(view, t);
    ASSERT_TRUE(slab) << t;
    EXPECT_TRUE(slab->dashed);
    EXPECT_NEAR(geometry::distance(slab->place, view.toPicture(route().at(t))), 0, 1e-9) << t;
    PlanPicture picture;
    picture.time = t;
    const auto drawn = nowLayer(*answers_, answers::instantAt(*answers_->take, t), view, picture);
    EXPECT_TRUE(says(drawn, "FA")) << t;
  }
}

TEST_F(FoundRoute, LeadsToAnArrowOnTheEdgeWhereItIsOutOfView) {
  PlanView view = wholeSet(*answers_->take, 1200, 700);
  view.centre = route().at(0) + geometry::Vec{40, 0};
  const CrewSlab* slab = slabAt(view, 0);
  ASSERT_TRUE(slab);
  EXPECT_NEAR(slab->at.x, 18, 60);
  const double out = -slab->place.x / view.pxPerMetre;
  EXPECT_GT(out, 0);
  EXPECT_NEAR(slab->beyond, out, 2);
}

TEST_F(FoundRoute, HasTheSecondsOfItsStandsNearTheirTimeOrWhenItsPersonIsChosen) {
  const PlanView view = wholeSet(*answers_->take, 2400, 1600);
  const auto& stand = route().stands.back();
  const std::string words = base::fixed(stand.span.from, 1) + "\u2013" + base::fixed(stand.span.until, 1);
  PlanPicture picture;
  picture.time = stand.span.from;
  EXPECT_TRUE(says(foundWaysLayer(*answers_, view, picture), words)) << words;
  ASSERT_GT(stand.span.from, 20);
  picture.time = 0;
  EXPECT_FALSE(says(foundWaysLayer(*answers_, view, picture), words));
  picture.chosen = {Chosen::Kind::thing, "ac1", 0};
  EXPECT_TRUE(says(foundWaysLayer(*answers_, view, picture), words));
}

TEST_F(FoundRoute, CallsItsPersonAwayBeforeTheyAreSeenWhereTheyStand) {
  answers::Answers answers = *answers_;
  answers.ground = answers.routeGround.upright;
  int calls = 0;
  for (const auto& walk : route().walks) {
    const double t = walk.walk.span.from - 0.5;
    if (t < 0) continue;
    for (const auto& call : goneBy(answers, answers::instantAt(*answers.take, t))) {
      if (call.id != "ac1") continue;
      ++calls;
      EXPECT_GT(call.seen, walk.walk.span.from) << "the route leaves before it is seen";
    }
    const double under = (walk.walk.span.from + walk.walk.span.until) / 2;
    for (const auto& call : goneBy(answers, answers::instantAt(*answers.take, under))) EXPECT_NE(call.id, "ac1");
  }
  EXPECT_GT(calls, 0);
}

TEST_F(FoundRoute, IsSaidToBeSearchedForWhileItIs) {
  ScoreView view;
  view.width = 1600;
  EXPECT_TRUE(says(scoreDrawing(*sought_, view), "no route drawn"));
  view.searching = true;
  EXPECT_TRUE(says(scoreDrawing(*sought_, view), "searching for a route"));
  EXPECT_FALSE(says(scoreDrawing(*answers_, view), "searching for a route"));
}

}  // namespace
}  // namespace wend::sheets
