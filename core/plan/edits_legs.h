/// Edits of legs, each named by the mark it starts at. The laws of edits_marks.h hold.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "core/plan/references.h"

namespace wend::plan {

/// Straight and smooth keep `via`. A leg that becomes an arc is a quarter turn, clockwise, and drops its `via`; between
/// marks in one place it needs a centre first (legCentred).
base::Result<Plan> legShaped(const Plan& plan, const MarkRef& from, LegShape shape);
base::Result<Plan> legPaced(const Plan& plan, const MarkRef& from, Pace pace);

/// An arc that turns by exactly `sweep` degrees, clockwise positive; the centre follows. Between marks in one place the
/// sweep is a number of whole turns and the centre stays.
base::Result<Plan> legSwept(const Plan& plan, const MarkRef& from, double sweep);

/// An arc about exactly `centre`, which must be equally far from both marks within 5 mm (nearestCentre in arc_leg.h
/// gives the nearest that is). The sweep becomes the one nearest to what it was; a leg that was no arc turns the short
/// way, and between marks in one place once clockwise.
base::Result<Plan> legCentred(const Plan& plan, const MarkRef& from, Point centre);

/// The points a straight or smooth leg passes through.
base::Result<Plan> legVia(const Plan& plan, const MarkRef& from, std::vector<Point> via);

}  // namespace wend::plan
