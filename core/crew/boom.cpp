#include "core/crew/boom.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wend::crew {

std::optional<double> topOfFrame(const geometry::Pose& pupil, double tangentUp, Point place) {
  const double edge = geometry::radians(pupil.tilt) + std::atan(tangentUp);
  const double ahead = dot(place - flat(pupil.at), geometry::direction(pupil.bearing));
  if (ahead <= 0 || edge >= std::numbers::pi / 2) return std::nullopt;
  return pupil.at.z + ahead * std::tan(edge);
}

BoomStand boomStand(const BoomPole& pole, Point holder, double holdersFloor, Point3 mouth, std::optional<double> top) {
  BoomStand stand;
  const double lowest = mouth.z + pole.nearest;
  const double height = top ? std::max(*top + pole.above, lowest) : lowest;
  stand.shoulder = geometry::at(holder, holdersFloor + pole.shoulder);
  stand.microphone = geometry::at(flat(mouth), height);
  stand.gap = height - mouth.z;
  stand.reach = geometry::distance(holder, flat(mouth));
  return stand;
}

std::optional<LampBeside> lampBeside(const BoomStand& stand, std::span<const Point3> lamps) {
  std::optional<LampBeside> nearest;
  const geometry::Vec3 way = stand.microphone - stand.shoulder;
  const double squared = dot(way, way);
  for (std::size_t i = 0; i < lamps.size(); ++i) {
    const double share = squared > 0 ? std::clamp(dot(lamps[i] - stand.shoulder, way) / squared, 0.0, 1.0) : 0.0;
    const double metres = geometry::distance(lamps[i], stand.shoulder + way * share);
    if (!nearest || metres < nearest->metres) nearest = {i, metres};
  }
  return nearest;
}

}  // namespace wend::crew
