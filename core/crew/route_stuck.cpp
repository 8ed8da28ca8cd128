#include "core/crew/route_stuck.h"

#include <algorithm>

#include "core/base/check.h"
#include "core/geometry/runs.h"

namespace wend::crew {
namespace {

/// Whether variations of a task have a route.
class Trial {
 public:
  Trial(const RouteTask& task, const base::Cancel& cancel) : task_(task), cancel_(cancel) {}

  bool cancelled() const { return cancelled_; }
  const RouteTask& task() const { return task_; }

  bool has(const RouteTask& task) {
    if (cancelled_) return false;
    const auto outlook = outlookOf(task, cancel_);
    cancelled_ = !outlook;
    return outlook && outlook->exists;
  }
  bool hasWithout(std::size_t need) {
    RouteTask less = task_;
    less.needs.erase(less.needs.begin() + static_cast<std::ptrdiff_t>(need));
    return has(less);
  }
  bool hasAt(double speed) {
    RouteTask faster = task_;
    faster.speed = speed;
    return has(faster);
  }
  bool hasWithBars(long sooner, long later) {
    GroundTime ground = *task_.ground;
    ground.moveBars(sooner, later);
    RouteTask moved = task_;
    moved.ground = &ground;
    return has(moved);
  }
  bool hasAnywhere() {
    RouteTask open = task_;
    open.ends.clear();
    return !task_.ends.empty() && has(open);
  }
  bool hasBeingAnywhere() {
    if (!task_.standWithin && !task_.walkWithin) return false;
    RouteTask open = task_;
    open.standWithin = open.walkWithin = nullptr;
    return has(open);
  }

 private:
  const RouteTask& task_;
  const base::Cancel& cancel_;
  bool cancelled_ = false;
};

/// The least of 1 .. most for which `frees` holds, which from there on it does.
template <class Frees>
std::optional<std::size_t> leastSteps(std::size_t most, Frees frees) {
  if (most == 0 || !frees(most)) return std::nullopt;
  std::size_t bad = 0, good = most;
  while (good - bad > 1) {
    const std::size_t middle = (bad + good) / 2;
    (frees(middle) ? good : bad) = middle;
  }
  return good;
}

std::optional<double> speedThatFrees(Trial& trial, double times) {
  double bad = trial.task().speed, good = bad * times;
  if (!trial.hasAt(good)) return std::nullopt;
  while (good > bad * 1.01) {
    const double middle = (bad + good) / 2;
    (trial.hasAt(middle) ? good : bad) = middle;
  }
  return good;
}

/// Gathers by how much the bars met on one stretch would have to give way.
struct GivingWay {
  std::size_t later = 0, earlier = 0;
  bool canBeLater = true, canBeEarlier = true;

  void meet(const std::vector<Steps>& bars, std::size_t step, std::size_t steps) {
    const auto bar = std::find_if(bars.begin(), bars.end(), [&](Steps b) { return b.from <= step && step < b.until; });
    if (bar == bars.end()) return;
    canBeLater = canBeLater && bar->from > 0;
    canBeEarlier = canBeEarlier && bar->until < steps;
    later = std::max(later, step + 1 - bar->from);
    earlier = std::max(earlier, bar->until - step);
  }
};

Exposure exposureOf(const ExposedRoute& exposed, const GroundTime& ground, Steps steps) {
  const StepClock& clock = ground.clock();
  GivingWay way;
  for (std::size_t step = steps.from; step < steps.until; ++step) {
    const CellTimes& clear = exposed.route.walking[step] ? ground.clear() : ground.low();
    for (const std::size_t cell : cellsOf(exposed.route, step, ground.grid()))
      way.meet(clear.runs(cell, false), step, clock.steps);
  }
  Exposure exposure{{clock.at(steps.from), clock.at(steps.until)},
                    ground.grid().centre(std::size_t{exposed.route.cells[steps.from]}),
                    std::nullopt,
                    std::nullopt};
  if (way.canBeLater) exposure.laterBy = static_cast<double>(way.later) * clock.step;
  if (way.canBeEarlier) exposure.earlierBy = static_cast<double>(way.earlier) * clock.step;
  return exposure;
}

std::vector<Exposure> exposuresOf(const ExposedRoute& exposed, const GroundTime& ground) {
  const auto& seen = exposed.seen;
  const auto follows = [&](std::size_t a, std::size_t b) { return seen[b] == seen[a] + 1; };
  std::vector<Exposure> exposures;
  for (const auto& run : geometry::runsAlike(seen.size(), follows))
    exposures.push_back(exposureOf(exposed, ground, {seen[run.first], seen[run.last] + 1}));
  return exposures;
}

void addWhatFrees(Stuck& stuck, Trial& trial, const FreeingLimits& limits) {
  const StepClock& clock = trial.task().ground->clock();
  for (std::size_t need = 0; need < trial.task().needs.size(); ++need)
    if (trial.hasWithout(need)) stuck.needs.push_back(need);
  stuck.anyEnd = trial.hasAnywhere();
  stuck.anyStand = trial.hasBeingAnywhere();
  stuck.speed = speedThatFrees(trial, limits.speed);
  const auto early = leastSteps(clock.wholeSteps(limits.early),
                                [&](std::size_t n) { return trial.hasWithBars(-static_cast<long>(n), 0); });
  const auto late = leastSteps(clock.wholeSteps(limits.late),
                               [&](std::size_t n) { return trial.hasWithBars(0, -static_cast<long>(n)); });
  if (early) stuck.early = static_cast<double>(*early) * clock.step;
  if (late) stuck.late = static_cast<double>(*late) * clock.step;
}

}  // namespace

std::optional<Stuck> whyStuck(const RouteTask& task, const FreeingLimits& limits, const base::Cancel& cancel) {
  const auto outlook = outlookOf(task, cancel);
  if (!outlook) return std::nullopt;
  WEND_CHECK(!outlook->exists);
  const auto exposed = leastExposedRoute(task, cancel);
  if (!exposed) return std::nullopt;
  Stuck stuck;
  const GroundTime& ground = *task.ground;
  stuck.until = ground.clock().at(outlook->deadEnd.instant);
  for (const std::size_t cell : outlook->deadEnd.cells) stuck.where.push_back(ground.grid().centre(cell));
  stuck.least = exposed->least;
  if (stuck.least) stuck.exposures = exposuresOf(*stuck.least, ground);
  Trial trial(task, cancel);
  addWhatFrees(stuck, trial, limits);
  if (trial.cancelled()) return std::nullopt;
  return stuck;
}

}  // namespace wend::crew
