// A found route taken over as marks: the shelters it leads to keep their names, where their places do.
#include "core/answers/route_taken.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

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
  /// The first assistant's way left to be found, with a need to stay in a shelter.
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
  /// What the plan's snags of somebody are who walks like that.
  static std::set<std::string> snagsOf(plan::Plan plan, const std::string& who, std::vector<plan::Mark> marks) {
    setMarks(plan, who, std::move(marks));
    const AnswersPtr answers = allOf(plan);
    std::set<std::string> keys;
    for (const auto& snag : *answers->snags)
      if (snag.who == who) keys.insert(snag.key);
    return keys;
  }

  inline static plan::Plan plan_;
  inline static AnswersPtr answers_;
};

TEST_F(RouteTaken, NamesAShelterWhosePlaceIsAsFarOutOfSight) {
  const plan::Plan rooms = withNeeds(twoRooms(), {need(plan::Stays{"ka"}, 0, 4), need(plan::Stays{"kb"}, 12, 30)});
  const AnswersPtr answers = *withRoutes(allOf(rooms));
  const FoundRoute& found = *answers->routes->find("ac");
  ASSERT_TRUE(found.found) << found.whole();
  const auto exact = marksOf(found, rooms.clock.length), named = takenOver(*answers, found);
  ASSERT_EQ(named.size(), exact.size());
  std::vector<std::string> names;
  for (std::size_t k = 0; k < named.size(); ++k) {
    EXPECT_EQ(named[k].posture, exact[k].posture);
    if (named[k].shelter.empty()) {
      EXPECT_EQ(named[k], exact[k]);
      continue;
    }
    const double longest = 2 * 0.5 / rooms.crew[0].speed;
    EXPECT_GE(named[k].at.seconds, exact[k].at.seconds);
    EXPECT_LE(named[k].at.seconds, exact[k].at.seconds + longest);
    EXPECT_LE(named[k].until->seconds, exact[k].until->seconds);
    EXPECT_GE(named[k].until->seconds, exact[k].until->seconds - longest);
    names.push_back(named[k].shelter);
    const plan::Shelter& shelter = *rooms.shelters.find(named[k].shelter);
    EXPECT_LE(geometry::distance(shelter.pos, exact[k].pos), shelter.radius);
  }
  EXPECT_NE(std::find(names.begin(), names.end(), "ka"), names.end());
  EXPECT_NE(std::find(names.begin(), names.end(), "kb"), names.end());
  EXPECT_EQ(snagsOf(rooms, "ac", named), snagsOf(rooms, "ac", exact));
}

TEST_F(RouteTaken, StaysInTheShelterThatIsAskedFor) {
  ASSERT_TRUE(route().found) << route().whole();
  const auto marks = takenOver(*answers_, route());
  EXPECT_TRUE(std::ranges::any_of(marks, [](const plan::Mark& mark) { return mark.shelter == "KB"; }))
      << "nobody in the middle of KB is ever seen";
  plan::Plan drawn = plan_;
  setMarks(drawn, "ac1", marks);
  const TakePtr take = takeOf(drawn);
  EXPECT_EQ(take->people().crewAt(drawn.crew.indexOf("ac1"), 60, {}).shelter, "KB");
  EXPECT_TRUE(snagsOf(plan_, "ac1", marks).empty());
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
