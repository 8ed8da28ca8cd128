/// The ground over a take as one body may use it: where it may stand and where it may move, step by step.
///
/// Frame     plan metres on a grid of cells, seconds from the take's start. Step k lasts from `at(k)` to `at(k + 1)`.
/// Stops holding for what is quicker than a step inside it: everything that bars a cell for an instant bars it for the
///           whole step, so a gap in time shorter than two steps may be lost. Nothing is ever free that is barred.
#pragma once

#include <functional>
#include <optional>

#include "core/crew/bodies.h"
#include "core/crew/cell_times.h"
#include "core/crew/route.h"
#include "core/geometry/bit_grid.h"

namespace wend::crew {

/// A take cut into equal steps.
struct StepClock {
  double from = 0;
  double step = 0.5;
  std::size_t steps = 0;

  double at(std::size_t instant) const { return from + static_cast<double>(instant) * step; }
  /// The steps that share an instant with the span, ends included; none outside the take.
  Steps meeting(Span span) const;
  /// The steps wholly inside the span.
  Steps within(Span span) const;
  /// Whole steps that last at most `seconds`.
  std::size_t wholeSteps(double seconds) const;
  bool operator==(const StepClock&) const = default;
};

/// The clock that covers the take in steps in which somebody at `speed` walks `cells` cells: the last step may end
/// after the take. Requires all positive.
StepClock clockFor(Span take, double speed, double cell, double cells = 5);

/// Something that moves: a disc.
struct Mover {
  std::function<Point(double t)> at;
  double radius = 0.28;
  std::function<bool(double t)> isThere = {};  ///< none: all along
  std::vector<double> corners = {};            ///< times at which it turns, comes or goes; in order
};

/// For one body of a given radius.
///
/// Ensures   (1) `stand` is Yes at a cell and step when nothing comes nearer to the cell's centre than the body's
///           radius; (2) `move` is Yes when nothing comes nearer than that to any point of the cell: where radius > 0,
///           a straight way whose cells are all Yes crosses no wall, so there are no walls between cells;
///           (3) `clear` is Yes when a body anywhere in the cell is not seen, bars included; `low` is Yes there and
///           where nobody sees it while it keeps still and crouches.
class GroundTime {
 public:
  /// All free and clear.
  GroundTime(const geometry::Grid& grid, const StepClock& clock, double radius);

  const geometry::Grid& grid() const { return grid_; }
  const StepClock& clock() const { return clock_; }
  double radius() const { return radius_; }
  const CellTimes& stand() const { return stand_; }
  const CellTimes& move() const { return move_; }
  const CellTimes& clear() const { return clear_; }
  /// What counts for who stands; the same as `clear` until it is set.
  const CellTimes& low() const { return low_ ? *low_ : clear_; }

  /// Bars the cell's every step that meets the span; sight bars come with their early and late seconds in them.
  void barSeen(std::size_t cell, Span span);
  /// Where and when one who stands may crouch, unseen. Requires its size to be the grid's and the clock's, and every
  /// sight to have been barred before.
  /// Ensures   low is Yes where either this or `clear` is.
  void setLow(CellTimes low);
  /// Both maps with their bars moved, as `CellTimes::withBarsMoved` does.
  void moveBars(long sooner, long later);
  /// Both maps, No where `met` is.
  void keepClearOnly(const CellTimes& met);

  /// What stands there all along: a disc, line or outline, swollen by its radius.
  void take(const Obstacle& obstacle);
  /// During one step: a leaf on its way, say.
  void take(const Obstacle& obstacle, Steps steps);
  /// A mover, straight between looks at its corners and at most `look` seconds apart: one that bends with a m/s^2
  /// strays a look^2 / 8 off that, 4 mm at 3 m/s^2 and a tenth of a second. Between two looks it is there when it is at
  /// either or half way.
  void take(const Mover& mover, double look = 0.1);
  /// What moves otherwise during some steps, a leaf on its way say: `at` gives the same things in the same order each
  /// time. Between two looks each is the wider by half of what its points move and a tenth of that, for points on
  /// circles, so the looks must lie within a radian of a turn.
  void take(const std::function<std::vector<Obstacle>(double t)>& at, Steps steps, double look = 0.1);
  /// Bars being within `radius` of a place, standing or passing, whatever the body's own radius.
  void close(Point centre, double radius, Steps steps);
  /// Bars standing, not passing, where a body would touch what is there all along.
  void takeStand(const Obstacle& obstacle);
  /// A cell, both ways.
  void take(std::size_t cell, Steps steps);

  /// What the same body meets at a place and time.
  /// Ensures   a place on the border of cells is as free as the freest of them, and an instant between two steps alike,
  ///           for Yes holds for a cell and a step with their borders; at a cell's centre standing is enough. Outside
  ///           the grid and the take everything is taken. Requires the ground to outlive what is given.
  GroundAt at() const;
  /// The same for one who keeps still, crouching where they may.
  GroundAt atStill() const;

 private:
  void takeCells(const geometry::BitGrid& stand, const geometry::BitGrid& move, Steps steps);
  Ground at(std::size_t cell, Point p, Steps steps, const CellTimes& clear) const;
  Ground at(Point p, double t, const CellTimes& clear) const;

  geometry::Grid grid_;
  StepClock clock_;
  double radius_;
  CellTimes stand_, move_, clear_;
  std::optional<CellTimes> low_;
};

/// Yes at the cells of `cells` during the steps, and everywhere at all others.
CellTimes onlyAt(const std::vector<std::size_t>& cells, Steps steps, const geometry::Grid& grid,
                 const StepClock& clock);

/// Yes where every point of the cell stays within `metres` of a moving place during the step, and at all steps outside
/// `steps`. The place is looked at every `look` seconds and is straight between.
CellTimes nearTo(const std::function<Point(double t)>& place, double metres, Steps steps, const geometry::Grid& grid,
                 const StepClock& clock, double look = 0.1);

}  // namespace wend::crew
