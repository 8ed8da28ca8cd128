#include "core/snags/stretch.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/geometry/polygon.h"
#include "core/geometry/runs.h"
#include "core/snags/thresholds.h"

namespace wend::snags {

std::vector<Stretch> stretchesOf(const std::vector<std::optional<double>>& values) {
  std::vector<Stretch> found;
  for (const auto& run : geometry::runsWhere(values.size(), [&](std::size_t i) { return values[i].has_value(); })) {
    Stretch stretch{run.first, run.last, run.first, *values[run.first]};
    for (std::size_t i = run.first; i <= run.last; ++i)
      if (*values[i] > stretch.value) stretch.worst = i, stretch.value = *values[i];
    found.push_back(stretch);
  }
  return found;
}

std::vector<Stretch> stretches(const Evidence& evidence, double hold, const Excess& excess) {
  std::vector<std::optional<double>> values;
  for (std::size_t i = 0; i < evidence.samples.size(); ++i) values.push_back(excess(evidence.samples[i], i));
  std::vector<Stretch> found = stretchesOf(values);
  std::erase_if(found, [&](const Stretch& one) { return !(spanOf(evidence, one).length() >= hold - 1e-9); });
  return found;
}

std::vector<Stretch> hotStretches(const Evidence& evidence) {
  const Threshold limit = threshold(*evidence.plan, "warmth");
  return stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
    return instant.focus.warmth && *instant.focus.warmth < limit.value
               ? std::optional<double>(limit.value - *instant.focus.warmth)
               : std::nullopt;
  });
}

Span spanOf(const Evidence& evidence, const Stretch& stretch) {
  return {evidence.samples[stretch.first].time, evidence.samples[stretch.last].time};
}

std::string nameOf(const plan::Plan& plan, const std::string& id) {
  const auto named = [&](const std::string& name) { return name.empty() ? id : name; };
  if (const auto* performer = plan.performers.find(id)) return named(performer->name);
  if (const auto* crew = plan.crew.find(id)) return named(crew->role);
  if (const auto* opening = plan.set.openings.find(id)) return named(opening->name);
  if (const auto* piece = plan.set.pieces.find(id)) return named(piece->name);
  if (const auto* wall = plan.set.walls.find(id)) return named(wall->name);
  if (const auto* room = plan.set.rooms.find(id)) return named(room->name);
  if (const auto* area = plan.set.areas.find(id)) return named(area->name);
  if (const auto* gear = plan.gear.find(id)) return named(gear->name);
  if (const auto* prop = plan.props.find(id)) return named(prop->name);
  if (const auto* link = plan.links.find(id)) return named(link->name);
  if (const auto* pole = plan.poles.find(id)) return named(pole->name);
  if (const auto* cable = plan.cables.find(id)) return named(cable->name);
  if (const auto* fixture = plan.fixtures.find(id)) return named(fixture->name);
  if (const auto* shelter = plan.shelters.find(id)) return named(shelter->name);
  return id;
}

std::string cableNameOf(const plan::Plan& plan, const std::string& id) {
  return id == plan::kCameraEnd ? "the camera's cable" : nameOf(plan, id);
}

std::string bodyNameOf(const plan::Plan& plan, const std::string& id) {
  return id == plan::kCameraEnd ? "the camera" : nameOf(plan, id);
}

std::string routeNote(const Evidence& evidence, const std::string& id) {
  const plan::Pole* pole = evidence.plan->poles.find(id);
  const bool goes =
      std::find(evidence.routed.begin(), evidence.routed.end(), pole ? pole->crew : id) != evidence.routed.end();
  return goes ? ", on the route found" : "";
}

bool tellsOfLight(const plan::Plan& plan) {
  for (const auto& area : plan.set.areas)
    if (!area.states.empty() || !area.byClock.empty()) return true;
  return plan.fixtures.size() > 0;
}

bool onArea(const plan::Area& area, Point pos) {
  if (const auto* disc = std::get_if<plan::Disc>(&area.shape))
    return geometry::distance(pos, disc->centre) <= disc->radius;
  const auto* outline = std::get_if<plan::Outline>(&area.shape);
  return outline && geometry::contains(outline->points, pos);
}

std::string placeOf(const plan::Plan& plan, Point pos) {
  for (std::size_t i = plan.set.areas.size(); i-- > 0;) {
    const plan::Area& area = plan.set.areas[i];
    const bool lights = !area.states.empty() || !area.byClock.empty();
    if (lights && onArea(area, pos)) return area.id.text();
  }
  for (const auto& room : plan.set.rooms)
    if (geometry::contains(room.outline, pos)) return room.id.text();
  return {};
}

bool follows(const FocusAt& focus, const std::string& id) {
  if (focus.changing || focus.on.size() != 1) return false;
  const auto ids = base::split(focus.on.front(), '+');
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

std::string subjectName(const plan::Plan& plan, const std::string& on) {
  std::string name;
  for (const auto& id : base::split(on, '+')) name += (name.empty() ? "" : " + ") + nameOf(plan, id);
  return name;
}

const char* wordOf(Move::Axis axis) {
  switch (axis) {
    case Move::Axis::focus:
      return "focus";
    case Move::Axis::iris:
      return "iris";
    case Move::Axis::zoom:
      return "zoom";
    case Move::Axis::density:
      return "density";
  }
  return "";
}

units::LengthUnit unitOf(const plan::Plan& plan) {
  return plan.display == plan::LengthUnit::feet ? units::LengthUnit::feet : units::LengthUnit::metres;
}

std::string lengthText(const plan::Plan& plan, double metres) {
  return units::lengthText(metres, unitOf(plan));
}

std::string seconds(double value) {
  return base::fixed(value, 1) + " s";
}

std::string stops(double value) {
  static const char* const thirds[] = {"", "\u2153", "\u2154"};
  const long count = std::lround(std::abs(value) * 3);
  const std::string whole = count >= 3 || count == 0 ? std::to_string(count / 3) : std::string();
  return whole + thirds[count % 3] + (count > 3 ? " stops" : " stop") + (value > 0 ? " over" : " under");
}

}  // namespace wend::snags
