// A shelter that others fill, said where somebody is looked for in vain.
#include "core/answers/full_shelters.h"

#include <gtest/gtest.h>

#include "tests/core/answers/two_rooms.h"

namespace wend::answers {
namespace {

/// As many hands who all have to be in `kb` from 12 to 14 s, which holds so many.
plan::Plan hands(int count, int holds) {
  plan::Plan plan = withNeeds(twoRooms(), {need(plan::Stays{"kb"}, 12, 14)});
  plan::Shelter kb = *plan.shelters.find("kb");
  kb.holds = holds;
  kb.radius = 0.7;
  plan.shelters.replace(plan.shelters.indexOf("kb"), kb);
  for (int i = 2; i <= count; ++i) {
    plan::Crew next = plan.crew[0];
    next.id = base::Id<plan::Crew>("h" + std::to_string(i));
    next.role = "hand " + std::to_string(i);
    plan.crew.add(next);
  }
  return plan;
}

TEST(FullShelters, AreNamedWithWhoIsInThemAndWhatFreesAPlace) {
  const FoundRoutes routes = found(*takeOf(hands(2, 1)));
  ASSERT_TRUE(routes.people.at(0).found) << routes.people[0].whole();
  const FoundRoute& none = routes.people.at(1);
  ASSERT_FALSE(none.found);
  EXPECT_NE(none.why.find("behind the wall is full 12.0\u201314.0 s: it holds 1, and first assistant camera is in it"),
            std::string::npos)
      << none.whole();
  EXPECT_NE(none.cures().find("behind the wall holding 2"), std::string::npos) << none.whole();
  EXPECT_NE(none.cures().find("first assistant camera not staying in behind the wall"), std::string::npos)
      << none.whole();
  EXPECT_TRUE(found(*takeOf(hands(2, 2))).people.at(1).found) << "what is said to free does";
}

TEST(FullShelters, AreNoneWhileAPlaceIsLeft) {
  const TakePtr take = takeOf(hands(2, 2));
  EXPECT_TRUE(fullShelters(*take, 1, {0}).empty());
  EXPECT_TRUE(fullShelters(*takeOf(hands(2, 1)), 1, {}).empty()) << "who has no way is not in it";
}

}  // namespace
}  // namespace wend::answers
