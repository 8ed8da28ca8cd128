// The stave of focus: the tube the setting may lie in, who is sharp, where the lens is set.
#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/optics/warmth.h"
#include "core/pulls/ease.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/stave.h"
#include "core/sheets/text_width.h"
#include "core/sheets/theme.h"
#include "core/snags/stretch.h"
#include "core/units/length.h"

namespace wend::sheets {

using namespace geometry;

namespace {

/// The row of who is sharp, at the stave's foot.
constexpr double kWho = 15;
/// Distances a scale may end at or have a line for, metres.
constexpr std::array kDistances{0.2, 0.3, 0.5, 0.8, 1.2, 2.0, 3.0, 4.0, 6.0, 10.0, 20.0, 50.0};

/// The nearest that the lens is set at or that somebody stands who is to be sharp, metres.
double nearestShown(const answers::LensTracks& lens) {
  double nearest = kDistances.back();
  for (const auto& knot : lens.focus().knots) nearest = std::min(nearest, lens.focusScale().valueAt(knot.value));
  for (const auto& sample : lens.focusTube())
    if (!sample.open && sample.lo <= sample.hi)
      nearest = std::min(nearest, lens.focusScale().valueAt((sample.lo + sample.hi) / 2));
  return nearest;
}

}  // namespace

double focusMeasure(double metres) {
  constexpr double kNearest = 0.05;
  return 1 / std::max(kNearest, metres);
}

StaveScale focusStaveScale(const answers::Take& take, const StaveBox& box) {
  // Steps, so that the scale stands still while something is dragged.
  double top = kDistances.front();
  for (const double distance : kDistances)
    if (distance * 1.15 <= nearestShown(take.lens())) top = distance;
  return {box.top + 9, box.height - kWho - 18, 1 / top, 0};
}

double whoIsSharpRow(const StaveBox& box) {
  return box.top + box.height - kWho / 2 - 1;
}

namespace {

/// What a tube looks like in px.
struct TubeEdges {
  std::vector<Point> upper, lower;
};

std::vector<TubeEdges> edgesOf(const StavePainter& p, const StaveScale& scale) {
  const auto& barrel = p.take.lens().focusScale();
  std::vector<TubeEdges> pieces(1);
  double lastX = -10;
  for (const auto& sample : p.take.lens().focusTube()) {
    const double x = p.view.x(sample.t);
    TubeEdges& now = pieces.back();
    if (sample.open) {
      if (!now.upper.empty()) pieces.emplace_back();
      continue;
    }
    if (x - lastX < 1 && !now.upper.empty()) continue;
    lastX = x;
    const double a = 1 / barrel.valueAt(sample.lo), b = 1 / barrel.valueAt(sample.hi);
    now.upper.push_back({x, scale.y(std::max(a, b))});
    now.lower.push_back({x, scale.y(std::min(a, b))});
  }
  return pieces;
}

void drawTube(StavePainter& p, const StaveScale& scale) {
  Path fill;
  for (TubeEdges& piece : edgesOf(p, scale)) {
    if (piece.upper.size() < 2) continue;
    p.line(piece.upper, Tone::sharp, 1);
    p.line(piece.lower, Tone::sharp, 1);
    std::reverse(piece.lower.begin(), piece.lower.end());
    piece.upper.insert(piece.upper.end(), piece.lower.begin(), piece.lower.end());
    fill.rings.push_back(std::move(piece.upper));
  }
  if (fill.rings.empty()) return;
  fill.closed = true;
  fill.fill = {Tone::sharp, Pattern::ticks, 0.8 * p.strength()};
  p.drawing.add(fill);
}

/// A stretch in which the setting lies outside the tube.
struct Outside {
  std::vector<Point> set, edge;
  double worst = 0;  ///< metres between setting and tube where the gap is widest on the stave
  double measure = 0;
};

/// Where the setting leaves the tube the gap is hatched and says how far it is off.
void drawOutside(StavePainter& p, const StaveScale& scale) {
  const auto& lens = p.take.lens();
  const auto metres = [&](double barrel) { return lens.focusScale().valueAt(barrel); };
  Outside now;
  const auto flush = [&] {
    if (now.set.size() > 1) {
      Path gap;
      std::reverse(now.edge.begin(), now.edge.end());
      gap.rings = {now.set};
      gap.rings[0].insert(gap.rings[0].end(), now.edge.begin(), now.edge.end());
      gap.closed = true;
      gap.fill = {Tone::ink, Pattern::rising, p.strength()};
      gap.stroke = {.tone = Tone::ink, .width = 1, .dash = {}, .strength = p.strength()};
      p.drawing.add(gap);
      if (std::isfinite(now.worst))
        p.text({now.set[now.set.size() / 2].x, p.box.top + 24}, "out by " + snags::lengthText(p.plan, now.worst),
               Tone::ink, true, Align::centre);
    }
    now = {};
  };
  for (const auto& sample : lens.focusTube()) {
    const double set = lens.barrelAt(sample.t), held = std::clamp(set, std::min(sample.lo, sample.hi), sample.hi);
    // A hair of the barrel is no gap: tubes and tracks meet edge on edge.
    if (sample.open || sample.lo > sample.hi || std::abs(set - held) < 0.05) {
      flush();
      continue;
    }
    const double x = p.view.x(sample.t), off = std::abs(focusMeasure(metres(set)) - focusMeasure(metres(held)));
    now.set.push_back({x, scale.y(focusMeasure(metres(set)))});
    now.edge.push_back({x, scale.y(focusMeasure(metres(held)))});
    if (off > now.measure) now.measure = off, now.worst = std::abs(metres(set) - metres(held));
  }
  flush();
}

/// Where the subject is, in its hue.
void drawSubjects(StavePainter& p, const StaveScale& scale) {
  std::vector<Point> run;
  std::string on;
  const auto flush = [&](const std::string& next) {
    const std::size_t who = p.plan.performers.indexOf(on);
    p.line(run, who < p.plan.performers.size() ? performerTone(who) : Tone::ink2, 1.6);
    run.clear();
    on = next;
  };
  const std::size_t stride = sampleStride(p);
  for (std::size_t i = 0; i < p.answers.evidence->samples.size(); i += stride) {
    const auto& focus = p.answers.evidence->samples[i].focus;
    const std::string now = focus.known && !focus.changing ? focus.on.front() : "";
    if (now != on) flush(now);
    if (!now.empty()) run.push_back({p.view.x(p.answers.evidence->samples[i].time), scale.y(1 / focus.wantedDistance)});
  }
  flush("");
}

void drawWhoBlock(StavePainter& p, double from, double until, const std::string& on) {
  const double top = p.box.top + p.box.height - kWho, left = p.view.x(std::max(from, p.view.from));
  const std::size_t who = p.plan.performers.indexOf(on);
  const bool performer = who < p.plan.performers.size();
  p.block(from, until, top, kWho - 2, {Tone::raise},
          {.tone = performer ? performerTone(who) : Tone::line2, .width = 1.25, .dash = {}});
  const double wide = p.view.x(std::min(until, p.view.until)) - left;
  if (performer && wide > 14)
    drawPerformer(p.drawing, {left + 8, top + kWho / 2 - 1}, who, performerLetter(p.plan, who), 6);
  p.text({left + (performer ? 18 : 5), top + 11},
         cutToWidth(snags::subjectName(p.plan, on), 12, wide - (performer ? 22 : 9)), Tone::ink);
}

/// Blocks of who the focus is on; hatched while it goes from one to the next.
void drawWho(StavePainter& p) {
  const auto& samples = p.answers.evidence->samples;
  const auto alike = [&](std::size_t a, std::size_t b) {
    return samples[a].focus.on == samples[b].focus.on && samples[a].focus.changing == samples[b].focus.changing;
  };
  for (const auto& run : runsAlike(samples.size(), alike)) {
    const auto [from, until] = drawnSpan(*p.answers.evidence, run);
    const auto& focus = samples[run.first].focus;
    if (!focus.known || !p.shows(from, until)) continue;
    if (focus.changing)
      p.block(from, until, p.box.top + p.box.height - kWho + 3, kWho - 8, {Tone::ink2, Pattern::hatchCover});
    else if (!focus.on.empty())
      drawWhoBlock(p, from, until, focus.on.front());
  }
}

/// How easily the focus holds: hot a full bar, warm a hollow one, cool nothing.
void drawHeat(StavePainter& p) {
  const auto& samples = p.answers.evidence->samples;
  const auto heat = [&](std::size_t i) {
    return samples[i].focus.warmth ? optics::heatOf(*samples[i].focus.warmth) : optics::Heat::cool;
  };
  const auto alike = [&](std::size_t a, std::size_t b) { return heat(a) == heat(b); };
  for (const auto& run : runsAlike(samples.size(), alike)) {
    if (heat(run.first) == optics::Heat::cool) continue;
    const auto [from, until] = drawnSpan(*p.answers.evidence, run);
    const bool hot = heat(run.first) == optics::Heat::hot;
    p.block(from, until, p.box.top + 1, 5, hot ? Fill{Tone::lens} : Fill{Tone::page},
            {.tone = Tone::lens, .width = 1, .dash = {}});
    const std::string word = hot ? "hot" : "warm";
    if ((until - from) * p.view.pxPerSecond() > typeWidth(word, type::kLabel) + 6)
      p.text({p.view.x((from + until) / 2), p.box.top + 17}, word, Tone::ink, hot, Align::centre);
  }
}

/// Where one person's axes want more hands than one, under the bar of heat.
void drawHands(StavePainter& p) {
  double named = -100;
  for (const auto& work : p.answers.evidence->work)
    for (const auto& stretch : work.load.stretches) {
      if (stretch.hands < 2) continue;
      p.block(stretch.span.from, stretch.span.until, p.box.top + 7, 3, {Tone::ink2});
      const std::string words = std::to_string(stretch.hands) + " hands";
      const double at = p.view.x((stretch.span.from + stretch.span.until) / 2),
                   half = typeWidth(words, type::kLabel) / 2;
      if (at - half < named) continue;
      // Below the words of the heat.
      p.text({at, p.box.top + 31}, words, Tone::ink, false, Align::centre);
      named = at + half + 4;
    }
}

void drawDistances(StavePainter& p, const StaveScale& scale) {
  p.scale(scale.y(0), "\u221e");
  double last = scale.y(0);
  bool first = true;
  for (std::size_t i = kDistances.size(); i-- > 0;) {
    const double y = scale.y(1 / kDistances[i]);
    const bool onTop = y < scale.top + 1;
    if (y < scale.top - 1 || last - y < 14 || (!onTop && y - scale.top < 14)) continue;
    p.line({{p.view.labels, y}, {p.view.width - p.view.scales, y}}, Tone::line, 1);
    p.scale(y, units::lengthText(kDistances[i], p.plan.display, units::LengthStep::tape));
    last = y;
    first = false;
  }
  if (first) p.scale(p.box.top + 12, "near");
}

/// The setting with its pulls eased, squares where they would change their rate at once, each pull's end with the
/// distance it arrives at.
void drawSetting(StavePainter& p, const StaveScale& scale) {
  const auto& lens = p.take.lens();
  std::vector<Point> set;
  for (const auto& knot : pulls::easedLine(lens.focus(), kEaseSteps))
    set.push_back({p.view.x(knot.t), scale.y(focusMeasure(lens.focusScale().valueAt(knot.value)))});
  p.line(set, Tone::lens, 2.4);
  double labelled = -100;
  for (const auto& move : lens.focus().moves) {
    const double after = lens.focusScale().valueAt(move.valueAfter);
    const Point at{p.view.x(move.until), scale.y(focusMeasure(after))};
    p.square({p.view.x(move.from), scale.y(focusMeasure(lens.focusScale().valueAt(move.valueBefore)))});
    p.square(at);
    const std::string words = "\u2192" + units::lengthText(after, p.plan.display, units::LengthStep::tape);
    const double half = typeWidth(words, type::kLabel) / 2 + 3;
    if (at.x - half < labelled) continue;
    p.text({at.x, p.box.top + p.box.height - kWho - 3}, words, Tone::ink, false, Align::centre);
    labelled = at.x + half;
  }
}

}  // namespace

void drawSharpStave(StavePainter& p) {
  const StaveScale scale = focusStaveScale(p.take, p.box);
  drawDistances(p, scale);
  drawTube(p, scale);
  if (p.answers.evidence) drawSubjects(p, scale);
  drawOutside(p, scale);
  drawSetting(p, scale);
  if (p.answers.evidence) {
    drawWho(p);
    drawHeat(p);
    drawHands(p);
  }
  p.handles({"focus/", "pull/"});
}

}  // namespace wend::sheets
