/// Where everybody is: the plan's marks and tracks resolved to seconds, heights and floors.
///
/// Frame     plan metres; heights above the set's datum; seconds from the take's start.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/geometry/keyed.h"
#include "core/geometry/pose.h"
#include "core/motion/track.h"
#include "core/plan/plan.h"

namespace wend::answers {

using geometry::Point;
using geometry::Point3;

struct PerformerPose {
  bool present = false;
  Point pos;
  double floor = 0;
  double eyes = 0, top = 0;  ///< above the datum
  double speed = 0;
  bool taped = false;  ///< stands on a taped mark
  bool operator==(const PerformerPose&) const = default;
};

struct CrewPose {
  bool present = false;
  bool carried = false;
  bool walking = false;
  Point pos;
  double floor = 0;
  double height = 0;    ///< above the floor, by posture
  std::string shelter;  ///< where it stands, if in one
};

/// Faster than this on the floor is moving, m/s.
inline constexpr double kMoving = 0.05;

class People {
 public:
  /// Fails with whatever keeps a track from being laid, `where` as in the plan ("/performers/0/marks/3/at").
  static base::Result<People> of(const plan::PlanPtr& plan);

  const motion::Track& camera() const { return camera_; }
  /// Null without marks.
  const motion::Track* performer(std::size_t i) const { return trackOf(performers_, i); }
  /// Null for the carried and for those without a route.
  const motion::Track* crew(std::size_t i) const { return trackOf(crew_, i); }

  /// Floor of the topmost area there that has one, else of the room, else the datum.
  double floorAt(Point pos) const;

  PerformerPose performerAt(std::size_t i, double t) const;
  /// Nothing before a prop's first entry.
  std::optional<Point3> propAt(std::size_t i, double t) const;
  /// `sensor` is the camera's pose at t, for those who are carried along.
  CrewPose crewAt(std::size_t i, double t, const geometry::Pose& sensor) const;

  /// Where the lens looks when it is on that performer or prop: eyes, or the prop's place.
  std::optional<Point3> lookAt(const std::string& id, double t) const;
  /// Where that performer's first mark or prop's first entry puts it; the origin for an id of neither.
  Point3 firstPlaceOf(const std::string& id) const;
  /// How far it strays from where the plan has it, metres.
  double wobbleOf(const std::string& id, double t) const;
  /// The same for the rig.
  double rigWobble(double t) const;

 private:
  using Tracks = std::vector<std::optional<motion::Track>>;
  static const motion::Track* trackOf(const Tracks& tracks, std::size_t i) { return tracks[i] ? &*tracks[i] : nullptr; }
  explicit People(plan::PlanPtr plan, motion::Track camera) : plan_(std::move(plan)), camera_(std::move(camera)) {}
  std::optional<CrewPose> carriedAt(std::size_t i, const geometry::Pose& sensor) const;

  plan::PlanPtr plan_;
  motion::Track camera_;
  Tracks performers_, crew_;
};

/// The marks of anybody, in seconds. Crew marks in a shelter stand at the shelter.
std::vector<motion::TrackMark> resolvedMarks(const plan::Plan& plan, const std::vector<plan::Mark>& marks);

/// Keys in seconds.
geometry::KeySpan resolved(const plan::Plan& plan, const plan::KeyTime& time);

template <class Key>
std::vector<geometry::KeySpan> resolvedKeys(const plan::Plan& plan, const std::vector<Key>& keys) {
  std::vector<geometry::KeySpan> spans;
  for (const auto& key : keys) spans.push_back(resolved(plan, key.time));
  return spans;
}

}  // namespace wend::answers
