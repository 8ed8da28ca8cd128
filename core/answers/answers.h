/// Answers: everything Wend computes of one plan, stamped with that plan. Made here, read by windows, papers and verbs.
///
/// Ensures   (1) the same plan gives the same answers, on one thread or two, with or without what was computed before
///           (2) answers never change once made: a newer plan gets new ones
#pragma once

#include <memory>

#include "core/answers/take.h"
#include "core/base/cancel.h"
#include "core/base/result.h"
#include "core/geometry/bit_grid.h"
#include "core/snags/evidence.h"
#include "core/snags/rules.h"

namespace wend::sight {
class GroundMap;
}

namespace wend::answers {

using snags::Evidence;
using snags::Instant;

struct FoundRoutes;
struct GlassGround;

/// What the lens sees of the ground, of people who stand and of people who crouch.
struct RouteMaps {
  std::shared_ptr<const sight::GroundMap> upright;
  /// Null where it would change nothing: nobody is shorter when they crouch, or every shelter is out of sight anyway.
  std::shared_ptr<const sight::GroundMap> low;
};

struct Answers {
  TakePtr take;  ///< holds the plan
  std::shared_ptr<const Evidence> evidence;
  std::shared_ptr<const snags::Snags> snags;
  std::shared_ptr<const sight::GroundMap> ground;  ///< null until asked for, or without a lens
  std::shared_ptr<const GlassGround> glass;        ///< null until asked for (glass_ground.h), or without a lens
  std::shared_ptr<const FoundRoutes> routes;       ///< null until asked for (routes.h), or with nobody to find one for
  RouteMaps routeGround;                           ///< that the routes were found on
};
using AnswersPtr = std::shared_ptr<const Answers>;

/// The instant at t, people's sight included. `nextSeen` is filled where `evidence` is given; it may be of an older
/// plan only in so far as the caller shows it as stale.
/// Requires  0 <= t <= take.length()
Instant instantAt(const Take& take, double t, const Evidence* evidence = nullptr);

/// The same without what only the shown instant needs: crew sight, timecode, background.
Instant sampleAt(const Take& take, double t);

/// Brightest and darkest tenth of what the frame's rays meet. Nothing without a lens or where nothing is known.
std::optional<snags::Background> backgroundAt(const Take& take, const Instant& instant);

/// The whole take, a sample a frame. Of `earlier` answers, of whatever plan, it takes over what the edits between left
/// alone (reuse.h); the evidence is the same without. Fails only when cancelled (code "cancelled").
base::Result<std::shared_ptr<const Evidence>> evidenceOf(const Take& take, const base::Cancel& cancel = {},
                                                         const Answers* earlier = nullptr);

struct GroundQuestion {
  double height = 1.8;  ///< of the person, metres above the datum
};

/// Cells of the plan's size over the set and a metre around it; larger ones where that would be too many.
geometry::Grid groundGrid(const Take& take);

/// When the lens sees a person at each cell of the ground, frame by frame and between frames. An `earlier` map spares
/// the steps it has alike. Fails when cancelled or without a lens.
base::Result<std::shared_ptr<const sight::GroundMap>> groundOf(const Take& take, const GroundQuestion& question = {},
                                                               const base::Cancel& cancel = {},
                                                               const sight::GroundMap* earlier = nullptr);

/// Take, evidence and snags of a plan. Fails with what keeps the plan from being resolved.
base::Result<AnswersPtr> answersOf(const plan::PlanPtr& plan, const base::Cancel& cancel = {});
/// The same of a take resolved before. Fails only when cancelled.
base::Result<AnswersPtr> answersOf(const TakePtr& take, const base::Cancel& cancel = {});

}  // namespace wend::answers
