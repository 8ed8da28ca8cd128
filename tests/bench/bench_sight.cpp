/// What sight costs over whole takes: the map of what is ever seen, the windows of all cells, two threads against one,
/// and a stream write of a bit for every cell and step. Every frame is a step sound in continuous time; a body of 0.25
/// m clear of walls; for the map, ground nearer to walls is given as settled.
///
/// `ever seen` passes over stretches of steps that see nothing new, `step by step` finds every step. `until ms` is what
/// one drawn picture costs of how long each cell stays unseen, played at 60 pictures a second.
///
/// Against it, in the same run, the pipeline of general libraries of reference_view.h on a few evenly spaced frames: of
/// instants only. `missed` counts the cells it sees and the map of the whole take does not, among cells that hold a
/// body, at least the radius and half a cell's diagonal away from walls; it has to be 0.
///
/// `heights`: the ground clear over the whole take by way of the set (ground_map.h), every fifth wall only 1.1 m high and
/// every twentieth a mirror, against the same way with all walls tall and no mirror; in sets of up to 300 walls.
///
/// To build  libcgal-dev, libgmp-dev, libmpfr-dev, libboost-dev and libgeos-dev (Debian's names).
/// To run    cmake -S . -B build -G Ninja -DWEND_UI=OFF -DWEND_BENCH=ON && ninja -C build bench_sight
///           build/tests/bench/bench_sight [scenario ...]
/// Times are of this machine on this day: compare columns of one run only. Those of one thread are the processor's, and
/// the gain by two threads is in time elapsed: it says something only on a machine that is otherwise at rest.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <ctime>

#include "core/sight/ground_map.h"
#include "core/sight/seen_steps.h"
#include "core/sight/swept_view.h"
#include "tests/bench/reference_view.h"
#include "tests/support/sight_scenarios.h"

namespace {

using namespace wend;
using namespace wend::sight;

class ScenarioGround : public GroundOfSteps {
 public:
  /// `together`: offers the ground of many steps together.
  ScenarioGround(const scenarios::SightScenario& scenario, const Triangulation& triangles, bool together = true)
      : scenario_(scenario), view_(triangles), together_(together) {}
  void find(std::size_t step, StepGround& ground) override {
    view_.of({pose(step), pose(step + 1), 0, 0}, ground.addLayer().region);
  }
  bool findOver(StepRange steps, StepGround& ground) override {
    if (!together_) return false;
    poses_.clear();
    for (std::size_t i = steps.from; i <= steps.until; ++i) poses_.push_back(pose(i));
    view_.of(stepOver(poses_), ground.addLayer().region);
    return true;
  }
  bool asBefore(std::size_t step) override {
    const auto same = [](const SweptPose& a, const SweptPose& b) {
      return a.pupil == b.pupil && a.bearing == b.bearing && a.halfAngle == b.halfAngle;
    };
    return same(pose(step - 1), pose(step)) && same(pose(step), pose(step + 1));
  }

