/// The drawing list: what a picture of Wend is made of, before it meets a screen, a PNG, an SVG or a printer.
///
/// Frame     picture units, x right, y DOWN; one unit is one px at 96 dpi (or one mm, when the maker says so).
/// Ensures   a shape names what it means (a Tone), never a colour: the theme of the moment supplies that.
/// Tests     tests/ui/canvas/drawing_painter_test.cpp
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/geometry/point.h"

namespace wend::geometry {

/// What a line or an area means; sheets/theme.h gives each its colour on dark, paper and torch.
enum class Tone {
  none,
  window,
  page,
  panel,
  raise,
  field,
  line,
  line2,
  ink,
  ink2,
  ink3,
  lens,
  performerA,
  performerB,
  performerC,
  performerD,
  crew,
  sharp,
  wall,
  hatch,
  edge,
  lit,
  grain,
  onPerformer,  ///< letter inside a performer's shape: the one of black and white that contrasts more
};

/// Fills told by shape, so that a picture loses nothing in black and white. Anchored at Drawing::patternOrigin.
enum class Pattern {
  plain,
  dots,
  quincunx,
  sparse,
  wave,
  hatchWall,
  hatchTall,
  hatchCover,
  seen,
  ticks,
  rising,
  falling
};

enum class Cap { round, flat };
enum class Align { left, centre, right };

struct Stroke {
  Tone tone = Tone::none;
  double width = 1;
  std::vector<double> dash;  ///< lengths on, off, ...; empty is solid
  Cap cap = Cap::round;
  double strength = 1;  ///< opacity, 0 to 1
};

struct Fill {
  Tone tone = Tone::none;
  Pattern pattern = Pattern::plain;  ///< with a pattern, `tone` is the colour of its marks on nothing
  double strength = 1;
};

/// One or more rings or polylines, filled even-odd, then stroked.
struct Path {
  std::vector<std::vector<Point>> rings;
  bool closed = false;
  Fill fill;
  Stroke stroke;
};

struct Circle {
  Point centre;
  double radius = 0;
  Fill fill;
  Stroke stroke;
};

/// An axis-aligned box with rounded corners.
struct Box {
  Point topLeft;
  double width = 0, height = 0, radius = 0;
  Fill fill;
  Stroke stroke;
};

/// One line of text. `at` is the baseline's start, middle or end.
struct Text {
  Point at;
  std::string text;  ///< UTF-8
  double size = 12;
  bool bold = false;
  Align align = Align::left;
  Tone tone = Tone::ink;
  Tone halo = Tone::none;  ///< drawn 3 wide behind the text
  double turned = 0;       ///< degrees clockwise about `at`
};

/// Everything until the matching EndClip is drawn inside `ring` only.
struct BeginClip {
  std::vector<Point> ring;
};
struct EndClip {};

using Shape = std::variant<Path, Circle, Box, Text, BeginClip, EndClip>;

struct Drawing {
  double width = 0, height = 0;
  Point patternOrigin;  ///< where patterns are anchored, so that they do not swim under a moving view
  std::vector<Shape> shapes;

  template <class S>
  void add(S shape) {
    shapes.emplace_back(std::move(shape));
  }
};

}  // namespace wend::geometry
