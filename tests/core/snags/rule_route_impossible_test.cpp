// Routes that nobody finds, over takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags without(const std::string& cures) {
  return with([&](Evidence& e) {
    e.noRoutes = {{"ac1", {3, 4.5}, Point{1, 2}, 1.5, "nobody unseen gets past 3.0 s", cures}};
  });
}

TEST(RouteImpossible, StopsTheTakeWhereAndWhenItIsSeenAtBest) {
  const Snags snags = without("walking up to 1.30 m/s; ending anywhere");
  expectOne(snags, "route-impossible", Severity::stops);
  EXPECT_EQ(snags[0].key, "route-impossible/ac1//b1/1");
  EXPECT_EQ(snags[0].text, "no route for first assistant camera: nobody unseen gets past 3.0 s");
  EXPECT_EQ(snags[0].mend, "any of these frees it: walking up to 1.30 m/s; ending anywhere");
  EXPECT_EQ(snags[0].from, 3);
  EXPECT_EQ(snags[0].until, 4.5);
  ASSERT_TRUE(snags[0].pos.has_value());
  EXPECT_EQ(snags[0].pos->x, 1);
}

TEST(RouteImpossible, SaysSoWhereNothingThatWasTriedFreesIt) {
  EXPECT_EQ(without("")[0].mend.rfind("nothing tried", 0), 0u);
}

}  // namespace
}  // namespace wend::snags
