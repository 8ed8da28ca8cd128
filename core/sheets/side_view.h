/// A side elevation: what stands in the upright plane through the lens along its bearing, in true heights.
///
/// Frame     x metres ahead of the entrance pupil over the floor, negative behind it; y metres above the datum.
/// Stops     being the picture: the plane is the picture's middle column. People and lamps within `kBeside` of it are
///           in it, with how far aside they are; the set is cut exactly where the plane passes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/answers.h"

namespace wend::sheets {

/// Metres either side of the plane.
inline constexpr double kBeside = 0.6;
/// Metres behind the pupil that are shown.
inline constexpr double kBehind = 1.5;

/// A thing of the set where the plane cuts it.
struct SideThing {
  enum class Kind { wall, piece, leaf, glass, mirror };
  Kind kind = Kind::wall;
  std::string id;
  double near = 0, far = 0;    ///< metres ahead; equal for a sheet
  double bottom = 0, top = 0;  ///< above the datum
};

/// Somebody or a lamp in or beside the plane.
struct SidePerson {
  std::string id;
  bool performer = false;
  std::size_t index = 0;        ///< in the plan's list
  double ahead = 0, aside = 0;  ///< of the axis; right of the plane positive
  double radius = 0;
  double floor = 0, top = 0;
  std::optional<double> eyes;  ///< performers
};
struct SideLamp {
  std::string id;
  double ahead = 0, aside = 0, height = 0;
};

/// A line of sight that just passes over or under a thing, inside the frame, and where it goes on to.
struct SideGraze {
  std::string id;
  bool over = true;  ///< over its top; else under its lower edge
  geometry::Point corner;
  double slope = 0;                 ///< metres up for each ahead
  std::optional<double> floorFrom;  ///< over: metres ahead from which the floor is seen again, within `SideView::reach`
};

/// The ground of the plane in pieces of one height, with the ceiling of the room over it.
struct SideFloor {
  geometry::Span along;
  double height = 0;
  std::optional<double> ceiling;  ///< none outside the rooms and in a yard
};

struct SideView {
  double lens = 0;                 ///< height of the pupil
  double upper = 0, lower = 0;     ///< slopes of the frame's edges
  double reach = 0;                ///< metres ahead that are shown
  std::optional<double> closedAt;  ///< where nothing more is seen beyond
  std::vector<SideFloor> floors;   ///< from kBehind behind to `reach`
  std::vector<SideThing> things;   ///< in order of distance
  std::vector<SidePerson> people;  ///< performers first
  std::vector<SideLamp> lamps;
  std::vector<SideGraze> grazes;  ///< in order of distance, each passing what the one before left open
};

/// Requires  an instant of the take with a lens.
/// Ensures   (1) the view reaches as far as something is seen along the plane, at least `kLeast` and at most `kMost`
///           metres; (2) a thing behind one that closes the view is left out; (3) glass and leaves on their way close
///           nothing; (4) what reaches the ceiling of the room before it leaves nothing open above it.
SideView sideView(const answers::Take& take, const answers::Instant& instant);

inline constexpr double kLeast = 4, kMost = 20;

}  // namespace wend::sheets
