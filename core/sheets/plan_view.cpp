#include "core/sheets/plan_view.h"

#include <algorithm>
#include <cmath>

#include "core/answers/glass_ground.h"
#include "core/base/text.h"
#include "core/sheets/text_tables.h"
#include "core/sheets/text_width.h"

namespace wend::sheets {

using namespace geometry;

namespace {

PlanView around(const Extent& extent, double width, double height, double margin) {
  PlanView view;
  view.width = width;
  view.height = height;
  view.centre = lerp(extent.low, extent.high, 0.5);
  const double across = std::max(1.0, extent.high.x - extent.low.x), up = std::max(1.0, extent.high.y - extent.low.y);
  view.pxPerMetre = std::max(1.0, std::min((width - 2 * margin) / across, (height - 2 * margin) / up));
  return view;
}

/// Where somebody stands or goes, as wide as they are.
void addBody(std::vector<Point>& points, Point at, double radius) {
  points.push_back(at - Vec{radius, radius});
  points.push_back(at + Vec{radius, radius});
}

void addWay(std::vector<Point>& points, const motion::Track* track, double radius) {
  constexpr double kTolerance = 0.05;
  if (!track) return;
  for (const auto& passed : track->path(kTolerance)) addBody(points, passed.place, radius);
}

/// Those who go along with the camera, where its marks are and between them.
void addCarried(std::vector<Point>& points, const answers::Take& take) {
  constexpr double kStep = 0.5;
  for (double t = 0; t <= take.length(); t += kStep)
    for (const auto& body : take.plan().camera.bodies)
      if (const plan::Crew* crew = take.plan().crew.find(body.crew))
        addBody(points, take.people().crewAt(take.plan().crew.indexOf(body.crew), t, take.view().sensorAt(t)).pos,
                crew->radius);
}

}  // namespace

PlanView wholeSet(const answers::Take& take, double width, double height) {
  return around(answers::groundGrid(take).extent(), width, height, 40);
}

PlanView wholeTake(const answers::Take& take, double width, double height) {
  constexpr double kMargin = 24;
  const plan::Plan& plan = take.plan();
  std::vector<Point> points;
  for (const auto& wall : plan.set.walls)
    for (const Point corner : wall.points) addBody(points, corner, wall.thickness / 2);
  addWay(points, &take.people().camera(), 0);
  addCarried(points, take);
  for (std::size_t i = 0; i < plan.performers.size(); ++i)
    addWay(points, take.people().performer(i), plan.performers[i].radius);
  for (std::size_t i = 0; i < plan.crew.size(); ++i) addWay(points, take.people().crew(i), plan.crew[i].radius);
  for (const auto& shelter : plan.shelters) addBody(points, shelter.pos, 0);
  for (const auto& gear : plan.gear) addBody(points, gear.pos, gear.radius);
  PlanView view = around(extentOf(points), width, height - kLegendHeight, kMargin);
  // The strip of the legend lies below.
  view.height = height;
  view.centre.y -= kLegendHeight / 2 / view.pxPerMetre;
  return view;
}

namespace {

/// The most of the picture's width that the scale bar takes.
constexpr double kScaleBarShare = 1.0 / 6;

struct LegendEntry {
  Fill fill;
  const char *words, *few;
};

/// How closely the legend is set.
struct LegendSetting {
  bool titled = true, few = false;
  double swatch = 34, gap = 8, apart = 14;
  const char* words(const LegendEntry& entry) const { return few ? entry.few : entry.words; }
  double width(const LegendEntry& entry) const { return swatch + gap + typeWidth(words(entry), kWords) + apart; }
  static constexpr double kWords = 12;
};

/// From the roomiest to the closest: no pattern is left out for the sake of words.
constexpr LegendSetting kLegendSettings[] = {
    {}, {true, false, 24, 5, 10}, {false, false, 22, 4, 9}, {false, true, 20, 4, 8}};

std::vector<LegendEntry> legendOf(Ground ground) {
  switch (ground) {
    case Ground::untilSeen:
      return {{{Tone::lit}, "now", "now"},
              {{Tone::grain, Pattern::dots}, "in 2 s", "2 s"},
              {{Tone::grain, Pattern::quincunx}, "in 5 s", "5 s"},
              {{Tone::grain, Pattern::sparse}, "in 15 s", "15 s"},
              {{}, "later", "later"},
              {{Tone::line2, Pattern::wave}, "never again", "never"}};
    case Ground::clearSpan:
      return {{{Tone::grain, Pattern::quincunx}, "seen", "seen"}};
    case Ground::light:
      return {{{Tone::line2, Pattern::rising}, "over", "over"}, {{Tone::line2, Pattern::falling}, "under", "under"}};
    case Ground::plain:
      break;
  }
  return {};
}

void legendSwatch(Drawing& drawing, Point topLeft, double width, const Fill& fill) {
  geometry::Box box{.topLeft = topLeft, .width = width, .height = 20, .radius = 2, .fill = {Tone::page}, .stroke = {}};
  drawing.add(box);
  box.fill = fill;
  box.stroke = {.tone = Tone::ink2, .width = 1, .dash = {}};
  drawing.add(box);
}

/// As roomy as fits between the picture's edge and the scale bar.
void legendEntries(Drawing& drawing, const std::string& title, const std::vector<LegendEntry>& entries) {
  constexpr double kLeft = 16;
  const double right = drawing.width * (1 - kScaleBarShare) - 64, y = drawing.height - kLegendHeight / 2 + 2;
  const double titleWidth = typeWidth(title, LegendSetting::kWords) + 20;
  const auto wide = [&](const LegendSetting& setting) {
    double width = kLeft + (setting.titled ? titleWidth : 0);
    for (const auto& entry : entries) width += setting.width(entry);
    return width;
  };
  const auto* setting = std::find_if(std::begin(kLegendSettings), std::prev(std::end(kLegendSettings)),
                                     [&](const auto& one) { return wide(one) <= right; });
  double x = kLeft;
  const auto write = [&](double at, const std::string& words) {
    drawing.add(Text{.at = {at, y + 3}, .text = words, .size = LegendSetting::kWords, .tone = Tone::ink2});
  };
  if (setting->titled) {
    write(x, title);
    x += titleWidth;
  }
  for (const auto& entry : entries) {
    if (x + setting->width(entry) > drawing.width * (1 - kScaleBarShare) - 48) return;
    legendSwatch(drawing, {x, y - 12}, setting->swatch, entry.fill);
    write(x + setting->swatch + setting->gap, setting->words(entry));
    x += setting->width(entry);
  }
}

/// The longest of these that fits a quarter of the picture.
void scaleBar(Drawing& drawing, const PlanView& view, plan::LengthUnit unit) {
  const double metresPerUnit = unit == plan::LengthUnit::metres ? 1 : 0.3048;
  double length = 1;
  for (const double candidate : {2.0, 4.0, 10.0, 20.0, 40.0})
    if (candidate * metresPerUnit * view.pxPerMetre < view.width * kScaleBarShare) length = candidate;
  const double px = length * metresPerUnit * view.pxPerMetre, right = view.width - 40, y = view.height - 12;
  drawing.add(geometry::Box{.topLeft = {right - px, y - 5},
                            .width = px,
                            .height = 5,
                            .radius = 0,
                            .fill = {Tone::page},
                            .stroke = {.tone = Tone::ink, .width = 1, .dash = {}}});
  for (int i = 0; i < 2; ++i)
    drawing.add(geometry::Box{.topLeft = {right - px + i * px / 2, y - 5},
                              .width = px / 4,
                              .height = 5,
                              .radius = 0,
                              .fill = {Tone::ink},
                              .stroke = {}});
  const std::string name = unit == plan::LengthUnit::metres ? " m" : " ft";
  drawing.add(Text{.at = {right - px, y - 9}, .text = "0", .size = 12, .align = Align::centre, .tone = Tone::ink2});
  drawing.add(Text{.at = {right, y - 9},
                   .text = base::fixed(length, 0) + name,
                   .size = 12,
                   .align = Align::centre,
                   .tone = Tone::ink2});
}

/// The middle of the north arrow.
Point northOf(const PlanView& view) {
  return {view.width - 30, 46};
}

void northArrow(Drawing& drawing, const PlanView& view) {
  const Point c = northOf(view);
  drawing.add(
      Text{.at = {c.x, c.y - 22}, .text = "N", .size = 12, .bold = true, .align = Align::centre, .tone = Tone::ink});
  Path arrow;
  arrow.rings = {{{c.x, c.y - 18}, {c.x + 7, c.y + 14}, {c.x, c.y + 9}, {c.x - 7, c.y + 14}}};
  arrow.closed = true;
  arrow.fill = {Tone::page};
  arrow.stroke = {.tone = Tone::ink, .width = 1.6, .dash = {}};
  drawing.add(arrow);
}

}  // namespace

bool groundShowsInGlass(const answers::Answers& answers) {
  return answers.glass && !answers.glass->empty();
}

Drawing planLegend(const PlanView& view, const PlanPicture& picture, plan::LengthUnit unit, bool glass) {
  Drawing drawing = view.sheet();
  drawing.add(geometry::Box{.topLeft = {0, view.height - kLegendHeight},
                            .width = view.width,
                            .height = kLegendHeight,
                            .radius = 0,
                            .fill = {Tone::panel},
                            .stroke = {}});
  const char* title = picture.ground == Ground::untilSeen   ? "Lens sees this ground"
                      : picture.ground == Ground::clearSpan ? "Ground clear over the span"
                      : picture.ground == Ground::light     ? "Light against the set stop"
                                                            : "Floor";
  auto entries = legendOf(picture.ground);
  if (glass && (picture.ground == Ground::untilSeen || picture.ground == Ground::clearSpan))
    entries.push_back({{Tone::line2, Pattern::rising}, "in glass", "glass"});
  legendEntries(drawing, title, entries);
  scaleBar(drawing, view, unit);
  northArrow(drawing, view);
  return drawing;
}

Drawing labelsLayer(const PlanView& view, Writing writing) {
  Drawing drawing = view.sheet();
  writing.reserved.push_back({0, view.height - kLegendHeight, view.width, view.height});
  const Point north = northOf(view);
  writing.reserved.push_back({north.x - 9, north.y - 34, north.x + 9, north.y + 16});
  placeLabels(drawing, std::move(writing.labels), std::move(writing.reserved));
  return drawing;
}

namespace {

/// Above the legend, or further up where somebody stands there.
Text cautionLine(const PlanView& view, const std::vector<Reserved>& signs) {
  std::string caution = kCaution;
  std::replace(caution.begin(), caution.end(), '\n', ' ');
  const Text lowest{
      .at = {16, view.height - 38}, .text = caution, .size = 12, .tone = Tone::ink2, .halo = Tone::window};
  for (Text line = lowest; line.at.y > 16; line.at.y -= 12)
    if (std::none_of(signs.begin(), signs.end(), [&](const auto& sign) { return overlap(sign, boxOf(line)); }))
      return line;
  return lowest;
}

}  // namespace

Drawing planDrawing(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture) {
  Drawing drawing = view.sheet();
  const auto instant = answers::instantAt(*answers.take, picture.time, answers.evidence.get());
  const auto add = [&](Drawing layer) {
    for (auto& shape : layer.shapes) drawing.shapes.push_back(std::move(shape));
  };
  Writing writing;
  add(groundLayer(answers, view, picture));
  add(wedgeLayer(answers, instant, view));
  for (Layer layer : {setLayer(*answers.take, view, picture.time), waysLayer(*answers.take, view, picture),
                      foundWaysLayer(answers, view, picture), nowLayer(answers, instant, view, picture)}) {
    add(std::move(layer.drawing));
    writing.add(std::move(layer.writing));
  }
  const Text caution = cautionLine(view, writing.reserved);
  writing.reserved.push_back(boxOf(caution));
  add(labelsLayer(view, std::move(writing)));
  add(planLegend(view, picture, answers.take->plan().display, groundShowsInGlass(answers)));
  drawing.add(caution);
  return drawing;
}

}  // namespace wend::sheets
