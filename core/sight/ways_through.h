/// The ways by which an eye sees ground of other rooms at one instant.
///
/// Frame     plan metres, heights above the datum.
#pragma once

#include <vector>

#include "core/sight/fan.h"

namespace wend::sight {

/// Ground in no room.
inline constexpr int kOutside = -1;

/// Where several hold a place the last of the list does.
struct RoomGround {
  geometry::Ring outline;
  int tag = 0;
};

struct GroundAsked {
  double floor = 0, top = 1.8;  ///< ground counts as seen when a standing person there would be
  double range = 60;            ///< metres
  double sectorDegrees = 0.5;   ///< between rays at most
  double narrowest = 0.02;      ///< degrees over which a way has to be seen without a break
  double shallowest = 0.25;     ///< metres along a ray over which ground of one room has to be seen without a break
};

struct RoomWay {
  int from = kOutside, room = kOutside;  ///< the rooms of the pupil and of the ground
  std::vector<int> openings;             ///< tags of those passed, in order
  auto operator<=>(const RoomWay&) const = default;
};

struct WaysSeen {
  std::vector<RoomWay> ways;  ///< in order, each once
  std::vector<int> inSight;   ///< openings up to whose middle ground is seen, in order, each once
  bool operator==(const WaysSeen&) const = default;
};

/// Keeps its memory from instant to instant.
///
/// How it looks   along one ray between any two neighbouring turns at which something begins or ends on the plan: a
///                side of the frame, an end of an opening, a corner of what stands or of a room, the side of a disc;
///                and along more where those are further apart than `sectorDegrees`. Between two of them every ray
///                crosses the same edges in the same order. Only rays through openings are asked.
/// Ensures   (1) where all that stands hides whoever is behind it, a way is told that is seen over `narrowest` and
///           `shallowest` without a break, and none that is not; (2) along a ray distances are exact: what is seen of a
///           room is told by the places where the ray passes outlines and openings.
/// Error     how much of the ground behind a low thing it hides changes from ray to ray: a way that shows by that
///           change alone, over less than `sectorDegrees`, may be missed.
class WaysThrough {
 public:
  /// Requires  what it is given to outlive it.
  WaysThrough(const Scene& scene, const std::vector<RoomGround>& rooms, const GroundAsked& asked);
  WaysSeen at(const Eye& eye, double t);

 private:
  struct Met {
    double at = 0;
    int tag = 0;
  };
  int roomAt(Point p) const;
  void findArcs(const Frame& frame);
  bool besides(Vec towards) const;
  void addTurn(const Frame& frame, Point p);
  void addTurns(const SceneAt& now, const Frame& frame);
  void layOut();
  double endOf(const Frame& frame, std::size_t ray) const;
  void lookAlong(const Frame& frame, std::size_t ray);
  void lookIn(const Frame& frame, Vec along, Span seen);
  void note(const RoomWay& way, Span sector);

  const Scene& scene_;
  const std::vector<RoomGround>& rooms_;
  GroundAsked asked_;
  std::vector<geometry::Extent> extents_;

  int own_ = kOutside;
  Fan fan_;
  SeenDistances distances_;
  std::vector<Span> arcs_, sectors_;        ///< turns of the frame that pass openings; one sector a ray
  std::vector<std::pair<Vec, Vec>> sides_;  ///< of the arcs
  std::vector<double> turns_, rays_, cuts_;
  std::vector<Met> passed_;
  std::vector<Upright> boxes_;
  std::vector<Span> spans_;
  std::vector<RoomWay> here_;  ///< along one ray
  struct Running {
    RoomWay way;
    Span turns;
  };
  std::vector<Running> running_;
  WaysSeen seen_;
};

}  // namespace wend::sight
