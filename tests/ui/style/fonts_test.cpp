#include "ui/style/fonts.h"

#include <gtest/gtest.h>

#include <QFontInfo>
#include <QFontMetricsF>
#include <QImage>
#include <QPainter>

namespace wend::ui {
namespace {

double advance(const QFont& font, const char* text) {
  return QFontMetricsF(font).horizontalAdvance(QString::fromUtf8(text));
}

class Typeface : public ::testing::TestWithParam<bool> {
 protected:
  void SetUp() override {
    if (!missingFontWarning().isEmpty()) GTEST_SKIP() << qPrintable(missingFontWarning());
  }
};

TEST_P(Typeface, IsB612InTheWeightAskedFor) {
  const QFontInfo info(fontOf(14, GetParam()));
  EXPECT_EQ(info.pixelSize(), 14);
  EXPECT_EQ(info.bold(), GetParam());
}

TEST_P(Typeface, HasDigitsOfOneWidth) {
  const double zero = advance(fontOf(28, GetParam()), "0");
  for (const char* digit : {"1", "2", "3", "4", "5", "6", "7", "8", "9"})
    EXPECT_NEAR(advance(fontOf(28, GetParam()), digit), zero, 1e-6) << digit;
}

// The Mono cut of B612 gives itself the same family name.
TEST_P(Typeface, IsNotTheMonospacedCut) {
  EXPECT_LT(advance(fontOf(28, GetParam()), "i"), 0.7 * advance(fontOf(28, GetParam()), "m"));
}

TEST_P(Typeface, HasTheSignsOfTheTrade) {
  const QFontMetrics metrics(fontOf(14, GetParam()));
  for (const char32_t sign : {U'\u2153', U'\u2154', U'\u2032', U'\u2033', U'\u2212', U'\u221E', U'\u2192', U'\u00B1'})
    EXPECT_TRUE(metrics.inFontUcs4(sign)) << std::hex << std::uint32_t(sign);
}

double inkOf(bool bold) {
  QImage image(200, 140, QImage::Format_Grayscale8);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setFont(fontOf(100, bold));
  painter.drawText(20, 110, QStringLiteral("n"));
  painter.end();
  double ink = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) ink += 1 - qGray(image.pixel(x, y)) / 255.0;
  return ink;
}

// Areas of an "n" 100 px high as ImageMagick draws it from each cut's file: 1186 and 1903 px.
TEST(TypefaceWeights, AreTheTwoCutsAndNotOneMadeFat) {
  if (!missingFontWarning().isEmpty()) GTEST_SKIP() << qPrintable(missingFontWarning());
  EXPECT_NEAR(inkOf(false), 1186, 12);
  EXPECT_NEAR(inkOf(true), 1903, 19);
}

INSTANTIATE_TEST_SUITE_P(Weights, Typeface, ::testing::Bool());

}  // namespace
}  // namespace wend::ui
