// Sight by brute force: one straight line against every wall, at one instant.
#pragma once

#include <cmath>
#include <random>
#include <vector>

#include "core/sight/region_query.h"
#include "core/sight/swept_view.h"

namespace wend::sight::reference {

using geometry::Segment;

inline double uniform(std::mt19937_64& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

/// The walls as the triangles hold them, each once.
inline std::vector<Segment> wallsOf(const Triangulation& triangles) {
  std::vector<Segment> walls;
  for (std::size_t s = 0; s < 3 * triangles.triangles(); ++s) {
    const Triangulation::Side& side = triangles.sides()[s];
    if (side.wall >= 0 && (side.twin < 0 || side.origin < side.end))
      walls.push_back({triangles.corners()[side.origin], triangles.corners()[side.end]});
  }
  return walls;
}

inline SweptPose poseAt(const SweptStep& step, double share) {
  return {lerp(step.from.pupil, step.until.pupil, share), geometry::lerp(step.from.bearing, step.until.bearing, share),
          geometry::lerp(step.from.halfAngle, step.until.halfAngle, share)};
}

/// Whether the frame holds q with something to spare.
inline bool inFrame(const SweptPose& pose, Point q, double spare = 1e-7) {
  if (pose.halfAngle >= 180) return true;
  const double off = geometry::turn(pose.bearing, geometry::bearingOf(q - pose.pupil));
  return std::abs(off) <= pose.halfAngle - geometry::degrees(spare);
}

/// Whether the line from c to q passes every wall with `spare` metres to spare. A wall that c stands on hides nothing.
inline bool open(const std::vector<Segment>& walls, Point c, Point q, double spare = 1e-6) {
  const Vec d = q - c;
  const double reach = length(d);
  if (reach < spare) return false;
  for (const Segment& wall : walls) {
    const Vec w = wall.b - wall.a;
    const double size = length(w), here = cross(w, c - wall.a) / size, there = cross(w, q - wall.a) / size;
    if (std::abs(there) > spare && (std::abs(here) < 1e-10 || (here > 0) == (there > 0))) continue;
    const double a = cross(d, wall.a - c) / reach, b = cross(d, wall.b - c) / reach;
    if ((a > spare && b > spare) || (a < -spare && b < -spare)) continue;
    if (std::abs(there) <= spare && geometry::distance(q, wall) > 2 * spare && std::abs(here) > spare) continue;
    return false;
  }
  return true;
}

inline bool seenAt(const std::vector<Segment>& walls, const SweptStep& step, double share, Point q) {
  const SweptPose pose = poseAt(step, share);
  return inFrame(pose, q) && open(walls, pose.pupil, q);
}

inline bool seenDuring(const std::vector<Segment>& walls, const SweptStep& step, Point q, int instants = 100) {
  for (int i = 0; i <= instants; ++i)
    if (seenAt(walls, step, static_cast<double>(i) / instants, q)) return true;
  return false;
}

}  // namespace wend::sight::reference
