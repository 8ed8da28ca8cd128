/// Edits of the set: walls, openings, pieces, areas, rooms. The laws of edits_marks.h hold. Whatever has no function
/// here goes through replaced() of edits_entities.h.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::plan {

/// The point `index` of a wall's line at `pos`. Openings keep their metres from the first point; refused when one would
/// hang over the wall's end.
base::Result<Plan> movedWallPoint(const Plan& plan, const std::string& wall, std::size_t index, Point pos);
/// A new point before `index`, or at the end. Openings keep their metres from the first point.
base::Result<Plan> insertedWallPoint(const Plan& plan, const std::string& wall, std::size_t index, Point pos);
base::Result<Plan> removedWallPoint(const Plan& plan, const std::string& wall, std::size_t index);
/// The wall, its openings with it, moved by the same way.
base::Result<Plan> movedWall(const Plan& plan, const std::string& wall, geometry::Vec by);
base::Result<Plan> wallHeightsSet(const Plan& plan, const std::string& wall, double bottom, double top);
base::Result<Plan> wallThicknessSet(const Plan& plan, const std::string& wall, double thickness);

/// From and until, metres from the wall's first point along it.
base::Result<Plan> openingAlongSet(const Plan& plan, const std::string& opening, geometry::Span along);
base::Result<Plan> openingSillSet(const Plan& plan, const std::string& opening, double sill);
base::Result<Plan> openingHeadSet(const Plan& plan, const std::string& opening, double head);
base::Result<Plan> openingThresholdSet(const Plan& plan, const std::string& opening, double threshold);
/// How its leaf moves; nothing: it has none.
base::Result<Plan> openingLeafSet(const Plan& plan, const std::string& opening, std::optional<LeafMoves> moves);
base::Result<Plan> openingFillSet(const Plan& plan, const std::string& opening, OpeningFill fill);

base::Result<Plan> movedPiece(const Plan& plan, const std::string& piece, geometry::Vec by);
base::Result<Plan> pieceReshaped(const Plan& plan, const std::string& piece, Footprint shape);
/// One corner of an outline or one point of a line.
base::Result<Plan> movedPiecePoint(const Plan& plan, const std::string& piece, std::size_t index, Point pos);
base::Result<Plan> pieceHeightsSet(const Plan& plan, const std::string& piece, double bottom, double top);
base::Result<Plan> pieceSurfaceSet(const Plan& plan, const std::string& piece, Surface surface);

/// The area with its readings moved by the same way.
base::Result<Plan> movedArea(const Plan& plan, const std::string& area, geometry::Vec by);
base::Result<Plan> areaReshaped(const Plan& plan, const std::string& area, Footprint shape);
base::Result<Plan> movedAreaPoint(const Plan& plan, const std::string& area, std::size_t index, Point pos);

base::Result<Plan> movedRoomPoint(const Plan& plan, const std::string& room, std::size_t index, Point pos);
base::Result<Plan> roomHeightsSet(const Plan& plan, const std::string& room, double floor, double ceiling);

/// The picture the set is drawn over; nothing: none.
base::Result<Plan> underlaySet(const Plan& plan, std::optional<Underlay> underlay);

}  // namespace wend::plan
