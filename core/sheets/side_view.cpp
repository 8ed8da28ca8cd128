#include "core/sheets/side_view.h"

#include <algorithm>
#include <cmath>

#include "core/answers/set_scene.h"
#include "core/geometry/polygon.h"
#include "core/geometry/tolerance.h"
#include "core/sight/ray.h"

namespace wend::sheets {

using namespace geometry;
using answers::Instant;
using answers::Take;

namespace {

/// A body of the set stands on the floor when no more than this is under it.
constexpr double kGap = 0.05;
/// Steps in which the floor is looked at, metres.
constexpr double kStep = 0.05;

class SideMaker {
 public:
  SideMaker(const Take& take, const Instant& instant)
      : take_(take),
        plan_(take.plan()),
        instant_(instant),
        now_(take.scene().at(instant.time)),
        foot_(flat(instant.camera.pupil.at)),
        ahead_(direction(instant.camera.pupil.bearing)) {
    const double half = instant.lens->vfov / 2, tilt = instant.camera.pupil.tilt;
    view_.lens = instant.camera.pupil.at.z;
    view_.upper = std::tan(radians(std::min(tilt + half, 89.0)));
    view_.lower = std::tan(radians(std::max(tilt - half, -89.0)));
  }

  SideView made() {
    addThings();
    addGrazes();
    view_.reach = std::clamp(view_.closedAt.value_or(kMost) + 0.5, kLeast, kMost);
    std::erase_if(view_.things, [&](const SideThing& thing) { return thing.near > view_.reach; });
    tellFloorsSeenAgain();
    addFloors();
    addPeople();
    addLamps();
    return std::move(view_);
  }

 private:
  double floorAt(double along) const { return take_.people().floorAt(foot_ + ahead_ * along); }

  /// Of a yard there is none, whatever height its room has.
  std::optional<double> ceilingAt(double along) const {
    for (const auto& room : plan_.set.rooms)
      if (geometry::contains(room.outline, foot_ + ahead_ * along))
        return room.openAbove ? std::nullopt : std::optional<double>(room.ceiling);
    return std::nullopt;
  }
  bool reachesCeiling(const SideThing& thing) const {
    const auto ceiling = ceilingAt(thing.near - kGap);
    return ceiling && thing.top >= *ceiling - kGap;
  }

  static SideThing::Kind kindOf(const sight::Crossing& crossing) {
    if (crossing.surface == sight::Surface::glass) return SideThing::Kind::glass;
    if (crossing.surface == sight::Surface::mirror) return SideThing::Kind::mirror;
    if (crossing.source.owner == sight::Owner::opening) return SideThing::Kind::leaf;
    return crossing.source.owner == sight::Owner::wall ? SideThing::Kind::wall : SideThing::Kind::piece;
  }

  void addThings() {
    auto crossings = sight::crossingsAlong(now_, foot_, ahead_, kMost);
    std::vector<sight::Crossing> panes;
    for (const auto& pane : take_.scene().glass()) sight::appendCrossings(now_, pane, foot_, ahead_, panes);
    for (auto& pane : panes) {
      pane.surface = sight::Surface::glass;
      if (pane.box.near < kMost) crossings.push_back(pane);
    }
    const crew::NameOf names = answers::namesOf(plan_);
    for (const auto& crossing : crossings)
      if (crossing.box.far > 0)
        view_.things.push_back({kindOf(crossing), names(crossing.source).id, std::max(0.0, crossing.box.near),
                                crossing.box.far, baseOf(crossing.box), crossing.box.top});
    std::stable_sort(view_.things.begin(), view_.things.end(),
                     [](const SideThing& a, const SideThing& b) { return a.near < b.near; });
  }

  /// What hides down through the floor is shown standing on it.
  double baseOf(const sight::Upright& box) const {
    const double near = std::max(0.0, box.near);
    return std::max(box.bottom, std::min(floorAt(near), floorAt(box.far)));
  }

  double slopeTo(double along, double height) const { return (height - view_.lens) / std::max(along, kTouch); }

