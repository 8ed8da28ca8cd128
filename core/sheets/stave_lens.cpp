// Staves of the lens: in frame, sharp, zoom, iris and faces.
#include <algorithm>
#include <functional>

#include "core/base/text.h"
#include "core/pulls/ease.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/stave.h"
#include "core/sheets/text_width.h"
#include "core/sheets/theme.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace geometry;

namespace {

enum class InSight { no, hidden, yes };

/// Whole and part are one on this stave.
InSight sightOf(optics::Showing showing) {
  return showing == optics::Showing::out      ? InSight::no
         : showing == optics::Showing::hidden ? InSight::hidden
                                              : InSight::yes;
}

}  // namespace

std::size_t sampleStride(const StavePainter& p) {
  const double perPx =
      static_cast<double>(p.answers.evidence->samples.size()) / std::max(1.0, p.view.pxPerSecond() * p.take.length());
  return std::max<std::size_t>(1, static_cast<std::size_t>(perPx));
}

Span drawnSpan(const snags::Evidence& evidence, Run run) {
  const auto& samples = evidence.samples;
  return {samples[run.first].time, samples[std::min(run.last + 1, samples.size() - 1)].time};
}

void drawInFrameStave(StavePainter& p) {
  if (!p.answers.evidence) return;
  const auto& samples = p.answers.evidence->samples;
  for (std::size_t i = 0; i < p.plan.performers.size(); ++i) {
    const double top = p.box.top + 2 + 13.0 * static_cast<double>(i);
    drawPerformer(p.drawing, {p.view.labels - 14, top + 5}, i, "", 5);
    const auto sightAt = [&](std::size_t k) { return sightOf(samples[k].performers[i].inFrame); };
    const auto alike = [&](std::size_t a, std::size_t b) { return sightAt(a) == sightAt(b); };
    for (const auto& run : runsAlike(samples.size(), alike)) {
      if (sightAt(run.first) == InSight::no) continue;
      const bool hidden = sightAt(run.first) == InSight::hidden;
      const Span span = drawnSpan(*p.answers.evidence, run);
      p.block(span.from, span.until, top, 10, hidden ? Fill{Tone::page} : Fill{performerTone(i)},
              {.tone = performerTone(i), .width = 1.25, .dash = {}});
    }
  }
}

StaveScale zoomStaveScale(const plan::Plan& plan, const StaveBox& box) {
  const double wide = plan.lens ? plan.lens->focal[0] : 20, tight = plan.lens ? plan.lens->focal[1] : 80;
  return {box.top + 6, box.height - 12, std::log2(tight) + 0.05, std::log2(wide) - 0.05};
}

namespace {

/// From just before the move until just after it: cover that goes on for longer says no more.
geometry::Span coverShown(const snags::Move& move, const pulls::CoverSpan& cover) {
  constexpr double kAround = 1;
  return {std::max(cover.span.from, move.from - kAround), std::min(cover.span.until, move.until + kAround)};
}

/// A thing that hides or would hide a change, and what it is called.
struct CoverBox {
  geometry::Span span;
  std::string words;
  Fill fill;
};

/// What hides the moves of an axis, hatched; where a change shows, where it would hide instead, empty.
std::vector<CoverBox> coverBoxes(const StavePainter& p, snags::Move::Axis axis) {
  std::vector<CoverBox> boxes;
  for (const auto& move : p.answers.evidence->moves) {
    if (move.axis != axis) continue;
    if (!move.coveredBy.empty())
      boxes.push_back({coverShown(move, move.coveredBy.front()), move.cover, {Tone::line2, Pattern::hatchCover}});
    if (move.better) boxes.push_back({move.better->span, "better: " + move.betterCover, {Tone::page}});
  }
  return boxes;
}

void drawCovers(StavePainter& p, const std::vector<CoverBox>& boxes) {
  for (const auto& box : boxes)
    p.block(box.span.from, box.span.until, p.box.top + 1, p.box.height - 2, box.fill,
            {.tone = Tone::line2, .width = 1, .dash = {}});
}

/// Names of the boxes over everything else of the stave, where `line` (the height of the track at a time) leaves room:
/// at the foot, else at the top. A name that would lie on another is left out.
void nameCovers(StavePainter& p, const std::vector<CoverBox>& boxes, const std::function<double(double)>& line) {
  constexpr double kClear = 17;
  double named = -100;
  for (const auto& box : boxes) {
    const double left = p.view.x(box.span.from) + 2, foot = p.box.top + p.box.height;
    const std::string name =
        cutToWidth(box.words, type::kLabel, std::max(box.span.length() * p.view.pxPerSecond() + 30, 60.0));
    if (left < named || name.empty()) continue;
    const bool low = std::max(line(box.span.from), line(box.span.until)) > foot - kClear;
    p.text({left, low ? p.box.top + 12 : foot - 5}, name, Tone::ink2);
    named = left + typeWidth(name, type::kLabel) + 4;
  }
}

/// How far the zoom may be off what is asked of it.
void drawZoomSlack(StavePainter& p, const StaveScale& scale, const std::vector<Point>& line) {
  const double off = std::log2(1 + p.plan.zoom.slackShare) / scale.perPx();
  if (off < 1 || line.size() < 2) return;
  Path tube;
  tube.rings = {{}};
  for (const auto& at : line) tube.rings[0].push_back({at.x, at.y - off});
  for (auto at = line.rbegin(); at != line.rend(); ++at) tube.rings[0].push_back({at->x, at->y + off});
  tube.closed = true;
  tube.fill = {Tone::sharp, Pattern::ticks, 0.8 * p.strength()};
  p.drawing.add(tube);
}

}  // namespace

