#include "core/answers/route_ground.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/answers/cells_in.h"
#include "core/answers/closed_ground.h"
#include "core/answers/set_scene.h"
#include "core/crew/obstacles.h"
#include "core/geometry/polygon.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

namespace {

/// Seconds between two looks at what moves.
constexpr double kLook = 0.1;
constexpr double kTolerance = 0.005;

using Obstacles = std::vector<crew::Obstacle>;

bool same(const crew::Obstacle& a, const crew::Obstacle& b) {
  return a.id == b.id && a.points == b.points && a.closed == b.closed && a.radius == b.radius;
}
bool same(const Obstacles& a, const Obstacles& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& x, const auto& y) { return same(x, y); });
}

class MemberGround {
 public:
  MemberGround(const Take& take, const sight::GroundMap& map, std::size_t member, double room)
      : take_(take),
        plan_(take.plan()),
        member_(plan_.crew[member]),
        floors_(floorsOf(plan_)),
        room_(room),
        ground_(map.spec().grid, clockOf(take, map.spec().grid, member), member_.radius + room) {
    barSeen(map);
    takeSet();
    takeAreas();
    takeLeaves();
    takeCamera();
    takePeople();
    closeFullShelters();
  }

  crew::GroundTime ground() && { return std::move(ground_); }

 private:
  double within(double t) const { return std::min(t, take_.length()); }
  geometry::Pose sensorAt(double t) const { return take_.view().sensorAt(within(t)); }

  void barSeen(const sight::GroundMap& map) {
    for (std::size_t cell = 0; cell < map.spec().grid.cells(); ++cell)
      for (const auto run : map.seenRuns(cell)) {
        const geometry::Span seen = map.timeOf(run);
        ground_.barSeen(cell, {seen.from - plan_.sightRules.early, seen.until + plan_.sightRules.late});
      }
  }

  bool inWay(const crew::Obstacle& obstacle) const {
    return obstacle.top > floors_.lowest + kStepOver && obstacle.bottom < floors_.highest + member_.height;
  }

  void takeSet() {
    for (const auto& obstacle : crew::obstaclesOf(take_.scene(), namesOf(plan_)))
      if (inWay(obstacle)) ground_.take(obstacle);
    for (const auto& gear : plan_.gear) {
      const double floor = take_.people().floorAt(gear.pos);
      const crew::Obstacle obstacle =
          crew::obstacleOf({gear.id.text(), gear.pos, gear.radius, floor, floor + gear.height});
      if (inWay(obstacle)) ground_.take(obstacle);
    }
  }

  /// Nobody comes near enough to touch the one kind, or stands where they touch the other. Room is for what one might
  /// bump into.
  void takeAreas() {
    for (const auto& area : plan_.set.areas) {
      crew::Obstacle obstacle{area.id.text(), outlineOf(area.shape), true, -room_};
      if (isClosed(area)) ground_.take(obstacle);
      if (isLane(area)) ground_.takeStand(obstacle);
    }
  }

  Obstacles leavesAt(double t) const {
    Obstacles leaves = crew::leavesOf(take_.scene().at(within(t)), namesOf(plan_));
    std::erase_if(leaves, [&](const crew::Obstacle& leaf) { return !inWay(leaf); });
    return leaves;
  }

  /// Steps in which nothing moves are taken together.
  void takeLeaves() {
    Obstacles standing;
    std::size_t since = 0;
    const auto takeStanding = [&](std::size_t until) {
      for (const auto& leaf : standing) ground_.take(leaf, {since, until});
      standing.clear();
    };
    for (std::size_t step = 0; step < ground_.clock().steps; ++step) {
      const std::vector<Obstacles> looks = leavesDuring(step);
      const bool still = std::all_of(looks.begin(), looks.end(), [&](const auto& o) { return same(o, looks[0]); });
      if (still && same(looks[0], standing)) continue;
      takeStanding(step);
      since = step;
      if (still)
        standing = looks[0];
      else
        takeMoving(looks, step);
    }
    takeStanding(ground_.clock().steps);
  }

  std::vector<Obstacles> leavesDuring(std::size_t step) const {
    const crew::StepClock& clock = ground_.clock();
    const int count = std::max(1, static_cast<int>(std::ceil(clock.step / kLook)));
    std::vector<Obstacles> looks;
    for (int i = 0; i <= count; ++i)
      looks.push_back(leavesAt(geometry::lerp(clock.at(step), clock.at(step + 1), double(i) / count)));
    return looks;
  }

