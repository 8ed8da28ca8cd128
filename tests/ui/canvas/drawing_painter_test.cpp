#include "ui/canvas/drawing_painter.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QPainterPath>
#include <QPdfWriter>
#include <cmath>

#include "tests/ui/canvas/gallery.h"
#include "ui/style/palette.h"

namespace wend::ui {
namespace {

using geometry::Drawing;
using geometry::Pattern;
using geometry::Tone;
using sheets::Theme;

constexpr Pattern kPatterns[] = {Pattern::dots,      Pattern::quincunx,  Pattern::sparse,     Pattern::wave,
                                 Pattern::hatchWall, Pattern::hatchTall, Pattern::hatchCover, Pattern::seen,
                                 Pattern::ticks,     Pattern::rising,    Pattern::falling};

QColor at(const QImage& image, int x, int y) {
  return image.pixelColor(x, y);
}

Drawing filled(Pattern pattern, geometry::Point origin = {}) {
  Drawing drawing{64, 64, origin, {}};
  drawing.add(geometry::Box{{0, 0}, 64, 64, 0, {Tone::ink, pattern, 1}, {}});
  return drawing;
}

/// Share of the image that is inked, black ink on a white ground.
double inkShare(const QImage& image) {
  double sum = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) sum += 1 - qGray(image.pixel(x, y)) / 255.0;
  return sum / image.width() / image.height();
}

/// The largest difference of any channel.
int difference(const QImage& a, const QImage& b) {
  EXPECT_EQ(a.size(), b.size());
  int most = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x) {
      const QRgb p = a.pixel(x, y), q = b.pixel(x, y);
      most = std::max({most, std::abs(qRed(p) - qRed(q)), std::abs(qGreen(p) - qGreen(q)),
                       std::abs(qBlue(p) - qBlue(q)), std::abs(qAlpha(p) - qAlpha(q))});
    }
  return most;
}

TEST(DrawingPainter, GivesTonesTheThemesColours) {
  Drawing drawing{30, 10, {}, {}};
  drawing.add(geometry::Box{{0, 0}, 10, 10, 0, {Tone::performerB}, {}});
  drawing.add(geometry::Box{{10, 0}, 10, 10, 0, {Tone::ink, Pattern::plain, 0.5}, {}});
  for (const Theme theme : {Theme::dark, Theme::paper, Theme::torch}) {
    const QImage image = imageOf(drawing, theme);
    EXPECT_EQ(at(image, 5, 5), colourOf(Tone::performerB, theme));
    EXPECT_EQ(at(image, 25, 5), colourOf(Tone::page, theme));
    const int half = (colourOf(Tone::ink, theme).red() + colourOf(Tone::page, theme).red()) / 2;
    EXPECT_NEAR(at(image, 15, 5).red(), half, 2);
  }
}

TEST(DrawingPainter, FillsRingsEvenOdd) {
  Drawing drawing{40, 40, {}, {}};
  drawing.add(geometry::Path{
      {{{0, 0}, {40, 0}, {40, 40}, {0, 40}}, {{10, 10}, {30, 10}, {30, 30}, {10, 30}}}, true, {Tone::ink}, {}});
  const QImage image = imageOf(drawing, Theme::dark);
  EXPECT_EQ(at(image, 5, 5), colourOf(Tone::ink, Theme::dark));
  EXPECT_EQ(at(image, 20, 20), colourOf(Tone::page, Theme::dark));
}

TEST(DrawingPainter, ClipsUntilTheMatchingEnd) {
  Drawing drawing{40, 40, {}, {}};
  drawing.add(geometry::BeginClip{{{0, 0}, {20, 0}, {20, 40}, {0, 40}}});
  drawing.add(geometry::BeginClip{{{0, 0}, {40, 0}, {40, 20}, {0, 20}}});
  drawing.add(geometry::Box{{0, 0}, 40, 40, 0, {Tone::ink}, {}});
  drawing.add(geometry::EndClip{});
  drawing.add(geometry::EndClip{});
  drawing.add(geometry::Box{{30, 30}, 10, 10, 0, {Tone::crew}, {}});
  const QImage image = imageOf(drawing, Theme::dark);
  EXPECT_EQ(at(image, 10, 10), colourOf(Tone::ink, Theme::dark));
  EXPECT_EQ(at(image, 30, 10), colourOf(Tone::page, Theme::dark));
  EXPECT_EQ(at(image, 10, 30), colourOf(Tone::page, Theme::dark));
  EXPECT_EQ(at(image, 35, 35), colourOf(Tone::crew, Theme::dark));
}

