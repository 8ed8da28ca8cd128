/// What bodies meet at an instant: the set, everybody on it, the rig and those carried along with it.
#pragma once

#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/crew/obstacles.h"
#include "core/snags/instant.h"

namespace wend::answers {

class ObstaclesNow {
 public:
  /// Requires  the take to outlive it.
  explicit ObstaclesNow(const Take& take);

  /// What stands all along.
  const std::vector<crew::Obstacle>& fixed() const { return fixed_; }
  /// Leaves and pieces where they are, performers, and crew who do not go along with the camera.
  std::vector<crew::Obstacle> passing(const snags::Instant& instant) const;
  /// The camera first, then those carried along.
  std::vector<crew::Body> rig(const snags::Instant& instant) const;
  /// What of `passing` somebody of the crew at a place meets: not themselves, nor those who stand in a shelter that the
  /// place is in.
  std::vector<crew::Obstacle> metBy(const std::string& id, geometry::Point pos, const snags::Instant& instant,
                                    const std::vector<crew::Obstacle>& passing) const;

 private:
  const Take& take_;
  crew::NameOf names_;
  std::vector<crew::Obstacle> fixed_;
};

}  // namespace wend::answers
