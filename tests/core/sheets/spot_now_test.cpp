// A clicked spot at one instant, in words.
#include <gtest/gtest.h>

#include "core/answers/whole_take.h"
#include "core/sheets/text_tables.h"
#include "tests/core/answers/van_street.h"

namespace wend::sheets {
namespace {

snags::SightOf sight() {
  snags::SightOf spot;
  spot.seen = {{{10, 12}, "direct", "", {}, 0}, {{20, 21}, "m1", "", {}, 0}};
  spot.clear = {{{0, 8}, 12.34}, {{13, 18}, 3}, {{22, 30}, 40}};
  return spot;
}

TEST(SpotNow, TellsUntilWhenWhatNextAndInHowManySeconds) {
  const plan::Plan plan;
  EXPECT_EQ(spotNowText(plan, sight(), 5), "clear until 8.0, margin 12.3\u00b0; seen in 5.0 s, directly");
  EXPECT_EQ(spotNowText(plan, sight(), 9), "too near a sight; seen in 1.0 s, directly");
  EXPECT_EQ(spotNowText(plan, sight(), 11), "in frame until 12.0, directly");
  EXPECT_EQ(spotNowText(plan, sight(), 15), "clear until 18.0, margin 3.0\u00b0; seen in 5.0 s, in m1");
  EXPECT_EQ(spotNowText(plan, sight(), 25), "clear until 30.0, margin 40.0\u00b0; not seen again");
}

TEST(SpotWords, TellWhatStandsThereForATimeAndWhatClosesTheGround) {
  plan::Plan plan = answers::vanStreet(1.75);
  plan::Area well;
  well.id = base::Id<plan::Area>("well");
  well.name = "the well";
  well.shape = plan::Disc{{17.5, 1.5}, 1};
  well.use = {plan::AreaUse::hazard};
  plan.set.areas.add(well);
  const auto take = answers::takeOf(plan);
  const auto sight = answers::sightOfSpot(*take, {17.5, 1.5}, 1.8, 0.28);
  const std::string words = spotText(*take, {17.5, 1.5}, 1.8, sight, {});
  EXPECT_NE(words.find("taken  0.0\u2013"), std::string::npos) << words;
  EXPECT_NE(words.find("inside the van"), std::string::npos) << words;
  EXPECT_NE(words.find("closed to the crew: it touches the well, a hazard"), std::string::npos) << words;
  EXPECT_EQ(spotTakenText(*take, {17.5, 1.5}, 1.8, 1).rfind("inside the van until ", 0), 0u);
  EXPECT_EQ(spotTakenText(*take, {17.5, 1.5}, 1.8, 12), "closed to the crew: it touches the well, a hazard; ");
}

}  // namespace
}  // namespace wend::sheets
