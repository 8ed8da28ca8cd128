/// Edits of marks: where and when somebody or the camera is. Plan metres, seconds from the take's start.
///
/// Every edit is a new plan from an old one. Requires nothing of its arguments: what cannot be done comes back as a
/// Problem that says where, what was found, what was expected and what to do.
/// Ensures   (1) numbers that come in are put on their step (0.1 mm, 0.01 degree, 1 ms), others stay to the bit
///           (2) the new plan has no problem (invariants.h) that the old one had not
///           (3) entities that did not change are shared; an edit that changes nothing returns an equal plan that
///           shares everything
///           (4) arcs at a moved mark stay true (arc_leg.h), see movedMark
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "core/plan/references.h"

namespace wend::plan {

/// The mark at `pos`; a crew mark leaves its shelter. An arc at either side keeps its centre while the mark stays on
/// its circle; off it, the centre goes to the nearest point that serves both ends, and the sweep follows. The two marks
/// of an arc by whole turns are one place on the floor and move together, about the centre as it is.
base::Result<Plan> movedMark(const Plan& plan, const MarkRef& mark, Point pos);

/// Several marks moved by the same way, with the `via` points and centres of legs between two of them.
base::Result<Plan> movedMarks(const Plan& plan, const std::vector<MarkRef>& marks, geometry::Vec by);

/// Camera marks: height of the sensor above the datum.
base::Result<Plan> markHeightSet(const Plan& plan, const MarkRef& mark, double height);
/// Bearing, degrees, a performer faces while on the mark; nothing: along the way.
base::Result<Plan> markFacingSet(const Plan& plan, const MarkRef& mark, std::optional<double> facing);
base::Result<Plan> markPostureSet(const Plan& plan, const MarkRef& mark, Posture posture);
base::Result<Plan> markTapedSet(const Plan& plan, const MarkRef& mark, bool taped);
/// Crew: stands in a shelter instead of at a place.
base::Result<Plan> markSheltered(const Plan& plan, const MarkRef& mark, const std::string& shelter);

/// Reached at `seconds`; a time that hangs on a beat keeps hanging on it. A mark that is left at once stays so.
base::Result<Plan> arrivalSet(const Plan& plan, const MarkRef& mark, double seconds);
/// Left at `seconds`; nothing: at once.
base::Result<Plan> leavingSet(const Plan& plan, const MarkRef& mark, std::optional<double> seconds);
/// Reached and left `by` seconds later (earlier when negative).
base::Result<Plan> shiftedMark(const Plan& plan, const MarkRef& mark, double by);

/// A new mark at `pos`, reached at `seconds`: before the first mark, after the last, or in the leg that is under way at
/// that time. The leg is divided: both halves keep its shape and pace, `via` points go to the half they lie in, an arc
/// gives two arcs. Height is taken along the leg. Refused while the track stands on a mark.
base::Result<Plan> insertedMark(const Plan& plan, const TrackRef& track, double seconds, Point pos);

/// A new mark in the leg that is under way at `seconds`, at the place the leg has reached then. Only for straight legs
/// and arcs at even pace, whose places follow from their own marks; for others read the place from the path and use
/// insertedMark.
base::Result<Plan> insertedMarkAt(const Plan& plan, const TrackRef& track, double seconds);

/// A new mark in the leg that starts at `mark`, at the point of a straight leg or arc nearest to `near`, when even pace
/// gets there.
base::Result<Plan> insertedMarkNear(const Plan& plan, const MarkRef& mark, Point near);

/// Without the mark. The legs at its sides become one: two arcs about one centre add their sweeps, two legs of one
/// shape keep it and their `via` points; other pairs become a straight leg. The camera keeps at least one mark.
base::Result<Plan> removedMark(const Plan& plan, const MarkRef& mark);

}  // namespace wend::plan
