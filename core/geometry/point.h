/// Points and vectors of the plan frame: metres, x right, y up the page, z up from the set's datum.
///
/// Point and Vec differ on purpose: a place and a way between places. Counter-clockwise is positive, except for
/// bearings, which go clockwise from plan north (+y) in degrees, as a compass does.
#pragma once

#include <cmath>
#include <numbers>

namespace wend::geometry {

struct Vec {
  double x = 0, y = 0;
  bool operator==(const Vec&) const = default;
};

struct Point {
  double x = 0, y = 0;
  bool operator==(const Point&) const = default;
};

struct Vec3 {
  double x = 0, y = 0, z = 0;
  bool operator==(const Vec3&) const = default;
};

struct Point3 {
  double x = 0, y = 0, z = 0;
  bool operator==(const Point3&) const = default;
};

constexpr Vec operator-(Point a, Point b) {
  return {a.x - b.x, a.y - b.y};
}
constexpr Point operator+(Point p, Vec v) {
  return {p.x + v.x, p.y + v.y};
}
constexpr Point operator-(Point p, Vec v) {
  return {p.x - v.x, p.y - v.y};
}
constexpr Vec operator+(Vec a, Vec b) {
  return {a.x + b.x, a.y + b.y};
}
constexpr Vec operator-(Vec a, Vec b) {
  return {a.x - b.x, a.y - b.y};
}
constexpr Vec operator-(Vec v) {
  return {-v.x, -v.y};
}
constexpr Vec operator*(Vec v, double s) {
  return {v.x * s, v.y * s};
}
constexpr Vec operator*(double s, Vec v) {
  return v * s;
}
constexpr Vec operator/(Vec v, double s) {
  return {v.x / s, v.y / s};
}
constexpr double dot(Vec a, Vec b) {
  return a.x * b.x + a.y * b.y;
}
/// Positive when b lies counter-clockwise of a.
constexpr double cross(Vec a, Vec b) {
  return a.x * b.y - a.y * b.x;
}
/// v turned 90 degrees counter-clockwise.
constexpr Vec left(Vec v) {
  return {-v.y, v.x};
}
inline double length(Vec v) {
  return std::sqrt(dot(v, v));
}
inline double distance(Point a, Point b) {
  return length(b - a);
}
/// Requires v not zero.
inline Vec unit(Vec v) {
  return v / length(v);
}
constexpr Point lerp(Point a, Point b, double share) {
  return a + (b - a) * share;
}
constexpr double lerp(double a, double b, double share) {
  return a + (b - a) * share;
}

constexpr Vec3 operator-(Point3 a, Point3 b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Point3 operator+(Point3 p, Vec3 v) {
  return {p.x + v.x, p.y + v.y, p.z + v.z};
}
constexpr Vec3 operator+(Vec3 a, Vec3 b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
constexpr Vec3 operator-(Vec3 a, Vec3 b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Vec3 operator*(Vec3 v, double s) {
  return {v.x * s, v.y * s, v.z * s};
}
constexpr double dot(Vec3 a, Vec3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline double length(Vec3 v) {
  return std::sqrt(dot(v, v));
}
inline double distance(Point3 a, Point3 b) {
  return length(b - a);
}
constexpr Point flat(Point3 p) {
  return {p.x, p.y};
}
constexpr Point3 at(Point p, double z) {
  return {p.x, p.y, z};
}

constexpr double radians(double degrees) {
  return degrees * (std::numbers::pi / 180);
}
constexpr double degrees(double radians) {
  return radians * (180 / std::numbers::pi);
}

/// Bearing of a direction, degrees clockwise from north in (-180, 180]. Requires v not zero.
inline double bearingOf(Vec v) {
  return degrees(std::atan2(v.x, v.y));
}
/// The unit direction of a bearing.
inline Vec direction(double bearing) {
  return {std::sin(radians(bearing)), std::cos(radians(bearing))};
}
/// The value congruent to `angle` modulo 360 that lies nearest to `near`.
inline double unwrapped(double angle, double near) {
  return angle + 360 * std::round((near - angle) / 360);
}
/// Signed turn from `from` to `to`, degrees in [-180, 180].
inline double turn(double from, double to) {
  return std::remainder(to - from, 360.0);
}

/// 3s^2 - 2s^3 with s clamped to [0, 1].
constexpr double smoothstep(double s) {
  s = s < 0 ? 0 : s > 1 ? 1 : s;
  return s * s * (3 - 2 * s);
}

/// A closed span of time or of any coordinate.
struct Span {
  double from = 0, until = 0;
  bool operator==(const Span&) const = default;
  constexpr double length() const { return until - from; }
  constexpr bool contains(double t) const { return t >= from && t <= until; }
};

}  // namespace wend::geometry
