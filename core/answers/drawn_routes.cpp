#include "core/answers/drawn_routes.h"

#include <algorithm>

#include "core/answers/drawn_ground.h"
#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

namespace {

/// Seconds between two looks, and by which a walk is shifted at most.
constexpr double kLook = 0.25, kLatest = 60;

crew::DrawnRoute routeOf(const motion::Track& track, double length) {
  crew::DrawnRoute route;
  route.at = [&track](double t) { return track.place(t); };
  for (const auto& mark : track.marks()) {
    // Marks passed without a stop are no stands: the walk goes on through them.
    const bool last = &mark == &track.marks().back();
    const bool first = &mark == &track.marks().front();
    if (first || last || mark.until > mark.at)
      route.stands.push_back({mark.at, last ? std::max(length, mark.until) : mark.until});
  }
  return route;
}

/// Whether who stands at that place of their way does so crouching.
bool crouchesAt(const plan::Crew& crew, const motion::Track& track, Point place) {
  constexpr double kThere = 0.01;
  for (std::size_t mark = 0; mark < crew.marks.size(); ++mark)
    if (crew.marks[mark].posture == plan::Posture::crouch &&
        geometry::distance(track.marks()[mark].pos, place) <= kThere)
      return true;
  return false;
}

class Reporter {
 public:
  Reporter(const Take& take, std::size_t member)
      : take_(take),
        crew_(take.plan().crew[member]),
        track_(*take.people().crew(member)),
        upright_(take, member, crew_.height),
        low_(take, member, crew_.crouch),
        met_(needsMet(take, member)) {}

  DrawnReport report() {
    DrawnReport made{routeOf(track_, take_.length()), {}};
    made.report = asDrawn(made.route);
    const double red = snags::threshold(take_.plan(), "clearance-red").value;
    const crew::RouteReport wide = shifted(made.route, red), close = shifted(made.route, 0);
    for (std::size_t i = 0; i < made.report.walks.size(); ++i) {
      const crew::Walk& from = wide.walks[i].latestLeave ? wide.walks[i] : close.walks[i];
      crew::Walk& walk = made.report.walks[i];
      if (!from.latestLeave) walk.latestLeave = walk.earliestArrive = std::nullopt;
      if (!walk.latestLeave || !walk.earliestArrive) continue;
      // What begins between two looks may be missed by as much: a promise errs to the other side.
      if (*from.latestLeave < *walk.latestLeave) walk.latestLeave = std::max(walk.span.from, *from.latestLeave - kLook);
      if (*from.earliestArrive > *walk.earliestArrive)
        walk.earliestArrive = std::min(walk.span.until, *from.earliestArrive + kLook);
    }
    return made;
  }

 private:
  DrawnGround& standingOn(Point p) { return crouchesAt(crew_, track_, p) ? low_ : upright_; }

  crew::RouteReport asDrawn(const crew::DrawnRoute& route) {
    return crew::reportOf(
        route, {crew_.speed, kLook, kLatest}, [this](Point p, double t) { return upright_.walking(p, t); },
        [this](Point p, double t) { return standingOn(p).standing(p, t); });
  }

  /// Held against needs as well, and at a clearance from what moves.
  crew::RouteReport shifted(const crew::DrawnRoute& route, double clear) {
    const auto with = [this, clear](DrawnGround& ground, crew::Ground plain, Point p, double t) {
      if (plain != crew::Ground::free) return plain;
      return met_(p, t) && !ground.passedWithin(clear, p, t) ? crew::Ground::free : crew::Ground::taken;
    };
    return crew::reportOf(
        route, {crew_.speed, kLook, kLatest},
        [this, with](Point p, double t) { return with(upright_, upright_.walking(p, t), p, t); },
        [this, with](Point p, double t) {
          DrawnGround& ground = standingOn(p);
          return with(ground, ground.standing(p, t), p, t);
        });
  }

  const Take& take_;
  const plan::Crew& crew_;
  const motion::Track& track_;
  DrawnGround upright_, low_;
  std::function<bool(Point, double)> met_;
};

}  // namespace

DrawnReport drawnReportOf(const Take& take, std::size_t member) {
  return Reporter(take, member).report();
}

std::vector<DrawnSlip> drawnSlips(const Take& take) {
  std::vector<DrawnSlip> slips;
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
    if (!take.people().crew(i) || isCarried(take.plan(), i)) continue;
    for (const auto& walk : drawnReportOf(take, i).report.walks)
      if (walk.latestLeave) slips.push_back({take.plan().crew[i].id.text(), walk.span, *walk.latestLeave});
  }
  return slips;
}

}  // namespace wend::answers
