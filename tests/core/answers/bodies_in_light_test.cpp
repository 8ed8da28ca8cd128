// Performers and poles before lamps.
#include <cmath>

#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

plan::Performer tomAt(geometry::Point pos) {
  plan::Performer tom;
  tom.id = base::Id<plan::Performer>("tom");
  tom.name = "TOM";
  tom.marks = {markAt("t1", pos)};
  return tom;
}

const snags::PerformerAt& performer(const Instant& instant, std::size_t i) {
  return instant.performers[i];
}

TEST(PerformersInLight, TakeALampOffTheFaceBehindThemAndLeaveTheirOwn) {
  const auto alone = sampleAt(*takeOf(litBySideLamp()), 1);
  ASSERT_TRUE(performer(alone, 0).needed);
  plan::Plan aside = litBySideLamp();
  aside.performers.add(tomAt({2.5, 2.5}));
  EXPECT_EQ(performer(sampleAt(*takeOf(aside), 1), 0).needed, performer(alone, 0).needed);
  plan::Plan between = litBySideLamp();
  between.performers.add(tomAt({1.5, 1.5}));
  const auto instant = sampleAt(*takeOf(between), 1);
  EXPECT_FALSE(performer(instant, 0).needed) << "no light is left, and none is unknown";
  EXPECT_TRUE(performer(instant, 1).needed) << "TOM's own face is lit";
}

TEST(PerformersInLight, ChangeTheStopByWhatTheirLampGave) {
  plan::Plan plan = litBySideLamp();
  plan::Fixture second = plan.fixtures[0];
  second.id = base::Id<plan::Fixture>("f2");
  second.pos = {-3, 0};
  second.bearing = 45;
  plan.fixtures.add(second);
  const double both = *performer(sampleAt(*takeOf(plan), 1), 0).needed;
  plan.performers.add(tomAt({1.5, 1.5}));
  const double one = *performer(sampleAt(*takeOf(plan), 1), 0).needed;
  EXPECT_NEAR(2 * std::log2(both / one), 1, 1e-9) << "half of the light is a stop";
}

TEST(PerformersInLight, AreToldWithTheShareThatTheyTake) {
  plan::Plan plan = litBySideLamp();
  plan.performers.add(tomAt({1.5, 1.5}));
  const auto take = takeOf(plan);
  const auto shadows = shadowsOn(*take, samplesOf(*take), {});
  ASSERT_EQ(shadows.size(), 1u);
  EXPECT_EQ(shadows[0].who, "nora");
  EXPECT_EQ(shadows[0].by, "tom");
  EXPECT_NEAR(shadows[0].share, 1, 1e-9);
}

TEST(PolesInLight, TakeALampOffAFaceWhereTheRodCrossesItsLine) {
  const auto take = takeOf(litBySideLamp());
  const auto samples = samplesOf(*take);
  const auto shadowsUnder = [&](double height) {
    snags::BoomLine line;
    line.pole = "pole";
    for (const auto& sample : samples) {
      snags::BoomAt at;
      at.time = sample.time;
      at.held = snags::PoleLine{{0.5, 0.5, height}, {2.5, 2.5, height}};
      line.at.push_back(at);
    }
    return shadowsOn(*take, samples, {line});
  };
  // Half-way from a lamp 1.7 m up to eyes at 1.636: 1.668.
  const auto crossed = shadowsUnder(1.668);
  ASSERT_EQ(crossed.size(), 1u);
  EXPECT_EQ(crossed[0].by, "pole");
  EXPECT_TRUE(shadowsUnder(1.72).empty()) << "a rod 4 cm thick that passes 5 cm over the line";
}

}  // namespace
}  // namespace wend::answers
