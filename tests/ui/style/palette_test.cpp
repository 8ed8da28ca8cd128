#include "ui/style/palette.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QSpinBox>
#include <QStyleFactory>
#include <QToolButton>
#include <QVBoxLayout>
#include <QtTest/QTest>

namespace wend::ui {
namespace {

using geometry::Tone;
using sheets::Theme;

constexpr Theme kThemes[] = {Theme::dark, Theme::paper, Theme::torch};

sheets::Rgb rgb(const QColor& colour) {
  return {std::uint8_t(colour.red()), std::uint8_t(colour.green()), std::uint8_t(colour.blue())};
}

TEST(Palette, KeepsTextReadableInEveryRole) {
  for (const Theme theme : kThemes) {
    const QPalette palette = paletteOf(theme);
    const std::pair<QPalette::ColorRole, QPalette::ColorRole> pairs[] = {
        {QPalette::WindowText, QPalette::Window},       {QPalette::Text, QPalette::Base},
        {QPalette::ButtonText, QPalette::Button},       {QPalette::HighlightedText, QPalette::Highlight},
        {QPalette::ToolTipText, QPalette::ToolTipBase}, {QPalette::PlaceholderText, QPalette::Base},
        {QPalette::Text, QPalette::AlternateBase},      {QPalette::Link, QPalette::Window}};
    for (const auto group : {QPalette::Active, QPalette::Inactive, QPalette::Disabled})
      for (const auto& [text, ground] : pairs)
        EXPECT_GE(sheets::contrast(rgb(palette.color(group, text)), rgb(palette.color(group, ground))), 4.5)
            << int(theme) << " " << int(group) << " " << int(text);
  }
}

TEST(StyleSheet, NamesEveryColour) {
  const QRegularExpression colour(QStringLiteral("#[0-9a-f]{6}\\b"));
  for (const Theme theme : kThemes) {
    const QString sheet = styleSheetOf(theme);
    EXPECT_FALSE(sheet.contains(QLatin1Char('@')));
    EXPECT_GT(sheet.count(colour), 30);
    EXPECT_FALSE(sheet.contains(QStringLiteral("gradient")));
  }
  EXPECT_NE(styleSheetOf(Theme::dark), styleSheetOf(Theme::torch));
}

/// A column of plain widgets in one theme.
class StyledWidgets : public ::testing::TestWithParam<Theme> {
 protected:
  StyledWidgets() {
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    form.setPalette(paletteOf(GetParam()));
    form.setStyleSheet(styleSheetOf(GetParam()));
    auto* column = new QVBoxLayout(&form);
    for (QWidget* widget : std::initializer_list<QWidget*>{&field, &spin, &combo, &button, &tool}) {
      column->addWidget(widget);
      widget->setFocusPolicy(Qt::StrongFocus);
    }
    combo.addItem(QStringLiteral("metres"));
    button.setText(QStringLiteral("Sheets"));
    tool.setText(QStringLiteral("x"));
    form.resize(240, 320);
    form.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&form));
  }
  ~StyledWidgets() override {
    for (QWidget* widget : std::initializer_list<QWidget*>{&field, &spin, &combo, &button, &tool})
      widget->setParent(nullptr);
  }
  QColor pixel(QWidget& widget, int x, int y) { return widget.grab().toImage().pixelColor(x, y); }

  QWidget form;
  QLineEdit field;
  QSpinBox spin;
  QComboBox combo;
  QPushButton button;
  QToolButton tool;
};

TEST_P(StyledWidgets, AreLargeEnoughToHit) {
  for (QWidget* widget : std::initializer_list<QWidget*>{&button, &tool}) {
    EXPECT_GE(widget->height(), 32);
    EXPECT_GE(widget->width(), 32);
  }
  for (QWidget* widget : std::initializer_list<QWidget*>{&field, &spin, &combo}) EXPECT_GE(widget->height(), 28);
}

TEST_P(StyledWidgets, HaveFieldsInTheFieldColourInAFrame) {
  button.setFocus();
  EXPECT_EQ(pixel(field, field.width() / 2, 5), colourOf(Tone::field, GetParam()));
  EXPECT_EQ(pixel(field, field.width() / 2, 0), colourOf(Tone::line2, GetParam()));
}

TEST_P(StyledWidgets, ShowTheFocusInARingTwoPxWide) {
  for (QWidget* widget : std::initializer_list<QWidget*>{&field, &spin, &combo, &button, &tool}) {
    const QSize before = widget->size();
    widget->setFocus();
    ASSERT_TRUE(widget->hasFocus());
    for (const int y : {0, 1})
      EXPECT_EQ(pixel(*widget, widget->width() / 2, y), colourOf(Tone::ink, GetParam()))
          << widget->metaObject()->className() << y;
    EXPECT_EQ(widget->size(), before);
  }
}

INSTANTIATE_TEST_SUITE_P(Themes, StyledWidgets, ::testing::ValuesIn(kThemes));

}  // namespace
}  // namespace wend::ui