TEST(DrawingPainter, RefusesClipsThatDoNotMatch) {
  Drawing open{10, 10, {}, {}};
  open.add(geometry::BeginClip{{{0, 0}, {1, 0}, {1, 1}}});
  EXPECT_DEATH(imageOf(open, Theme::dark), "openClips_");
}

TEST(DrawingPainter, LeavesThePainterAsItWas) {
  QImage image(100, 100, QImage::Format_ARGB32_Premultiplied);
  QPainter painter(&image);
  painter.translate(3, 4);
  const QTransform before = painter.transform();
  const QPen pen = painter.pen();
  DrawingPainter(Theme::dark).paint(painter, gallery());
  EXPECT_EQ(painter.transform(), before);
  EXPECT_EQ(painter.pen(), pen);
  EXPECT_FALSE(painter.hasClipping());
  EXPECT_DOUBLE_EQ(painter.opacity(), 1);
  EXPECT_FALSE(painter.testRenderHint(QPainter::Antialiasing));
}

TEST(DrawingPattern, StartsAtTheOriginAndDoesNotSwim) {
  for (const Pattern pattern : kPatterns) {
    const QImage still = imageOf(filled(pattern), Theme::paper);
    const QImage moved = imageOf(filled(pattern, {7, 3}), Theme::paper);
    EXPECT_EQ(difference(moved.copy(7, 3, 57, 61), still.copy(0, 0, 57, 61)), 0) << int(pattern);
  }
}

TEST(DrawingPattern, KeepsItsPitchWhenThePlanIsZoomed) {
  // A zoom moves the shape's corners, not the marks: a larger box holds the same marks where the smaller one had them.
  Drawing large{64, 64, {}, {}};
  large.add(geometry::Box{{-100, -100}, 300, 300, 0, {Tone::ink, Pattern::quincunx, 1}, {}});
  EXPECT_EQ(difference(imageOf(large, Theme::paper), imageOf(filled(Pattern::quincunx), Theme::paper)), 0);
}

TEST(DrawingPattern, InksTheSameShareAtEveryRatio) {
  for (const Pattern pattern : kPatterns) {
    const double once = inkShare(imageOf(filled(pattern), Theme::paper));
    for (const double ratio : {1.25, 1.5, 2.0, 3.0})
      EXPECT_NEAR(inkShare(imageOf(filled(pattern), Theme::paper, ratio)) / once, 1, 0.06)
          << int(pattern) << " " << ratio;
  }
}

TEST(DrawingPattern, IsDrawnAtTheDevicesResolution) {
  // Ticks of 1 px every 4 px at ratio 2: two device pixels of ink, six of paper, nothing between.
  const QImage image = imageOf(filled(Pattern::ticks), Theme::paper, 2);
  const QColor ink = colourOf(Tone::ink, Theme::paper), page = colourOf(Tone::page, Theme::paper);
  for (int x = 0; x < 128; ++x) EXPECT_EQ(at(image, x, 17), x % 8 < 2 ? ink : page) << x;
}

TEST(DrawingPattern, LooksAlikeAsTextureAndAsVectors) {
  for (const Pattern pattern : kPatterns) {
    const QImage texture = imageOf(filled(pattern), Theme::paper, 2);
    QImage vectors(128, 128, QImage::Format_ARGB32_Premultiplied);
    vectors.fill(colourOf(Tone::page, Theme::paper));
    QPainter painter(&vectors);
    painter.scale(2, 2);
    DrawingPainter(Theme::paper, sheets::Unit::px, PatternsAs::vectors).paint(painter, filled(pattern));
    painter.end();
    EXPECT_NEAR(inkShare(vectors), inkShare(texture), 0.02) << int(pattern);
    // A texture holds whole pixels, so its pitch is off by up to 0.2 %: compared near the origin, before that adds up.
    const QRect near(0, 0, 40, 40);
    EXPECT_LT(difference(vectors.copy(near), texture.copy(near)), 96) << int(pattern);
  }
}