  /// What stays in the way all through a step is swept from look to look; what comes or goes is taken as it is seen.
  void takeMoving(const std::vector<Obstacles>& looks, std::size_t step) {
    const crew::Steps steps{step, step + 1};
    for (const auto& look : looks)
      for (const auto& leaf : look) ground_.take(minded(leaf), steps);
    for (const auto& leaf : looks[0]) {
      const auto like = [&](const crew::Obstacle& o) {
        return o.id == leaf.id && o.points.size() == leaf.points.size() && o.closed == leaf.closed;
      };
      const auto here = [&](const Obstacles& look) { return std::count_if(look.begin(), look.end(), like) == 1; };
      if (!std::all_of(looks.begin(), looks.end(), here)) continue;
      const auto at = [&](double t) {
        const Obstacles now = leavesAt(t);
        const auto found = std::find_if(now.begin(), now.end(), like);
        return Obstacles{minded(found == now.end() ? leaf : *found)};
      };
      ground_.take(at, steps, kLook);
    }
  }

  /// From a piece on its way, which may be a vehicle, people keep what is comfortable however narrow the rest of their
  /// way is. Common practice, no source: who may be near one on the day is for the people in charge.
  crew::Obstacle minded(crew::Obstacle piece) const {
    const double most = snags::threshold(plan_, "clearance-tight").value;
    if (plan_.set.pieces.find(piece.id)) piece.radius += std::max(0.0, most - room_);
    return piece;
  }

  static std::vector<double> cornersOf(const motion::Track& track) {
    std::vector<double> corners;
    for (const auto& place : track.path(kTolerance)) corners.push_back(place.t);
    return corners;
  }

  void takeCamera() {
    const std::vector<double> corners = cornersOf(take_.people().camera());
    ground_.take(
        crew::Mover{[&](double t) { return geometry::flat(sensorAt(t).at); }, plan_.camera.rig.radius, {}, corners},
        kLook);
    for (std::size_t i = 0; i < plan_.crew.size(); ++i) {
      if (!isCarried(plan_, i)) continue;
      const auto at = [&](double t) { return take_.people().crewAt(i, within(t), sensorAt(t)).pos; };
      ground_.take(crew::Mover{at, plan_.crew[i].radius, {}, corners}, kLook);
    }
  }

  void takePeople() {
    for (std::size_t i = 0; i < plan_.performers.size(); ++i)
      if (const motion::Track* track = take_.people().performer(i)) takeTrack(*track, plan_.performers[i].radius, {});
    for (std::size_t i = 0; i < plan_.crew.size(); ++i) {
      const motion::Track* track = take_.people().crew(i);
      if (!track || isCarried(plan_, i)) continue;
      takeTrack(*track, plan_.crew[i].radius, [this, i](double t) { return makesRoom(i, t); });
    }
  }

  void takeTrack(const motion::Track& track, double radius, const std::function<bool(double)>& makesRoom) {
    const auto isThere = [&](double t) { return track.present(within(t)) && !(makesRoom && makesRoom(within(t))); };
    ground_.take(crew::Mover{[&](double t) { return track.place(within(t)); }, radius, isThere, cornersOf(track)},
                 kLook);
  }

  /// Stands in a shelter that holds one more.
  bool makesRoom(std::size_t i, double t) const {
    const std::string id = take_.people().crewAt(i, t, sensorAt(t)).shelter;
    const plan::Shelter* shelter = plan_.shelters.find(id);
    return shelter && drawnIn(take_, id, t) < shelter->holds;
  }

  void closeFullShelters() {
    const crew::StepClock& clock = ground_.clock();
    for (const auto& shelter : plan_.shelters)
      for (std::size_t step = 0; step < clock.steps; ++step) {
        const auto full = [&](double t) { return drawnIn(take_, shelter.id.text(), within(t)) >= shelter.holds; };
        if (full(clock.at(step)) || full(clock.at(step + 1)) || full(clock.at(step) + clock.step / 2))
          ground_.close(shelter.pos, shelter.radius, {step, step + 1});
      }
  }

  const Take& take_;
  const plan::Plan& plan_;
  const plan::Crew& member_;
  FloorRange floors_;
  double room_;
  crew::GroundTime ground_;
};

}  // namespace

bool isCarried(const plan::Plan& plan, std::size_t member) {
  return std::any_of(plan.camera.bodies.begin(), plan.camera.bodies.end(),
                     [&](const auto& body) { return body.crew == plan.crew[member].id.text(); });
}

FloorRange floorsOf(const plan::Plan& plan) {
  FloorRange range;
  const auto add = [&](double floor) {
    range.lowest = std::min(range.lowest, floor);
    range.highest = std::max(range.highest, floor);
  };
  for (const auto& room : plan.set.rooms) add(room.floor);
  for (const auto& area : plan.set.areas)
    if (area.floor) add(*area.floor);
  return range;
}

crew::StepClock clockOf(const Take& take, const geometry::Grid& grid, std::size_t member) {
  return crew::clockFor({0, take.length()}, take.plan().crew[member].speed, grid.cell);
}

