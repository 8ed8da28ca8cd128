/// What the tones and patterns of a drawing look like: the only place of Wend that holds colours, type sizes and
/// stroke widths. Shape, pattern and letter carry every meaning; a hue only repeats it.
#pragma once

#include <cstdint>
#include <vector>

#include "core/geometry/drawing.h"

namespace wend::sheets {

/// Dark is for the table, paper for daylight and print, torch for a dark set: one red hue that spares night sight.
enum class Theme { dark, paper, torch };

/// Code values of IEC 61966-2-1 (sRGB).
struct Rgb {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Rgb&) const = default;
};

/// The colour of a tone.
/// Requires  tone is neither none nor onPerformer, whose colour depends on the shape it stands in: see letterOn
/// Ensures   (1) ink, ink2 and ink3 keep 4.5 : 1 on page, panel and raise of their theme
///           (2) every line of a plan (performers, crew, edge, grain) keeps 3 : 1 on the page
///           (3) on torch all tones are of one hue and performers look alike
Rgb rgbOf(geometry::Tone tone, Theme theme);

/// Black or white of the theme, whichever contrasts more with a performer's colour.
/// Requires  performer is performerA to performerD
/// Ensures   (1) at least 4.5 : 1
Rgb letterOn(geometry::Tone performer, Theme theme);

/// The page of a run-through on dark: darker than the floor of a plan, for eyes that must see into the dark next.
Rgb runThroughPage(Theme theme);

/// Contrast of two colours, 1 to 21, in either order.
/// Source    W3C, Web Content Accessibility Guidelines 2.2, definitions of contrast ratio and relative luminance
double contrast(Rgb a, Rgb b);

/// Colours while the shapes of one drawing are met in their order: a letter's colour follows the performer's shape
/// that was filled last.
class Inks {
 public:
  explicit Inks(Theme theme) : theme_(theme) {}
  /// To be told of each fill before what lies on it is drawn.
  void filled(const geometry::Fill& fill);
  /// Requires tone is not none.
  Rgb of(geometry::Tone tone) const;

 private:
  Theme theme_;
  geometry::Tone performer_ = geometry::Tone::performerA;
};

/// What one unit of a drawing is.
enum class Unit { px, mm };
inline constexpr double kMmPerPx = 25.4 / 96;

/// Units per px: patterns and halos are told in px and keep their size on paper.
constexpr double unitsPerPx(Unit unit) {
  return unit == Unit::px ? 1 : kMmPerPx;
}

struct Dot {
  geometry::Point centre;
  double radius = 1;
};

/// One repeat of a pattern, px, y down from the pattern's origin.
/// Ensures   (1) marks of one tile meet those of its neighbours: repeating it shows no seam
///           (2) no two patterns have the same tile, so that they differ without colour
struct Tile {
  double width = 1, height = 1;
  std::vector<Dot> dots;
  std::vector<std::vector<geometry::Point>> strokes;
  double strokeWidth = 1;
};

/// Requires  pattern is not plain
Tile tileOf(geometry::Pattern pattern);

/// Halo behind a text of that size, in the drawing's units: three px, less under small type.
double haloWidth(double textSize, Unit unit);

namespace type {
inline constexpr double kLabel = 12, kBody = 14, kValue = 18, kBig = 28, kClock = 44;
inline constexpr double kRunThrough[] = {20, 28, 44, 80, 200};
}  // namespace type

namespace stroke {
inline constexpr double kHairline = 1, kTag = 1.25, kWedge = 1.6, kIcon = 1.75, kWay = 2, kLensWay = 2.4, kChosen = 3;
inline constexpr double kGoneWay = 1.2, kGoneStrength = 0.5;
}  // namespace stroke

namespace space {
inline constexpr double kGrid = 8, kPanel = 16, kTarget = 32, kSetTarget = 120;
inline constexpr double kBlockRadius = 2, kFieldRadius = 4, kSetButtonRadius = 12;
}  // namespace space

}  // namespace wend::sheets