void drawZoomStave(StavePainter& p) {
  if (!p.plan.lens || !p.answers.evidence) return;
  const StaveScale scale = zoomStaveScale(p.plan, p.box);
  const auto covers = coverBoxes(p, snags::Move::Axis::zoom);
  drawCovers(p, covers);
  std::vector<Point> line, eased;
  const std::size_t stride = sampleStride(p);
  for (std::size_t i = 0; i < p.answers.evidence->samples.size(); i += stride) {
    const auto& sample = p.answers.evidence->samples[i];
    if (!sample.lens) continue;
    const double run = *p.take.view().zoom().focalAt(sample.time, answers::ZoomTrack::Ends::eased);
    line.push_back({p.view.x(sample.time), scale.y(std::log2(sample.lens->focal))});
    eased.push_back({line.back().x, scale.y(std::log2(run))});
  }
  drawZoomSlack(p, scale, line);
  p.line(eased, Tone::lens, 2.4);
  nameCovers(p, covers, [&](double t) {
    const auto focal = p.take.view().focalAt(std::clamp(t, 0.0, p.take.length()));
    return focal ? scale.y(std::log2(*focal)) : p.box.top;
  });
  for (const auto& move : p.answers.evidence->moves)
    if (move.axis == snags::Move::Axis::zoom)
      p.text({p.view.x(move.until) + 8, std::max(scale.y(std::log2(move.valueAfter)) - 4, p.box.top + 12)},
             base::fixed(move.valueAfter, 0), Tone::ink);
  p.handles({"zoom/"});
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

/// What the iris may show, in stops.
void drawIrisTube(StavePainter& p, const StaveScale& scale) {
  Path tube;
  std::vector<Point> upper, lower;
  const auto close = [&] {
    if (upper.size() > 1) {
      upper.insert(upper.end(), lower.rbegin(), lower.rend());
      tube.rings.push_back(upper);
    }
    upper.clear();
    lower.clear();
  };
  for (const auto& sample : p.take.lens().irisTube()) {
    if (sample.open || sample.lo > sample.hi) {
      close();
      continue;
    }
    const auto y = [&](double stops) { return scale.y(std::clamp(stops, scale.low, scale.high)); };
    upper.push_back({p.view.x(sample.t), y(sample.hi)});
    lower.push_back({p.view.x(sample.t), y(sample.lo)});
  }
  close();
  if (tube.rings.empty()) return;
  tube.closed = true;
  tube.fill = {Tone::sharp, Pattern::ticks, 0.8 * p.strength()};
  p.drawing.add(tube);
}

/// What each face in frame asks for, in its hue, with a comb where it is off.
void drawFaces(StavePainter& p, const StaveScale& scale) {
  const std::size_t stride = sampleStride(p);
  const auto& samples = p.answers.evidence->samples;
  for (std::size_t who = 0; who < p.plan.performers.size(); ++who) {
    std::vector<Point> run;
    double worst = 0, worstX = 0;
    const auto flush = [&] {
      p.line(run, performerTone(who), 1.6);
      if (run.size() > 14 && std::abs(worst) >= 0.3) {
        const double y = std::max(run[run.size() / 2].y - 4, p.box.top + 13);
        p.text({worstX, y}, units::stopsText(worst), Tone::ink, false, Align::centre);
      }
      run.clear();
      worst = 0;
    };
    for (std::size_t i = 0; i < samples.size(); i += stride) {
      const auto& face = samples[i].performers[who];
      const bool shown = optics::shows(face.inFrame);
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
  auto covers = coverBoxes(p, snags::Move::Axis::iris);
  const auto ofDensity = coverBoxes(p, snags::Move::Axis::density);
  covers.insert(covers.end(), ofDensity.begin(), ofDensity.end());
  drawCovers(p, covers);
  drawIrisTube(p, scale);
  drawFaces(p, scale);
  std::vector<Point> set;
  for (const auto& knot : pulls::easedLine(p.take.lens().iris(), kEaseSteps))
    set.push_back({p.view.x(knot.t), scale.y(knot.value)});
  p.line(set, Tone::lens, 2.4);
  nameCovers(p, covers, [&](double t) { return scale.y(answers::stopsOf(p.take.lens().irisAt(t))); });
  p.handles({"iris/"});
}

}  // namespace wend::sheets
