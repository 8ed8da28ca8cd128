// The ground: floor against void, and one picture on it at a time. Steps are told by the pitch of dots and by lines
// between them, never by colour alone.
#include <cmath>

#include "core/answers/glass_ground.h"
#include "core/geometry/contour.h"
#include "core/plan/area_use.h"
#include "core/sheets/plan_view.h"
#include "core/sight/ground_map.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;

namespace {

class GroundPainter {
 public:
  GroundPainter(const Answers& answers, const PlanView& view, const PlanPicture& picture)
      : answers_(answers), plan_(answers.take->plan()), view_(view), picture_(picture), drawing_(view.sheet()) {
    if (answers.ground) floor_ = floorCells();
  }

  Drawing drawn() {
    drawing_.add(geometry::Box{.topLeft = {0, 0},
                               .width = view_.width,
                               .height = view_.height,
                               .radius = 0,
                               .fill = {Tone::window},
                               .stroke = {}});
    for (const auto& room : plan_.set.rooms) floor(room.outline, Tone::page);
    for (const auto& area : plan_.set.areas)
      if (outside(area)) floor(answers::outlineOf(area.shape), Tone::page);
    if (answers_.ground && picture_.ground == Ground::untilSeen) untilSeen();
    if (answers_.ground && picture_.ground == Ground::clearSpan) clearSpan();
    inGlass();
    if (picture_.ground == Ground::light) lightAreas();
    return std::move(drawing_);
  }

 private:
  static bool outside(const plan::Area& area) { return plan::usedAs(area, plan::AreaUse::outside); }

  void floor(const std::vector<Point>& outline, Tone tone) {
    Path path;
    path.rings = {picture(outline)};
    path.closed = true;
    path.fill = {tone};
    drawing_.add(path);
  }

  std::vector<Point> picture(const std::vector<Point>& points) const {
    std::vector<Point> ring;
    for (const Point p : points) ring.push_back(view_.toPicture(p));
    return ring;
  }

  /// The cells of the floor, rooms and outside areas together.
  BitGrid floorCells() const {
    BitGrid floor(answers_.ground->spec().grid);
    const auto add = [&](const std::vector<Point>& outline) {
      floor.toggleRing(outline);
      floor.fill();
    };
    for (const auto& room : plan_.set.rooms) add(room.outline);
    for (const auto& area : plan_.set.areas)
      if (outside(area)) add(answers::outlineOf(area.shape));
    return floor;
  }

  /// Cells of the floor whose value the test wants.
  template <class Wanted>
  std::vector<std::uint8_t> cellsWhere(Wanted wanted) const {
    std::vector<std::uint8_t> cells(answers_.ground->spec().grid.cells());
    for (std::size_t i = 0; i < cells.size(); ++i) cells[i] = wanted(i) && floor_->at(i);
    return cells;
  }

  void fillCells(const std::vector<std::uint8_t>& cells, const Fill& fill, const Stroke& stroke) {
    Path path;
    for (const auto& ring : outlines(answers_.ground->spec().grid, cells)) path.rings.push_back(picture(ring));
    if (path.rings.empty()) return;
    path.closed = true;
    path.fill = fill;
    path.stroke = stroke;
    drawing_.add(path);
  }

  void untilSeen() {
    const auto seconds = answers_.ground->secondsUntilSeen(picture_.time);
    struct Step {
      double from, until;
      Fill fill;
      Stroke stroke;
    };
    const Stroke solid{.tone = Tone::line2, .width = 1, .dash = {}},
        dashed{.tone = Tone::line2, .width = 1, .dash = {5, 4}};
    const Step steps[] = {
        {-1, 0, {Tone::lit}, {}},
        {0, 2, {Tone::grain, Pattern::dots}, solid},
        {2, 5, {Tone::grain, Pattern::quincunx}, solid},
        {5, 15, {Tone::grain, Pattern::sparse}, dashed},
    };
    for (const auto& step : steps)
      fillCells(cellsWhere([&](std::size_t i) { return seconds[i] > step.from && seconds[i] <= step.until; }),
                step.fill, step.stroke);
    fillCells(cellsWhere([&](std::size_t i) { return std::isinf(seconds[i]); }), {Tone::line2, Pattern::wave}, {});
  }

  void clearSpan() {
    const auto& rules = plan_.sightRules;
    const auto clear = answers_.ground->clearOver(picture_.span, rules.early, rules.late);
    fillCells(cellsWhere([&](std::size_t i) { return clear[i] == 0; }), {Tone::grain, Pattern::quincunx}, {});
    fillCells(cellsWhere([&](std::size_t i) { return clear[i] != 0; }), {},
              {.tone = Tone::ink, .width = 1.6, .dash = {}});
  }

  /// Lines over ground that shows in turned glass: from the picture's time on, or in the span that ground has to be
  /// clear for.
  void inGlass() {
    const auto* glass = answers_.glass.get();
    if (!glass || !answers_.ground || glass->grid != answers_.ground->spec().grid) return;
    const auto& rules = plan_.sightRules;
    Span span{picture_.time, answers_.take->length()};
    if (picture_.ground == Ground::clearSpan)
      span = {picture_.span.from - rules.late, picture_.span.until + rules.early};
    else if (picture_.ground != Ground::untilSeen)
      return;
    const auto shows = glass->cellsDuring(span);
    fillCells(cellsWhere([&](std::size_t i) { return shows[i] != 0; }), {Tone::line2, Pattern::rising},
              {.tone = Tone::line2, .width = 1, .dash = {2, 3}});
  }

  /// Dotted outlines, with strokes rising where a face there is over the set stop, falling where it is under.
  void lightAreas() {
    const double set = answers_.take->lens().irisAt(picture_.time);
    for (const auto& area : plan_.set.areas) {
      if (area.states.empty() && area.byClock.empty()) continue;
      const auto outline = answers::outlineOf(area.shape);
      const Extent extent = extentOf(outline);
      const Point middle = lerp(extent.low, extent.high, 0.5);
      const auto reading = answers_.take->lighting().areas.stopAt(middle, picture_.time);
      const double offset =
          reading
              ? light::offsetStops(
                    light::throughDensity(*reading, answers_.take->lighting().exposureAt(picture_.time).ndStops), set)
              : 0;
      Path path;
      path.rings = {picture(outline)};
      path.closed = true;
      if (offset > 1.0 / 3) path.fill = {Tone::line2, Pattern::rising};
      if (offset < -1.0 / 3) path.fill = {Tone::line2, Pattern::falling};
      path.stroke = {.tone = Tone::ink3, .width = 1.6, .dash = {0.1, 5}};
      drawing_.add(path);
    }
  }

  const Answers& answers_;
  const plan::Plan& plan_;
  const PlanView& view_;
  const PlanPicture& picture_;
  Drawing drawing_;
  std::optional<BitGrid> floor_;
};

}  // namespace

Drawing groundLayer(const Answers& answers, const PlanView& view, const PlanPicture& picture) {
  return GroundPainter(answers, view, picture).drawn();
}

}  // namespace wend::sheets
