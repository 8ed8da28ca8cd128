#include "core/plan/edits_set.h"

#include "core/plan/edits_parts.h"

namespace wend::plan {

namespace {

using base::Result;
using geometry::Vec;

void moveAll(std::vector<Point>& points, Vec by) {
  for (Point& point : points) point = point + by;
}

void moveShape(Footprint& shape, Vec by) {
  if (auto* disc = std::get_if<Disc>(&shape)) disc->centre = disc->centre + by;
  if (auto* outline = std::get_if<Outline>(&shape)) moveAll(outline->points, by);
  if (auto* line = std::get_if<Line>(&shape)) moveAll(line->points, by);
}

Trouble movePoint(std::vector<Point>& points, std::size_t index, Point pos) {
  if (index >= points.size())
    return notThere("", "point " + std::to_string(index + 1), std::to_string(points.size()) + " points");
  points[index] = pos;
  return std::nullopt;
}

Trouble moveShapePoint(Footprint& shape, std::size_t index, Point pos) {
  if (auto* outline = std::get_if<Outline>(&shape)) return movePoint(outline->points, index, pos);
  if (auto* line = std::get_if<Line>(&shape)) return movePoint(line->points, index, pos);
  if (index > 0) return notThere("", "point " + std::to_string(index + 1), "a disc's centre");
  std::get<Disc>(shape).centre = pos;
  return std::nullopt;
}

/// Relative, and never up and out of the plan's folder.
bool isBelow(const std::string& file) {
  if (file.empty() || file.front() == '/' || file.find('\\') != std::string::npos) return false;
  const std::vector<std::string> parts = base::split(file, '/');
  return std::find(parts.begin(), parts.end(), "..") == parts.end();
}

}  // namespace

Result<Plan> movedWallPoint(const Plan& plan, const std::string& wall, std::size_t index, Point pos) {
  return changed<Wall>(plan, wall, [&](Wall& w) { return movePoint(w.points, index, pos); });
}

Result<Plan> insertedWallPoint(const Plan& plan, const std::string& wall, std::size_t index, Point pos) {
  return changed<Wall>(plan, wall, [&](Wall& w) {
    w.points.insert(w.points.begin() + static_cast<std::ptrdiff_t>(std::min(index, w.points.size())), pos);
  });
}

Result<Plan> removedWallPoint(const Plan& plan, const std::string& wall, std::size_t index) {
  return changed<Wall>(plan, wall, [&](Wall& w) -> Trouble {
    if (index >= w.points.size())
      return notThere("", "point " + std::to_string(index + 1), std::to_string(w.points.size()) + " points");
    w.points.erase(w.points.begin() + static_cast<std::ptrdiff_t>(index));
    return std::nullopt;
  });
}

Result<Plan> movedWall(const Plan& plan, const std::string& wall, Vec by) {
  return changed<Wall>(plan, wall, [&](Wall& w) { moveAll(w.points, by); });
}

Result<Plan> wallHeightsSet(const Plan& plan, const std::string& wall, double bottom, double top) {
  return changed<Wall>(plan, wall, [&](Wall& w) {
    w.bottom = bottom;
    w.top = top;
  });
}

Result<Plan> wallThicknessSet(const Plan& plan, const std::string& wall, double thickness) {
  return changed<Wall>(plan, wall, [&](Wall& w) { w.thickness = thickness; });
}

Result<Plan> openingAlongSet(const Plan& plan, const std::string& opening, geometry::Span along) {
  return changed<Opening>(plan, opening, [&](Opening& o) { o.along = along; });
}

Result<Plan> openingSillSet(const Plan& plan, const std::string& opening, double sill) {
  return changed<Opening>(plan, opening, [&](Opening& o) { o.sill = sill; });
}

Result<Plan> openingHeadSet(const Plan& plan, const std::string& opening, double head) {
  return changed<Opening>(plan, opening, [&](Opening& o) { o.head = head; });
}

Result<Plan> openingThresholdSet(const Plan& plan, const std::string& opening, double threshold) {
  return changed<Opening>(plan, opening, [&](Opening& o) { o.threshold = threshold; });
}

Result<Plan> openingLeafSet(const Plan& plan, const std::string& opening, std::optional<LeafMoves> moves) {
  return changed<Opening>(plan, opening, [&](Opening& o) { o.moves = std::move(moves); });
}

Result<Plan> openingFillSet(const Plan& plan, const std::string& opening, OpeningFill fill) {
  return changed<Opening>(plan, opening, [&](Opening& o) { o.fill = fill; });
}

Result<Plan> movedPiece(const Plan& plan, const std::string& piece, Vec by) {
  return changed<Piece>(plan, piece, [&](Piece& p) { moveShape(p.shape, by); });
}

Result<Plan> pieceReshaped(const Plan& plan, const std::string& piece, Footprint shape) {
  return changed<Piece>(plan, piece, [&](Piece& p) { p.shape = std::move(shape); });
}

Result<Plan> movedPiecePoint(const Plan& plan, const std::string& piece, std::size_t index, Point pos) {
  return changed<Piece>(plan, piece, [&](Piece& p) { return moveShapePoint(p.shape, index, pos); });
}

Result<Plan> pieceHeightsSet(const Plan& plan, const std::string& piece, double bottom, double top) {
  return changed<Piece>(plan, piece, [&](Piece& p) {
    p.bottom = bottom;
    p.top = top;
  });
}

Result<Plan> pieceSurfaceSet(const Plan& plan, const std::string& piece, Surface surface) {
  return changed<Piece>(plan, piece, [&](Piece& p) {
    p.surface = surface;
    if (surface != Surface::mirror) p.reflects.reset();
  });
}

Result<Plan> movedArea(const Plan& plan, const std::string& area, Vec by) {
  return changed<Area>(plan, area, [&](Area& a) {
    moveShape(a.shape, by);
    for (AreaState& state : a.states)
      for (Reading& reading : state.readings) reading.pos = reading.pos + by;
  });
}

Result<Plan> areaReshaped(const Plan& plan, const std::string& area, Footprint shape) {
  return changed<Area>(plan, area, [&](Area& a) { a.shape = std::move(shape); });
}

Result<Plan> movedAreaPoint(const Plan& plan, const std::string& area, std::size_t index, Point pos) {
  return changed<Area>(plan, area, [&](Area& a) { return moveShapePoint(a.shape, index, pos); });
}

Result<Plan> movedRoomPoint(const Plan& plan, const std::string& room, std::size_t index, Point pos) {
  return changed<Room>(plan, room, [&](Room& r) { return movePoint(r.outline, index, pos); });
}

Result<Plan> roomHeightsSet(const Plan& plan, const std::string& room, double floor, double ceiling) {
  return changed<Room>(plan, room, [&](Room& r) {
    r.floor = floor;
    r.ceiling = ceiling;
  });
}

Result<Plan> underlaySet(const Plan& plan, std::optional<Underlay> underlay) {
  if (underlay) {
    if (!isBelow(underlay->file))
      return base::Problem{"file-outside", "/set/underlay/file", underlay->file, "a file below the plan's folder",
                           "Copy the picture next to the plan and choose it there."};
    const Underlay before = plan.set.underlay.value_or(Underlay{});
    if (Trouble trouble = settle(before, *underlay, "/set/underlay")) return *trouble;
  }
  if (plan.set.underlay == underlay) return plan;
  Plan next = plan;
  next.set.underlay = std::move(underlay);
  return next;
}

}  // namespace wend::plan
