/// Edits of keys: aim, focus, zoom, iris and density, doors, light areas, levels and pieces that move. The laws of
/// edits_marks.h hold.
///
/// The first key of an axis says how the take starts: it stands at 0 and stays there. A key may not start before the
/// one before it is done; of keys at one instant the later in the list wins.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "core/plan/references.h"

namespace wend::plan {

/// Starts at `seconds`; a time that hangs on a beat keeps hanging on it.
base::Result<Plan> keyTimeSet(const Plan& plan, const KeyRef& key, double seconds);
/// Takes `seconds`; 0 is a cut.
base::Result<Plan> keyOverSet(const Plan& plan, const KeyRef& key, double seconds);
base::Result<Plan> keyPaceSet(const Plan& plan, const KeyRef& key, Pace pace);

/// A copy of the key that holds at `seconds`, starting then and taking `over`: it shows what was shown before, ready to
/// be changed. On an axis without keys it becomes the first key, with its type's defaults, at 0 and at once.
base::Result<Plan> insertedKey(const Plan& plan, Axis axis, double seconds, double over, const std::string& id = {});

/// Without the key; what the one before it shows goes on. After the first, the second becomes the start of the take.
base::Result<Plan> removedKey(const Plan& plan, const KeyRef& key);

/// What an aim is on. Takes performers, props, points, bearings and travel.
base::Result<Plan> aimTargetSet(const Plan& plan, std::size_t key, Target on);
/// Where in the frame the target stands, half-frames, x right, y up.
base::Result<Plan> aimPlaceSet(const Plan& plan, std::size_t key, std::array<double, 2> place);
/// Full turns on top of the shortest way, clockwise positive.
base::Result<Plan> aimTurnsSet(const Plan& plan, std::size_t key, int turns);

/// What the focus is on. Takes performers, props, points, splits and distances.
base::Result<Plan> focusTargetSet(const Plan& plan, std::size_t key, Target on);

/// A focal length in mm; the key no longer follows a shot size.
base::Result<Plan> zoomFocalSet(const Plan& plan, std::size_t key, double focal);
/// A shot size's name and who it is of.
base::Result<Plan> zoomSizeSet(const Plan& plan, std::size_t key, const std::string& size, Target of);
/// All of the zoom.
base::Result<Plan> zoomKeysSet(const Plan& plan, std::vector<ZoomKey> keys);

/// A T-number.
base::Result<Plan> irisStopSet(const Plan& plan, std::size_t key, double stop);
/// All of the iris; none: planned by Wend.
base::Result<Plan> irisKeysSet(const Plan& plan, std::vector<IrisKey> keys);

/// What the variable density takes, in stops.
base::Result<Plan> densityStopsSet(const Plan& plan, std::size_t key, double stops);

/// Where a piece stands: metres from where it is drawn, and degrees clockwise about its centre.
base::Result<Plan> pieceMoveSet(const Plan& plan, const std::string& piece, std::size_t key, geometry::Vec offset,
                                double turn);

/// How far a leaf is open (axis door) or a fixture is up (axis level), 0 to 1.
base::Result<Plan> keyShareSet(const Plan& plan, const KeyRef& key, double share);
/// The readings of a light area's state; none: the area is transparent.
base::Result<Plan> readingsSet(const Plan& plan, const std::string& area, std::size_t state,
                               std::vector<Reading> readings);
/// What the cue is called and who gives it (doors, areas, levels, pieces).
base::Result<Plan> keyNamed(const Plan& plan, const KeyRef& key, const std::string& name, const std::string& by);

}  // namespace wend::plan
