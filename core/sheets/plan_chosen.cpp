// What of the set is chosen: its line or outline in the stroke of what is chosen, corners around what is a place.
#include "core/sheets/plan_chosen.h"

#include "core/geometry/band.h"
#include "core/sheets/glyphs.h"

namespace wend::sheets {

using namespace geometry;

namespace {

constexpr double kStroke = 3, kCorners = 18;

void outline(Drawing& drawing, const PlanView& view, const std::vector<Point>& points, bool closed) {
  if (points.size() < 2) return;
  Path path;
  path.rings.emplace_back();
  for (const Point p : points) path.rings[0].push_back(view.toPicture(p));
  path.closed = closed;
  path.stroke = {.tone = Tone::ink, .width = kStroke, .dash = {}};
  drawing.add(path);
}

}  // namespace

Drawing chosenLayer(const plan::Plan& plan, const PlanView& view, const Chosen& chosen) {
  Drawing drawing = view.sheet();
  if (chosen.kind != Chosen::Kind::thing || chosen.id.empty()) return drawing;
  const plan::Set& set = plan.set;
  if (const auto* wall = set.walls.find(chosen.id)) outline(drawing, view, wall->points, false);
  if (const auto* opening = set.openings.find(chosen.id))
    if (const auto* wall = set.walls.find(opening->wall)) {
      const Course course(wall->points);
      outline(drawing, view, {course.at(opening->along.from), course.at(opening->along.until)}, false);
    }
  if (const auto* piece = set.pieces.find(chosen.id)) {
    const auto* line = std::get_if<plan::Line>(&piece->shape);
    outline(drawing, view, line ? line->points : answers::outlineOf(piece->shape), line == nullptr);
  }
  if (const auto* shelter = plan.shelters.find(chosen.id)) drawChosen(drawing, view.toPicture(shelter->pos), kCorners);
  if (const auto* gear = plan.gear.find(chosen.id)) drawChosen(drawing, view.toPicture(gear->pos), kCorners);
  return drawing;
}

}  // namespace wend::sheets
