// A clicked spot at one instant, in words.
#include <gtest/gtest.h>

#include "core/sheets/text_tables.h"

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

}  // namespace
}  // namespace wend::sheets
