// Staves of the floor: pan and speed, doors and lights, snags.
#include <algorithm>
#include <set>
#include <string>
#include <utility>

#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/stave.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using namespace geometry;

void drawPanStave(StavePainter& p) {
  if (!p.answers.evidence) return;
  constexpr double kMostPan = 60, kMostSpeed = 1.3;
  const double middle = p.box.top + p.box.height / 2, half = p.box.height / 2 - 2;
  const auto& samples = p.answers.evidence->samples;
  Path pan;
  pan.rings = {{{p.view.x(samples.front().time), middle}}};
  std::vector<Point> speed;
  for (const auto& sample : samples) {
    const double x = p.view.x(sample.time);
    pan.rings[0].push_back({x, middle - std::clamp(sample.camera.panRate / kMostPan, -1.0, 1.0) * half});
    speed.push_back(
        {x, p.box.top + p.box.height - 2 - std::min(sample.camera.speed / kMostSpeed, 1.0) * (p.box.height - 4)});
  }
  pan.rings[0].push_back({p.view.x(samples.back().time), middle});
  pan.closed = true;
  pan.fill = {Tone::line2, Pattern::plain, p.strength()};
  pan.stroke = {.tone = Tone::ink2, .width = 1, .dash = {}};
  p.drawing.add(pan);
  p.line(speed, Tone::ink3, 1, {4, 3});
  p.scale(p.box.top + 8, "\u00b1" + base::fixed(kMostPan, 0) + "\u00b0/s");
  p.scale(p.box.top + p.box.height - 8, "- - " + base::fixed(kMostSpeed, 1) + " m/s");
}

namespace {

/// A cue of several lamps, or of lamps and an area, stands there once.
using Told = std::set<std::pair<double, std::string>>;

void drawLampCues(StavePainter& p, Told& told) {
  for (const auto& lamp : p.plan.fixtures)
    for (const auto& key : lamp.level) {
      const double at = plan::secondsOf(p.plan, key.time.at);
      const std::string name = key.name.empty() ? snags::nameOf(p.plan, lamp.id.text()) : key.name;
      if ((at <= 0 && key.time.over <= 0) || !told.emplace(at, name).second) continue;
      const double x = p.view.x(at);
      p.line({{x, p.box.top + 3}, {x, p.box.top + 20}}, Tone::ink, 1.25);
      if (key.time.over > 0)
        p.line({{x, p.box.top + 20}, {p.view.x(at + key.time.over), p.box.top + 20}}, Tone::ink, 3);
      p.text({x + 4, p.box.top + 16}, name + " " + base::fixed(100 * key.share, 0) + " %", Tone::ink);
    }
}

}  // namespace

void drawCuesStave(StavePainter& p) {
  Told told;
  for (const auto& area : p.plan.set.areas)
    for (std::size_t k = 1; k < area.states.size(); ++k) {
      const auto& state = area.states[k];
      if (state.name.empty()) continue;
      const double at = plan::secondsOf(p.plan, state.time.at);
      const double end =
          k + 1 < area.states.size() ? plan::secondsOf(p.plan, area.states[k + 1].time.at) : p.take.length();
      p.block(at, end, p.box.top + 5, 14, state.readings.empty() ? Fill{Tone::page} : Fill{Tone::raise},
              {.tone = Tone::ink, .width = 1.25, .dash = {}});
      told.emplace(at, state.name);
      p.text({p.view.x(at) + 4, p.box.top + 16}, StavePainter::cut(state.name, p.view.x(end) - p.view.x(at) - 6),
             Tone::ink, true);
    }
  for (const auto& opening : p.plan.set.openings)
    for (const auto& key : opening.open) {
      const double at = plan::secondsOf(p.plan, key.time.at);
      if (at <= 0) continue;
      const double x = p.view.x(at);
      p.line({{x, p.box.top + 3}, {x, p.box.top + 20}}, Tone::ink, 3);
      p.line({{x, p.box.top + 4}, {x + 8, p.box.top + 8}, {x + 12, p.box.top + 18}}, Tone::ink2, 1, {3, 3});
      p.text({x + 16, p.box.top + 16}, key.name.empty() ? opening.name : key.name, Tone::ink);
    }
  drawLampCues(p, told);
}

SnagRow snagRow(snags::Severity severity) {
  if (severity == snags::Severity::stops) return {5, 5};
  return severity == snags::Severity::risks ? SnagRow{15, 4} : SnagRow{23, 2};
}

void drawSnagsStave(StavePainter& p) {
  if (!p.answers.snags) return;
  double last = -100;
  for (const auto& snag : *p.answers.snags) {
    if (snag.accepted || !p.shows(snag.from, snag.until)) continue;
    const int level = static_cast<int>(snag.severity);
    const SnagRow row = snagRow(snag.severity);
    p.block(snag.from, snag.until, p.box.top + row.top, row.thick,
            {level == 1   ? Tone::ink
             : level == 2 ? Tone::ink2
                          : Tone::ink3});
    const double x = p.view.x(snag.from);
    if (level == 1 && x - last > 14) {
      drawLozenge(p.drawing, {x, p.box.top + kSnagLozenge}, kSnagLozengeHalf, snag.severity);
      last = x;
    }
    if (p.view.chosenKey == snag.key) drawChosen(p.drawing, {x, p.box.top + kSnagLozenge}, 10);
  }
  p.scale(p.box.top + 8, "stops the take");
  p.scale(p.box.top + 19, "risks, notes");
}

}  // namespace wend::sheets
