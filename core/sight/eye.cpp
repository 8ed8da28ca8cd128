#include "core/sight/eye.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/geometry/disc.h"
#include "core/geometry/segment.h"

namespace wend::sight {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Keeps of `s` the slopes with offset + rate * m >= 0.
void keepWhere(Slopes& s, double offset, double rate) {
  if (rate > 0) {
    s.low = std::max(s.low, -offset / rate);
  } else if (rate < 0) {
    s.high = std::min(s.high, -offset / rate);
  } else if (offset < 0) {
    s.high = -kInfinity;
  }
}

}  // namespace

Frame::HalfAngle Frame::widened(double tangent, double marginDegrees) {
  const double angle = std::atan(tangent) + geometry::radians(marginDegrees);
  if (angle >= kPi / 2) return {1, 0};
  return {std::sin(angle), std::cos(angle)};
}

Frame::Frame(const Eye& eye)
    : foot_(geometry::flat(eye.pupil.at)),
      height_(eye.pupil.at.z),
      axis_(geometry::direction(eye.pupil.bearing)),
      rightward_(-geometry::left(axis_)),
      cosTilt_(std::cos(geometry::radians(eye.pupil.tilt))),
      sinTilt_(std::sin(geometry::radians(eye.pupil.tilt))),
      wide_(widened(eye.tanHalfWidth, eye.marginDegrees)),
      tall_(widened(eye.tanHalfHeight, eye.marginDegrees)) {
  // The zenith or nadir is in frame when it is less than the half height away from the axis.
  const double ahead = std::min(highest(1), highest(-1));
  if (ahead <= 0) {
    turns_ = {-kPi, kPi};
    return;
  }
  const double widest = std::atan2(wide_.sin * tall_.cos, wide_.cos * ahead);
  turns_ = {-widest, widest};
}

bool Frame::holds(Point3 p) const {
  const Vec d = geometry::flat(p) - foot_;
  const double z = p.z - height_, along = geometry::dot(d, axis_);
  const double ahead = along * cosTilt_ + z * sinTilt_, up = z * cosTilt_ - along * sinTilt_;
  return ahead > 0 && wide_.cos * std::abs(geometry::dot(d, rightward_)) <= wide_.sin * ahead &&
         tall_.cos * std::abs(up) <= tall_.sin * ahead;
}

Slopes Frame::slopes(Vec direction) const {
  const double ahead = wide_.sin * geometry::dot(direction, axis_) * cosTilt_, rise = wide_.sin * sinTilt_;
  const double right = wide_.cos * geometry::dot(direction, rightward_);
  Slopes s{-kInfinity, kInfinity};
  keepWhere(s, ahead - right, rise);
  keepWhere(s, ahead + right, rise);
  for (const FrameSide& side : {lower(), upper()}) keepWhere(s, geometry::dot(side.along, direction), side.up);
  return s;
}

namespace {

/// The least distance from 0 of an arc of angles given as offsets from its middle, all in radians.
double leastTurn(double middle, Span offsets) {
  if (offsets.length() >= kPi) return 0;  // the pupil lies within the outline
  const double low = middle + offsets.from, high = middle + offsets.until;
  if (std::ceil(low / (2 * kPi)) * 2 * kPi <= high) return 0;
  return std::min(std::abs(std::remainder(low, 2 * kPi)), std::abs(std::remainder(high, 2 * kPi)));
}

/// The arc that directions (ahead, aside) of the body's outline fill, seen from its middle.
class Arc {
 public:
  explicit Arc(Vec middle) : middle_(middle) {}
  void take(Vec direction) {
    const Vec turned{dot(middle_, direction), cross(middle_, direction)};
    const double angle = likeAngle(turned);
    if (angle < least_) least_ = angle, low_ = turned;
    if (angle > most_) most_ = angle, high_ = turned;
  }
  double middle() const { return std::atan2(middle_.y, middle_.x); }
  Span offsets() const { return {std::atan2(low_.y, low_.x), std::atan2(high_.y, high_.x)}; }

