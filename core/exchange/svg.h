/// A drawing as SVG 1.1 text for browsers, print shops and editors.
///
/// Frame     as geometry::Drawing; the picture's size is written in millimetres, so that it prints at its true size
///           wherever it is opened.
/// Requires  every coordinate finite, every text UTF-8, every BeginClip closed by an EndClip
/// Ensures   (1) width and height are in mm to a thousandth, 96 px to the inch when a unit is a px
///           (2) text stays text: B612, or a plain face where it is missing
///           (3) a pattern is defined once per tone and anchored at the drawing's patternOrigin
///           (4) nothing outside the file is referred to
///           (5) same drawing, same bytes; coordinates in thousandths of a unit
/// Source    W3C, Scalable Vector Graphics 1.1 (Second Edition); a halo needs paint-order of SVG 2, and a reader
///           without it draws the halo over its text
#pragma once

#include <string>

#include "core/geometry/drawing.h"
#include "core/sheets/theme.h"

namespace wend::exchange {

struct SvgStyle {
  sheets::Theme theme = sheets::Theme::paper;
  sheets::Unit unit = sheets::Unit::px;
  std::string title;                             ///< read out by screen readers; may be empty
  geometry::Tone ground = geometry::Tone::none;  ///< fills the picture first, when not none
};

std::string svgText(const geometry::Drawing& drawing, const SvgStyle& style);

}  // namespace wend::exchange