TEST(DrawingPattern, KeepsItsPitchOnPaperInMillimetres) {
  Drawing mm{16, 16, {}, {}};
  mm.add(geometry::Box{{0, 0}, 16, 16, 0, {Tone::ink, Pattern::dots, 1}, {}});
  const QImage image = imageOf(mm, Theme::paper, 1, Tone::page, sheets::Unit::mm);
  EXPECT_EQ(image.width(), 61);  // 16 mm at 96 px to the inch
  EXPECT_EQ(difference(image.copy(0, 0, 60, 60), imageOf(filled(Pattern::dots), Theme::paper).copy(0, 0, 60, 60)), 0);
}

/// A wave of `count` points, whose length does not depend on their number.
std::vector<geometry::Point> wave(int count) {
  std::vector<geometry::Point> points;
  for (int i = 0; i < count; ++i) {
    const double x = 180.0 * i / (count - 1);
    points.push_back({10 + x, 50 + 30 * std::sin(x / 20)});
  }
  return points;
}

Drawing lineOf(const std::vector<geometry::Point>& points, bool closed, std::vector<double> dash) {
  Drawing drawing{200, 100, {}, {}};
  drawing.add(geometry::Path{{points}, closed, {}, {Tone::ink, 2.4, std::move(dash), geometry::Cap::flat}});
  return drawing;
}

// One piece is what a line is drawn as when its strength is a hair under one.
TEST(DrawingLine, LooksTheSameInOneAndInManyPieces) {
  for (const bool closed : {false, true}) {
    const Drawing pieces = lineOf(wave(400), closed, {});
    Drawing whole = pieces;
    std::get<geometry::Path>(whole.shapes[0]).stroke.strength = 0.9999;
    EXPECT_LT(difference(imageOf(pieces, Theme::paper), imageOf(whole, Theme::paper)), 80)
        << closed;  // a gap would be 200
  }
}

TEST(DrawingLine, CarriesItsDashesFromPieceToPiece) {
  const Drawing pieces = lineOf(wave(400), false, {6, 4});
  Drawing whole = pieces;
  std::get<geometry::Path>(whole.shapes[0]).stroke.strength = 0.9999;
  EXPECT_LT(difference(imageOf(pieces, Theme::paper), imageOf(whole, Theme::paper)), 80);
  const double blank = inkShare(imageOf({200, 100, {}, {}}, Theme::paper));
  const double dashed = inkShare(imageOf(pieces, Theme::paper)) - blank;
  EXPECT_NEAR(dashed / (inkShare(imageOf(lineOf(wave(400), false, {}), Theme::paper)) - blank), 0.6, 0.05);
}

TEST(DrawingText, StandsWhereItsAlignmentSays) {
  const auto inkedColumns = [](geometry::Align align) {
    Drawing drawing{200, 40, {}, {}};
    drawing.add(geometry::Text{{100, 25}, "HIH", 18, true, align, Tone::ink});
    const QImage image = imageOf(drawing, Theme::paper);
    int first = -1, last = -1;
    for (int x = 0; x < 200; ++x)
      for (int y = 0; y < 40; ++y)
        if (qGray(image.pixel(x, y)) < 128) first = first < 0 ? x : first, last = x;
    return std::pair(first, last);
  };
  const double width = textWidth("HIH", 18, true);
  EXPECT_NEAR(inkedColumns(geometry::Align::left).first, 100, 3);
  EXPECT_NEAR(inkedColumns(geometry::Align::right).second, 100, 3);
  const auto [first, last] = inkedColumns(geometry::Align::centre);
  EXPECT_NEAR((first + last) / 2.0, 100, 1.5);
  EXPECT_NEAR(last - first, width, 5);
}

