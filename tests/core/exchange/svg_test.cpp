#include "core/exchange/svg.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <sstream>

namespace wend::exchange {
namespace {

using geometry::Drawing;
using geometry::Pattern;
using geometry::Tone;

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

Drawing oneBox(geometry::Fill fill) {
  Drawing drawing{96, 48, {10, 20}, {}};
  drawing.add(geometry::Box{{4, 8}, 40, 16, 4, fill, {}});
  return drawing;
}

TEST(Svg, StatesItsSizeInMillimetres) {
  const Drawing drawing{96, 48, {}, {}};
  EXPECT_TRUE(holds(svgText(drawing, {}), "width=\"25.4mm\" height=\"12.7mm\" viewBox=\"0 0 96 48\""));
  SvgStyle mm;
  mm.unit = sheets::Unit::mm;
  EXPECT_TRUE(holds(svgText(drawing, mm), "width=\"96mm\" height=\"48mm\" viewBox=\"0 0 96 48\""));
}

TEST(Svg, WritesShapesWithTheThemesColours) {
  Drawing drawing{100, 100, {}, {}};
  drawing.add(
      geometry::Path{{{{0, 0}, {10, 0}, {10, 10}}, {{2, 2}, {4, 2}, {4, 4}}}, true, {Tone::wall}, {Tone::edge, 1, {}}});
  drawing.add(geometry::Circle{{50, 50}, 11, {Tone::performerA, Pattern::plain, 0.5}, {}});
  drawing.add(
      geometry::Path{{{{0, 0}, {1.23456, -0.00001}}}, false, {}, {Tone::lens, 2.4, {6, 3}, geometry::Cap::flat, 0.5}});
  const std::string paper = svgText(drawing, {});
  EXPECT_TRUE(
      holds(paper, "d=\"M0 0L10 0L10 10ZM2 2L4 2L4 4Z\" fill-rule=\"evenodd\" fill=\"#d5d2c9\" stroke=\"#2a2e32\""));
  EXPECT_TRUE(holds(paper, "<circle cx=\"50\" cy=\"50\" r=\"11\" fill=\"#a77d22\" fill-opacity=\"0.5\"/>"));
  EXPECT_TRUE(holds(paper, "d=\"M0 0L1.235 0\" fill=\"none\" stroke=\"#111417\" stroke-width=\"2.4\""));
  EXPECT_TRUE(holds(paper, "stroke-dasharray=\"6 3\" stroke-opacity=\"0.5\""));
  SvgStyle dark;
  dark.theme = sheets::Theme::dark;
  EXPECT_TRUE(holds(svgText(drawing, dark), "fill=\"#f8b600\""));
}

TEST(Svg, KeepsTextAsText) {
  Drawing drawing{100, 100, {}, {}};
  drawing.add(geometry::Text{
      {10, 20}, "2.80 m <A & B> 9\xE2\x80\xB2", 12, true, geometry::Align::centre, Tone::ink, Tone::page, 90});
  const std::string text = svgText(drawing, {});
  EXPECT_TRUE(holds(text, ">2.80 m &lt;A &amp; B&gt; 9\xE2\x80\xB2</text>"));
  EXPECT_TRUE(
      holds(text, "font-family=\"B612, sans-serif\" font-size=\"12\" font-weight=\"700\" text-anchor=\"middle\""));
  EXPECT_TRUE(holds(text, "transform=\"rotate(90 10 20)\""));
  EXPECT_TRUE(holds(text, "stroke=\"#fbfaf6\" stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\""));
}

TEST(Svg, ReplacesCharactersThatXmlCannotHold) {
  Drawing drawing{100, 100, {}, {}};
  drawing.add(geometry::Text{{0, 0}, std::string("a\x01") + "b"});
  EXPECT_TRUE(holds(svgText(drawing, {}),
                    ">a\xEF\xBF\xBD"
                    "b</text>"));
}

TEST(Svg, DefinesAPatternOncePerToneAtTheOrigin) {
  Drawing drawing = oneBox({Tone::grain, Pattern::dots, 1});
  drawing.add(geometry::Circle{{30, 30}, 5, {Tone::grain, Pattern::dots, 1}, {}});
  drawing.add(geometry::Circle{{60, 30}, 5, {Tone::crew, Pattern::dots, 1}, {}});
  const std::string text = svgText(drawing, {});
  EXPECT_EQ(count(text, "<pattern "), 2u);
  EXPECT_EQ(count(text, "fill=\"url(#dots-6e7276)\""), 2u);
  EXPECT_EQ(count(text, "patternTransform=\"translate(10 20)\""), 2u);
}

TEST(Svg, KeepsThePitchOfPatternsInMillimetres) {
  SvgStyle mm;
  mm.unit = sheets::Unit::mm;
  EXPECT_TRUE(
      holds(svgText(oneBox({Tone::hatch, Pattern::sparse, 1}), mm), "translate(10 20) scale(0.26458333333333334)"));
}

TEST(Svg, CutsWhatStandsBetweenClipAndItsEnd) {
  Drawing drawing{100, 100, {}, {}};
  drawing.add(geometry::BeginClip{{{0, 0}, {10, 0}, {10, 10}}});
  drawing.add(geometry::BeginClip{{{0, 0}, {5, 0}, {5, 5}}});
  drawing.add(geometry::Circle{{5, 5}, 5, {Tone::ink}, {}});
  drawing.add(geometry::EndClip{});
  drawing.add(geometry::EndClip{});
  const std::string text = svgText(drawing, {});
  EXPECT_EQ(count(text, "<clipPath "), 2u);
  EXPECT_EQ(count(text, "<g "), 2u);
  EXPECT_EQ(count(text, "</g>"), 2u);
  EXPECT_LT(text.find("url(#clip1)"), text.find("url(#clip2)"));
}

TEST(Svg, RefusesClipsThatDoNotMatch) {
  Drawing open{10, 10, {}, {}}, closed{10, 10, {}, {}};
  open.add(geometry::BeginClip{{{0, 0}, {1, 0}, {1, 1}}});
  closed.add(geometry::EndClip{});
  EXPECT_DEATH(svgText(open, {}), "openClips_");
  EXPECT_DEATH(svgText(closed, {}), "openClips_");
}

TEST(Svg, RefersToNothingOutside) {
  Drawing drawing = oneBox({Tone::grain, Pattern::wave, 1});
  drawing.add(geometry::Text{{0, 0}, "http://example.org"});
  const std::string text = svgText(drawing, {});
  EXPECT_EQ(count(text, "href"), 0u);
  EXPECT_EQ(count(text, "url("), count(text, "url(#"));
}

TEST(Svg, SameDrawingGivesTheSameBytes) {
  const Drawing drawing = oneBox({Tone::grain, Pattern::rising, 0.5});
  EXPECT_EQ(svgText(drawing, {}), svgText(drawing, {}));
}

// ---- Read back by librsvg: rsvg-convert at 96 dpi, as a PPM through ImageMagick.

struct Pixels {
  int width = 0, height = 0;
  std::string bytes;  ///< rgb
  bool isDark(int x, int y) const {
    return static_cast<unsigned char>(bytes.at(std::size_t(3 * (y * width + x)))) < 128;
  }
};

class RenderedSvg : public ::testing::Test {
 protected:
  void SetUp() override {
    if (std::system("command -v rsvg-convert >/dev/null && command -v convert >/dev/null") != 0)
      GTEST_SKIP() << "rsvg-convert or convert is not installed";
  }

