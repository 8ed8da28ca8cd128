#include "core/crew/found_route.h"

#include <algorithm>
#include <cmath>

namespace wend::crew {
namespace {

Point placeAt(const std::vector<Point>& places, const StepClock& clock, double t) {
  const double last = static_cast<double>(places.size() - 1);
  const double steps = std::clamp((t - clock.from) / clock.step, 0.0, last);
  const auto i = static_cast<std::size_t>(std::min(std::floor(steps), last - 1));
  return geometry::lerp(places[i], places[i + 1], steps - static_cast<double>(i));
}

}  // namespace

std::vector<Steps> standsOf(const Route& route) {
  std::vector<Steps> stands{{0, 0}};
  for (std::size_t step = 0; step < route.walking.size(); ++step) {
    if (route.walking[step]) continue;
    if (stands.back().until == step)
      stands.back().until = step + 1;
    else
      stands.push_back({step, step + 1});
  }
  if (stands.back().until < route.walking.size()) stands.push_back({route.walking.size(), route.walking.size()});
  return stands;
}

DrawnRoute drawnRoute(const Route& route, const geometry::Grid& grid, const StepClock& clock) {
  std::vector<Point> places;
  for (const std::uint32_t cell : route.cells) places.push_back(grid.centre(std::size_t{cell}));
  DrawnRoute drawn;
  for (const Steps& stand : standsOf(route)) drawn.stands.push_back({clock.at(stand.from), clock.at(stand.until)});
  drawn.peak = [places, clock](Span span) {
    double most = 0;
    const Steps steps = clock.within(span);
    for (std::size_t i = steps.from; i < steps.until; ++i)
      most = std::max(most, geometry::distance(places[i], places[i + 1]));
    return most / clock.step;
  };
  drawn.at = [places = std::move(places), clock](double t) { return placeAt(places, clock, t); };
  return drawn;
}

std::vector<RoutePoint> cornersOf(const Route& route, Steps steps, const geometry::Grid& grid, const StepClock& clock) {
  const auto place = [&](std::size_t instant) { return grid.centre(std::size_t{route.cells[instant]}); };
  std::vector<RoutePoint> corners;
  for (std::size_t i = steps.from; i <= steps.until; ++i) {
    const bool inside = i > steps.from && i < steps.until;
    if (inside && geometry::distance(geometry::lerp(place(i - 1), place(i + 1), 0.5), place(i)) < 1e-6) continue;
    corners.push_back({clock.at(i), place(i)});
  }
  return corners;
}

double peakSpeed(const Route& route, const GroundTime& ground) {
  double most = 0;
  for (std::size_t i = 1; i < route.cells.size(); ++i)
    most = std::max(most, geometry::distance(ground.grid().centre(std::size_t{route.cells[i - 1]}),
                                             ground.grid().centre(std::size_t{route.cells[i]})));
  return most / ground.clock().step;
}

RouteReport reportOf(const Route& route, const GroundTime& ground, double speed, double look) {
  const DrawnRoute drawn = drawnRoute(route, ground.grid(), ground.clock());
  return reportOf(drawn, {.speed = speed, .step = look}, ground.at(), ground.atStill());
}

}  // namespace wend::crew
