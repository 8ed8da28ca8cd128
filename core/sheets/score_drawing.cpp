#include "core/sheets/score_drawing.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/snag_staves.h"
#include "core/sheets/stave.h"
#include "core/sheets/stave_room.h"
#include "core/sheets/text_width.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;

namespace {

constexpr double kCrewRow = 12, kSpotLane = 16;

struct Stave {
  const char* name;
  double height;
  void (*draw)(StavePainter&);
};

/// The staves from top to bottom.
constexpr Stave kStaves[] = {
    {"clock", 24, drawClockStave},     {"beats", 24, drawBeatsStave},    {"in frame", 40, drawInFrameStave},
    {"sharp", 96, drawSharpStave},     {"zoom", 32, drawZoomStave},      {"iris, faces", 80, drawIrisStave},
    {"density", 32, drawDensityStave}, {"pan, speed", 32, drawPanStave}, {"doors, lights", 24, drawCuesStave},
    {"crew", 84, drawCrewStave},       {"speech", 24, drawSpeechStave},  {"snags", 28, drawSnagsStave},
};

double fullHeight(const plan::Plan& plan, const Stave& stave, const ScoreView& view) {
  if (stave.draw == drawCrewStave) {
    const auto rows = plan.crew.size() - std::min(plan.crew.size(), plan.camera.bodies.size());
    return kCrewRow * static_cast<double>(std::max<std::size_t>(rows, 1)) + (view.spotLane ? kSpotLane : 0);
  }
  if (stave.draw == drawInFrameStave)
    return std::max(16.0, 13.0 * static_cast<double>(std::max<std::size_t>(plan.performers.size(), 1)) + 1);
  return stave.height;
}

const Stave& staveNamed(const std::string& name) {
  return *std::find_if(std::begin(kStaves), std::end(kStaves), [&](const Stave& stave) { return name == stave.name; });
}

}  // namespace

std::vector<StaveBox> stavesOf(const plan::Plan& plan, const ScoreView& view) {
  std::vector<StaveBox> boxes;
  for (const Stave& stave : kStaves) {
    if (stave.draw == drawDensityStave && plan.camera.nd.empty()) continue;
    const bool folded = std::find(view.folded.begin(), view.folded.end(), stave.name) != view.folded.end();
    boxes.push_back({stave.name, 0, folded ? kFoldedStave : fullHeight(plan, stave, view), folded});
  }
  shareRoom(view, boxes);
  return boxes;
}

double scoreHeight(const plan::Plan& plan, const ScoreView& view) {
  double height = 0;
  for (const auto& box : stavesOf(plan, view)) height += box.height;
  return height;
}

std::vector<std::string> staveNames() {
  std::vector<std::string> names;
  for (const Stave& stave : kStaves) names.emplace_back(stave.name);
  return names;
}

std::vector<std::string> foldedFor(Role role) {
  std::vector<std::string> keeps;
  switch (role) {
    case Role::everybody:
      return {};
    case Role::assistant:
      keeps = {"sharp", "zoom", "iris, faces", "density", "crew"};
      break;
    case Role::photography:
      keeps = {"iris, faces", "density", "doors, lights", "pan, speed"};
      break;
    case Role::director:
      keeps = {"in frame", "speech"};
      break;
    case Role::operating:
      keeps = {"pan, speed", "zoom"};
      break;
    case Role::floor:
      keeps = {"crew", "doors, lights"};
      break;
    case Role::sound:
      keeps = {"speech", "in frame", "doors, lights"};
      break;
  }
  // Time and snags are everybody's.
  keeps.insert(keeps.end(), {"clock", "beats", "snags"});
  std::vector<std::string> folded = staveNames();
  std::erase_if(folded, [&](const auto& name) { return std::find(keeps.begin(), keeps.end(), name) != keeps.end(); });
  return folded;
}

void StavePainter::line(std::vector<Point> points, Tone tone, double width, std::vector<double> dash) {
  if (points.size() < 2) return;
  Path path;
  path.rings = {std::move(points)};
  path.stroke = {.tone = tone, .width = width, .dash = std::move(dash), .strength = strength()};
  drawing.add(path);
}

void StavePainter::block(double from, double until, double top, double height, Fill fill, Stroke stroke) {
  if (!shows(from, until)) return;
  const double left = view.x(std::max(from, view.from)), right = view.x(std::min(until, view.until));
  fill.strength *= strength();
  drawing.add(geometry::Box{.topLeft = {left, top},
                            .width = std::max(1.0, right - left),
                            .height = height,
                            .radius = std::min(2.0, height / 2),
                            .fill = fill,
                            .stroke = std::move(stroke)});
}