  static Pixels rendered(const std::string& svg) {
    const std::string base = ::testing::TempDir() + "wend_svg_" + std::to_string(::getpid());
    std::ofstream(base + ".svg") << svg;
    const std::string command = "rsvg-convert -b white -o " + base + ".png " + base + ".svg && convert " + base +
                                ".png -depth 8 ppm:" + base + ".ppm";
    EXPECT_EQ(std::system(command.c_str()), 0);
    std::ifstream in(base + ".ppm", std::ios::binary);
    std::string magic, rest;
    Pixels pixels;
    int most = 0;
    in >> magic >> pixels.width >> pixels.height >> most;
    in.get();
    std::ostringstream body;
    body << in.rdbuf();
    pixels.bytes = body.str();
    for (const char* ending : {".svg", ".png", ".ppm"}) std::remove((base + ending).c_str());
    EXPECT_EQ(pixels.bytes.size(), std::size_t(3 * pixels.width * pixels.height));
    return pixels;
  }
};

TEST_F(RenderedSvg, HasItsTrueSizeAndPlace) {
  Drawing drawing{192, 96, {}, {}};
  drawing.add(geometry::Box{{48, 24}, 96, 48, 0, {Tone::ink}, {}});
  const Pixels pixels = rendered(svgText(drawing, {}));
  EXPECT_EQ(pixels.width, 192);
  EXPECT_EQ(pixels.height, 96);
  EXPECT_FALSE(pixels.isDark(46, 50));
  EXPECT_TRUE(pixels.isDark(49, 50));
  EXPECT_TRUE(pixels.isDark(142, 50));
  EXPECT_FALSE(pixels.isDark(146, 50));
}

TEST_F(RenderedSvg, HasNotOnePixelMore) {
  for (const double px : {1.0, 7.0, 100.0, 333.0, 560.0, 672.0, 1001.0}) {
    const Pixels pixels = rendered(svgText({px, px + 1, {}, {}}, {}));
    EXPECT_EQ(pixels.width, px);
    EXPECT_EQ(pixels.height, px + 1);
  }
}

TEST_F(RenderedSvg, CutsByTheClip) {
  Drawing drawing{100, 100, {}, {}};
  drawing.add(geometry::BeginClip{{{0, 0}, {50, 0}, {50, 100}, {0, 100}}});
  drawing.add(geometry::Box{{0, 0}, 100, 100, 0, {Tone::ink}, {}});
  drawing.add(geometry::EndClip{});
  const Pixels pixels = rendered(svgText(drawing, {}));
  EXPECT_TRUE(pixels.isDark(47, 50));
  EXPECT_FALSE(pixels.isDark(53, 50));
}

TEST_F(RenderedSvg, InksPatternsAtTheirPitchFromTheOrigin) {
  Drawing drawing{100, 100, {3, 7}, {}};
  drawing.add(geometry::Box{{0, 0}, 100, 100, 0, {Tone::ink, Pattern::dots, 1}, {}});
  const Pixels pixels = rendered(svgText(drawing, {}));
  for (int i = 0; i < 12; ++i) {
    EXPECT_TRUE(pixels.isDark(3 + 2 + 5 * i, 7 + 2 + 5 * i)) << i;  // a dot's centre
    EXPECT_FALSE(pixels.isDark(3 + 5 * i, 7 + 5 * i)) << i;         // where four tiles meet
  }
}

TEST_F(RenderedSvg, HatchesWithoutSeams) {
  Drawing drawing{200, 200, {0, 0}, {}};
  drawing.add(geometry::Box{{0, 0}, 200, 200, 0, {Tone::ink, Pattern::rising, 1}, {}});
  const Pixels pixels = rendered(svgText(drawing, {}));
  // Along one line, 60 degrees up from (20, 180), every pixel is inked.
  const sheets::Tile tile = sheets::tileOf(Pattern::rising);
  for (double y = 10; y < 180; y += 1) {
    const double x = 5 * tile.width + (16 * tile.height - y) / tile.height * tile.width;
    EXPECT_TRUE(pixels.isDark(int(std::floor(x)), int(std::floor(y)))) << y;
  }
}

}  // namespace
}  // namespace wend::exchange
