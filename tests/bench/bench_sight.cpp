/// What sight costs over whole takes: the map of what is ever seen, the windows of all cells, two threads against one,
/// and a write of as many bits. Every frame is a step sound in continuous time; a body of 0.25 m.
///
/// To run    cmake -S . -B build -G Ninja -DWEND_UI=OFF -DWEND_BENCH=ON && ninja -C build bench_sight
///           build/tests/bench/bench_sight [scenario ...]
/// Times are of this machine on this day: compare columns of one run only.
#include <chrono>
#include <cstdio>
#include <cstring>

#include "core/sight/seen_steps.h"
#include "core/sight/swept_view.h"
#include "tests/support/sight_scenarios.h"

namespace {

using namespace wend;
using namespace wend::sight;

class ScenarioGround : public GroundOfSteps {
 public:
  ScenarioGround(const scenarios::SightScenario& scenario, const Triangulation& triangles)
      : scenario_(scenario), view_(triangles) {}
  void find(std::size_t step, StepGround& ground) override {
    view_.of({pose(step), pose(step + 1), 0, 0}, ground.addLayer().region);
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
};

/// The least of three, in microseconds.
template <class Work>
double microseconds(Work work) {
  double least = 1e300;
  for (int i = 0; i < 3; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    least =
        std::min(least, std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count());
  }
  return least;
}

void measure(const scenarios::ScenarioSpec& spec) {
  const scenarios::SightScenario scenario = scenarios::sightScenario(spec);
  const Triangulation triangles(scenario.walls, scenario.extent);
  const GroundMaker maker = [&] { return std::make_unique<ScenarioGround>(scenario, triangles); };
  SeenSpec seen;
  seen.grid = geometry::gridOver(scenario.extent, scenario.cell);
  seen.steps = static_cast<std::uint32_t>(scenario.frames());
  seen.step = 1 / scenario.framesPerSecond;
  const StepRange all{0, seen.steps};
  const double frames = static_cast<double>(scenario.frames());
  const double geometry = microseconds([&] {
    ScenarioGround ground(scenario, triangles);
    StepGround found;
    for (std::uint32_t step = 0; step < seen.steps; ++step) found.clear(), ground.find(step, found);
  });
  const double ever = microseconds([&] { everSeen(seen.grid, seen.radius, all, maker); });
  const double everTwo = microseconds([&] { everSeen(seen.grid, seen.radius, all, maker, 2); });
  std::size_t bytes = 0;
  const double windows = microseconds([&] { bytes = SeenSteps::over(seen, maker)->bytes(); });
  const double windowsTwo = microseconds([&] { SeenSteps::over(seen, maker, 2); });
  std::vector<char> map(seen.grid.cells() / 8);
  const double stream = microseconds([&] {
    for (std::uint32_t step = 0; step < seen.steps; ++step) {
      std::memset(map.data(), static_cast<int>(step), map.size());
      asm volatile("" ::"r"(map.data()) : "memory");
    }
  });
  std::printf("%-8s %9.2f %9.2f %9.2fx %9.2f %9.2fx %9.2fx %9.2fx %8.1f MB\n", spec.name.c_str(), geometry / frames,
              ever / frames, ever / everTwo, windows / frames, windows / windowsTwo, windows / ever, ever / stream,
              static_cast<double>(bytes) / 1e6);
}

}  // namespace

int main(int count, char** names) {
  std::printf("us/frame  geometry ever seen two threads windows two threads win/ever ever/write  kept\n");
  for (const scenarios::ScenarioSpec& spec : scenarios::scenarioSpecs()) {
    bool wanted = count == 1;
    for (int i = 1; i < count; ++i) wanted = wanted || spec.name == names[i];
    if (wanted) measure(spec);
  }
}
