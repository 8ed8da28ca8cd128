// Staves of the lens: in frame, sharp, zoom, iris and faces.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/stave.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace geometry;

namespace {

/// Runs of samples with equal state, as spans.
template <class State>
void eachRun(const snags::Evidence& evidence, State stateOf,
             const std::function<void(double, double, std::size_t)>& run) {
  const auto& samples = evidence.samples;
  for (std::size_t i = 0; i < samples.size();) {
    std::size_t end = i;
    while (end + 1 < samples.size() && stateOf(samples[end + 1]) == stateOf(samples[i])) ++end;
    run(samples[i].time, samples[std::min(end + 1, samples.size() - 1)].time, i);
    i = end + 1;
  }
}

enum class InSight { no, hidden, yes };

/// Whole and part are one on this stave.
InSight sightOf(optics::Showing showing) {
  return showing == optics::Showing::out      ? InSight::no
         : showing == optics::Showing::hidden ? InSight::hidden
                                              : InSight::yes;
}

/// Samples worth drawing: about one a px.
std::size_t strideOf(const StavePainter& p) {
  const double perPx =
      static_cast<double>(p.answers.evidence->samples.size()) / std::max(1.0, p.view.pxPerSecond() * p.take.length());
  return std::max<std::size_t>(1, static_cast<std::size_t>(perPx));
}

}  // namespace

void drawInFrameStave(StavePainter& p) {
  if (!p.answers.evidence) return;
  for (std::size_t i = 0; i < p.plan.performers.size(); ++i) {
    const double top = p.box.top + 2 + 13.0 * static_cast<double>(i);
    drawPerformer(p.drawing, {p.view.labels - 14, top + 5}, i, "", 5);
    eachRun(
        *p.answers.evidence, [i](const auto& s) { return sightOf(s.performers[i].inFrame); },
        [&](double from, double until, std::size_t at) {
          const auto shows = p.answers.evidence->samples[at].performers[i].inFrame;
          if (shows == optics::Showing::out) return;
          const bool hidden = shows == optics::Showing::hidden;
          p.block(from, until, top, 10, hidden ? Fill{Tone::page} : Fill{performerTone(i)},
                  {.tone = performerTone(i), .width = 1.25, .dash = {}});
        });
  }
}

StaveScale focusStaveScale(const answers::Take& take, const StaveBox& box) {
  const double nearest = take.plan().lens ? take.plan().lens->closeFocus : 0.5;
  return {box.top + 8, box.height - 16, 1 / nearest, 0};
}

namespace {

void drawTube(StavePainter& p, const StaveScale& scale) {
  const auto& tube = p.take.lens().focusTube();
  const auto& barrel = p.take.lens().focusScale();
  Path fill;
  std::vector<Point> upper, lower;
  const auto close = [&] {
    if (upper.size() > 1) {
      p.line(upper, Tone::sharp, 1);
      p.line(lower, Tone::sharp, 1);
      std::reverse(lower.begin(), lower.end());
      upper.insert(upper.end(), lower.begin(), lower.end());
      fill.rings.push_back(upper);
    }
    upper.clear();
    lower.clear();
  };
  double lastX = -10;
  for (const auto& sample : tube) {
    const double x = p.view.x(sample.t);
    if (sample.open) {
      close();
      continue;
    }
    if (x - lastX < 1 && !upper.empty()) continue;
    lastX = x;
    const double a = 1 / barrel.valueAt(sample.lo), b = 1 / barrel.valueAt(sample.hi);
    upper.push_back({x, scale.y(std::max(a, b))});
    lower.push_back({x, scale.y(std::min(a, b))});
  }
  close();
  if (fill.rings.empty()) return;
  fill.closed = true;
  fill.fill = {Tone::sharp, Pattern::ticks, 0.8 * p.strength()};
  p.drawing.add(fill);
}

/// Where the subject is, in its hue.
void drawSubjects(StavePainter& p, const StaveScale& scale) {
  const std::size_t stride = strideOf(p);
  std::vector<Point> run;
  std::string on;
  const auto flush = [&](const std::string& next) {
    const std::size_t who = p.plan.performers.indexOf(on);
    const bool performer = who < p.plan.performers.size();
    p.line(run, performer ? performerTone(who) : Tone::ink2, 1.6);
    if (run.size() > 8) {
      const Point middle = run[run.size() / 2];
      if (performer)
        drawPerformer(p.drawing, middle, who, performerLetter(p.plan, who), 7);
      else
        p.drawing.add(Circle{middle, 7, {Tone::page}, {.tone = Tone::ink2, .width = 1.25, .dash = {}}});
    }
    run.clear();
    on = next;
  };
  for (std::size_t i = 0; i < p.answers.evidence->samples.size(); i += stride) {
    const auto& focus = p.answers.evidence->samples[i].focus;
    const std::string now = focus.known && !focus.changing ? focus.on.front() : "";
    if (now != on) flush(now);
    if (!now.empty()) run.push_back({p.view.x(p.answers.evidence->samples[i].time), scale.y(1 / focus.wantedDistance)});
  }
  flush("");
}

void drawHot(StavePainter& p) {
  eachRun(
      *p.answers.evidence, [](const auto& s) { return s.focus.warmth && *s.focus.warmth < 1; },
      [&](double from, double until, std::size_t at) {
        const auto& warmth = p.answers.evidence->samples[at].focus.warmth;
        if (!warmth || *warmth >= 1) return;
        p.block(from, until, p.box.top + 1, 4, {Tone::lens});
        if ((until - from) * p.view.pxPerSecond() > 30)
          p.text({p.view.x((from + until) / 2) - 9, p.box.top + 16}, "hot", Tone::ink, true);
      });
}

}  // namespace

