/// What is asked of the geometry: the ground seen during each step of a take.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "core/sight/step_parts.h"
#include "core/sight/swept_region.h"

namespace wend::sight {

/// Ground seen in one way, straight or in one mirror, and the convex areas of it in which low pieces hide a whole body
/// from that way of seeing during the whole step.
struct GroundLayer {
  SweptRegion region;
  std::vector<RegionSlice> hidden;
};

/// The layers of one step. Asked again and again, it keeps their memory.
class StepGround {
 public:
  std::span<const GroundLayer> layers() const { return {layers_.data(), used_}; }
  void clear() { used_ = 0; }
  /// One more layer, empty.
  GroundLayer& addLayer() {
    if (used_ == layers_.size()) layers_.emplace_back();
    GroundLayer& layer = layers_[used_++];
    layer.region.clear();
    layer.hidden.clear();
    return layer;
  }

 private:
  std::vector<GroundLayer> layers_;
  std::size_t used_ = 0;
};

/// Requires  the same answer for a step whatever was asked before.
class GroundOfSteps {
 public:
  virtual ~GroundOfSteps() = default;
  /// Adds the layers of a step to an empty `ground`.
  virtual void find(std::size_t step, StepGround& ground) = 0;
  /// Whether the step certainly sees what the one before it did, so that it need not be found.
  virtual bool asBefore(std::size_t) { return false; }
  /// Adds to an empty `ground`, as layers without hidden areas, ground that holds what is seen at every instant of the
  /// steps. The nearer it keeps to that the more steps need not be found one by one. False when it has none to offer.
  virtual bool findOver(StepRange, StepGround&) { return false; }
};

/// Makes one for each thread.
using GroundMaker = std::function<std::unique_ptr<GroundOfSteps>()>;

}  // namespace wend::sight
