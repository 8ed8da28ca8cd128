#include "core/sheets/theme.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace wend::sheets {
namespace {

using geometry::Pattern;
using geometry::Tone;

constexpr Theme kThemes[] = {Theme::dark, Theme::paper, Theme::torch};
constexpr Tone kPerformers[] = {Tone::performerA, Tone::performerB, Tone::performerC, Tone::performerD};
constexpr Pattern kPatterns[] = {Pattern::dots,      Pattern::quincunx,  Pattern::sparse,     Pattern::wave,
                                 Pattern::hatchWall, Pattern::hatchTall, Pattern::hatchCover, Pattern::seen,
                                 Pattern::ticks,     Pattern::rising,    Pattern::falling};

double hueDegrees(Rgb c) {
  const double r = c.red, g = c.green, b = c.blue;
  const double high = std::max({r, g, b}), low = std::min({r, g, b});
  return std::fmod(60 * ((g - b) / (high - low)) + 360, 360);  // red is the largest on torch
}

// W3C, Web Content Accessibility Guidelines 2.2, section "contrast ratio": ratios run from 1 to 21. The two greys
// follow from its formula by hand: 0x77 has luminance 0.1845, 0x76 has 0.1812.
TEST(Contrast, FollowsTheDefinitionOfTheGuidelines) {
  const Rgb white{255, 255, 255}, black{0, 0, 0};
  EXPECT_NEAR(contrast(white, black), 21, 1e-9);
  EXPECT_NEAR(contrast(black, white), 21, 1e-9);
  EXPECT_DOUBLE_EQ(contrast(white, white), 1);
  EXPECT_NEAR(contrast(white, {0x77, 0x77, 0x77}), 1.05 / (0.1845 + 0.05), 0.002);
  EXPECT_NEAR(contrast(white, {0x76, 0x76, 0x76}), 1.05 / (0.1812 + 0.05), 0.002);
  // Each primary against black is its weight in the luminance sum.
  EXPECT_NEAR(contrast({255, 0, 0}, black), (0.2126 + 0.05) / 0.05, 1e-9);
  EXPECT_NEAR(contrast({0, 255, 0}, black), (0.7152 + 0.05) / 0.05, 1e-9);
  EXPECT_NEAR(contrast({0, 0, 255}, black), (0.0722 + 0.05) / 0.05, 1e-9);
}

TEST(Theme, TextIsReadableOnEverySurface) {
  for (const Theme theme : kThemes)
    for (const Tone text : {Tone::ink, Tone::ink2, Tone::ink3})
      for (const Tone ground : {Tone::page, Tone::panel, Tone::raise, Tone::window, Tone::field})
        EXPECT_GE(contrast(rgbOf(text, theme), rgbOf(ground, theme)), 4.5)
            << "theme " << int(theme) << " text " << int(text) << " ground " << int(ground);
}

TEST(Theme, LinesOfAPlanStandOutFromTheFloor) {
  for (const Theme theme : kThemes)
    for (const Tone line : {Tone::performerA, Tone::performerB, Tone::performerC, Tone::performerD, Tone::crew,
                            Tone::lens, Tone::edge, Tone::grain, Tone::sharp})
      EXPECT_GE(contrast(rgbOf(line, theme), rgbOf(Tone::page, theme)), 3) << int(theme) << " " << int(line);
}

TEST(Theme, LettersAreReadableInEveryPerformersShape) {
  for (const Theme theme : kThemes)
    for (const Tone performer : kPerformers)
      EXPECT_GE(contrast(letterOn(performer, theme), rgbOf(performer, theme)), 4.5) << int(theme);
  EXPECT_EQ(letterOn(Tone::performerA, Theme::paper), (Rgb{0x11, 0x14, 0x17}));
  EXPECT_EQ(letterOn(Tone::performerC, Theme::paper), (Rgb{0xFF, 0xFF, 0xFF}));
}

TEST(Theme, TorchIsOneHue) {
  for (int tone = int(Tone::window); tone <= int(Tone::grain); ++tone) {
    const Rgb colour = rgbOf(Tone(tone), Theme::torch);
    EXPECT_GE(colour.red, colour.green);
    EXPECT_GE(colour.green, colour.blue);
    const double hue = hueDegrees(colour);
    EXPECT_LT(std::min(hue, 360 - hue), 16) << "tone " << tone;  // within red
  }
  for (const Tone performer : kPerformers) EXPECT_EQ(rgbOf(performer, Theme::torch), rgbOf(Tone::ink, Theme::torch));
}

TEST(Theme, RunThroughIsDarkerThanThePlanAtNight) {
  EXPECT_LT(contrast(runThroughPage(Theme::dark), {0, 0, 0}), contrast(rgbOf(Tone::page, Theme::dark), {0, 0, 0}));
  EXPECT_GE(contrast(runThroughPage(Theme::dark), rgbOf(Tone::ink3, Theme::dark)), 4.5);
  EXPECT_EQ(runThroughPage(Theme::torch), rgbOf(Tone::page, Theme::torch));
}

TEST(Theme, RefusesTonesWithoutAColour) {
  EXPECT_DEATH(rgbOf(Tone::none, Theme::dark), "row");
  EXPECT_DEATH(rgbOf(Tone::onPerformer, Theme::dark), "row");
  EXPECT_DEATH(letterOn(Tone::ink, Theme::dark), "isPerformer");
  EXPECT_DEATH(tileOf(Pattern::plain), "plain");
}

TEST(Inks, GiveALetterTheContrastOfTheShapeUnderIt) {
  Inks inks(Theme::paper);
  inks.filled({Tone::performerC, Pattern::plain, 1});
  EXPECT_EQ(inks.of(Tone::onPerformer), letterOn(Tone::performerC, Theme::paper));
  inks.filled({Tone::page, Pattern::plain, 1});  // not a performer: the letter stays
  EXPECT_EQ(inks.of(Tone::onPerformer), letterOn(Tone::performerC, Theme::paper));
  inks.filled({Tone::performerA, Pattern::plain, 1});
  EXPECT_EQ(inks.of(Tone::onPerformer), letterOn(Tone::performerA, Theme::paper));
  EXPECT_EQ(inks.of(Tone::ink), rgbOf(Tone::ink, Theme::paper));
}

/// Marks of the 3 x 3 neighbourhood that begin at (x, y) of the middle tile.
bool someStrokeBeginsAt(const Tile& tile, geometry::Point at) {
  for (const auto& stroke : tile.strokes)
    for (const int x : {-1, 0, 1})
      for (const int y : {-1, 0, 1})
        if (std::abs(stroke.front().x + x * tile.width - at.x) < 1e-9 &&
            std::abs(stroke.front().y + y * tile.height - at.y) < 1e-9)
          return true;
  return false;
}

TEST(Tile, StrokesGoOnInTheNextTile) {
  int strokes = 0;
  for (const Pattern pattern : kPatterns) {
    const Tile tile = tileOf(pattern);
    for (const auto& stroke : tile.strokes) {
      ++strokes;
      EXPECT_TRUE(someStrokeBeginsAt(tile, stroke.back())) << int(pattern);
    }
  }
  EXPECT_EQ(strokes, 7);
}

TEST(Tile, DotsDoNotReachOverTheEdge) {
  int dots = 0;
  for (const Pattern pattern : kPatterns) {
    const Tile tile = tileOf(pattern);
    for (const Dot& dot : tile.dots) {
      ++dots;
      // A quincunx of pitch 4 has its dots 1 from the edge, where they touch the next tile's by 0.15 at most.
      EXPECT_GE(dot.centre.x, dot.radius - 0.151);
      EXPECT_LE(dot.centre.x, tile.width - dot.radius + 0.151);
      EXPECT_GE(dot.centre.y, dot.radius - 0.151);
      EXPECT_LE(dot.centre.y, tile.height - dot.radius + 0.151);
    }
  }
  EXPECT_EQ(dots, 7);
}

TEST(Tile, LinesKeepTheirPitchSquareToThem) {
  const auto pitch = [](Pattern pattern) {
    const Tile tile = tileOf(pattern);
    const geometry::Vec along = geometry::unit(tile.strokes[0].back() - tile.strokes[0].front());
    return std::abs(geometry::cross(along, {tile.width, 0}));
  };
  EXPECT_NEAR(pitch(Pattern::hatchWall), 5, 1e-9);
  EXPECT_NEAR(pitch(Pattern::hatchTall), 8, 1e-9);
  EXPECT_NEAR(pitch(Pattern::hatchCover), 6, 1e-9);
  EXPECT_NEAR(pitch(Pattern::ticks), 4, 1e-9);
}

TEST(Tile, RisingAndFallingLeanOppositeWays) {
  const auto slope = [](Pattern pattern) {
    const auto stroke = tileOf(pattern).strokes[0];
    return (stroke.back().y - stroke.front().y) / (stroke.back().x - stroke.front().x);
  };
  EXPECT_LT(slope(Pattern::rising), 0);  // y is down: to the right and up
  EXPECT_NEAR(slope(Pattern::falling), -slope(Pattern::rising), 1e-9);
}

/// Share of the plane that is inked, were no marks to overlap.
double inkShare(const Tile& tile) {
  double area = 0;
  for (const Dot& dot : tile.dots) area += 3.14159265358979 * dot.radius * dot.radius;
  for (const auto& stroke : tile.strokes)
    for (std::size_t i = 1; i < stroke.size(); ++i)
      area += geometry::distance(stroke[i - 1], stroke[i]) * tile.strokeWidth;
  return area / (tile.width * tile.height);
}

TEST(Tile, SoonerSeenIsDenser) {
  const double two = inkShare(tileOf(Pattern::dots)), five = inkShare(tileOf(Pattern::quincunx));
  const double fifteen = inkShare(tileOf(Pattern::sparse));
  EXPECT_GT(two, 1.9 * five);
  EXPECT_GT(five, 3 * fifteen);
  EXPECT_GT(fifteen, 0.03);
  EXPECT_GT(inkShare(tileOf(Pattern::hatchWall)), inkShare(tileOf(Pattern::hatchTall)));
}

TEST(Halo, IsThreePxAndLessUnderSmallType) {
  EXPECT_DOUBLE_EQ(haloWidth(12, Unit::px), 3);
  EXPECT_DOUBLE_EQ(haloWidth(44, Unit::px), 3);
  EXPECT_DOUBLE_EQ(haloWidth(8, Unit::px), 2);
  EXPECT_NEAR(haloWidth(12 * kMmPerPx, Unit::mm), 3 * kMmPerPx, 1e-12);
}

}  // namespace
}  // namespace wend::sheets
