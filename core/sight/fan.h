/// Every ray of one frame at once: what an eye meets across its whole width, for pictures and maps of seen ground.
///
/// Sampled: one ray stands for the sector around it. The answer for one body is body.h, which asks at every corner.
///
/// Tests     tests/core/sight/ray_test.cpp
#pragma once

#include <span>
#include <vector>

#include "core/sight/scene.h"

namespace wend::sight {

/// A prism crossed by a ray of the fan.
struct FanHit {
  Upright box;
  std::uint32_t prism = 0;  ///< as SceneAt::prism
};

class Fan {
 public:
  /// Spreads rays over the frame's turns (see Frame), each in the middle of a sector no wider than `stepRadians`, and
  /// finds what each crosses within `reach` metres. May be asked again; keeps its memory.
  ///
  /// Ensures   the hits of a ray are those of `crossingsAlong`, up to order.
  /// Cost      corners, plus hits.
  void spread(const SceneAt& now, const Frame& frame, double stepRadians, double reach);
  /// The same along turns of the caller's, counter-clockwise from the axis in (-pi, pi]. There are no borders then.
  /// Requires  turns in order.
  void spread(const SceneAt& now, const Frame& frame, std::span<const double> turns, double reach);

  std::size_t size() const { return directions_.size(); }
  Vec direction(std::size_t ray) const { return directions_[ray]; }
  /// The direction between ray `border - 1` and ray `border`; 0 and size() are the frame's sides.
  Vec border(std::size_t border) const { return borders_[border]; }
  std::span<const FanHit> hits(std::size_t ray) const {
    return {hits_.data() + starts_[ray], hits_.data() + starts_[ray + 1]};
  }

 private:
  struct Mark {
    std::uint32_t ray, prism;
    double at, far;  ///< far < at: one edge of an outline, to be paired
  };
  void layOut(const Frame& frame, double stepRadians);
  void crossAll(const SceneAt& now, const Frame& frame, double reach);
  void cross(const SceneAt& now, std::uint32_t index);
  void crossEdge(std::uint32_t index, Vec a, Vec b, double turnA, double turnB, bool sheet);
  void crossDisc(std::uint32_t index, const Prism& prism);
  void pair(const SceneAt& now);
  void pairRay(const SceneAt& now, std::size_t ray, std::size_t from, std::size_t until);
  std::size_t raysBefore(double turn) const;
  template <class Visit>
  void eachRay(double from, double until, Visit visit) const;

  Point foot_;
  Vec axis_;
  double first_ = 0, step_ = 1;
  std::vector<double> turns_;  ///< of the rays, where they are the caller's
  std::vector<Vec> directions_, borders_;
  std::vector<Mark> marks_, sorted_;
  std::vector<FanHit> hits_;
  std::vector<std::size_t> starts_, ends_;
};

}  // namespace wend::sight
