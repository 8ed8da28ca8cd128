// Lamps whose light comes from photometric files: known when the file came with the plan, unknown when it did not.
#include <gtest/gtest.h>

#include "core/answers/take.h"

namespace wend::answers {
namespace {

constexpr const char* kFile = "lamps/bulb.ies";

/// A lamp 2 m above the middle of an empty floor, hanging straight down.
plan::PlanPtr lampOnly(double scale) {
  plan::Plan plan;
  plan.clock.length = 10;
  plan::Mark mark;
  mark.id = "c1";
  mark.pos = {0, -3};
  plan.camera.marks.push_back(mark);
  plan::Fixture lamp;
  lamp.id = base::Id<plan::Fixture>("f1");
  lamp.height = 2;
  lamp.tilt = -90;
  lamp.output = plan::IesOutput{kFile, scale};
  plan.fixtures.add(lamp);
  return std::make_shared<const plan::Plan>(std::move(plan));
}

/// The same light in all directions, halved when the lamp lies on its side.
light::Luminaires bulb(double candela) {
  auto table = light::Photometry::of({0, 180}, {0}, {{candela, candela}});
  return {{kFile, std::make_shared<const light::Luminaire>(
                      light::Luminaire{std::move(table).value(), {{0, 1}, {90, 0.5}}, 0})}};
}

TEST(Luminaires, GiveLightWhereTheirFileCame) {
  const auto plan = lampOnly(1);
  const auto take = Take::of(plan, bulb(400));
  ASSERT_TRUE(take.ok());
  const light::Face up{{0, 0, 0}, {0, 0, 1}};
  const light::FaceLight face = light::lightOnFace((*take)->lighting(), up, 0);
  EXPECT_NEAR(face.lux, 100, 1e-9) << "400 cd at 2 m";
  EXPECT_TRUE(face.needed.has_value());
  const auto twice = Take::of(lampOnly(2), bulb(400));
  EXPECT_NEAR(light::lightOnFace((*twice)->lighting(), up, 0).lux, 200, 1e-9) << "the plan's own scale counts";
}

TEST(Luminaires, CountTheTiltOfTheirLamp) {
  plan::Plan level = *lampOnly(1);
  plan::Fixture lamp = level.fixtures[0];
  lamp.tilt = 0;
  level.fixtures.replace(0, lamp);
  const auto take = Take::of(std::make_shared<const plan::Plan>(level), bulb(400));
  const light::Face up{{0, 0, 0}, {0, 0, 1}};
  EXPECT_NEAR(light::lightOnFace((*take)->lighting(), up, 0).lux, 50, 1e-9);
}

TEST(Luminaires, AreUnknownAndNamedWithoutTheirFile) {
  const auto plan = lampOnly(1);
  const auto take = Take::of(plan);
  ASSERT_TRUE(take.ok());
  EXPECT_FALSE((*take)->neededAt({0, 0, 0}, 0).has_value());
  // Over a reading that does not contain it, it is unknown as well; over one that does, it does not matter.
  plan::Plan read = *plan;
  plan::Area floor;
  floor.id = base::Id<plan::Area>("a1");
  floor.shape = plan::Disc{{0, 0}, 5};
  floor.states.emplace_back().readings.push_back({{0, 0}, 4, {}});
  read.set.areas.add(floor);
  EXPECT_EQ((*Take::of(std::make_shared<const plan::Plan>(read)))->neededAt({0, 0, 0}, 0), 4);
  plan::Fixture lamp = read.fixtures[0];
  lamp.inReadings = false;
  read.fixtures.replace(0, lamp);
  EXPECT_FALSE((*Take::of(std::make_shared<const plan::Plan>(read)))->neededAt({0, 0, 0}, 0).has_value());
}

}  // namespace
}  // namespace wend::answers
