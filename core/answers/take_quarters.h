/// The take looked at every quarter of a second: what those whose drawn ways are held against it find around them.
///
/// Frame     plan metres; quarters of a second from the take's start, those beyond it as at its ends.
#pragma once

#include <optional>
#include <unordered_map>
#include <vector>

#include "core/answers/obstacles_now.h"

namespace wend::answers {

/// Looked up as they are asked for, each once: whoever holds several ways against a take shares one of these.
class TakeQuarters {
 public:
  static constexpr double kQuarter = 0.25;

  /// Everybody and everything that moves.
  struct Around {
    snags::Instant instant;
    std::vector<crew::Obstacle> passing;
    std::vector<crew::Obstacle> rig;
  };
  /// What the lens looks through, and from where; no eye without a lens.
  struct Look {
    sight::SceneAt scene;
    std::optional<sight::Eye> eye;
  };

  /// Requires  the take to outlive it.
  explicit TakeQuarters(const Take& take) : take_(take), obstacles_(take) {}

  const Take& take() const { return take_; }
  const ObstaclesNow& obstacles() const { return obstacles_; }
  const Around& around(long quarter);
  const Look& look(long quarter);

 private:
  double timeOf(long quarter) const;

  const Take& take_;
  ObstaclesNow obstacles_;
  std::unordered_map<long, Around> around_;
  std::unordered_map<long, Look> looks_;
};

}  // namespace wend::answers
