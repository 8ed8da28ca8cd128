#include "ui/style/palette.h"

namespace wend::ui {
namespace {

using geometry::Tone;
using sheets::Theme;

constexpr char kSheet[] = R"(
QWidget { color: @ink; }
QLabel { background: transparent; }
QToolTip { background: @raise; color: @ink; border: 1px solid @line2; padding: 4px; }
QLineEdit, QAbstractSpinBox, QComboBox, QPlainTextEdit, QTextEdit {
  background: @field; color: @ink; border: 1px solid @line2; border-radius: 4px; padding: 0 8px;
  min-height: 26px; selection-background-color: @ink; selection-color: @page; }
QPlainTextEdit, QTextEdit { padding: 4px 8px; }
QLineEdit:focus, QAbstractSpinBox:focus, QComboBox:focus, QPlainTextEdit:focus, QTextEdit:focus {
  border: 2px solid @ink; padding: 0 7px; }
QLineEdit:disabled, QAbstractSpinBox:disabled, QComboBox:disabled { color: @ink3; border-color: @line; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { width: 0; border: none; }
QComboBox::drop-down { border: none; width: 24px; }
QComboBox::down-arrow { width: 0; height: 0; border-left: 4px solid @field; border-right: 4px solid @field;
  border-top: 5px solid @ink2; }
QComboBox QAbstractItemView { background: @panel; color: @ink; border: 1px solid @line2;
  selection-background-color: @raise; selection-color: @ink; }
QPushButton, QToolButton {
  background: @raise; color: @ink; border: 1px solid @raise; border-radius: 4px; padding: 0 11px; min-height: 30px; }
QToolButton { padding: 0 7px; min-width: 16px; }
QPushButton:hover, QToolButton:hover { border-color: @line2; }
QPushButton:focus, QToolButton:focus { border: 2px solid @ink; padding: 0 10px; min-height: 28px; }
QToolButton:focus { padding: 0 6px; }
QPushButton:checked, QToolButton:checked, QPushButton:default, QPushButton:pressed, QToolButton:pressed {
  background: @ink; color: @page; border-color: @ink; }
QPushButton:checked:focus, QToolButton:checked:focus, QPushButton:default:focus { border: 2px solid @ink3; }
QPushButton:disabled, QToolButton:disabled { color: @ink3; background: @panel; border-color: @line; }
QCheckBox, QRadioButton { spacing: 8px; min-height: 32px; }
QCheckBox:focus, QRadioButton:focus { border: 2px solid @ink; border-radius: 4px; }
QMenuBar { background: @panel; min-height: 32px; }
QMenuBar::item { padding: 8px 12px; background: transparent; }
QMenuBar::item:selected { background: @raise; }
QMenu { background: @panel; border: 1px solid @line2; padding: 4px; }
QMenu::item { padding: 8px 24px; }
QMenu::item:selected { background: @ink; color: @page; }
QMenu::item:disabled { color: @ink3; }
QMenu::separator { height: 1px; background: @line; margin: 4px 8px; }
QListView, QTreeView, QTableView { background: @field; border: 1px solid @line2; border-radius: 4px; outline: none; }
QListView::item:selected, QTreeView::item:selected, QTableView::item:selected { background: @ink; color: @page; }
QListView:focus, QTreeView:focus, QTableView:focus { border: 2px solid @ink; }
QHeaderView::section { background: @panel; color: @ink2; border: none; border-bottom: 1px solid @line; padding: 8px; }
QScrollBar:vertical { background: @panel; width: 12px; margin: 0; }
QScrollBar:horizontal { background: @panel; height: 12px; margin: 0; }
QScrollBar::handle { background: @line2; border-radius: 4px; min-width: 32px; min-height: 32px; margin: 2px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: none; }
QSplitter::handle { background: @line; }
QTabBar::tab { background: @panel; color: @ink2; padding: 8px 16px; border: none; border-bottom: 2px solid @panel; }
QTabBar::tab:selected { color: @ink; border-bottom-color: @ink; }
QProgressBar { background: @field; border: 1px solid @line2; border-radius: 2px; text-align: center; }
QProgressBar::chunk { background: @ink2; }
)";

struct Name {
  const char* word;
  Tone tone;
};

/// Longer words first: "@ink2" before "@ink".
constexpr Name kNames[] = {
    {"@window", Tone::window}, {"@panel", Tone::panel}, {"@raise", Tone::raise}, {"@field", Tone::field},
    {"@line2", Tone::line2},   {"@line", Tone::line},   {"@ink2", Tone::ink2},   {"@ink3", Tone::ink3},
    {"@page", Tone::page},     {"@ink", Tone::ink},
};

}  // namespace

QColor colourOf(Tone tone, Theme theme) {
  return tone == Tone::none ? QColor(Qt::transparent) : colourOf(sheets::rgbOf(tone, theme));
}

QPalette paletteOf(Theme theme) {
  const auto colour = [theme](Tone tone) { return colourOf(tone, theme); };
  QPalette palette(colour(Tone::ink), colour(Tone::raise), colour(Tone::line2), colour(Tone::line), colour(Tone::line2),
                   colour(Tone::ink), colour(Tone::ink), colour(Tone::field), colour(Tone::panel));
  palette.setColor(QPalette::AlternateBase, colour(Tone::panel));
  palette.setColor(QPalette::Highlight, colour(Tone::ink));
  palette.setColor(QPalette::HighlightedText, colour(Tone::page));
  palette.setColor(QPalette::ToolTipBase, colour(Tone::raise));
  palette.setColor(QPalette::ToolTipText, colour(Tone::ink));
  palette.setColor(QPalette::PlaceholderText, colour(Tone::ink3));
  palette.setColor(QPalette::Link, colour(Tone::ink));
  palette.setColor(QPalette::LinkVisited, colour(Tone::ink2));
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, colour(Tone::ink3));
  return palette;
}

QString styleSheetOf(Theme theme) {
  QString sheet = QString::fromLatin1(kSheet);
  for (const Name& name : kNames) sheet.replace(QLatin1String(name.word), colourOf(name.tone, theme).name());
  return sheet;
}

}  // namespace wend::ui
