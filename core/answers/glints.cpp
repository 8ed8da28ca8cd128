// Glossy things in frame that may show somebody.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/answers/ray_end.h"
#include "core/answers/set_scene.h"
#include "core/answers/span_log.h"
#include "core/answers/watched.h"
#include "core/answers/whole_take.h"
#include "core/geometry/disc.h"
#include "core/sight/body.h"
#include "core/sight/ray.h"

namespace wend::answers {

using geometry::Segment;
using geometry::Vec3;
using snags::Glint;

namespace {

constexpr double kStep = 0.2;
/// A face is asked in places no further apart, metres.
constexpr double kPart = 0.5;

/// A small upright part of a glossy thing that faces the lens.
struct Gloss {
  std::string piece;
  Point3 middle;
  Vec3 normal;  ///< outwards, of length 1
};

/// The sides of what stands, the thing on their left; both sides of a sheet.
std::vector<Segment> sidesOf(const sight::SceneAt& now, const sight::Prism& prism) {
  if (prism.form == sight::Prism::Form::sheet) return {prism.sheet, {prism.sheet.b, prism.sheet.a}};
  constexpr int kDiscSides = 12;
  const std::vector<Point> corners = prism.form == sight::Prism::Form::disc
                                         ? geometry::ringWithin(prism.centre, prism.radius, kDiscSides)
                                         : std::vector<Point>(now.corners(prism).begin(), now.corners(prism).end());
  std::vector<Segment> sides;
  for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
    sides.push_back({corners[j], corners[i]});
  return sides;
}

void addFacing(const Segment& side, const std::string& piece, double height, Point eye, std::vector<Gloss>& parts) {
  const double wide = geometry::distance(side.a, side.b);
  if (!(wide > 0)) return;
  const geometry::Vec out = geometry::left(side.b - side.a) * (-1 / wide);
  if (dot(out, eye - side.a) <= 0) return;
  const int count = static_cast<int>(std::ceil(wide / kPart));
  for (int i = 0; i < count; ++i)
    parts.push_back({piece, geometry::at(lerp(side.a, side.b, (i + 0.5) / count), height), {out.x, out.y, 0}});
}

/// The glossy parts that face the lens and that it sees.
std::vector<Gloss> glossSeen(const Take& take, const sight::SceneAt& now, const sight::Eye& eye) {
  std::vector<Gloss> parts;
  const auto add = [&](const sight::Prism& prism) {
    if (prism.source.owner != sight::Owner::piece) return;
    const plan::Piece& piece = take.plan().set.pieces[static_cast<std::size_t>(prism.source.tag)];
    if (!piece.glossy || !(prism.top > prism.bottom)) return;
    for (const Segment& side : sidesOf(now, prism))
      addFacing(side, piece.id.text(), (prism.bottom + prism.top) / 2, geometry::flat(eye.pupil.at), parts);
  };
  std::ranges::for_each(take.scene().prisms(), add);
  std::ranges::for_each(take.scene().glass(), add);
  std::ranges::for_each(now.passing(), add);
  constexpr double kOff = 1e-3;  // in front of its own face
  for (Gloss& part : parts) part.middle = part.middle + part.normal * kOff;
  std::erase_if(parts, [&](const Gloss& part) { return !sight::pointSight(now, eye, part.middle).seen(); });
  return parts;
}

/// Degrees between a part and a mirror in its place that shows `what` to the lens; nothing when it looks away.
std::optional<double> degreesOff(const Gloss& part, Point3 eye, Point3 what) {
  const Vec3 to = what - part.middle, back = eye - part.middle;
  if (dot(to, part.normal) <= 0 || dot(back, part.normal) <= 0) return std::nullopt;
  const Vec3 half = to * (1 / geometry::length(to)) + back * (1 / geometry::length(back));
  return std::acos(std::clamp(dot(half, part.normal) / geometry::length(half), -1.0, 1.0)) * 180 / std::numbers::pi;
}

bool open(const Take& take, const sight::SceneAt& now, Point3 from, Point3 to, double short_) {
  const Vec3 way = to - from;
  const double far = geometry::length(way);
  return rayLength(take, now, from, way * (1 / far)).value_or(kFarthestRay) > far - short_;
}

/// degreesOff of somebody whom nothing hides from the part.
std::optional<double> shownOff(const Take& take, const sight::SceneAt& now, Point3 eye, const Gloss& part,
                               const Watched& watched, double t) {
  const auto body = watched.body(t);
  if (!body) return std::nullopt;
  const Point3 middle = geometry::at(body->centre, (body->floor + body->top) / 2);
  const auto off = degreesOff(part, eye, middle);
  return off && open(take, now, part.middle, middle, body->radius) ? off : std::nullopt;
}

void note(SpanLog<std::string, Glint>& log, double t, const Gloss& part, const std::string& who, double off) {
  Glint& glint = log.add(t, part.piece, {{}, part.piece, {}, off, geometry::flat(part.middle)});
  if (std::find(glint.who.begin(), glint.who.end(), who) == glint.who.end()) glint.who.push_back(who);
  if (off < glint.offDegrees) glint.offDegrees = off, glint.pos = geometry::flat(part.middle);
}

}  // namespace

std::vector<Glint> glintsOf(const Take& take, double withinDegrees) {
  bool some = false;
  for (const plan::Piece& piece : take.plan().set.pieces) some = some || piece.glossy;
  if (!some) return {};
  const std::vector<Watched> bodies = watchedOf(take);
  SpanLog<std::string, Glint> log(kStep);
  const int steps = static_cast<int>(take.length() / kStep);
  for (int i = 0; i <= steps; ++i) {
    const double t = i * kStep;
    const auto eye = take.eyeAt(t, 0);
    if (!eye) continue;
    const sight::SceneAt now = take.scene().at(t);
    for (const Gloss& part : glossSeen(take, now, *eye))
      for (const Watched& watched : bodies)
        if (const auto off = shownOff(take, now, eye->pupil.at, part, watched, t); off && *off <= withinDegrees)
          note(log, t, part, watched.id, *off);
  }
  return log.inOrder();
}

}  // namespace wend::answers
