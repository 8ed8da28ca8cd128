#include "ui/style/icons.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "ui/style/palette.h"

namespace wend::ui {
namespace {

using sheets::Theme;

double coverage(const QPixmap& pixmap) {
  const QImage image = pixmap.toImage();
  double sum = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) sum += qAlpha(image.pixel(x, y)) / 255.0;
  return sum / image.width() / image.height();
}

TEST(Icons, AreThereByName) {
  for (const char* name : {"camera", "performer", "crew", "snag", "run-through", "sheet"})
    EXPECT_TRUE(iconNames().contains(QLatin1String(name))) << name;
}

TEST(Icons, AreAllDrawnInTheColourAskedFor) {
  const QColor ink(12, 200, 34);
  for (const QString& name : iconNames()) {
    const QImage image = iconPixmap(name, ink, 24, 2).toImage();
    int inked = 0;
    for (int y = 0; y < image.height(); ++y)
      for (int x = 0; x < image.width(); ++x) {
        const QColor pixel = image.pixelColor(x, y);
        if (pixel.alpha() < 255) continue;
        ++inked;
        EXPECT_EQ(pixel, ink) << qPrintable(name);
      }
    EXPECT_GT(inked, 20) << qPrintable(name);
  }
}

TEST(Icons, AreDrawnAtTheDevicesResolution) {
  for (const double ratio : {1.0, 1.5, 2.0}) {
    const QPixmap pixmap = iconPixmap(QStringLiteral("snag"), Qt::white, 24, ratio);
    EXPECT_EQ(pixmap.width(), int(24 * ratio));
    EXPECT_DOUBLE_EQ(pixmap.devicePixelRatio(), ratio);
    EXPECT_NEAR(coverage(pixmap), coverage(iconPixmap(QStringLiteral("snag"), Qt::white, 24, 4)), 0.02);
  }
}

TEST(Icons, TellTheStateOfAButton) {
  const QIcon icon = iconOf(QStringLiteral("camera"), Theme::dark);
  const auto strongest = [&](QIcon::Mode mode, QIcon::State state) {
    const QImage image = icon.pixmap(QSize(48, 48), mode, state).toImage();
    QColor best(0, 0, 0, 0);
    for (int y = 0; y < 48; ++y)
      for (int x = 0; x < 48; ++x)
        if (image.pixelColor(x, y).alpha() > best.alpha()) best = image.pixelColor(x, y);
    return best;
  };
  EXPECT_EQ(strongest(QIcon::Normal, QIcon::Off), colourOf(geometry::Tone::ink, Theme::dark));
  EXPECT_EQ(strongest(QIcon::Normal, QIcon::On), colourOf(geometry::Tone::page, Theme::dark));
  EXPECT_EQ(strongest(QIcon::Disabled, QIcon::Off), colourOf(geometry::Tone::ink3, Theme::dark));
}

}  // namespace
}  // namespace wend::ui
