/// The ground as somebody on a drawn way finds it: what the lens sees, and what stands or walks there already.
///
/// Frame     plan metres, seconds from the take's start.
#pragma once

#include <cstdint>
#include <span>
#include <unordered_map>

#include "core/answers/take_quarters.h"
#include "core/crew/route.h"

namespace wend::answers {

/// Keeps what it looked at: places are told apart by 5 cm and times by a quarter of a second.
///
/// Error     so it is off by as much. Sight is told between the bars, `late` after it and `early` before it, which
///           reach further than that; a body counts as taken up where it overlaps by more than the 5 cm. Exact are the
///           findings of the take (crew seen, clearances): this is for saying where a walk may be shifted.
class DrawnGround {
 public:
  /// Requires  the quarters, and the take they are of, to outlive it.
  DrawnGround(TakeQuarters& quarters, std::size_t member, double height);

  /// For one who stands: their place is theirs.
  crew::Ground standing(geometry::Point pos, double t);
  /// For one on their way: in nobody's and nothing's either.
  crew::Ground walking(geometry::Point pos, double t);
  /// Whether anything that moves comes nearer than `clear` metres, edge to edge, at either of the quarters of a second
  /// about t. Places are exact here.
  bool passedWithin(double clear, geometry::Point pos, double t);

 private:
  using Around = TakeQuarters::Around;
  /// A place and a quarter of a second, as they are told apart.
  struct Look {
    long x, y, quarter;
    bool operator==(const Look&) const = default;
  };
  struct HashOfLook {
    std::size_t operator()(const Look& look) const;
  };
  using Known = std::unordered_map<Look, bool, HashOfLook>;
  static Look lookAt(geometry::Point pos, double t);
  bool seen(geometry::Point pos, double t);
  bool taken(geometry::Point pos, double t);
  bool overlaps(geometry::Point pos, const Around& around) const;
  crew::Body bodyAt(geometry::Point pos) const;
  static bool nearer(const crew::Body& body, double metres, std::span<const crew::Obstacle> obstacles);
  bool nearerPassing(const crew::Body& body, double metres, const Around& around) const;

  TakeQuarters& quarters_;
  const Take& take_;
  const plan::Crew& crew_;
  double height_;
  Known seen_, taken_;
};

}  // namespace wend::answers
