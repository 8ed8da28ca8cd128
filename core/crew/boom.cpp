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

std::optional<FrameTop> frameTopAt(const geometry::Pose& pupil, double tangentUp, Point place) {
  const auto height = topOfFrame(pupil, tangentUp, place);
  if (!height) return std::nullopt;
  const geometry::Vec ahead = geometry::direction(pupil.bearing);
  return FrameTop{*height, std::tan(geometry::radians(pupil.tilt) + std::atan(tangentUp)), ahead,
                  dot(place - flat(pupil.at), ahead)};
}

namespace {

/// How far ahead of a mouth, or back when negative, a microphone comes within `furthest` that is `over` above it here
/// and `rise` higher for each metre ahead; the place of the least gap where none does.
double leanFor(double over, double rise, double furthest) {
  const double squares = 1 + rise * rise, nearest = -over * rise / squares;
  const double spare = (squares * furthest * furthest - over * over) / (squares * squares);
  if (spare <= 0) return nearest;
  return nearest < 0 ? nearest + std::sqrt(spare) : nearest - std::sqrt(spare);
}

}  // namespace

BoomStand boomStand(const BoomPole& pole, Point holder, double holdersFloor, Point3 mouth,
                    const std::optional<FrameTop>& top) {
  Point3 microphone = mouth;
  microphone.z += pole.nearest;
  const double over = top ? top->height + pole.above - mouth.z : 0;
  if (over > pole.nearest) microphone.z = mouth.z + over;
  if (over > pole.furthest) {
    // Behind the lens there is no edge to go by.
    const double lean = std::max(leanFor(over, top->rise, pole.furthest), -top->distance);
    microphone = geometry::at(flat(mouth) + top->ahead * lean, mouth.z + over + top->rise * lean);
  }
  BoomStand stand;
  stand.shoulder = geometry::at(holder, holdersFloor + pole.shoulder);
  stand.microphone = microphone;
  stand.gap = geometry::distance(microphone, mouth);
  stand.reach = geometry::distance(holder, flat(microphone));
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