TEST(DrawingText, WidthGrowsWithItsSizeAlsoBetweenWholePx) {
  const double ten = textWidth("2.80 m", 10);
  EXPECT_NEAR(textWidth("2.80 m", 20), 2 * ten, 0.02 * ten);
  EXPECT_NEAR(textWidth("2.80 m", 3.5), 0.35 * ten, 0.02 * ten);
}

TEST(DrawingText, HaloHidesWhatIsBehind) {
  Drawing drawing{60, 30, {}, {}};
  drawing.add(geometry::Box{{0, 0}, 60, 30, 0, {Tone::grain}, {}});
  drawing.add(geometry::Text{{30, 20}, "I", 14, false, geometry::Align::centre, Tone::ink, Tone::page});
  const QImage image = imageOf(drawing, Theme::dark);
  bool page = false;
  for (int x = 0; x < 60; ++x) page = page || at(image, x, 15) == colourOf(Tone::page, Theme::dark);
  EXPECT_TRUE(page);
  EXPECT_EQ(at(image, 5, 15), colourOf(Tone::grain, Theme::dark));
}

TEST(DrawingText, LettersInPerformersTakeTheContrastingTone) {
  const auto darkest = [](Tone performer) {
    Drawing drawing{40, 40, {}, {}};
    drawing.add(geometry::Box{{0, 0}, 40, 40, 0, {performer}, {}});
    drawing.add(geometry::Text{{20, 32}, "I", 36, true, geometry::Align::centre, Tone::onPerformer});
    return at(imageOf(drawing, Theme::paper), 20, 20);
  };
  EXPECT_EQ(darkest(Tone::performerA), QColor(0x11, 0x14, 0x17));
  EXPECT_EQ(darkest(Tone::performerC), QColor(0xFF, 0xFF, 0xFF));
}

TEST(DrawingImage, HasItsTrueSizeAtEveryRatio) {
  const Drawing drawing{100, 50, {}, {}};
  const QImage image = imageOf(drawing, Theme::paper, 1.5);
  EXPECT_EQ(image.size(), QSize(150, 75));
  EXPECT_EQ(image.dotsPerMeterX(), 5669);  // 144 px to the inch
  EXPECT_EQ(at(image, 149, 74), colourOf(Tone::page, Theme::paper));
  EXPECT_EQ(imageOf(drawing, Theme::paper, 1, Tone::none).pixelColor(5, 5).alpha(), 0);
}

TEST(DrawingOnPaper, PrintsPatternsAsVectorsAndTextAsText) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setResolution(2540);
    QPainter painter(&writer);
    painter.scale(writer.logicalDpiX() / 96.0, writer.logicalDpiY() / 96.0);
    DrawingPainter(Theme::paper, sheets::Unit::px, PatternsAs::vectors).paint(painter, gallery());
  }
  EXPECT_FALSE(buffer.data().contains("/Subtype /Image"));
  EXPECT_TRUE(buffer.data().contains("B612"));
}

// The gallery in three themes and at two ratios. WEND_GALLERY=folder keeps the pictures for eyes.
TEST(Gallery, PaintsTheSameTwiceAndDiffersBetweenThemes) {
  const QByteArray folder = qgetenv("WEND_GALLERY");
  const std::pair<Theme, const char*> themes[] = {
      {Theme::dark, "dark"}, {Theme::paper, "paper"}, {Theme::torch, "torch"}};
  QImage last;
  for (const auto& [theme, name] : themes)
    for (const int ratio : {1, 2}) {
      const QImage image = imageOf(gallery(), theme, ratio);
      EXPECT_EQ(difference(image, imageOf(gallery(), theme, ratio)), 0);
      if (ratio == 1) {
        if (!last.isNull()) {
          EXPECT_GT(difference(image, last), 64);
        }
        last = image;
      }
      if (folder.isEmpty()) continue;
      const QString file =
          QStringLiteral("%1/gallery-%2-%3x.png").arg(QString::fromLocal8Bit(folder), QLatin1String(name)).arg(ratio);
      EXPECT_TRUE(image.save(file));
    }
}

}  // namespace
}  // namespace wend::ui
