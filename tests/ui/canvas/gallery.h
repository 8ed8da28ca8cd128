/// A drawing that shows every tone, every pattern and the shapes glyphs are made of, for eyes and for tests.
#pragma once

#include <cmath>
#include <string>

#include "core/geometry/drawing.h"

namespace wend::ui {

inline geometry::Drawing gallery() {
  using geometry::Align;
  using geometry::Pattern;
  using geometry::Point;
  using geometry::Tone;
  geometry::Drawing drawing{960, 560, {24, 24}, {}};
  const auto label = [&](double x, double y, const std::string& words, bool bold = false) {
    drawing.add(geometry::Text{{x, y}, words, 12, bold, Align::centre, bold ? Tone::ink : Tone::ink2});
  };
  const auto line = [](Tone tone, double width) { return geometry::Stroke{tone, width, {}}; };

  const std::pair<const char*, geometry::Fill> fills[] = {
      {"seen within 2 s", {Tone::grain, Pattern::dots, 1}},
      {"seen within 5 s", {Tone::grain, Pattern::quincunx, 1}},
      {"seen within 15 s", {Tone::grain, Pattern::sparse, 1}},
      {"seen later", {}},
      {"never again", {Tone::line2, Pattern::wave, 1}},
      {"seen now", {Tone::lit}},
      {"wall", {Tone::hatch, Pattern::hatchWall, 1}},
      {"tall piece", {Tone::hatch, Pattern::hatchTall, 1}},
      {"cover", {Tone::ink3, Pattern::hatchCover, 1}},
      {"over the iris", {Tone::ink3, Pattern::rising, 1}},
      {"under the iris", {Tone::ink3, Pattern::falling, 1}},
      {"crew seen", {Tone::sharp, Pattern::seen, 1}},
      {"tube", {Tone::sharp, Pattern::ticks, 0.5}},
  };
  int i = 0;
  for (const auto& [name, fill] : fills) {
    const double x = 24 + (i % 7) * 132, y = 24 + (i / 7) * 88;
    if (fill.pattern == Pattern::hatchWall) drawing.add(geometry::Box{{x, y}, 96, 44, 0, {Tone::wall}, {}});
    drawing.add(geometry::Box{{x, y}, 96, 44, 0, fill, line(Tone::edge, 1)});
    label(x + 48, y + 62, name, true);
    ++i;
  }

  const Tone performers[] = {Tone::performerA, Tone::performerB, Tone::performerC, Tone::performerD};
  const std::vector<Point> outlines[] = {
      {{-9, -9}, {9, -9}, {9, 9}, {-9, 9}},
      {{-11, 0}, {-5.5, -9.5}, {5.5, -9.5}, {11, 0}, {5.5, 9.5}, {-5.5, 9.5}},
      {{-11, 0}, {-9, -6}, {-4, -8}, {4, -8}, {9, -6}, {11, 0}, {9, 6}, {4, 8}, {-4, 8}, {-9, 6}},
      {{-9, -9}, {9, -9}, {9, 3}, {0, 11}, {-9, 3}},
  };
  for (int p = 0; p < 4; ++p) {
    const Point at{60.0 + 96 * p, 240};
    geometry::Path shape{{outlines[p]}, true, {performers[p]}, {}};
    for (Point& corner : shape.rings[0]) corner = {corner.x + at.x, corner.y + at.y};
    drawing.add(shape);
    drawing.add(geometry::Path{{{{at.x + 13, at.y - 7}, {at.x + 20, at.y - 10}}}, false, {}, line(performers[p], 3)});
    const std::string letter(1, char('A' + p));
    drawing.add(geometry::Text{{at.x, at.y + 5}, letter, 14, true, Align::centre, Tone::onPerformer});
    label(at.x, at.y + 36, "performer " + letter, true);
  }
  drawing.add(geometry::Box{{446, 230}, 28, 20, 5, {Tone::page}, line(Tone::crew, 1.25)});
  label(460, 244, "FA", true);
  drawing.add(geometry::Box{{546, 230}, 28, 20, 5, {Tone::page}, {Tone::crew, 1.25, {4, 3}}});
  label(560, 244, "BA", true);
  drawing.add(geometry::Circle{{640, 240}, 16, {Tone::page}, line(Tone::ink, 1.25)});
  label(640, 244, "OP", true);
  for (int bars = 1; bars <= 3; ++bars) {
    const Point c{680.0 + 60 * bars, 240};
    const geometry::Fill solid{bars == 3 ? Tone::ink : Tone::page};
    drawing.add(geometry::Path{
        {{{c.x, c.y - 11}, {c.x + 11, c.y}, {c.x, c.y + 11}, {c.x - 11, c.y}}}, true, solid, line(Tone::ink, 1.6)});
    for (int b = 0; b < bars; ++b) {
      const double y = c.y + (b - (bars - 1) / 2.0) * 4, half = 4.5 - std::abs(y - c.y) / 2;
      drawing.add(
          geometry::Path{{{{c.x - half, y}, {c.x + half, y}}}, false, {}, line(bars == 3 ? Tone::page : Tone::ink, 2)});
    }
    label(c.x, c.y + 36, "snag " + std::to_string(bars));
  }

  // A wedge cut by a clip, with a band over it, and a way with seconds.
  drawing.add(geometry::BeginClip{{{24, 310}, {330, 310}, {330, 450}, {24, 450}}});
  drawing.add(geometry::Path{{{{40, 380}, {420, 270}, {420, 490}}}, true, {Tone::lit}, line(Tone::ink, 1.6)});
  for (const double r : {140.0, 190.0, 250.0}) {
    geometry::Path arc{{{}}, false, {}, line(Tone::sharp, r == 190 ? 3.5 : 2)};
    for (double a = -0.28; a <= 0.281; a += 0.02) arc.rings[0].push_back({40 + r * std::cos(a), 380 + r * std::sin(a)});
    drawing.add(arc);
  }
  drawing.add(geometry::Path{{{{40, 384}, {420, 500}}}, false, {}, {Tone::ink2, 1.5, {0.1, 4}}});
  drawing.add(geometry::EndClip{});
  drawing.add(geometry::Path{{{{370, 340}, {520, 330}, {640, 410}}}, false, {}, line(Tone::lens, 2.4)});
  drawing.add(
      geometry::Path{{{{370, 400}, {520, 390}}}, false, {}, {Tone::performerA, 1.2, {}, geometry::Cap::round, 0.5}});
  drawing.add(geometry::Box{{700, 320}, 220, 110, 0, {Tone::grain, Pattern::dots, 1}, {}});
  drawing.add(geometry::Text{{810, 360},
                             "41.0\xE2\x80\x93"
                             "70.0",
                             12,
                             false,
                             Align::centre,
                             Tone::ink,
                             Tone::page});
  drawing.add(geometry::Text{{810, 400}, "D1 opens 25.0", 12, true, Align::centre, Tone::ink, Tone::page, -15});

  const double sizes[] = {12, 14, 18, 28, 44};
  double x = 24;
  for (const double size : sizes) {
    drawing.add(
        geometry::Text{{x, 520}, "2.80 m 9\xE2\x80\xB2 2\xE2\x80\xB3", size, size >= 28, Align::left, Tone::ink});
    x += size * 6.2 + 16;
  }
  return drawing;
}

}  // namespace wend::ui