  /// What is still open between the lowest and the highest line of sight, thing by thing.
  void addGrazes() {
    double low = view_.lower, high = view_.upper;
    for (const SideThing& thing : view_.things) {
      if (thing.kind == SideThing::Kind::glass) continue;
      // Over a top below the lens the far edge hides least; over one above it the near edge hides most.
      const double over = std::max(slopeTo(thing.near, thing.top), slopeTo(thing.far, thing.top));
      const double under = std::min(slopeTo(thing.near, thing.bottom), slopeTo(thing.far, thing.bottom));
      const bool closesBelow = under <= low || thing.bottom <= floorAt(thing.near) + kGap;
      const bool closesAbove = over >= high || reachesCeiling(thing);
      if (closesBelow && over > low) {
        low = over;
        if (low < high) graze(thing, true, over);
      }
      if (closesAbove && under < high) {
        high = std::min(high, under);
        if (low < high) graze(thing, false, under);
      }
      if (low < high) continue;
      view_.closedAt = thing.near;
      std::erase_if(view_.things, [&](const SideThing& other) { return other.near > thing.near; });
      return;
    }
  }

  void graze(const SideThing& thing, bool over, double slope) {
    const double height = over ? thing.top : thing.bottom;
    const bool atNear = std::abs(slopeTo(thing.near, height) - slope) <= 1e-12;
    view_.grazes.push_back({thing.id, over, {atNear ? thing.near : thing.far, height}, slope, std::nullopt});
  }

  /// Before whatever ends the view.
  void tellFloorsSeenAgain() {
    const double until = view_.closedAt.value_or(view_.reach);
    for (SideGraze& line : view_.grazes) {
      if (!line.over || line.slope >= 0) continue;
      for (double along = line.corner.x; along <= until; along += kStep)
        if (view_.lens + line.slope * along <= floorAt(along)) {
          line.floorFrom = (floorAt(along) - view_.lens) / line.slope;
          break;
        }
    }
  }

  void addFloors() {
    for (double along = -kBehind; along < view_.reach; along += kStep) {
      const SideFloor here{
          {along, std::min(along + kStep, view_.reach)}, floorAt(along + kStep / 2), ceilingAt(along + kStep / 2)};
      const bool goesOn = !view_.floors.empty() && view_.floors.back().height == here.height &&
                          view_.floors.back().ceiling == here.ceiling;
      if (goesOn) view_.floors.back().along.until = here.along.until;
      if (!goesOn) view_.floors.push_back(here);
    }
  }

  struct Place {
    double ahead, aside;
  };
  Place placeOf(Point p) const {
    const Vec way = p - foot_;
    return {dot(way, ahead_), -cross(ahead_, way)};
  }
  bool isShown(Place place, double radius) const {
    return std::abs(place.aside) <= kBeside + radius && place.ahead >= -kBehind && place.ahead <= view_.reach;
  }

  void addPeople() {
    for (std::size_t i = 0; i < instant_.performers.size(); ++i) {
      const auto& at = instant_.performers[i];
      const Place place = placeOf(at.pos);
      const double radius = plan_.performers[i].radius;
      if (at.present && isShown(place, radius))
        view_.people.push_back({at.id, true, i, place.ahead, place.aside, radius, at.floor, at.top, at.eyes});
    }
    for (std::size_t i = 0; i < instant_.crew.size(); ++i) {
      const auto& at = instant_.crew[i];
      const Place place = placeOf(at.pos);
      if (at.present && isShown(place, at.radius))
        view_.people.push_back(
            {at.id, false, i, place.ahead, place.aside, at.radius, at.floor, at.floor + at.height, std::nullopt});
    }
  }

  void addLamps() {
    for (const auto& fixture : plan_.fixtures) {
      const Place place = placeOf(fixture.pos);
      if (isShown(place, 0)) view_.lamps.push_back({fixture.id.text(), place.ahead, place.aside, fixture.height});
    }
  }

  const Take& take_;
  const plan::Plan& plan_;
  const Instant& instant_;
  sight::SceneAt now_;
  Point foot_;
  Vec ahead_;
  SideView view_;
};

}  // namespace

SideView sideView(const Take& take, const Instant& instant) {
  return SideMaker(take, instant).made();
}

}  // namespace wend::sheets
