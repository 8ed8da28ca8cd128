/// Qt's colours for the tones of a theme, and how plain Qt widgets are made to look like the rest of Wend.
#pragma once

#include <QColor>
#include <QPalette>
#include <QString>

#include "core/sheets/theme.h"

namespace wend::ui {

/// Transparent for Tone::none. Requires tone is not onPerformer.
QColor colourOf(geometry::Tone tone, sheets::Theme theme);
inline QColor colourOf(sheets::Rgb rgb) {
  return QColor(rgb.red, rgb.green, rgb.blue);
}

/// For the Fusion style.
QPalette paletteOf(sheets::Theme theme);

/// Style sheet of the application: fields with a radius of 4 on the field colour, targets of 32 px, a focus ring 2 px
/// wide, no shadow, no gradient.
QString styleSheetOf(sheets::Theme theme);

}  // namespace wend::ui
