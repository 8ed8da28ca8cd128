#include "core/light/face.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/units/stop.h"

namespace wend::light {
namespace {

const Face kFace{{4, 4, 1.6}, {0, -1, 0}};

Fixture lamp(double candela, std::optional<bool> inReadings) {
  return {{{4, 2, 1.6}, 0, 0}, [candela](double, double) { return candela; }, {}, inReadings};
}

Lighting lit(std::vector<Area> areas, std::vector<Fixture> fixtures) {
  return {Areas(std::move(areas), {}, [](Point, Point) { return false; }), std::move(fixtures), Exposure{.index = 1600},
          Receptor::dome, [](Point3, Point3) { return false; }};
}

Area room(double stop) {
  return {Outline{{{0, 0}, {9, 0}, {9, 8}, {0, 8}}}, {{{}, {{{4, 4}, stop}}}}, {}};
}

TEST(LightOnFace, IsTheReadingWhateverTheReceptorsConstant) {
  Lighting lighting = lit({room(2.8)}, {});
  for (const double c : {250.0, 330.0, 540.0}) {
    lighting.exposure.constant = c;
    EXPECT_EQ(lightOnFace(lighting, kFace, 0).needed, 2.8);
  }
}

TEST(LightOnFace, OpensByTheDensity) {
  Lighting lighting = lit({room(8)}, {lamp(500, false)});
  const double clear = lightOnFace(lighting, kFace, 0).needed.value();
  lighting.exposure.ndStops = 2;
  EXPECT_NEAR(lightOnFace(lighting, kFace, 0).needed.value(), clear / 2, 1e-12);
  lighting.fixtures.clear();
  EXPECT_EQ(lightOnFace(lighting, kFace, 0).needed, 4);
}

TEST(LightOnFace, AddsALampThatIsNotInTheReadings) {
  Lighting lighting = lit({room(2.8)}, {});
  const double lux = luxOfReading(2.8, lighting.exposure);
  // As much light again is a stop more; it comes from 2 m, straight on.
  lighting.fixtures = {lamp(4 * lux, false)};
  const FaceLight light = lightOnFace(lighting, kFace, 0);
  EXPECT_NEAR(offsetStops(light.needed.value(), 2.8), 1, 1e-12);
  EXPECT_NEAR(light.lux, 2 * lux, 1e-9);
  EXPECT_NEAR(shareOfFixture(light, 0).value(), 0.5, 1e-12);
}

TEST(LightOnFace, DoesNotAddALampTwice) {
  const Lighting said = lit({room(2.8)}, {lamp(900, true)}), unsaid = lit({room(2.8)}, {lamp(900, std::nullopt)});
  EXPECT_EQ(lightOnFace(said, kFace, 0).needed, 2.8);
  EXPECT_EQ(lightOnFace(unsaid, kFace, 0).needed, 2.8);
  EXPECT_NEAR(lightOnFace(unsaid, kFace, 0).fixtureLux.at(0), 225, 1e-9);
}

TEST(NeededOnFace, IsThatOfTheWholeLight) {
  for (const auto& areas : {std::vector<Area>{}, std::vector<Area>{room(2.8)}})
    for (const std::optional<bool> first :
         {std::optional<bool>{}, std::optional<bool>{true}, std::optional<bool>{false}})
      for (const bool second : {true, false}) {
        const Lighting lighting = lit(areas, {lamp(700, first), lamp(300, second)});
        EXPECT_EQ(neededOnFace(lighting, kFace, 0), lightOnFace(lighting, kFace, 0).needed);
      }
}

TEST(LightOnFace, WithoutAnAreaIsKnownByItsLampsAlone) {
  const Lighting one = lit({}, {lamp(900, std::nullopt)});
  EXPECT_NEAR(lightOnFace(one, kFace, 0).needed.value(), stopFor(225, one.exposure), 1e-12);
  EXPECT_FALSE(lightOnFace(lit({}, {}), kFace, 0).needed);
  EXPECT_FALSE(lightOnFace(lit({}, {lamp(900, true)}), kFace, 0).needed);
  EXPECT_FALSE(lightOnFace(lit({}, {lamp(0, false)}), kFace, 0).needed);
}

TEST(LightOnFace, InAnAreaWithoutAValueIsUnknownEvenWithALamp) {
  const Area street{Outline{{{0, 0}, {9, 0}, {9, 8}, {0, 8}}}, {}, {{0, 4}, {60, 8}}};
  const Lighting lighting = lit({street}, {lamp(900, false)});
  const FaceLight light = lightOnFace(lighting, kFace, 0);
  EXPECT_FALSE(light.needed);
  EXPECT_FALSE(shareOfFixture(light, 0));
}

TEST(LightOnFace, NeverOpensForOneLampMore) {
  Lighting lighting = lit({room(2)}, {});
  double before = lightOnFace(lighting, kFace, 0).needed.value();
  for (int i = 1; i <= 6; ++i) {
    lighting.fixtures.push_back(lamp(50 * i, false));
    const double now = lightOnFace(lighting, kFace, 0).needed.value();
    EXPECT_GT(now, before);
    before = now;
  }
}

/// The bakery before dawn: an alley, and a room whose lamps and oven change on cue.
Lighting bakery() {
  const auto always = [](AreaShape shape, double stop) { return Area{std::move(shape), {{{}, {{{}, stop}}}}, {}}; };
  const auto cut = [](double at, std::vector<Reading> readings) {
    return AreaState{{at, 0, false}, std::move(readings)};
  };
  const Outline alley{{{-3.7, 6}, {-0.2, 6}, {-0.2, 14}, {-3.7, 14}}}, inside{{{0, 0}, {9, 0}, {9, 8}, {0, 8}}};
  return lit({always(alley, 1.4),
              {inside, {cut(0, {{{2, 2}, 1.4}}), cut(34, {{{2, 2}, 3.53}})}, {}},
              {Disc{{4.5, 3.7}, 2.1}, {cut(0, {{{4.5, 3.7}, 1.4}}), cut(34, {{{4.5, 3.7}, 4.49}})}, {}},
              {Disc{{3.1, 6.9}, 1.3}, {cut(0, {}), cut(74, {{{3.1, 6.5}, 7.06}}), cut(81.5, {})}, {}}},
             {});
}

TEST(LightOnFace, FollowsTheCuesOfATake) {
  const Lighting lighting = bakery();
  const auto offset = [&](Point face, double t, double set) {
    return offsetStops(lightOnFace(lighting, {at(face, 1.6), {0, -1, 0}}, t).needed.value(), set);
  };
  EXPECT_NEAR(offset({-1.9, 9.5}, 2, 2.8), -2, 0.05) << "dark in the alley";
  EXPECT_NEAR(offset({2.75, 3}, 33.9, 2.8), -2, 0.05);
  EXPECT_GT(offset({2.75, 3}, 34, 2.8), 0.67) << "over the moment the lamps come on";
  EXPECT_NEAR(offset({3.1, 6.5}, 73.9, 4), -0.36, 0.01);
  EXPECT_NEAR(offset({3.1, 6.5}, 74, units::closedBy(4, 0.2)), 1.5, 0.1) << "the oven opens before the iris is there";
  EXPECT_NEAR(offset({3.1, 6.5}, 81.5, 4), -0.36, 0.01);
}

TEST(LightOnFace, IsUnknownWhileALampToAddShinesByUnknownCandela) {
  Lighting lighting = lit({room(2.8)}, {lamp(500, false), lamp(500, false)});
  lighting.fixtures[1].distribution = {};
  const FaceLight light = lightOnFace(lighting, kFace, 0);
  EXPECT_FALSE(light.needed.has_value());
  EXPECT_GT(light.fixtureLux.at(0), 0);
  EXPECT_EQ(light.fixtureLux.at(1), 0);
  lighting.fixtures[1].level = {{{0, 0, false}, 0}, {{10, 0, false}, 1}};
  EXPECT_TRUE(lightOnFace(lighting, kFace, 5).needed.has_value()) << "out, it matters to nobody";
  EXPECT_FALSE(lightOnFace(lighting, kFace, 15).needed.has_value());
  lighting.blocked = [](Point3, Point3) { return true; };
  EXPECT_EQ(lightOnFace(lighting, kFace, 15).needed, 2.8);
}

TEST(LightOnFace, DoesNotMindUnknownCandelaThatAreInTheReadings) {
  for (const std::optional<bool> inReadings : {std::optional(true), std::optional<bool>()}) {
    Lighting lighting = lit({room(2.8)}, {lamp(500, inReadings)});
    lighting.fixtures[0].distribution = {};
    EXPECT_EQ(lightOnFace(lighting, kFace, 0).needed, 2.8);
    EXPECT_EQ(shareOfFixture(lightOnFace(lighting, kFace, 0), 0), 0);
  }
}

TEST(ShareOfFixture, IsAtMostTheWholeLight) {
  const FaceLight light = lightOnFace(lit({room(0.5)}, {lamp(9000, true)}), kFace, 0);
  EXPECT_EQ(shareOfFixture(light, 0), 1);
}

TEST(BlendedNeed, IsUnknownOnlyWhileAnUnknownOneCounts) {
  EXPECT_EQ(blendedNeed(2.0, 8.0, 0.5), 4);
  EXPECT_EQ(blendedNeed(2.0, std::nullopt, 0), 2);
  EXPECT_EQ(blendedNeed(std::nullopt, 8.0, 1), 8);
  EXPECT_FALSE(blendedNeed(2.0, std::nullopt, 0.1));
  EXPECT_FALSE(blendedNeed(std::nullopt, 2.0, 0.9));
}

}  // namespace
}  // namespace wend::light