void drawSharpStave(StavePainter& p) {
  const StaveScale scale = focusStaveScale(p.take, p.box);
  for (const double distance : {1.2, 2.0, 4.0})
    if (1 / distance < scale.high) {
      p.line({{p.view.labels, scale.y(1 / distance)}, {p.view.width - p.view.scales, scale.y(1 / distance)}},
             Tone::line, 1);
      p.scale(scale.y(1 / distance), base::fixed(distance, 1) + (distance < 1.5 ? " m" : ""));
    }
  p.scale(scale.y(0), "\u221e");
  drawTube(p, scale);
  if (p.answers.evidence) drawSubjects(p, scale);
  std::vector<Point> set;
  for (const auto& knot : p.take.lens().focus().knots)
    set.push_back({p.view.x(knot.t), scale.y(1 / p.take.lens().focusScale().valueAt(knot.value))});
  p.line(set, Tone::lens, 2.4);
  for (const auto& move : p.take.lens().focus().moves) {
    const double after = p.take.lens().focusScale().valueAt(move.valueAfter);
    const Point at{p.view.x(move.until), scale.y(1 / after)};
    p.drawing.add(geometry::Box{.topLeft = {at.x - 3, at.y - 3},
                                .width = 6,
                                .height = 6,
                                .radius = 0,
                                .fill = {Tone::page},
                                .stroke = {.tone = Tone::lens, .width = 1.25, .dash = {}}});
    p.text({at.x, p.box.top + p.box.height - 4}, "\u2192" + base::fixed(after, 2), Tone::ink, false, Align::centre);
  }
  if (p.answers.evidence) drawHot(p);
  for (const auto& handle : scoreHandles(p.answers, p.view))
    if (handle.key == p.view.chosenKey && handle.key.starts_with("focus/"))
      drawChosen(p.drawing, {handle.x, handle.y}, 8);
}

StaveScale zoomStaveScale(const plan::Plan& plan, const StaveBox& box) {
  const double wide = plan.lens ? plan.lens->focal[0] : 20, tight = plan.lens ? plan.lens->focal[1] : 80;
  return {box.top + 6, box.height - 12, std::log2(tight) + 0.05, std::log2(wide) - 0.05};
}

namespace {

/// What hides the moves of an axis, as named boxes behind it.
void drawCovers(StavePainter& p, snags::Move::Axis axis) {
  for (const auto& move : p.answers.evidence->moves) {
    if (move.axis != axis || move.cover.empty()) continue;
    p.block(move.from, move.until, p.box.top + 1, p.box.height - 2, {Tone::line2, Pattern::hatchCover},
            {.tone = Tone::line2, .width = 1, .dash = {}});
    const double room = (move.until - move.from) * p.view.pxPerSecond() + 30;
    p.text({p.view.x(move.from) + 2, p.box.top + p.box.height - 4}, StavePainter::cut(move.cover, std::max(room, 60.0)),
           Tone::ink2);
  }
}

void drawKeys(StavePainter& p, const std::string& axis) {
  for (const auto& handle : scoreHandles(p.answers, p.view)) {
    if (!handle.key.starts_with(axis)) continue;
    p.drawing.add(geometry::Box{.topLeft = {handle.x - 3, handle.y - 3},
                                .width = 6,
                                .height = 6,
                                .radius = 0,
                                .fill = {Tone::page},
                                .stroke = {.tone = Tone::lens, .width = 1.25, .dash = {}}});
    if (handle.key == p.view.chosenKey) drawChosen(p.drawing, {handle.x, handle.y}, 8);
  }
}

}  // namespace

