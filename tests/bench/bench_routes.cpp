/// A crew route over three minutes on a grid of a tenth of a metre, against heap Dijkstra on the same graph.
#include <chrono>
#include <cstdio>
#include <string>

#include "core/crew/route_stuck.h"
#include "core/crew/routes_together.h"
#include "tests/core/crew/route_reference.h"

namespace wend::crew {
namespace {

double secondsOf(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// Four rooms in a row with doors, a camera that wanders through them and looks all round, and walls that hide: a cell
/// is seen while the camera is in its room or the next and faces it within 35 degrees, two seconds sooner and one
/// later.
class Rooms {
 public:
  Rooms(double width, double depth, double length) : width_(width), depth_(depth), length_(length) {}

  GroundTime ground(double speed) const {
    const geometry::Grid grid = geometry::gridOver({{0, 0}, {width_, depth_}}, 0.1);
    GroundTime ground(grid, clockFor({0, length_}, speed, grid.cell), 0.28);
    for (const Obstacle& wall : walls()) ground.take(wall);
    const auto camera = [this](double t) { return cameraAt(t); };
    ground.take(Mover{camera, 0.35});
    ground.take(Mover{[this](double t) { return behind(t, 0.5); }, 0.28});
    ground.take(Mover{[this](double t) { return behind(t, 1.1); }, 0.28});
    for (double t = 0; t < length_; t += 0.1) barSeenAt(ground, t);
    return ground;
  }

  Point cameraAt(double t) const {
    const double share = t / length_;
    return {0.1 * width_ + 0.8 * width_ * share, depth_ / 2 + 0.25 * depth_ * std::sin(19 * share)};
  }

 private:
  double bearingAt(double t) const { return 90 + 150 * std::sin(t / 9) + 1.5 * t; }
  Point behind(double t, double metres) const { return cameraAt(t) - geometry::direction(bearingAt(t)) * metres; }
  int roomOf(Point p) const { return std::clamp(int(4 * p.x / width_), 0, 3); }

  std::vector<Obstacle> walls() const {
    const double w = width_, d = depth_;
    std::vector<Obstacle> walls{{"outer", {{0, 0}, {w, 0}, {w, d}, {0, d}, {0, 0}}, false, 0.05, 0, 2.5}};
    for (int i = 1; i < 4; ++i) {
      const double x = w * i / 4;
      const double door = cameraAt(length_ * (0.25 * i - 0.1) / 0.8).y;
      walls.push_back({"a", {{x, 0}, {x, std::max(0.0, door - 0.75)}}, false, 0.05, 0, 2.5});
      walls.push_back({"b", {{x, std::min(d, door + 0.75)}, {x, d}}, false, 0.05, 0, 2.5});
    }
    for (int i = 0; i < 4; ++i)
      walls.push_back({"piece", {{w * (i + 0.35) / 4, 0.2 * d}, {w * (i + 0.7) / 4, 0.2 * d}}, false, 0.3, 0, 1.9});
    return walls;
  }

  void barSeenAt(GroundTime& ground, double t) const {
    const Point camera = cameraAt(t);
    const double bearing = bearingAt(t);
    for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell) {
      const Point p = ground.grid().centre(cell);
      // Behind its room's piece nobody is seen.
      const bool hidden = roomOf(p) != roomOf(camera) || p.y < 0.2 * depth_ - 0.3;
      if (hidden || std::abs(geometry::turn(bearing, geometry::bearingOf(p - camera))) > 35) continue;
      ground.barSeen(cell, {t - 2, t + 1});
    }
  }

  double width_, depth_, length_;
};

void compare(const char* name, const RouteTask& task, bool reference) {
  std::optional<RouteAnswer> bare, whole;
  const double search = secondsOf([&] { bare = cheapestRoute(task, {.margin = 0}); });
  const double margin = secondsOf([&] { whole = cheapestRoute(task); });
  std::printf("%-28s search %8.1f ms, with its margin %8.1f ms", name, search * 1e3, margin * 1e3);
  if (whole->route)
    std::printf(", cost %.3f, %.2f m, %d walks, margin %zu", whole->route->cost, whole->route->metres,
                whole->route->walks, whole->route->margin);
  else
    std::printf(", none after instant %zu", whole->deadEnd.instant);
  if (reference) {
    reference::Found found;
    const double heap = secondsOf([&] { found = reference::dijkstra(reference::Graph(task)); });
    const bool same = found.cost.has_value() == whole->route.has_value() &&
                      (!found.cost || double(*found.cost) / 1000 == whole->route->cost);
    std::printf("; heap %8.0f ms (%zu states): %.0f times, %s", heap * 1e3, found.settled, heap / search,
                same ? "same cost" : "DIFFERENT COST");
  }
  std::printf("\n");
}

void explain(const char* name, const RouteTask& task) {
  std::optional<Stuck> stuck;
  const double seconds = secondsOf([&] { stuck = whyStuck(task); });
  std::printf("%-28s %8.0f ms: nobody past %.1f s in %zu cells", name, seconds * 1e3, stuck->until,
              stuck->where.size());
  if (stuck->least) std::printf(", seen for %.1f s at least", stuck->least->seconds);
  if (stuck->speed) std::printf(", %.2f m/s frees", *stuck->speed);
  if (stuck->early) std::printf(", %.1f s less of early", *stuck->early);
  if (stuck->late) std::printf(", %.1f s less of late", *stuck->late);
  std::printf(", %zu needs\n", stuck->needs.size());
}

void together(const Rooms& rooms) {
  std::vector<GroundTime> grounds;
  std::vector<RouteTask> tasks;
  for (const double speed : {1.1, 1.0, 0.9}) grounds.push_back(rooms.ground(speed));
  const std::vector<Point> from{{1, 10.5}, {1, 5}, {1, 1}}, to{{25, 1}, {24, 11}, {12, 1}};
  for (std::size_t i = 0; i < grounds.size(); ++i) {
    RouteTask task;
    task.ground = &grounds[i];
    task.speed = std::vector{1.1, 1.0, 0.9}[i];
    task.starts = {*grounds[i].grid().cellAt(from[i])};
    task.ends = {*grounds[i].grid().cellAt(to[i])};
    tasks.push_back(task);
  }
  std::optional<CrewRoutes> routes;
  const double seconds = secondsOf([&] { routes = routesTogether(tasks, {}); });
  std::printf("three people                 %8.0f ms in %d rounds:", seconds * 1e3, routes->rounds);
  for (const RouteAnswer& answer : routes->people)
    std::printf(" %s", answer.route ? (std::to_string(answer.route->walks) + " walks").c_str() : "none");
  std::printf("\n");
}

}  // namespace
}  // namespace wend::crew

int main(int argc, char**) {
  using namespace wend::crew;
  const bool reference = argc < 2;
  const Rooms rooms(26, 12, 180);
  const GroundTime ground = rooms.ground(1.1);
  const auto at = [&](Point p) { return *ground.grid().cellAt(p); };
  RouteTask task;
  task.ground = &ground;
  task.starts = {at({1, 10.5})};
  compare("anywhere at the end", task, reference);
  const CellTimes near =
      nearTo([&](double t) { return rooms.cameraAt(t); }, 6, {0, ground.clock().steps}, ground.grid(), ground.clock());
  RouteTask close = task;
  close.starts = {at({1, 5})};
  close.needs = {&near};
  compare("within 6 m of the camera", close, reference);
  RouteTask across = task;
  across.ends = {at({25, 1})};
  compare("to the far corner", across, reference);
  const CellTimes stays = onlyAt({at({11, 10.5})}, ground.clock().meeting({60, 100}), ground.grid(), ground.clock());
  RouteTask stuck = across;
  stuck.needs.push_back(&stays);
  compare("and forty seconds in sight", stuck, false);
  if (!cheapestRoute(stuck)->route) explain("why not", stuck);
  together(rooms);
}
