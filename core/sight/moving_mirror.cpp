#include "core/sight/moving_mirror.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/sight/mirror_plan.h"
#include "core/sight/region_query.h"

namespace wend::sight {

using geometry::Extent;

namespace {

/// Into how many parts a face is cut when it is asked how much of it is in view.
constexpr int kParts = 8;

/// A line of the plan as an axis: metres along it, and metres in front of it.
struct Axis {
  Point at;
  Vec along;
  explicit Axis(Segment face) : at(face.a), along(geometry::unit(face.b - face.a)) {}
  double run(Point p) const { return geometry::dot(p - at, along); }
  double front(Point p) const { return geometry::cross(along, p - at); }
  Segment stretch(double from, double until, double forward) const {
    const Vec off = geometry::left(along) * forward;
    return {at + along * from + off, at + along * until + off};
  }
};

/// The stretch of the face, in metres along it, that holds all of it that is in view.
std::optional<Span> inView(Segment face, double drift, const SweptRegion& direct) {
  const double size = geometry::distance(face.a, face.b);
  std::optional<Span> seen;
  for (int i = 0; i < kParts; ++i) {
    const Span part{size * i / kParts, size * (i + 1) / kParts};
    const Segment glass{geometry::lerp(face.a, face.b, part.from / size),
                        geometry::lerp(face.a, face.b, part.until / size)};
    if (meets(direct, glass, kAtGlass + drift)) seen = {seen ? seen->from : part.from, part.until};
  }
  return seen;
}

/// An eye that looks all round from anywhere near that glass.
SweptStep seerIn(Segment glass, double sway) {
  const SweptPose from{glass.a, 0, 180}, until{glass.b, 0, 180};
  return {from, until, sway, 0};
}

}  // namespace

std::optional<MovedGlass> lookInto(Segment face, const Drift& drift, const SweptStep& lens, const SweptRegion& direct) {
  const Axis mirror(face);
  const Point middle = geometry::lerp(face.a, face.b, 0.5);
  const std::array<Point, 2> way{lens.from.pupil, lens.until.pupil};
  const double reach = std::max(geometry::distance(way[0], middle), geometry::distance(way[1], middle)) + lens.sway;
  const double turn = geometry::radians(std::min(drift.degrees, 90.0));
  const auto [least, most] = std::minmax({mirror.front(way[0]), mirror.front(way[1])});
  if (most + lens.sway + drift.metres + turn * reach <= 0) return std::nullopt;
  const auto seen = inView(face, drift.metres, direct);
  if (!seen) return std::nullopt;

  MovedGlass glass;
  glass.face = face;
  glass.image = imageOf(lens, face);
  glass.image.sway += 2 * drift.metres + 2 * std::sin(turn) * reach;
  glass.image.turn += 2 * drift.degrees;
  const double behind = least - glass.image.sway - drift.metres;
  glass.beside = behind < kBesideGlass;
  double wider = drift.metres;
  if (!glass.beside) {
    double apart = 0;
    for (const Point& p : way)
      apart = std::max({apart, std::abs(mirror.run(p) - seen->from), std::abs(mirror.run(p) - seen->until)});
    apart += glass.image.sway + drift.metres;
    wider += apart * 2 * drift.metres / (2 * drift.metres + behind);
  }
  glass.back = mirror.stretch(seen->from - wider, seen->until + wider, -drift.metres);
  glass.front = mirror.stretch(seen->from - wider, seen->until + wider, drift.metres);
  glass.seer = glass.beside ? seerIn(mirror.stretch(seen->from, seen->until, 0), drift.metres) : glass.image;
  return glass;
}

Extent boxAround(const MovedGlass& glass, const Extent& ground) {
  std::vector<Point> points{ground.low, ground.high};
  for (const Point& p : {glass.face.a, glass.face.b, glass.back.a, glass.back.b, glass.front.a, glass.front.b,
                         glass.seer.from.pupil, glass.seer.until.pupil})
    for (const double by : {-1.0, 1.0}) points.push_back(p + Vec{1, 1} * (by * (glass.seer.sway + 1)));
  return geometry::extentOf(points);
}

std::vector<Segment> wallsPast(const MovedGlass& glass, std::span<const Segment> walls, const Extent& box) {
  std::vector<Segment> past;
  for (const Segment& wall : walls)
    if (const auto part = inFront(wall, glass.front)) past.push_back(*part);
  if (!glass.beside) addLineBut(glass.back, box, past);
  return past;
}

Segment edgeBelow(const MovedGlass& glass, double bottom, Span lensHeights) {
  return lensHeights.until > bottom ? glass.back : glass.front;
}

Segment edgeAbove(const MovedGlass& glass, double top, Span lensHeights) {
  return lensHeights.from < top ? glass.back : glass.front;
}

}  // namespace wend::sight
