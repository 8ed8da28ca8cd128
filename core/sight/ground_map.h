/// Where a standing person would be seen, cell by cell and step by step over a take.
///
/// For a person of that radius anywhere in the cell: half a cell's diagonal is added. Sound in continuous time: the
/// view of a whole step is drawn, heights, leaves and mirrors included (set_view.h), not that of instants.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/base/cancel.h"
#include "core/geometry/bit_grid.h"
#include "core/sight/seen_steps.h"
#include "core/sight/set_view.h"

namespace wend::sight {

struct GroundMapSpec {
  geometry::Grid grid;
  Span take;
  double step = 1.0 / 24;       ///< seconds of one step
  double radius = 0.28;         ///< of the person
  double floor = 0, top = 1.8;  ///< the floor they stand on and their height above the datum
  bool operator==(const GroundMapSpec&) const = default;
};

/// Error     more than what is seen may be called seen, never less: see set_view.h for what is given away. One floor
///           for the whole map. Who stands nearer than the radius to a wall is not promised anything: that ground is
///           taken.
/// Cost      memory: four bytes a run, eight in takes of 65,536 steps and more, and some hundred a step.
class GroundMap {
 public:
  /// `earlier` spares work where it was made of an equal scene and spec: only the steps in which the eye goes another
  /// way are looked at again.
  ///
  /// Requires  step > 0, radius > 0, top > floor, threads >= 1; `eye` may be asked by several threads at once.
  /// Ensures   (1) a cell not seen during a step holds no place at which `bodySight` sees such a person at any instant
  ///           of it; (2) a cell's runs are in order and apart; (3) the same runs on any number of threads;
  ///           (4) and with any earlier map or none.
  /// Fails     when cancelled: nothing.
  static std::optional<GroundMap> over(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec, int threads = 1,
                                       const base::Cancel& cancel = {}, const GroundMap* earlier = nullptr);

  const GroundMapSpec& spec() const { return spec_; }
  const SeenSteps& steps() const { return seen_; }
  auto seenRuns(std::size_t cell) const { return seen_.runs(cell); }
  Span timeOf(StepRange run) const { return seen_.timeOf(run); }
  /// How many steps were looked at to make it: fewer than there are when an earlier map held the others.
  std::uint32_t stepsFound() const { return stepsFound_; }
  /// Seen during the step that holds t; both, where two meet.
  bool seenAt(std::size_t cell, double t) const;
  /// One byte a cell: 1 where no seen run, grown by early and late seconds, meets `span`.
  std::vector<std::uint8_t> clearOver(Span span, double early, double late) const;
  /// Seconds from t to the next step in which each cell is seen, 0 while it is; infinite when it never is again.
  std::vector<float> secondsUntilSeen(double t) const;

 private:
  explicit GroundMap(const GroundMapSpec& spec) : spec_(spec) {}
  GroundMapSpec spec_;
  std::shared_ptr<const Scene> scene_;
  EyeSteps eyes_;
  SeenSteps seen_;
  std::uint32_t stepsFound_ = 0;
};

/// What a `GroundMap` of the same spec calls clear over the span, without finding the runs of every cell: stretches
/// that see nothing new are passed over many steps at a time (ever_seen.h).
///
/// Requires  as GroundMap::over; early >= 0, late >= 0.
/// Ensures   (1) a clear cell holds no place at which `bodySight` sees such a person at any instant of the span, grown
///           by `late` before and `early` after it; (2) the cells of `GroundMap::clearOver`, but for those that
///           `everSeen` may add; (3) the same cells on any number of threads.
/// Fails     when cancelled: nothing.
/// Cost      memory: some bits a cell, and the eye of every step.
std::optional<CellBits> clearGround(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec, Span span,
                                    double early, double late, int threads = 1, const base::Cancel& cancel = {});

/// The cells whose centre lies nearer than `radius` to what bars the way at an instant: walls, pieces and sheets that
/// reach between `stepOver` above the floor and a person's height, glass, standing leaves, shut openings that bar.
geometry::BitGrid takenGround(const SceneAt& now, const GroundMapSpec& spec, double stepOver = 0.15);

}  // namespace wend::sight
