/// The icons of Wend, in any tone and at any device ratio.
#pragma once

#include <QIcon>
#include <QPixmap>
#include <QString>
#include <QStringList>

#include "core/sheets/theme.h"

namespace wend::ui {

/// File names of resources/icons without their ending, in order.
QStringList iconNames();

/// The icon of that name, `px` wide, drawn at the ratio's resolution in the tone's colour.
/// Requires  the name is one of iconNames, px and ratio > 0
QPixmap iconPixmap(const QString& name, QColor colour, int px, double ratio);

/// For buttons and menus: ink, the page's colour while chosen, ink3 while disabled.
/// Ensures   (1) sharp at each device ratio: drawn when asked for
QIcon iconOf(const QString& name, sheets::Theme theme);

}  // namespace wend::ui
