#include "core/light/background.h"

#include <gtest/gtest.h>

#include "core/light/exposure.h"
#include "core/units/stop.h"

namespace wend::light {
namespace {

TEST(Background, IsTheMeanOfItsBrightestAndDarkestTenth) {
  std::vector<std::optional<double>> stops;
  for (int i = 0; i < 20; ++i) stops.push_back(units::closedBy(4, 19 - i));
  const Background background = backgroundAgainst(stops, 4).value();
  EXPECT_NEAR(background.brightest, 18.5, 1e-12);
  EXPECT_NEAR(background.darkest, 0.5, 1e-12);
  EXPECT_EQ(background.unknownShare, 0);
  EXPECT_NEAR(backgroundAgainst(stops, 8)->darkest, -1.5, 1e-12);
}

TEST(Background, LeavesOutWhatIsUnknownAndSaysHowMuch) {
  const Background background = backgroundAgainst({std::nullopt, 8.0, 4.0, std::nullopt}, 4).value();
  EXPECT_NEAR(background.brightest, 2, 1e-12);
  EXPECT_NEAR(background.darkest, 0, 1e-12);
  EXPECT_EQ(background.unknownShare, 0.5);
  EXPECT_FALSE(backgroundAgainst({std::nullopt}, 4));
  EXPECT_FALSE(backgroundAgainst({}, 4));
}

}  // namespace
}  // namespace wend::light
