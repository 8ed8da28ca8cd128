/// Paints a drawing list with QPainter: on a widget, into an image, on a printer.
///
/// Ensures   (1) tones take the theme's colours
///           (2) patterns keep their pitch in px whatever the painter's scale, start at the drawing's patternOrigin to
///               the nearest device pixel, and are drawn at device resolution
///           (3) the painter's state is as it was before
/// Cost      each pattern of a tone is drawn once per device scale and kept; a text with a halo costs nine texts; long
///           wide lines are drawn in pieces, which the raster engine fills many times faster than one piece. Callers
///           still keep finished layers as pixmaps
#pragma once

#include <QHash>
#include <QImage>
#include <QPainter>
#include <QPixmap>
#include <string>

#include "core/geometry/drawing.h"
#include "core/sheets/theme.h"

namespace wend::ui {

/// Textures are fast and crisp on a screen; vectors stay sharp at a printer's resolution.
enum class PatternsAs { textures, vectors };

class DrawingPainter {
 public:
  explicit DrawingPainter(sheets::Theme theme, sheets::Unit unit = sheets::Unit::px,
                          PatternsAs patternsAs = PatternsAs::textures)
      : theme_(theme), unit_(unit), patternsAs_(patternsAs) {}

  sheets::Theme theme() const { return theme_; }
  void setTheme(sheets::Theme theme) { theme_ = theme; }

  /// Paints at the painter's present transform: one unit of the drawing is one of the painter's.
  void paint(QPainter& painter, const geometry::Drawing& drawing);

 private:
  friend class DrawingPass;
  const QPixmap& texture(geometry::Pattern pattern, sheets::Rgb colour, double devicePxPerPx);

  sheets::Theme theme_;
  sheets::Unit unit_;
  PatternsAs patternsAs_;
  QHash<quint64, QPixmap> textures_;
};

/// The drawing on a ground of that tone (none: transparent), `ratio` device pixels to a px. A drawing in mm is shown at
/// 96 px to the inch. Requires ratio > 0 and an image of at most 32767 device pixels a side.
QImage imageOf(const geometry::Drawing& drawing, sheets::Theme theme, double ratio = 1,
               geometry::Tone ground = geometry::Tone::page, sheets::Unit unit = sheets::Unit::px);

/// Width of a text as drawings are painted, px. Requires px > 0.
double textWidth(const std::string& text, double px, bool bold = false);

}  // namespace wend::ui
