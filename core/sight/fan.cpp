#include "core/sight/fan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/geometry/disc.h"

namespace wend::sight {

namespace {
constexpr double kPi = std::numbers::pi;
}

void Fan::layOut(const Frame& frame, double stepRadians) {
  turns_.clear();
  foot_ = frame.foot();
  axis_ = frame.axis();
  const Span turns = frame.turns();
  const double parts = std::max(1.0, std::ceil(turns.length() / stepRadians));
  step_ = turns.length() / parts;
  first_ = turns.from + step_ / 2;
  const auto count = static_cast<std::size_t>(parts);
  directions_.resize(count);
  borders_.resize(count + 1);
  const Vec onward = geometry::turned(Vec{1, 0}, step_);
  const auto turnedOn = [&](Vec v) { return Vec{v.x * onward.x - v.y * onward.y, v.x * onward.y + v.y * onward.x}; };
  Vec border = geometry::turned(axis_, turns.from), ray = geometry::turned(axis_, first_);
  for (std::size_t i = 0; i < count; ++i) {
    borders_[i] = border;
    directions_[i] = ray;
    border = turnedOn(border);
    ray = turnedOn(ray);
  }
  borders_[count] = border;
}

std::size_t Fan::raysBefore(double turn) const {
  if (!turns_.empty())
    return static_cast<std::size_t>(std::lower_bound(turns_.begin(), turns_.end(), turn) - turns_.begin());
  const double rays = std::ceil((turn - first_) / step_);
  return static_cast<std::size_t>(std::clamp(rays, 0.0, static_cast<double>(directions_.size())));
}

/// The rays between two turns that lie less than half a circle apart, by the shorter way round.
template <class Visit>
void Fan::eachRay(double from, double until, Visit visit) const {
  const std::size_t low = raysBefore(std::min(from, until)), high = raysBefore(std::max(from, until));
  if (std::abs(until - from) <= kPi) {
    for (std::size_t ray = low; ray < high; ++ray) visit(ray);
    return;
  }
  for (std::size_t ray = 0; ray < low; ++ray) visit(ray);
  for (std::size_t ray = high; ray < directions_.size(); ++ray) visit(ray);
}

void Fan::crossEdge(std::uint32_t index, Vec a, Vec b, double turnA, double turnB, bool sheet) {
  const Vec edge = b - a;
  const double area = geometry::cross(a, edge);
  eachRay(turnA, turnB, [&](std::size_t ray) {
    const double r = std::max(0.0, area / geometry::cross(directions_[ray], edge));
    marks_.push_back({static_cast<std::uint32_t>(ray), index, r, sheet ? r : -1});
  });
}

void Fan::crossDisc(std::uint32_t index, const Prism& prism) {
  const Vec d = prism.centre - foot_;
  const auto half = geometry::tangentAngle(geometry::length(d), prism.radius);
  const auto mark = [&](std::size_t ray) {
    if (const auto part = geometry::chord(foot_, directions_[ray], prism.centre, prism.radius))
      marks_.push_back({static_cast<std::uint32_t>(ray), index, part->from, part->until});
  };
  if (!half) {
    for (std::size_t ray = 0; ray < directions_.size(); ++ray) mark(ray);
    return;
  }
  const double middle = geometry::angleBetween(axis_, d);
  eachRay(std::remainder(middle - *half, 2 * kPi), std::remainder(middle + *half, 2 * kPi), mark);
}

void Fan::cross(const SceneAt& now, std::uint32_t index) {
  const Prism& prism = now.prism(index);
  if (prism.form == Prism::Form::disc) {
    crossDisc(index, prism);
  } else if (prism.form == Prism::Form::sheet) {
    const Vec a = prism.sheet.a - foot_, b = prism.sheet.b - foot_;
    crossEdge(index, a, b, geometry::angleBetween(axis_, a), geometry::angleBetween(axis_, b), true);
  } else {
    const auto corners = now.corners(prism);
    Vec before = corners.back() - foot_;
    double turnBefore = geometry::angleBetween(axis_, before);
    for (const Point& corner : corners) {
      const Vec here = corner - foot_;
      const double turn = geometry::angleBetween(axis_, here);
      crossEdge(index, before, here, turnBefore, turn, false);
      before = here;
      turnBefore = turn;
    }
  }
}

/// Edges of one outline on one ray pair up into stretches inside it; an odd number of them starts inside.
void Fan::pairRay(const SceneAt& now, std::size_t ray, std::size_t from, std::size_t until) {
  starts_[ray] = hits_.size();
  while (from < until) {
    const std::uint32_t index = sorted_[from].prism;
    const Prism& prism = now.prism(index);
    std::size_t end = from;
    while (end < until && sorted_[end].prism == index) ++end;
    if (prism.form != Prism::Form::outline) {
      hits_.push_back({{sorted_[from].at, sorted_[from].far, prism.bottom, prism.top}, index});
    } else {
      std::sort(sorted_.begin() + static_cast<std::ptrdiff_t>(from), sorted_.begin() + static_cast<std::ptrdiff_t>(end),
                [](const Mark& a, const Mark& b) { return a.at < b.at; });
      double near = 0;
      for (std::size_t i = from, inside = (end - from) % 2; i < end; ++i, inside ^= 1) {
        if (inside) hits_.push_back({{near, sorted_[i].at, prism.bottom, prism.top}, index});
        near = sorted_[i].at;
      }
    }
    from = end;
  }
}

void Fan::pair(const SceneAt& now) {
  // A stable counting sort by ray leaves each prism's marks on a ray together.
  ends_.assign(directions_.size() + 1, 0);
  for (const Mark& mark : marks_) ++ends_[mark.ray + 1];
  for (std::size_t i = 1; i < ends_.size(); ++i) ends_[i] += ends_[i - 1];
  sorted_.resize(marks_.size());
  std::vector<std::size_t>& next = starts_;
  next.assign(ends_.begin(), ends_.end());
  for (const Mark& mark : marks_) sorted_[next[mark.ray]++] = mark;
  hits_.clear();
  for (std::size_t ray = 0; ray < directions_.size(); ++ray) pairRay(now, ray, ends_[ray], ends_[ray + 1]);
  starts_[directions_.size()] = hits_.size();
}

void Fan::spread(const SceneAt& now, const Frame& frame, double stepRadians, double reach) {
  layOut(frame, stepRadians);
  crossAll(now, frame, reach);
}

void Fan::spread(const SceneAt& now, const Frame& frame, std::span<const double> turns, double reach) {
  foot_ = frame.foot();
  axis_ = frame.axis();
  turns_.assign(turns.begin(), turns.end());
  directions_.clear(), borders_.clear();
  for (const double turn : turns_) directions_.push_back(geometry::turned(axis_, turn));
  crossAll(now, frame, reach);
}

void Fan::crossAll(const SceneAt& now, const Frame& frame, double reach) {
  marks_.clear();
  const bool aheadOnly = frame.turns().until < kPi / 2;
  for (std::size_t i = 0; i < now.size(); ++i) {
    const Prism& prism = now.prism(i);
    const Vec d = prism.centre - foot_;
    if (geometry::length(d) - prism.radius > reach) continue;
    if (aheadOnly && geometry::dot(d, axis_) < -prism.radius) continue;
    cross(now, static_cast<std::uint32_t>(i));
  }
  pair(now);
}

}  // namespace wend::sight