std::vector<std::vector<Point>> knownOutlines(const plan::Plan& plan) {
  std::vector<std::vector<Point>> outlines;
  for (const auto& room : plan.set.rooms) outlines.push_back(room.outline);
  for (const auto& area : plan.set.areas)
    if (!isClosed(area) && !isLane(area)) outlines.push_back(outlineOf(area.shape));
  return outlines;
}

double offOutline(Point p, const std::vector<Point>& outline) {
  return geometry::contains(outline, p) ? 0 : geometry::distanceToEdge(outline, p);
}

double offShelter(Point p, const plan::Shelter& shelter) {
  return std::max(0.0, geometry::distance(p, shelter.pos) - shelter.radius);
}

double offKnownGround(Point p, const std::vector<std::vector<Point>>& outlines, const plan::Plan& plan) {
  double off = std::numeric_limits<double>::infinity();
  for (const auto& outline : outlines) {
    off = std::min(off, offOutline(p, outline));
    if (off == 0) return 0;
  }
  for (const auto& shelter : plan.shelters) off = std::min(off, offShelter(p, shelter));
  return off;
}

namespace {

/// What `offKnownGround` is of the cells' centres where that is no more than a doorway's; else more than that.
std::vector<double> offWithinDoorway(const plan::Plan& plan, const geometry::Grid& grid) {
  std::vector<double> off(grid.cells(), std::numeric_limits<double>::infinity());
  const auto reach = [&](const geometry::Extent& box, const auto& offThat) {
    // A cell more, so that rounding leaves none out whose middle is just so far off.
    eachCellIn(grid, grown(box, kDoorway + grid.cell), [&](std::size_t cell) {
      if (off[cell] > 0) off[cell] = std::min(off[cell], offThat(grid.centre(cell)));
    });
  };
  for (const auto& outline : knownOutlines(plan))
    reach(geometry::extentOf(outline), [&](Point p) { return offOutline(p, outline); });
  for (const auto& shelter : plan.shelters)
    reach(grown({shelter.pos, shelter.pos}, shelter.radius), [&](Point p) { return offShelter(p, shelter); });
  return off;
}

}  // namespace

std::optional<KnownGround> knownGround(const plan::Plan& plan, const geometry::Grid& grid,
                                       const crew::StepClock& clock) {
  if (plan.set.rooms.empty()) return std::nullopt;
  const std::vector<double> off = offWithinDoorway(plan, grid);
  std::vector<std::size_t> stand, walk;
  for (std::size_t cell = 0; cell < grid.cells(); ++cell) {
    if (off[cell] <= 0) stand.push_back(cell);
    if (off[cell] <= kDoorway) walk.push_back(cell);
  }
  // Rooms that the grid has no cell in say nothing of it.
  if (stand.empty()) return std::nullopt;
  const crew::Steps all{0, clock.steps};
  return KnownGround{crew::onlyAt(stand, all, grid, clock), crew::onlyAt(walk, all, grid, clock)};
}

int drawnIn(const Take& take, const std::string& shelter, double t) {
  const plan::Plan& plan = take.plan();
  int count = 0;
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    if (!take.people().crew(i) || isCarried(plan, i)) continue;
    if (take.people().crewAt(i, t, {}).shelter == shelter) ++count;
  }
  return count;
}

void letCrouch(const Take& take, const sight::GroundMap& low, std::size_t member, const std::vector<Span>& upright,
               crew::GroundTime& ground) {
  const plan::SightRules& rules = take.plan().sightRules;
  if (take.plan().crew[member].crouch >= take.plan().crew[member].height) return;
  const crew::StepClock& clock = ground.clock();
  crew::CellTimes may(ground.grid().cells(), clock.steps, false);
  for (std::size_t cell = 0; cell < ground.grid().cells(); ++cell) {
    const Point centre = ground.grid().centre(cell);
    const auto isIn = [&](const plan::Shelter& shelter) {
      return geometry::distance(centre, shelter.pos) <= shelter.radius;
    };
    bool sheltered = false;
    for (const auto& shelter : take.plan().shelters) sheltered = sheltered || isIn(shelter);
    if (!sheltered) continue;
    may.set(cell, {0, clock.steps}, true);
    for (const auto run : low.seenRuns(cell)) {
      const Span seen = low.timeOf(run);
      may.set(cell, clock.meeting({seen.from - rules.early, seen.until + rules.late}), false);
    }
    for (const Span& span : upright) may.set(cell, clock.meeting(span), false);
  }
  ground.setLow(std::move(may));
}

crew::GroundTime memberGround(const Take& take, const sight::GroundMap& map, std::size_t member, double room) {
  return MemberGround(take, map, member, room).ground();
}

}  // namespace wend::answers
