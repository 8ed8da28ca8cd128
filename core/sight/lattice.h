/// Exact answers about points with whole coordinates of at most 26 bits.
#pragma once

#include <cstdint>

namespace wend::sight {

struct LatticePoint {
  std::int64_t x = 0, y = 0;
  bool operator==(const LatticePoint&) const = default;
};

/// Twice the area of the triangle, positive when it goes counter-clockwise.
inline std::int64_t doubleArea(LatticePoint a, LatticePoint b, LatticePoint c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Whether d lies strictly inside the circle through the corners of the counter-clockwise triangle abc.
inline bool insideCircle(LatticePoint a, LatticePoint b, LatticePoint c, LatticePoint d) {
  const std::int64_t ax = a.x - d.x, ay = a.y - d.y, bx = b.x - d.x, by = b.y - d.y, cx = c.x - d.x, cy = c.y - d.y;
  const __int128 abc = static_cast<__int128>(ax * ax + ay * ay) * (bx * cy - by * cx);
  const __int128 bca = static_cast<__int128>(bx * bx + by * by) * (cx * ay - cy * ax);
  const __int128 cab = static_cast<__int128>(cx * cx + cy * cy) * (ax * by - ay * bx);
  return abc + bca + cab > 0;
}

}  // namespace wend::sight
