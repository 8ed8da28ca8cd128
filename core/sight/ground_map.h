/// Where a standing person would be seen, cell by cell and step by step over a take. Sampled: see Error.
///
/// At each step the frame is filled with rays; along each ray the distances at which a person standing there would be
/// seen are exact (half_plane.h), straight and in every mirror; the ground between neighbouring rays takes the answer
/// of the ray in its middle, and grows by the person's radius and half a cell's diagonal, because the map is for a
/// person anywhere in the cell.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/base/cancel.h"
#include "core/geometry/bit_grid.h"
#include "core/sight/windows.h"

namespace wend::sight {

struct GroundMapSpec {
  geometry::Grid grid;
  Span take;
  double step = 1.0 / 24;       ///< seconds between samples
  double radius = 0.28;         ///< of the person
  double floor = 0, top = 1.8;  ///< the floor they stand on and their height above the datum
  double sectorDegrees = 0.25;  ///< ground covered by one ray
};

/// Steps [from, until) at which a cell is seen.
struct StepRun {
  std::uint32_t from = 0, until = 0;
  bool operator==(const StepRun&) const = default;
};

/// Error     a sight between two steps, or thinner than a sector at its distance, is missed; a cell just outside seen
///           ground across a sheet or a thin piece may count as seen. One floor for the whole map.
/// Cost      memory: eight bytes a run.
class GroundMap {
 public:
  /// Requires  step > 0, radius > 0, top > floor.
  /// Ensures   (1) a cell's runs are in order and apart; (2) the same input gives the same runs.
  /// Fails     when cancelled: nothing.
  static std::optional<GroundMap> sampled(const Scene& scene, const EyeAt& eye, const GroundMapSpec& spec,
                                          const base::Cancel& cancel = {});

  const GroundMapSpec& spec() const { return spec_; }
  std::size_t steps() const { return steps_; }
  double timeOf(std::size_t step) const { return spec_.take.from + static_cast<double>(step) * spec_.step; }
  std::span<const StepRun> seenRuns(std::size_t cell) const {
    return {runs_.data() + starts_[cell], runs_.data() + starts_[cell + 1]};
  }
  std::size_t runs() const { return runs_.size(); }

  /// The time a run stands for: from the last step before it at which the cell is unseen to the first after it,
  /// within the take.
  Span timeOf(StepRun run) const;
  /// Seen at the step nearest to t.
  bool seenAt(std::size_t cell, double t) const;
  /// One byte a cell: 1 where no seen run, grown by early and late seconds, meets `span`.
  std::vector<std::uint8_t> clearOver(Span span, double early, double late) const;
  /// Seconds from t to the next step at which each cell is seen, 0 while it is; infinite when it never is again.
  std::vector<float> secondsUntilSeen(double t) const;

 private:
  GroundMapSpec spec_;
  std::size_t steps_ = 0;
  std::vector<std::uint32_t> starts_;
  std::vector<StepRun> runs_;
};

/// The ground seen at one instant, as the map sees it. Keeps its memory from instant to instant.
class SeenGround {
 public:
  explicit SeenGround(const GroundMapSpec& spec);
  ~SeenGround();
  /// The cells in which a standing person would be seen; valid until asked again.
  const geometry::BitGrid& at(const SceneAt& now, const Eye& eye);

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

/// The cells whose centre lies nearer than `radius` to what bars the way at an instant: walls, pieces and sheets that
/// reach between `stepOver` above the floor and a person's height, glass, standing leaves, shut openings that bar.
geometry::BitGrid takenGround(const SceneAt& now, const GroundMapSpec& spec, double stepOver = 0.15);

}  // namespace wend::sight