void StavePainter::text(Point at, std::string words, Tone tone, bool bold, Align align) {
  drawing.add(Text{
      .at = at, .text = std::move(words), .size = 12, .bold = bold, .align = align, .tone = tone, .halo = Tone::page});
}

void StavePainter::scale(double y, const std::string& words) {
  drawing.add(Text{.at = {view.width - view.scales + 8, y + 4}, .text = words, .size = 12, .tone = Tone::ink2});
}

void StavePainter::square(Point at) {
  drawing.add(geometry::Box{.topLeft = {at.x - 3, at.y - 3},
                            .width = 6,
                            .height = 6,
                            .radius = 0,
                            .fill = {Tone::page},
                            .stroke = {.tone = Tone::lens, .width = 1.25, .dash = {}}});
}

void StavePainter::handles(const std::vector<std::string>& begins) {
  for (const auto& handle : scoreHandles(answers, view)) {
    const bool ours =
        std::any_of(begins.begin(), begins.end(), [&](const auto& begin) { return handle.key.starts_with(begin); });
    if (!ours) continue;
    square({handle.x, handle.y});
    const bool chosen = handle.key == view.chosenKey || handle.key == view.chosenKey + kStartOfKey;
    if (chosen) drawChosen(drawing, {handle.x, handle.y}, 8);
  }
}

std::string StavePainter::cut(const std::string& words, double px) {
  const auto fits = static_cast<std::size_t>(std::max(0.0, px / 6.7));
  if (base::columns(words) <= fits) return words;
  if (fits < 3) return {};
  std::string shortened;
  std::size_t count = 0;
  for (const char c : words) {
    if ((static_cast<unsigned char>(c) & 0xC0) != 0x80 && ++count >= fits) break;
    shortened += c;
  }
  return shortened + "\u2026";
}

namespace {

void drawBeatLines(Drawing& drawing, const Answers& answers, const ScoreView& view, double top, double height) {
  for (const auto& beat : answers.take->plan().beats) {
    if (beat.time < view.from || beat.time > view.until) continue;
    Path line;
    line.rings = {{{view.x(beat.time), top}, {view.x(beat.time), height}}};
    line.stroke = {.tone = Tone::line, .width = 1, .dash = {}};
    drawing.add(line);
  }
}

/// A name that something pinned would cut is left out.
void drawFrameOf(Drawing& drawing, const ScoreView& view, const StaveBox& box, const Span& free) {
  Path rule;
  rule.rings = {{{0, box.top + box.height}, {view.width, box.top + box.height}}};
  rule.stroke = {.tone = Tone::line, .width = 1, .dash = {}};
  drawing.add(rule);
  const Text name{
      .at = {32, box.top + std::min(box.height / 2 + 4.5, 18.0)}, .text = box.name, .size = 12, .tone = Tone::ink2};
  if (name.at.y - name.size * 0.8 >= free.from && name.at.y <= free.until) drawing.add(name);
}

void beginClip(Drawing& drawing, double left, double right, Span rows) {
  drawing.add(BeginClip{{{left, rows.from}, {right, rows.from}, {right, rows.until}, {left, rows.until}}});
}

/// A folded stave keeps its name and the ticks of its own snags, what stops the take as thick as the rest is thin.
void drawFolded(StavePainter& p) {
  if (!p.answers.snags) return;
  for (const auto& snag : *p.answers.snags) {
    if (snag.accepted || staveOf(snag) != p.box.name) continue;
    const bool stops = snag.severity == snags::Severity::stops;
    p.block(snag.from, snag.until, p.box.top + (stops ? 5 : 7), stops ? 6 : 2, {Tone::ink2});
  }
}

}  // namespace

