// A found route taken over as marks: the shelters it leads to keep their names, where their places do.
#include "core/answers/route_taken.h"

#include <gtest/gtest.h>

#include "core/answers/on_found_routes.h"
#include "tests/core/answers/drawn_out.h"
#include "tests/core/answers/two_rooms.h"

namespace wend::answers {
namespace {

AnswersPtr allOf(const plan::Plan& plan) {
  return *answersOf(std::make_shared<const plan::Plan>(plan));
}

class RouteTaken : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    plan_ = samplePlan("first-batch.wend");
    plan::Crew crew = *plan_.crew.find("ac1");
    crew.marks.clear();
    crew.needs = {need(plan::Stays{"KB"}, 55, 90)};
    plan_.crew.replace(plan_.crew.indexOf("ac1"), crew);
    answers_ = *withRoutes(allOf(plan_));
  }
  static void TearDownTestSuite() { answers_ = nullptr; }
  static const FoundRoute& route() { return *answers_->routes->find("ac1"); }

  inline static plan::Plan plan_;
  inline static AnswersPtr answers_;
};

TEST_F(RouteTaken, KeepsTheNamesOfItsSheltersAndNobodySeesItThere) {
  ASSERT_TRUE(route().found);
  const auto exact = marksOf(route(), plan_.clock.length), named = takenOver(*answers_, route());
  ASSERT_EQ(named.size(), exact.size());
  std::size_t inShelters = 0;
  for (const auto& stand : route().stands) inShelters += stand.shelter.empty() ? 0u : 1u;
  ASSERT_GT(inShelters, 0u);
  std::size_t names = 0;
  for (std::size_t k = 0; k < named.size(); ++k) {
    EXPECT_EQ(named[k].at.seconds, exact[k].at.seconds);
    EXPECT_EQ(named[k].posture, exact[k].posture);
    if (named[k].shelter.empty()) {
      EXPECT_EQ(named[k].pos, exact[k].pos);
      continue;
    }
    ++names;
    const plan::Shelter& shelter = *plan_.shelters.find(named[k].shelter);
    EXPECT_LE(geometry::distance(shelter.pos, exact[k].pos), shelter.radius);
  }
  EXPECT_EQ(names, inShelters);
  plan::Plan drawn = plan_;
  setMarks(drawn, "ac1", named);
  for (const auto& snag : *allOf(drawn)->snags)
    if (snag.who == "ac1") ADD_FAILURE() << snag.key << " " << snag.from << " " << snag.text;
}

/// The same route, told to stand in a shelter whose middle is where the lens passes.
TEST_F(RouteTaken, KeepsItsOwnPlaceWhereTheSheltersIsInSight) {
  plan::Plan open = plan_;
  plan::Shelter shelter;
  shelter.id = base::Id<plan::Shelter>("SX");
  shelter.pos = plan_.camera.marks[1].pos;
  shelter.radius = 40;
  shelter.holds = 9;
  open.shelters.add(shelter);
  Answers answers = *answers_;
  answers.take = *Take::of(std::make_shared<const plan::Plan>(open));
  FoundRoute told = route();
  for (auto& stand : told.stands) stand.shelter = "SX";
  EXPECT_EQ(takenOver(answers, told), marksOf(told, plan_.clock.length));
}

}  // namespace
}  // namespace wend::answers
