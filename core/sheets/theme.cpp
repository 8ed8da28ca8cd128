#include "core/sheets/theme.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <variant>

#include "core/base/check.h"

namespace wend::sheets {
namespace {

using geometry::Pattern;
using geometry::Point;
using geometry::Tone;

constexpr Rgb hex(std::uint32_t code) {
  return {std::uint8_t(code >> 16), std::uint8_t(code >> 8 & 0xFF), std::uint8_t(code & 0xFF)};
}

struct Row {
  Tone tone;
  std::uint32_t dark, paper, torch;
};

constexpr std::uint32_t kTorchInk = 0xFF8A6B, kTorchInk3 = 0xC95C3F;

constexpr Row kRows[] = {
    {Tone::window, 0x0E1114, 0xE4E1D8, 0x070101},      {Tone::page, 0x15181C, 0xFBFAF6, 0x0B0202},
    {Tone::panel, 0x1A1E23, 0xF6F4EE, 0x120404},       {Tone::raise, 0x272D34, 0xE9E6DD, 0x220907},
    {Tone::field, 0x101316, 0xFFFFFF, 0x070101},       {Tone::line, 0x343C45, 0xD3CFC4, 0x3A110C},
    {Tone::line2, 0x56606B, 0x8C8A82, 0x7A3325},       {Tone::ink, 0xF4F1E8, 0x111417, kTorchInk},
    {Tone::ink2, 0xC3C9CF, 0x33383D, 0xE8704F},        {Tone::ink3, 0x98A2AC, 0x555B61, kTorchInk3},
    {Tone::lens, 0xF4F1E8, 0x111417, kTorchInk},       {Tone::performerA, 0xF8B600, 0xA77D22, kTorchInk},
    {Tone::performerB, 0x2EC4EB, 0x0087C2, kTorchInk}, {Tone::performerC, 0xB652E6, 0x752499, kTorchInk},
    {Tone::performerD, 0xC0684F, 0x7B3317, kTorchInk}, {Tone::crew, 0x899696, 0x66727D, kTorchInk3},
    {Tone::sharp, 0xCFCABB, 0x4A4F55, kTorchInk},      {Tone::wall, 0x2B3138, 0xD5D2C9, 0x2A0B07},
    {Tone::hatch, 0x66717C, 0x77766F, 0x7A3325},       {Tone::edge, 0xAAB3BC, 0x2A2E32, 0xE8704F},
    {Tone::lit, 0x333B43, 0xFFFFFF, 0x33100B},         {Tone::grain, 0xA4AEB8, 0x6E7276, kTorchInk3},
};

bool isPerformer(Tone tone) {
  return tone >= Tone::performerA && tone <= Tone::performerD;
}

double linear(std::uint8_t code) {
  const double share = code / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(Rgb c) {
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

Tile grid(double pitch, double radius) {
  return {pitch, pitch, {{{pitch / 2, pitch / 2}, radius}}, {}, 0};
}

Tile quincunx(double pitch, double radius) {
  const double near = pitch / 4, far = 3 * pitch / 4;
  return {pitch, pitch, {{{near, near}, radius}, {{far, far}, radius}}, {}, 0};
}

/// Straight lines `pitch` apart, leaning `degrees` up from the horizontal.
Tile lines(double degrees, double pitch, double strokeWidth) {
  const double lean = geometry::radians(degrees);
  const double width = pitch / std::sin(lean), height = pitch / std::cos(lean);
  return {width, height, {}, {{{0, height}, {width, 0}}}, strokeWidth};
}

Tile mirrored(Tile tile) {
  for (auto& stroke : tile.strokes)
    for (Point& p : stroke) p.x = tile.width - p.x;
  return tile;
}

Tile waves() {
  constexpr double kLength = 16, kHalfHeight = 1.5;
  Tile tile{2 * kLength, 16, {}, {{}}, 1};
  for (double x = 0; x <= tile.width; x += 1)
    tile.strokes[0].push_back({x, tile.height / 2 - kHalfHeight * std::cos(2 * std::numbers::pi * x / kLength)});
  return tile;
}

}  // namespace

Rgb rgbOf(Tone tone, Theme theme) {
  const auto* const row =
      std::find_if(std::begin(kRows), std::end(kRows), [&](const Row& r) { return r.tone == tone; });
  WEND_CHECK(row != std::end(kRows));
  const std::array<std::uint32_t, 3> codes{row->dark, row->paper, row->torch};
  return hex(codes[std::size_t(theme)]);
}

Rgb letterOn(Tone performer, Theme theme) {
  WEND_CHECK(isPerformer(performer));
  if (theme == Theme::torch) return rgbOf(Tone::window, theme);
  const Rgb ground = rgbOf(performer, theme), black = hex(0x111417), white = hex(0xFFFFFF);
  return contrast(ground, black) >= contrast(ground, white) ? black : white;
}

Rgb runThroughPage(Theme theme) {
  return theme == Theme::dark ? hex(0x0C0E10) : rgbOf(Tone::page, theme);
}

double contrast(Rgb a, Rgb b) {
  const auto [low, high] = std::minmax({luminance(a), luminance(b)});
  return (high + 0.05) / (low + 0.05);
}

void Inks::filled(const geometry::Fill& fill) {
  if (isPerformer(fill.tone) && fill.pattern == Pattern::plain) performer_ = fill.tone;
}

Rgb Inks::of(Tone tone) const {
  return tone == Tone::onPerformer ? letterOn(performer_, theme_) : rgbOf(tone, theme_);
}

Tile tileOf(Pattern pattern) {
  switch (pattern) {
    case Pattern::plain:
      break;
    case Pattern::dots:
      return grid(5, 1.45);
    case Pattern::quincunx:
      return quincunx(8, 1.15);
    case Pattern::sparse:
      return quincunx(12, 0.95);
    case Pattern::wave:
      return waves();
    case Pattern::hatchWall:
      return lines(45, 5, 1);
    case Pattern::hatchTall:
      return lines(45, 8, 1.25);
    case Pattern::hatchCover:
      return lines(45, 6, 1.25);
    case Pattern::seen:
      return quincunx(4, 1.15);
    case Pattern::ticks:
      return {4, 4, {}, {{{0.5, 0}, {0.5, 4}}}, 1};
    case Pattern::rising:
      return lines(60, 6, 1.6);
    case Pattern::falling:
      return mirrored(lines(60, 6, 1.6));
  }
  WEND_CHECK(pattern != Pattern::plain);
  return {};
}

double haloWidth(double textSize, Unit unit) {
  return std::min(3 * unitsPerPx(unit), textSize / 4);
}

}  // namespace wend::sheets