void drawZoomStave(StavePainter& p) {
  if (!p.plan.lens || !p.answers.evidence) return;
  const StaveScale scale = zoomStaveScale(p.plan, p.box);
  drawCovers(p, snags::Move::Axis::zoom);
  std::vector<Point> line;
  const std::size_t stride = strideOf(p);
  for (std::size_t i = 0; i < p.answers.evidence->samples.size(); i += stride) {
    const auto& sample = p.answers.evidence->samples[i];
    if (sample.lens) line.push_back({p.view.x(sample.time), scale.y(std::log2(sample.lens->focal))});
  }
  p.line(line, Tone::lens, 2.4);
  for (const auto& move : p.answers.evidence->moves)
    if (move.axis == snags::Move::Axis::zoom)
      p.text({p.view.x(move.until) + 8, scale.y(std::log2(move.valueAfter)) - 4}, base::fixed(move.valueAfter, 0),
             Tone::ink);
  drawKeys(p, "zoom/");
  p.scale(p.box.top + 8, base::fixed(p.plan.lens->focal[1], 0) + " mm");
  p.scale(p.box.top + p.box.height - 8, base::fixed(p.plan.lens->focal[0], 0));
}

StaveScale irisStaveScale(const answers::Answers& answers, const StaveBox& box) {
  double high = answers::stopsOf(11), low = answers::stopsOf(1.4);
  if (answers.evidence)
    for (const auto& sample : answers.evidence->samples) {
      high = std::max(high, answers::stopsOf(sample.iris.set));
      low = std::min(low, answers::stopsOf(sample.iris.set));
    }
  return {box.top + 8, box.height - 20, high, low};
}

namespace {

/// What each face in frame asks for, in its hue, with a comb where it is off.
void drawFaces(StavePainter& p, const StaveScale& scale) {
  const std::size_t stride = strideOf(p);
  const auto& samples = p.answers.evidence->samples;
  for (std::size_t who = 0; who < p.plan.performers.size(); ++who) {
    std::vector<Point> run;
    double worst = 0, worstX = 0;
    const auto flush = [&] {
      p.line(run, performerTone(who), 1.6);
      if (run.size() > 14 && std::abs(worst) >= 0.3) {
        const double y = scale.y(scale.low) > 0 ? run[run.size() / 2].y : 0;
        p.text({worstX, y - 4}, units::stopsText(worst), Tone::ink, false, Align::centre);
      }
      run.clear();
      worst = 0;
    };
    for (std::size_t i = 0; i < samples.size(); i += stride) {
      const auto& face = samples[i].performers[who];
      const bool shown = face.inFrame == optics::Showing::whole || face.inFrame == optics::Showing::part;
      if (!shown || !face.needed) {
        flush();
        continue;
      }
      const double measure = std::clamp(answers::stopsOf(*face.needed), scale.low, scale.high);
      run.push_back({p.view.x(samples[i].time), scale.y(measure)});
      if (face.offset && std::abs(*face.offset) > std::abs(worst)) worst = *face.offset, worstX = run.back().x;
    }
    flush();
  }
}

}  // namespace

void drawIrisStave(StavePainter& p) {
  if (!p.answers.evidence) return;
  const StaveScale scale = irisStaveScale(p.answers, p.box);
  for (const double stop : {11.0, 5.6, 2.8, 1.4}) {
    const double y = scale.y(answers::stopsOf(stop));
    if (y < p.box.top || y > p.box.top + p.box.height) continue;
    p.line({{p.view.labels, y}, {p.view.width - p.view.scales, y}}, Tone::line, 1);
    p.scale(y, (stop == 1.4 ? "T" : "") + base::shortest(stop));
  }
  drawCovers(p, snags::Move::Axis::iris);
  drawFaces(p, scale);
  std::vector<Point> set;
  for (const auto& knot : p.take.lens().iris().knots) set.push_back({p.view.x(knot.t), scale.y(knot.value)});
  p.line(set, Tone::lens, 2.4);
  drawKeys(p, "iris/");
}

}  // namespace wend::sheets
