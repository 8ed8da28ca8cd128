#include "core/crew/ground_time.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/check.h"

namespace wend::crew {
namespace {

/// Times closer than this are one: rounding in k times step must not bar a neighbour.
constexpr double kSame = 1e-9;

/// The instants of a step at most `look` apart, its ends and the corners in it included.
std::vector<double> looksOf(const StepClock& clock, std::size_t step, double look,
                            const std::vector<double>& corners = {}) {
  const double from = clock.at(step), until = clock.at(step + 1);
  const auto count = std::max(1L, static_cast<long>(std::ceil(clock.step / look - kSame)));
  std::vector<double> times;
  for (long i = 0; i <= count; ++i) times.push_back(geometry::lerp(from, until, double(i) / double(count)));
  const auto first = std::upper_bound(corners.begin(), corners.end(), from);
  times.insert(times.end(), first, std::lower_bound(first, corners.end(), until));
  std::sort(times.begin(), times.end());
  return times;
}

void addObstacle(geometry::BitGrid& cells, const Obstacle& obstacle, double radius) {
  const auto& points = obstacle.points;
  if (obstacle.closed) {
    cells.toggleRing(points);
    cells.fill();
  }
  const std::size_t pieces = points.size() - (obstacle.closed ? 0 : 1);
  if (pieces == 0) cells.addNear({points.front(), points.front()}, radius);
  for (std::size_t i = 0; i < pieces; ++i) cells.addNear({points[i], points[(i + 1) % points.size()]}, radius);
}

/// Of what a point moves between two looks, how much further than both it is at most on its way between them.
constexpr double kSwept = 0.55;

double furthestMove(const Obstacle& before, const Obstacle& now) {
  WEND_CHECK(before.points.size() == now.points.size());
  double furthest = 0;
  for (std::size_t i = 0; i < now.points.size(); ++i)
    furthest = std::max(furthest, geometry::distance(before.points[i], now.points[i]));
  return furthest;
}

}  // namespace

Steps StepClock::meeting(Span span) const {
  const double low = std::max(0.0, std::ceil((span.from - from) / step - 1 - kSame));
  const double high = std::min(double(steps), std::floor((span.until - from) / step + kSame) + 1);
  if (!(low < high)) return {};
  return {static_cast<std::size_t>(low), static_cast<std::size_t>(high)};
}

Steps StepClock::within(Span span) const {
  const double low = std::max(0.0, std::ceil((span.from - from) / step - kSame));
  const double high = std::min(double(steps), std::floor((span.until - from) / step + kSame));
  if (!(low < high)) return {};
  return {static_cast<std::size_t>(low), static_cast<std::size_t>(high)};
}

std::size_t StepClock::wholeSteps(double seconds) const {
  return static_cast<std::size_t>(std::max(0.0, std::floor(seconds / step + kSame)));
}

StepClock clockFor(Span take, double speed, double cell, double cells) {
  WEND_CHECK(speed > 0 && cell > 0 && cells > 0 && take.length() > 0);
  const double step = cells * cell / speed;
  return {take.from, step, static_cast<std::size_t>(std::max(1.0, std::ceil(take.length() / step - kSame)))};
}

GroundTime::GroundTime(const geometry::Grid& grid, const StepClock& clock, double radius)
    : grid_(grid),
      clock_(clock),
      radius_(radius),
      stand_(grid.cells(), clock.steps, true),
      move_(stand_),
      clear_(stand_) {}

void GroundTime::barSeen(std::size_t cell, Span span) {
  clear_.set(cell, clock_.meeting(span), false);
}

void GroundTime::setLow(CellTimes low) {
  WEND_CHECK(low.cells() == grid_.cells() && low.steps() == clock_.steps);
  low.addFrom(clear_);
  low_ = std::move(low);
}

void GroundTime::moveBars(long sooner, long later) {
  clear_ = clear_.withBarsMoved(sooner, later);
  if (low_) low_ = low_->withBarsMoved(sooner, later);
}

void GroundTime::keepClearOnly(const CellTimes& met) {
  clear_.keepOnly(met);
  if (low_) low_->keepOnly(met);
}

void GroundTime::takeCells(const geometry::BitGrid& stand, const geometry::BitGrid& move, Steps steps) {
  stand.eachSet([&](std::size_t cell) { stand_.set(cell, steps, false); });
  move.eachSet([&](std::size_t cell) { move_.set(cell, steps, false); });
}

void GroundTime::take(const Obstacle& obstacle) {
  take(obstacle, {0, clock_.steps});
}

void GroundTime::take(const Obstacle& obstacle, Steps steps) {
  geometry::BitGrid stand(grid_), move(grid_);
  const double reach = radius_ + obstacle.radius;
  addObstacle(stand, obstacle, reach);
  addObstacle(move, obstacle, reach + grid_.reach());
  takeCells(stand, move, steps);
}

void GroundTime::take(const Mover& mover, double look) {
  geometry::BitGrid stand(grid_), move(grid_);
  const double reach = radius_ + mover.radius;
  const auto isThere = [&](double t) { return !mover.isThere || mover.isThere(t); };
  for (std::size_t step = 0; step < clock_.steps; ++step) {
    const std::vector<double> times = looksOf(clock_, step, look, mover.corners);
    for (std::size_t i = 1; i < times.size(); ++i) {
      const double from = times[i - 1], until = times[i];
      if (!isThere((from + until) / 2) && !isThere(from) && !isThere(until)) continue;
      const geometry::Segment way{mover.at(from), mover.at(until)};
      stand.addNear(way, reach);
      move.addNear(way, reach + grid_.reach());
    }
    takeCells(stand, move, {step, step + 1});
    stand.clear();
    move.clear();
  }
}

void GroundTime::take(const std::function<std::vector<Obstacle>(double t)>& at, Steps steps, double look) {
  geometry::BitGrid stand(grid_), move(grid_);
  for (std::size_t step = steps.from; step < std::min(steps.until, clock_.steps); ++step) {
    std::vector<Obstacle> before;
    for (const double t : looksOf(clock_, step, look)) {
      const std::vector<Obstacle> now = at(t);
      for (std::size_t i = 0; i < before.size(); ++i) {
        const double reach = radius_ + now[i].radius + kSwept * furthestMove(before[i], now[i]);
        for (const Obstacle* end : {std::as_const(before).data() + i, now.data() + i}) {
          addObstacle(stand, *end, reach);
          addObstacle(move, *end, reach + grid_.reach());
        }
      }
      before = now;
    }
    takeCells(stand, move, {step, step + 1});
    stand.clear();
    move.clear();
  }
}

void GroundTime::close(Point centre, double radius, Steps steps) {
  geometry::BitGrid stand(grid_), move(grid_);
  stand.addNear({centre, centre}, radius + kSame);
  move.addNear({centre, centre}, radius + grid_.reach());
  takeCells(stand, move, steps);
}

void GroundTime::takeStand(const Obstacle& obstacle) {
  geometry::BitGrid stand(grid_);
  addObstacle(stand, obstacle, radius_ + obstacle.radius);
  stand.eachSet([&](std::size_t cell) { stand_.set(cell, {0, clock_.steps}, false); });
}

void GroundTime::take(std::size_t cell, Steps steps) {
  stand_.set(cell, steps, false);
  move_.set(cell, steps, false);
}

Ground GroundTime::at(std::size_t cell, Point p, Steps steps, const CellTimes& clear) const {
  const bool centred = geometry::distance(p, grid_.centre(cell)) < kSame;
  Ground best = Ground::taken;
  for (std::size_t step = steps.from; step < steps.until; ++step) {
    if (!move_.at(cell, step) && !(centred && stand_.at(cell, step))) continue;
    if (clear.at(cell, step)) return Ground::free;
    best = Ground::seen;
  }
  return best;
}

Ground GroundTime::at(Point p, double t, const CellTimes& clear) const {
  const Steps steps = clock_.meeting({t, t});
  Ground best = Ground::taken;
  for (const double dx : {-kSame, kSame}) {
    for (const double dy : {-kSame, kSame}) {
      const auto cell = grid_.cellAt(p + geometry::Vec{dx, dy});
      if (!cell || best == Ground::free) continue;
      const Ground here = at(*cell, p, steps, clear);
      if (here != Ground::taken) best = here;
    }
  }
  return best;
}

GroundAt GroundTime::at() const {
  return [this](Point p, double t) { return at(p, t, clear_); };
}

GroundAt GroundTime::atStill() const {
  return [this](Point p, double t) { return at(p, t, low()); };
}

CellTimes onlyAt(const std::vector<std::size_t>& cells, Steps steps, const geometry::Grid& grid,
                 const StepClock& clock) {
  CellTimes only(grid.cells(), clock.steps, true);
  for (std::size_t cell = 0; cell < grid.cells(); ++cell) only.set(cell, steps, false);
  for (const std::size_t cell : cells) only.set(cell, steps, true);
  return only;
}

namespace {

/// The columns of a row whose centres lie within the radius of every place.
Steps columnsNear(const std::vector<Point>& places, double radius, double y, const geometry::Grid& grid) {
  double low = 0, high = grid.nx;
  for (const Point& p : places) {
    const double off = y - p.y, squared = radius * radius - off * off;
    if (!(squared >= 0)) return {};
    const double middle = (p.x - grid.origin.x) / grid.cell - 0.5, half = std::sqrt(squared) / grid.cell;
    low = std::max(low, std::ceil(middle - half));
    high = std::min(high, std::floor(middle + half) + 1);
  }
  if (!(low < high)) return {};
  return {static_cast<std::size_t>(low), static_cast<std::size_t>(high)};
}

}  // namespace

CellTimes nearTo(const std::function<Point(double t)>& place, double metres, Steps steps, const geometry::Grid& grid,
                 const StepClock& clock, double look) {
  CellTimes near = onlyAt({}, steps, grid, clock);
  const double radius = metres - grid.reach();
  if (radius < 0) return near;
  for (std::size_t step = steps.from; step < std::min(steps.until, clock.steps); ++step) {
    // Along a straight way the greatest distance is at one of its ends.
    std::vector<Point> places;
    for (const double t : looksOf(clock, step, look)) places.push_back(place(t));
    for (int row = 0; row < grid.ny; ++row) {
      const std::size_t first = static_cast<std::size_t>(row) * static_cast<std::size_t>(grid.nx);
      const Steps columns = columnsNear(places, radius, grid.centre(0, row).y, grid);
      for (std::size_t column = columns.from; column < columns.until; ++column)
        near.set(first + column, {step, step + 1}, true);
    }
  }
  return near;
}

}  // namespace wend::crew
