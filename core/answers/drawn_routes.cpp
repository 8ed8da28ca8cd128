#include "core/answers/drawn_routes.h"

#include <algorithm>
#include <cmath>

#include "core/answers/drawn_ground.h"
#include "core/answers/on_found_routes.h"
#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/base/text.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

namespace {

/// Seconds between two looks, and by which a walk is shifted at most.
constexpr double kLook = 0.25, kLatest = 60;
/// Times nearer than this are one.
constexpr double kSame = 1e-6;

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
  Reporter(TakeQuarters& quarters, std::size_t member)
      : take_(quarters.take()),
        crew_(take_.plan().crew[member]),
        track_(*take_.people().crew(member)),
        upright_(quarters, member, crew_.height),
        low_(quarters, member, crew_.crouch),
        met_(needsMet(take_, member)) {}

  crew::RouteReport report() {
    const crew::DrawnRoute route = drawnRouteOf(track_, take_.length());
    crew::RouteReport made = asDrawn(route);
    const double red = snags::threshold(take_.plan(), "clearance-red").value;
    const std::vector<crew::Walk> wide = shifted(route, red);
    std::optional<std::vector<crew::Walk>> close;
    for (std::size_t i = 0; i < made.walks.size(); ++i) {
      if (!wide[i].latestLeave && !close) close = shifted(route, 0);
      const crew::Walk& from = wide[i].latestLeave ? wide[i] : close->at(i);
      crew::Walk& walk = made.walks[i];
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
  std::vector<crew::Walk> shifted(const crew::DrawnRoute& route, double clear) {
    const auto with = [this, clear](DrawnGround& ground, crew::Ground plain, Point p, double t) {
      if (plain != crew::Ground::free) return plain;
      return met_(p, t) && !ground.passedWithin(clear, p, t) ? crew::Ground::free : crew::Ground::taken;
    };
    return crew::walksOf(
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

/// Of a found route's own check, once it is drawn.
std::string checkWords(const crew::Break& stop) {
  const std::string what = stop.why == crew::Break::Why::fast    ? "faster than they walk"
                           : stop.why == crew::Break::Why::taken ? "touches somebody or something"
                                                                 : "within a quarter of a second of being seen";
  return base::fixed(stop.span.from, 1) + "\u2013" + base::fixed(stop.span.until, 1) + " s: " + what +
         ", so that nothing is said of starting sooner or later there";
}

void promise(const crew::RouteReport& drawn, FoundRoute& route) {
  for (auto& found : route.walks) {
    const auto like = std::find_if(drawn.walks.begin(), drawn.walks.end(), [&](const crew::Walk& walk) {
      return std::abs(walk.span.from - found.walk.span.from) < kSame;
    });
    const bool known = like != drawn.walks.end();
    found.walk.latestLeave = known ? like->latestLeave : std::nullopt;
    found.walk.earliestArrive = known ? like->earliestArrive : std::nullopt;
  }
  for (const auto& stop : drawn.breaks) route.notes.push_back(checkWords(stop));
}

}  // namespace

crew::DrawnRoute drawnRouteOf(const motion::Track& track, double length) {
  crew::DrawnRoute route;
  route.at = [&track](double t) { return track.place(t); };
  route.peak = [&track](geometry::Span span) { return track.peakSpeed(span); };
  for (const auto& mark : track.marks()) {
    // Marks passed without a stop are no stands: the walk goes on through them.
    const bool last = &mark == &track.marks().back();
    const bool first = &mark == &track.marks().front();
    if (first || last || mark.until > mark.at)
      route.stands.push_back({mark.at, last ? std::max(length, mark.until) : mark.until});
  }
  return route;
}

crew::RouteReport drawnReportOf(TakeQuarters& quarters, std::size_t member) {
  return Reporter(quarters, member).report();
}

std::vector<DrawnChecked> drawnChecked(const Take& take) {
  std::vector<DrawnChecked> drawn;
  TakeQuarters quarters(take);
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i)
    if (take.people().crew(i) && !isCarried(take.plan(), i))
      drawn.push_back({take.plan().crew[i].id.text(), drawnReportOf(quarters, i)});
  return drawn;
}

void promiseAsDrawn(const Take& take, FoundRoutes& routes) {
  std::vector<std::string> routed;
  const TakePtr drawn = takeOnRoutes(take, routes, routed);
  if (!drawn) return;
  TakeQuarters quarters(*drawn);
  for (auto& route : routes.people)
    if (route.found) promise(drawnReportOf(quarters, drawn->plan().crew.indexOf(route.id)), route);
}

std::vector<DrawnSlip> slipsOf(const std::vector<DrawnChecked>& drawn) {
  std::vector<DrawnSlip> slips;
  for (const auto& person : drawn)
    for (const auto& walk : person.report.walks)
      if (walk.latestLeave) slips.push_back({person.id, walk.span, *walk.latestLeave});
  return slips;
}

}  // namespace wend::answers