Drawing scoreDrawing(const Answers& answers, const ScoreView& view, bool stale) {
  const plan::Plan& plan = answers.take->plan();
  Drawing drawing{
      .width = view.width, .height = scoreHeight(plan, view), .patternOrigin = {view.labels, 0}, .shapes = {}};
  drawing.add(geometry::Box{.topLeft = {0, 0},
                            .width = view.width,
                            .height = drawing.height,
                            .radius = 0,
                            .fill = {Tone::page},
                            .stroke = {}});
  const auto boxes = stavesOf(plan, view);
  drawBeatLines(drawing, answers, view, boxes.front().top + boxes.front().height, drawing.height);
  for (const auto& box : boxes) {
    const Span free = uncovered(boxes, box);
    if (free.length() <= 0) continue;
    beginClip(drawing, 0, view.width, free);
    drawFrameOf(drawing, view, box, free);
    drawing.add(EndClip{});
    beginClip(drawing, view.labels - 28, view.width, free);
    StavePainter painter{drawing, answers, *answers.take, plan, view, box, stale};
    if (box.folded)
      drawFolded(painter);
    else
      staveNamed(box.name).draw(painter);
    drawing.add(EndClip{});
  }
  for (const double x : {view.labels, view.width - view.scales}) {
    Path edge;
    edge.rings = {{{x, 0}, {x, drawing.height}}};
    edge.stroke = {.tone = Tone::line, .width = 1, .dash = {}};
    drawing.add(edge);
  }
  if (stale)
    drawing.add(Text{.at = {8, boxes.back().top + boxes.back().height - 8},
                     .text = "stale",
                     .size = 12,
                     .bold = true,
                     .tone = Tone::ink});
  return drawing;
}

Drawing playheadDrawing(const plan::Plan& plan, const ScoreView& view, double t) {
  const double height = scoreHeight(plan, view), x = view.x(t), ruler = stavesOf(plan, view).front().top;
  Drawing drawing{.width = view.width, .height = height, .patternOrigin = {}, .shapes = {}};
  if (t < view.from || t > view.until) return drawing;
  Path line;
  line.rings = {{{x, 0}, {x, height}}};
  line.stroke = {.tone = Tone::lens, .width = 2, .dash = {}};
  drawing.add(line);
  drawing.add(geometry::Box{
      .topLeft = {x - 32, ruler + 1}, .width = 64, .height = 21, .radius = 4, .fill = {Tone::lens}, .stroke = {}});
  drawing.add(Text{.at = {x, ruler + 16.5},
                   .text = units::takeTimeText(t),
                   .size = 14,
                   .bold = true,
                   .align = Align::centre,
                   .tone = Tone::page});
  return drawing;
}

Drawing spanDrawing(const plan::Plan& plan, const ScoreView& view, Span span) {
  const double height = scoreHeight(plan, view), right = view.width - view.scales;
  const double ruler = stavesOf(plan, view).front().top;
  Drawing drawing{.width = view.width, .height = height, .patternOrigin = {}, .shapes = {}};
  const double from = std::clamp(view.x(span.from), view.labels, right);
  const double until = std::clamp(view.x(span.until), view.labels, right);
  if (until <= from) return drawing;
  for (const double x : {from, until}) {
    Path edge;
    edge.rings = {{{x, 0}, {x, height}}};
    edge.stroke = {.tone = Tone::ink, .width = 1.25, .dash = {6, 4}};
    drawing.add(edge);
  }
  drawing.add(geometry::Box{.topLeft = {from, ruler + 20},
                            .width = until - from,
                            .height = 4,
                            .radius = 0,
                            .fill = {Tone::ink},
                            .stroke = {}});
  const std::string words = base::fixed(span.length(), 1) + " s";
  if (typeWidth(words, 12) + 8 < until - from)
    drawing.add(Text{.at = {(from + until) / 2, ruler + 16},
                     .text = words,
                     .size = 12,
                     .bold = true,
                     .align = Align::centre,
                     .tone = Tone::ink,
                     .halo = Tone::page});
  return drawing;
}

void drawSpotLane(Drawing& drawing, const ScoreView& view, double top, const snags::SightOf& sight) {
  drawing.add(Text{.at = {view.labels - 8, top + 12},
                   .text = "spot",
                   .size = 12,
                   .bold = true,
                   .align = Align::right,
                   .tone = Tone::ink,
                   .halo = Tone::page});
  Path clear;
  for (const auto& span : sight.clear)
    clear.rings.push_back({{view.x(span.span.from), top + 8}, {view.x(span.span.until), top + 8}});
  clear.stroke = {.tone = Tone::ink, .width = 3, .dash = {}};
  if (!clear.rings.empty()) drawing.add(clear);
  for (const auto& seen : sight.seen)
    drawing.add(geometry::Box{.topLeft = {view.x(seen.span.from), top + 2},
                              .width = std::max(2.0, (seen.span.until - seen.span.from) * view.pxPerSecond()),
                              .height = 12,
                              .radius = 2,
                              .fill = {Tone::grain, Pattern::seen},
                              .stroke = {.tone = Tone::ink, .width = 1.25, .dash = {}}});
}

}  // namespace wend::sheets