 private:
  SweptPose pose(std::size_t i) const {
    const scenarios::LensPose& p = scenario_.poses[i];
    return {p.pupil, p.bearing, p.halfAngle};
  }
  const scenarios::SightScenario& scenario_;
  SweptView view_;
  std::vector<SweptPose> poses_;
  bool together_;
};

/// In microseconds.
struct Cost {
  double elapsed = 1e300;
  double processor = 1e300;  ///< of all threads: what other work on the machine does not add to
};

template <class Work>
Cost costOnce(Work work) {
  const auto start = std::chrono::steady_clock::now();
  const std::clock_t spent = std::clock();
  work();
  return {std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count(),
          static_cast<double>(std::clock() - spent) * (1e6 / CLOCKS_PER_SEC)};
}

/// The least of three.
template <class Work>
Cost cost(Work work) {
  Cost least;
  for (int i = 0; i < 3; ++i) {
    const Cost once = costOnce(work);
    least = {std::min(least.elapsed, once.elapsed), std::min(least.processor, once.processor)};
  }
  return least;
}

/// A write of so many bytes to memory as large, which has been written to before.
Cost streamWrite(std::size_t bytes) {
  std::vector<char> all(bytes, 1);
  int byte = 1;
  return cost([&] {
    std::memset(all.data(), ++byte, all.size());
    asm volatile("" ::"r"(all.data()) : "memory");
  });
}

constexpr std::size_t kReferenceFrames = 20;

struct ReferenceCost {
  double perFrame = 0;     ///< microseconds, the mean
  std::size_t missed = 0;  ///< cells for bodies it sees and `ever` does not hold
};

ReferenceCost referenceCost(const scenarios::SightScenario& scenario, double radius, const CellBits& ever) {
  reference::ReferenceView view(scenario.walls, scenario.extent);
  CellBits seen(ever.grid());
  double total = 0;
  for (std::size_t i = 0; i <= kReferenceFrames; ++i) {
    // The first is done twice, and not counted at first, when memory is new.
    const scenarios::LensPose& pose = scenario.poses[scenario.frames() * (i == 0 ? 0 : i - 1) / kReferenceFrames];
    view.standAt(pose.pupil);
    const Cost took = costOnce([&] { view.add(pose.bearing, pose.halfAngle, radius, seen); });
    if (i > 0) total += took.processor;
  }
  ReferenceCost found{total / kReferenceFrames, 0};
  const double clear = radius + ever.grid().cell * 0.7072;
  for (std::size_t cell = 0; cell < ever.grid().cells(); ++cell) {
    if (!seen.at(cell) || ever.at(cell)) continue;
    const Point centre = ever.grid().centre(cell);
    found.missed += std::none_of(scenario.walls.begin(), scenario.walls.end(),
                                 [&](geometry::Segment wall) { return geometry::distance(centre, wall) < clear; });
  }
  return found;
}

/// The walls as upright sheets; some low and some mirrors, where asked.
Scene sceneOf(const scenarios::SightScenario& scenario, bool heights) {
  SceneInput input;
  for (std::size_t i = 0; i < scenario.walls.size(); ++i) {
    PieceIn piece;
    piece.shape = LineShape{{scenario.walls[i].a, scenario.walls[i].b}};
    piece.top = heights && i % 5 == 0 ? 1.1 : 3;
    piece.tag = static_cast<int>(i);
    if (heights && i % 20 == 3) piece.surface = Surface::mirror, piece.reflects = Side::left;
    input.pieces.push_back(std::move(piece));
  }
  return Scene(input);
}

/// Microseconds of the processor a frame.
double clearGroundCost(const scenarios::SightScenario& scenario, const SeenSpec& seen, bool heights) {
  const Scene scene = sceneOf(scenario, heights);
  const double length = seen.step * seen.steps;
  const EyeAt eye = [&](double t) {
    const double place = std::clamp(t, 0.0, length) / seen.step;
    const std::size_t i = std::min(static_cast<std::size_t>(place), static_cast<std::size_t>(seen.steps) - 1);
    const double share = place - static_cast<double>(i);
    const scenarios::LensPose &from = scenario.poses[i], &until = scenario.poses[i + 1];
    Eye at;
    at.pupil = {geometry::at(geometry::lerp(from.pupil, until.pupil, share), 1.5),
                geometry::lerp(from.bearing, until.bearing, share), 0};
    at.tanHalfWidth = std::tan(geometry::radians(from.halfAngle));
    at.tanHalfHeight = 0.56 * at.tanHalfWidth;
    return std::optional<Eye>(at);
  };
  GroundMapSpec spec;
  spec.grid = seen.grid;
  spec.take = {0, length};
  spec.step = seen.step;
  spec.radius = seen.radius;
  return costOnce([&] { clearGround(scene, eye, spec, spec.take, 0, 0); }).processor / seen.steps;
}

void measure(const scenarios::ScenarioSpec& spec) {
  const scenarios::SightScenario scenario = scenarios::sightScenario(spec);
  const Triangulation triangles(scenario.walls, scenario.extent);
  const GroundMaker maker = [&] { return std::make_unique<ScenarioGround>(scenario, triangles); };
  SeenSpec seen;
  seen.grid = geometry::gridOver(scenario.extent, scenario.cell);
  seen.steps = static_cast<std::uint32_t>(scenario.frames());
  seen.step = 1 / scenario.framesPerSecond;
  seen.bodies = Bodies::clearOfWalls;
  const StepRange all{0, seen.steps};
  const double frames = static_cast<double>(scenario.frames());
  const Cost geometry = cost([&] {
    ScenarioGround ground(scenario, triangles);
    StepGround found;
    for (std::uint32_t step = 0; step < seen.steps; ++step) found.clear(), ground.find(step, found);
  });
  // Nobody stands nearer to a wall.
  CellBits settled(seen.grid);
  RegionRaster nearWalls(seen.grid, seen.radius + seen.grid.reach());
  for (const geometry::Segment& wall : scenario.walls) nearWalls.addNear(RegionEdge{wall.a, wall.b}, settled);
  CellBits map;
  const Cost ever = cost([&] { map = *everSeen(seen.grid, seen.radius, all, maker, 1, {}, seen.bodies, &settled); });
  const GroundMaker each = [&] { return std::make_unique<ScenarioGround>(scenario, triangles, false); };
  const Cost everEach = cost([&] { everSeen(seen.grid, seen.radius, all, each, 1, {}, seen.bodies, &settled); });
  const Cost everTwo = cost([&] { everSeen(seen.grid, seen.radius, all, maker, 2, {}, seen.bodies, &settled); });
  std::size_t bytes = 0;
  const Cost windows = cost([&] { bytes = SeenSteps::over(seen, maker)->bytes(); });
  const Cost windowsTwo = cost([&] { SeenSteps::over(seen, maker, 2); });
  const auto steps = SeenSteps::over(seen, maker);
  constexpr int kShown = 600;
  const Cost shown = cost([&] {
    UntilSeen until(*steps);
    for (int i = 0; i < kShown; ++i) until.secondsFrom(10 + i / 60.0);
  });
  const Cost write = streamWrite(seen.grid.cells() / 8 * seen.steps);
  const ReferenceCost reference = referenceCost(scenario, seen.radius, map);
  std::printf("%-8s %9.2f %9.2f %9.2f %9.2fx %9.2f %9.2fx %9.2fx %9.2fx %8.1f MB %9.3f %9.0f %7.0fx %6.0fx %6zu\n",
              spec.name.c_str(), geometry.processor / frames, ever.processor / frames, everEach.processor / frames,
              ever.elapsed / everTwo.elapsed, windows.processor / frames, windows.elapsed / windowsTwo.elapsed,
              windows.processor / ever.processor, ever.processor / write.processor, static_cast<double>(bytes) / 1e6,
              shown.processor / kShown / 1000, reference.perFrame, reference.perFrame / (ever.processor / frames),
              reference.perFrame / (windows.processor / frames), reference.missed);
  if (scenario.walls.size() <= 400) {
    const double plain = clearGroundCost(scenario, seen, false), heights = clearGroundCost(scenario, seen, true);
    std::printf("%-8s heights %.2f us/frame, without %.2f: %.2fx\n", "", heights, plain, heights / plain);
  }
  std::fflush(stdout);
}

}  // namespace

int main(int count, char** names) {
  std::printf(
      "us/frame  geometry ever seen step by step two threads windows two threads win/ever ever/write  kept  until ms "
      "reference "
      "ref/ever ref/win missed\n");
  for (const scenarios::ScenarioSpec& spec : scenarios::scenarioSpecs()) {
    bool wanted = count == 1;
    for (int i = 1; i < count; ++i) wanted = wanted || spec.name == names[i];
    if (wanted) measure(spec);
  }
}
