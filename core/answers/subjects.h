/// What the focus is on along the take, and how far away it is wanted. Metres; seconds from the take's start.
///
/// During a change of subject floor, slant and flat are each blended in 1/distance from the sensor.
#pragma once

#include "core/answers/people.h"
#include "core/optics/distance.h"

namespace wend::answers {

class Subjects {
 public:
  Subjects(plan::PlanPtr plan, const People& people);

  const People& people() const { return *people_; }
  bool any() const { return !keys_.empty(); }
  /// Which keys count at t, and how far the change is. Requires any().
  geometry::KeyBlend blendAt(double t) const { return geometry::blendAt(keys_, t); }
  /// True from the start to the end of every key after the first that takes time.
  bool changing(double t) const;
  /// The spans of the changes, in order.
  std::vector<geometry::Span> changes() const;

  /// "ilse", "ilse+tom", "4.5,3.7", "3.00 m": what key k is on.
  std::string nameOf(std::size_t k) const;
  /// The performer or prop that key k is on, or the first of a split; empty for points and distances.
  std::string firstOf(std::size_t k) const;
  /// All that a split is on; nothing of others.
  std::vector<std::string> splitOf(std::size_t k) const;
  /// Where that is, for light and frame. Nothing for distances and absent people.
  std::optional<Point3> placeOf(std::size_t k, double t) const;

  /// Wanted distances at t from the sensor; flat as the pose has it. Nothing without keys or with somebody absent.
  std::optional<optics::SubjectDistances> wantedAt(double t, const geometry::Pose& sensor) const;
  /// The slant distance alone, which needs no aim.
  std::optional<double> slantAt(double t, Point3 sensor) const;

  /// Distances of every one of a split, or of the one subject, that drive focus at t; for slack.
  std::vector<double> drivingDistances(std::size_t k, double t, const geometry::Pose& sensor) const;

 private:
  std::optional<optics::SubjectDistances> distancesOn(std::size_t k, double t, const geometry::Pose& sensor) const;
  std::optional<optics::SubjectDistances> splitOn(const plan::OnSplit& split, double t,
                                                  const geometry::Pose& sensor) const;

  plan::PlanPtr plan_;
  const People* people_;
  std::vector<geometry::KeySpan> keys_;
};

/// The one of the three that drives the plan's focus.
double driving(const plan::Plan& plan, const optics::SubjectDistances& distances);

}  // namespace wend::answers