 private:
  /// Grows with the angle from -pi to pi, at a division's cost.
  static double likeAngle(Vec v) {
    const double sum = std::abs(v.x) + std::abs(v.y);
    if (sum == 0) return 0;
    return v.x >= 0 ? v.y / sum : std::copysign(2 - std::abs(v.y) / sum, v.y);
  }

  Vec middle_, low_{1, 0}, high_{1, 0};
  double least_ = 0, most_ = 0;
};

constexpr int kRim = 32;

/// Unit vectors to the corners around a disc, worked out once.
const std::array<Vec, kRim>& rim() {
  static const std::array<Vec, kRim> corners = [] {
    std::array<Vec, kRim> all{};
    for (int i = 0; i < kRim; ++i) all[static_cast<std::size_t>(i)] = geometry::turned(Vec{1, 0}, 2 * kPi * i / kRim);
    return all;
  }();
  return corners;
}

/// A pose's axes, worked out once for many points.
struct Axes {
  explicit Axes(const geometry::Pose& pose)
      : at(pose.at), right(pose.rightward()), up(pose.upward()), ahead(pose.forward()) {}
  geometry::InView view(Point3 p) const { return {dot(p - at, right), dot(p - at, up), dot(p - at, ahead)}; }
  Point3 at;
  geometry::Vec3 right, up, ahead;
};

bool around(const Eye& eye, const Body& body) {
  return geometry::distance(geometry::flat(eye.pupil.at), body.centre) <= body.radius;
}

/// The answer for a body that is around the pupil.
double within(const Eye& eye) {
  return -geometry::degrees(std::min(std::atan(eye.tanHalfWidth), std::atan(eye.tanHalfHeight)));
}

/// Around the disc rather than in it, so that the answer never promises too much.
double outwards() {
  return 1 / std::cos(kPi / kRim);
}

}  // namespace

double leastDegreesToFrame(const Eye& eye, const Body& body) {
  if (around(eye, body)) return within(eye);
  const Axes axes(eye.pupil);
  const geometry::InView middle = axes.view(geometry::at(body.centre, (body.floor + body.top) / 2));
  const double half = (body.top - body.floor) / 2, radius = body.radius * outwards();
  const double ball = std::sqrt(half * half + radius * radius);
  // Rounding lets the true answer be less by far less than this.
  constexpr double kHair = 1e-9;
  const auto off = [&](double beside, double tanHalf) {
    const double away = std::sqrt(middle.ahead * middle.ahead + beside * beside);
    const double reach = geometry::tangentAngle(away, ball).value_or(kPi);
    return std::abs(std::atan2(beside, middle.ahead)) - reach - std::atan(tanHalf) - kHair;
  };
  return geometry::degrees(std::max(off(middle.right, eye.tanHalfWidth), off(middle.up, eye.tanHalfHeight)));
}

double degreesToFrame(const Eye& eye, const Body& body) {
  if (around(eye, body)) return within(eye);
  const double halfWidth = std::atan(eye.tanHalfWidth), halfHeight = std::atan(eye.tanHalfHeight);
  const Axes axes(eye.pupil);
  const geometry::InView middle = axes.view(geometry::at(body.centre, (body.floor + body.top) / 2));
  Arc across({middle.ahead, middle.right}), upright({middle.ahead, middle.up});
  const double radius = body.radius * outwards();
  for (const Vec& corner : rim()) {
    for (const double z : {body.floor, body.top}) {
      const geometry::InView p = axes.view(geometry::at(body.centre + corner * radius, z));
      across.take({p.ahead, p.right});
      upright.take({p.ahead, p.up});
    }
  }
  const double beside = leastTurn(across.middle(), across.offsets()) - halfWidth;
  const double above = leastTurn(upright.middle(), upright.offsets()) - halfHeight;
  return geometry::degrees(std::max(beside, above));
}

}  // namespace wend::sight
