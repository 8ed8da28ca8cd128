/// Where everybody without drawn marks may be: routes found past the lens, the set and each other, or why there is
/// none; and whether drawn routes keep what the plan says people need.
///
/// Frame     plan metres, seconds from the take's start.
/// Safety    a found route is a proposal on paper. Who walks where the people in charge decide on the day.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/crew/found_route.h"
#include "core/crew/route.h"
#include "core/crew/route_stuck.h"
#include "core/sight/ground_map.h"

namespace wend::answers {

/// A span in which a route does not hold.
struct RouteBreak {
  geometry::Span span;
  Point at;  ///< where it begins
  snags::NeedFails why = snags::NeedFails::far;
};

struct FoundStand {
  geometry::Span span;
  Point pos;
  std::string shelter;  ///< that of the plan it stands in, if any
  bool crouch = false;  ///< upright they would be seen, or nearly
};

struct FoundWalk {
  crew::Walk walk;                     ///< needs hold at its latest and earliest, too
  std::vector<crew::RoutePoint> path;  ///< its corners, straight and even between
};

/// What would free somebody who has no route, alone, all else as it is.
struct Freeing {
  /// In the order of crew::Stuck; `place` is one in a shelter that others fill.
  enum class Kind { need, speed, early, late, anyEnd, anyStand, place };
  Kind kind = Kind::need;
  std::optional<double> figure{};  ///< m/s, or seconds of the allowance to give up; nothing where it is all or nothing
  std::string words;
};

/// The narrowest place of a way: who walks there passes something at less than 0.6 m.
struct NearestPass {
  double time = 0;
  std::string what;   ///< id of a wall, opening, piece, performer or crew member, or "camera"
  double metres = 0;  ///< edge to edge
};

struct FoundRoute {
  std::string id;
  bool found = false;
  std::vector<FoundStand> stands;
  std::vector<FoundWalk> walks;
  std::vector<RouteBreak> breaks;  ///< needs that fail between the looks of the search
  double metres = 0;
  /// Seconds by which everything seen could be seen sooner and stay seen later, a route as short still there.
  double margin = 0;
  bool marginMore = false;             ///< no more was looked for: it may be more
  double room = 0;                     ///< metres it keeps at least from all that is taken, beyond the radius
  std::optional<NearestPass> nearest;  ///< of its walks, told with the snags (`withRoutes`)
  std::string why;                     ///< in words, when none is found
  std::vector<Freeing> frees;          ///< empty where nothing that was tried does
  std::optional<crew::Stuck> stuck;    ///< the same in figures; none where nothing was searched
  std::vector<std::string> notes;      ///< what was not planned for

  /// Requires a route that was found.
  Point at(double t) const;
  /// What would free it, in words, parted by semicolons.
  std::string cures() const;
  /// `why` and `cures()` as sentences.
  std::string whole() const;
};

/// A walk of a drawn route that may start later than drawn.
struct DrawnSlip {
  std::string id;
  geometry::Span span;
  double latestLeave = 0;
};

/// A drawn route held against the take (answers/drawn_routes.h).
struct DrawnChecked {
  std::string id;
  crew::RouteReport report;
};

struct FoundRoutes {
  std::vector<FoundRoute> people;  ///< in the plan's order
  /// Drawn routes and their slips, in the plan's order; only where the map of the ground was there.
  std::vector<DrawnChecked> drawn = {};
  std::vector<DrawnSlip> slips = {};
  /// Null for those whose route is drawn, or who go along with the camera.
  const FoundRoute* find(const std::string& id) const;
  /// Null for those whose route is not drawn, and for all where nothing was held against the take.
  const crew::RouteReport* reportOf(const std::string& id) const;
};

/// When and where one who was looked for in vain is seen, on the way that is seen least.
/// Requires  that one was: `stuck` is there.
snags::NoRoute noRouteOf(const FoundRoute& route);

/// Somebody of the crew has neither marks nor goes along with the camera.
bool routesWanted(const Take& take);

/// Routes are wanted and can be found, and are not there: whoever works the answers out has them come last.
bool routesSearched(const Answers& answers);

/// The ground as those whose routes are to be found need it: for the widest of them, from the lowest floor of the plan
/// to the tallest's crown on the highest, standing and crouching. `earlier` maps spare the steps they have alike.
/// Fails when cancelled, without a lens, or with nobody to find a route for (code "nobody").
base::Result<RouteMaps> routeGroundOf(const Take& take, const base::Cancel& cancel = {}, const RouteMaps& earlier = {});

/// Ensures   (1) a found route is seen at no instant, nor `early` seconds before sight or `late` after it, as sound as
///           the map is; (2) it keeps away from walls, pieces, leaves, gear, the rig, those carried, performers and
///           drawn crew by its own radius at least, but for those who stand in a shelter that holds one more, and by as
///           much more as lets them through: what the rule "clearance" calls comfortable, or tight, or none, each as
///           much as their own way leaves, and less where only that leaves another one a way; (3)
///           near and stays hold all along, and who stays may walk inside the shelter; seeing somebody, holding a link
///           and a free line for a pole are looked for in fans of half a degree, and where one fails between them the
///           route has a break; (4) who is absent need not be seen; (5) people walk upright, and may crouch where they
///           stand in a shelter unless a need of that time is worked out for somebody upright; (6) where the plan has
///           rooms, nobody stands on ground that none of them holds, nor walks there further than through a doorway,
///           but where a shelter or an area lies there (`knownGround`); (7) whoever can get through no faster than the
///           rule "crew-speed" calls silent walks no faster, all of them together;
///           (8) nobody touches a hazard or ground kept out of, or stands where they touch an exit lane; who stays in a
///           shelter does not walk there either; (9) a shelter's places are kept for those who have to stay in it.
/// Fails     when cancelled.
/// Cost      some seconds for three minutes of take on a hundred thousand cells, most of it where there is no route.
base::Result<std::shared_ptr<const FoundRoutes>> foundRoutes(const Take& take, const RouteMaps& ground,
                                                             const base::Cancel& cancel = {});

/// Answers with the routes found, with a snag for everybody for whom there is none, with links, poles, shadows and
/// lanes as they are on the routes found, and with what the rules find of those who go them. The same answers when
/// nobody wants a route or nothing is known of sight, but for drawn routes and their slips where the map of the ground
/// is there. Routes are looked for only for those who have neither marks nor go along
/// with the camera: a drawn route that is seen is told of by the rule "crew-seen".
/// Fails when cancelled.
base::Result<AnswersPtr> withRoutes(const AnswersPtr& answers, const base::Cancel& cancel = {},
                                    const RouteMaps& earlier = {});

}  // namespace wend::answers
