/// The ground as somebody on a drawn way finds it: what the lens sees, and what stands or walks there already.
///
/// Frame     plan metres, seconds from the take's start.
#pragma once

#include <map>
#include <tuple>

#include "core/answers/obstacles_now.h"
#include "core/crew/route.h"

namespace wend::answers {

/// Keeps what it looked at: places are told apart by 5 cm and times by a quarter of a second.
///
/// Error     so it is off by as much. Sight is told between the bars, `late` after it and `early` before it, which
///           reach further than that; a body counts as taken up where it overlaps by more than the 5 cm. Exact are the
///           findings of the take (crew seen, clearances): this is for saying where a walk may be shifted.
class DrawnGround {
 public:
  /// Requires  the take to outlive it.
  DrawnGround(const Take& take, std::size_t member, double height);

  /// For one who stands: their place is theirs.
  crew::Ground standing(geometry::Point pos, double t);
  /// For one on their way: in nobody's and nothing's either.
  crew::Ground walking(geometry::Point pos, double t);
  /// Whether anything that moves comes nearer than `clear` metres, edge to edge, at either of the quarters of a second
  /// about t. Places are exact here.
  bool passedWithin(double clear, geometry::Point pos, double t);

 private:
  using Look = std::tuple<long, long, long>;
  /// Everybody and everything at a quarter of a second.
  struct Around {
    snags::Instant instant;
    std::vector<crew::Obstacle> passing;
    std::vector<crew::Obstacle> rig;
  };
  static Look lookAt(geometry::Point pos, double t);
  bool seen(geometry::Point pos, double t);
  bool taken(geometry::Point pos, double t);
  bool overlaps(geometry::Point pos, const Around& around) const;
  bool nearer(double metres, geometry::Point pos, const std::vector<crew::Obstacle>& obstacles) const;
  std::vector<crew::Obstacle> passing(geometry::Point pos, const Around& around) const;
  const Around& aroundAt(long quarter);

  const Take& take_;
  const plan::Crew& crew_;
  double height_;
  ObstaclesNow obstacles_;
  std::map<long, Around> around_;
  std::map<Look, bool> seen_, taken_;
};

}  // namespace wend::answers
