#include <cmath>

#include "core/base/text.h"
#include "core/geometry/tolerance.h"
#include "core/plan/invariants_parts.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Problems;

std::string at(const char* list, std::size_t i) {
  return std::string(list) + "/" + std::to_string(i);
}

double enclosed(const std::vector<Point>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i)
    twice += cross(outline[i] - outline[0], outline[(i + 1) % outline.size()] - outline[0]);
  return std::abs(twice) / 2;
}

double lengthOf(const std::vector<Point>& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += geometry::distance(line[i - 1], line[i]);
  return sum;
}

void addOutline(const std::vector<Point>& outline, const std::string& where, Problems& problems) {
  if (outline.size() < 3 || enclosed(outline) < geometry::kHold * geometry::kHold)
    problems.push_back({"outline-empty", where, std::to_string(outline.size()) + " points that enclose nothing",
                        "three or more points around some ground",
                        "Move a point off the line, or take the shape out."});
}

void addLine(const std::vector<Point>& line, const std::string& where, Problems& problems) {
  bool tooShort = line.size() < 2;
  for (std::size_t i = 1; i < line.size(); ++i)
    tooShort = tooShort || geometry::distance(line[i - 1], line[i]) < geometry::kHold;
  if (tooShort)
    problems.push_back({"line-short", where, "points on one spot", "two or more points at least 1 mm apart",
                        "Move the point away from its neighbour, or take it out."});
}

void addHeights(double bottom, double top, const std::string& where, Problems& problems) {
  if (!(top > bottom))
    problems.push_back({"top-below-bottom", where, base::shortest(top) + " m over " + base::shortest(bottom) + " m",
                        "a top above the bottom", "Raise the top, or lower the bottom."});
}

void addOpening(const Plan& plan, const Opening& opening, const std::string& where, Problems& problems) {
  addHeights(opening.sill, opening.head, where + "/head", problems);
  const Wall* wall = plan.set.walls.find(opening.wall);
  if (!wall) return;
  const double length = lengthOf(wall->points);
  const std::string name = called(opening.name, opening.id.text());
  if (opening.along.length() < geometry::kHold)
    problems.push_back({"opening-narrow", where + "/along", name + " without width", "an end after its start",
                        "Give the opening a width."});
  else if (opening.along.until > length + geometry::kTouch)
    problems.push_back({"opening-off-wall", where + "/along",
                        name + " up to " + base::fixed(opening.along.until, 3) + " m along the wall",
                        "at most " + base::fixed(length, 3) + " m, the wall's length",
                        "Move " + name + " along the wall first, or leave the wall longer."});
}

void addPiece(const Piece& piece, const std::string& where, Problems& problems) {
  addHeights(piece.bottom, piece.top, where + "/top", problems);
  if (const auto* outline = std::get_if<Outline>(&piece.shape))
    addOutline(outline->points, where + "/outline", problems);
  if (const auto* line = std::get_if<Line>(&piece.shape)) addLine(line->points, where + "/points", problems);
  if (piece.surface == Surface::mirror && std::holds_alternative<Disc>(piece.shape))
    problems.push_back({"mirror-round", where + "/surface", "a round mirror", "a mirror along a line or an outline",
                        "Draw the mirror as a line or an outline."});
}

void addArea(const Area& area, const std::string& where, Problems& problems) {
  if (const auto* outline = std::get_if<Outline>(&area.shape))
    addOutline(outline->points, where + "/outline", problems);
  if (std::holds_alternative<Line>(area.shape))
    problems.push_back(
        {"area-line", where, "an area along a line", "an outline or a disc", "Draw the area as an outline or a disc."});
}

}  // namespace

void addSetProblems(const Plan& plan, const Fresh& fresh, Problems& problems) {
  const Set& set = plan.set;
  for (std::size_t i = 0; i < set.rooms.size(); ++i) {
    if (!fresh(&Set::rooms, set.rooms, i)) continue;
    addOutline(set.rooms[i].outline, at("/set/rooms", i) + "/outline", problems);
    addHeights(set.rooms[i].floor, set.rooms[i].ceiling, at("/set/rooms", i) + "/ceiling", problems);
  }
  for (std::size_t i = 0; i < set.walls.size(); ++i) {
    if (!fresh(&Set::walls, set.walls, i)) continue;
    addLine(set.walls[i].points, at("/set/walls", i) + "/points", problems);
    addHeights(set.walls[i].bottom, set.walls[i].top, at("/set/walls", i) + "/top", problems);
  }
  for (std::size_t i = 0; i < set.openings.size(); ++i)
    if (fresh(&Set::openings, set.openings, i)) addOpening(plan, set.openings[i], at("/set/openings", i), problems);
  for (std::size_t i = 0; i < set.pieces.size(); ++i)
    if (fresh(&Set::pieces, set.pieces, i)) addPiece(set.pieces[i], at("/set/pieces", i), problems);
  for (std::size_t i = 0; i < set.areas.size(); ++i)
    if (fresh(&Set::areas, set.areas, i)) addArea(set.areas[i], at("/set/areas", i), problems);
  for (std::size_t i = 0; i < plan.cables.size(); ++i)
    if (fresh(&Plan::cables, plan.cables, i)) addLine(plan.cables[i].points, at("/cables", i) + "/points", problems);
}

}  // namespace wend::plan
