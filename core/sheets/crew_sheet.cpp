#include "core/sheets/crew_sheet.h"

#include <algorithm>

#include "core/answers/drawn_routes.h"
#include "core/answers/route_ground.h"
#include "core/answers/route_needs.h"
#include "core/plan/on_beat.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using answers::Answers;
using answers::Take;
using geometry::Point;

namespace {

void addPath(const motion::Track& track, WalkOf& walk) {
  const auto pass = [&](double t, Point place) {
    walk.times.push_back(t);
    walk.path.push_back(place);
  };
  pass(walk.span.from, track.place(walk.span.from));
  for (const auto& place : track.path(0.005))
    if (place.t > walk.span.from && place.t < walk.span.until) pass(place.t, place.place);
  pass(walk.span.until, track.place(walk.span.until));
}

void bindToBeat(const plan::Plan& plan, WalkOf& walk) {
  const plan::OnBeat on = plan::onBeat(plan, walk.span.from);
  walk.beat = on.beat;
  walk.plus = on.plus;
}

const char* wordOf(crew::Break::Why why) {
  switch (why) {
    case crew::Break::Why::taken:
      return "taken";
    case crew::Break::Why::fast:
      return "fast";
    case crew::Break::Why::seen:
      break;
  }
  return "seen";
}

void fill(const Take& take, std::size_t i, const motion::Track& track, const crew::RouteReport& report,
          RouteOf& route) {
  const plan::Crew& crew = take.plan().crew[i];
  const crew::DrawnRoute drawn = answers::drawnRouteOf(track, take.length());
  for (const auto& span : drawn.stands) {
    const answers::CrewPose pose = take.people().crewAt(i, span.from, take.view().sensorAt(span.from));
    route.stands.push_back({track.place(span.from), pose.shelter, span, pose.height < crew.height});
  }
  route.walks = drawnWalksOf(take, i);
  for (std::size_t k = 0; k < report.walks.size(); ++k) {
    route.walks[k].latestLeave = report.walks[k].latestLeave;
    route.walks[k].earliestArrive = report.walks[k].earliestArrive;
    route.walks[k].speed = report.walks[k].peakSpeed;
  }
  for (const auto& stop : report.breaks) route.breaks.push_back({stop.span, stop.at, wordOf(stop.why)});
  for (const auto& stop : answers::needBreaks(take, i, drawn.at))
    route.breaks.push_back({stop.span, stop.at, snags::wordOf(stop.why)});
  std::stable_sort(route.breaks.begin(), route.breaks.end(),
                   [](const BreakOf& a, const BreakOf& b) { return a.span.from < b.span.from; });
  route.feasible = route.breaks.empty();
}

NoWay noWayOf(const answers::FoundRoute& found) {
  const snags::NoRoute none = answers::noRouteOf(found);
  return {none.span, none.pos, none.least, found.stuck->exposures, found.frees};
}

void fill(const plan::Plan& plan, const answers::FoundRoute& found, RouteOf& route) {
  route.sought = true;
  route.why = found.whole();
  if (found.stuck) route.none = noWayOf(found);
  route.metres = found.metres;
  route.margin = found.margin;
  route.marginMore = found.marginMore;
  route.room = found.room;
  route.nearest = found.nearest;
  if (found.nearest) route.nearestName = snags::nameOf(plan, found.nearest->what);
  route.notes = found.notes;
  for (const auto& stand : found.stands) route.stands.push_back({stand.pos, stand.shelter, stand.span, stand.crouch});
  for (const auto& walk : found.walks) {
    const crew::Walk& figures = walk.walk;
    WalkOf out{figures.span, {}, {}, "", 0, figures.latestLeave, figures.earliestArrive, figures.peakSpeed};
    for (const auto& corner : walk.path) {
      out.path.push_back(corner.at);
      out.times.push_back(corner.time);
    }
    bindToBeat(plan, out);
    route.walks.push_back(std::move(out));
  }
  for (const auto& stop : found.breaks) route.breaks.push_back({stop.span, stop.at, snags::wordOf(stop.why)});
  route.feasible = found.found && found.breaks.empty();
}

void addGlass(const Answers& answers, RouteOf& route) {
  if (!answers.evidence) return;
  for (const auto& pane : answers.evidence->panes)
    if (pane.who == route.id)
      route.glass.push_back({pane.span, pane.pane, snags::nameOf(answers.take->plan(), pane.pane)});
}

}  // namespace

std::vector<RouteOf> routesOf(const Answers& answers) {
  std::vector<RouteOf> routes;
  const Take& take = *answers.take;
  answers::TakeQuarters quarters(take);
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
    RouteOf route;
    route.id = take.plan().crew[i].id.text();
    route.role = take.plan().crew[i].role;
    route.carried = take.people().crewAt(i, 0, take.view().sensorAt(0)).carried;
    const motion::Track* track = take.people().crew(i);
    route.drawn = track != nullptr && !route.carried;
    if (route.drawn) {
      const crew::RouteReport* known = answers.routes ? answers.routes->reportOf(route.id) : nullptr;
      fill(take, i, *track, known ? *known : answers::drawnReportOf(quarters, i), route);
      route.notes = answers::needsLeftOut(take.plan(), i);
    }
    if (auto found = soughtRouteOf(answers, route.id))
      route = *std::move(found);
    else
      addGlass(answers, route);
    routes.push_back(std::move(route));
  }
  return routes;
}

std::vector<WalkOf> drawnWalksOf(const Take& take, std::size_t member) {
  std::vector<WalkOf> walks;
  const motion::Track* track = take.people().crew(member);
  if (!track || answers::isCarried(take.plan(), member)) return walks;
  const auto stands = answers::drawnRouteOf(*track, take.length()).stands;
  for (std::size_t i = 1; i < stands.size(); ++i) {
    WalkOf walk{{stands[i - 1].until, stands[i].from}, {}, {}, "", 0, std::nullopt, std::nullopt, 0};
    addPath(*track, walk);
    bindToBeat(take.plan(), walk);
    walks.push_back(std::move(walk));
  }
  return walks;
}

std::optional<RouteOf> soughtRouteOf(const Answers& answers, const std::string& id) {
  const auto* found = answers.routes ? answers.routes->find(id) : nullptr;
  const plan::Crew* crew = answers.take->plan().crew.find(id);
  if (!found || !crew) return std::nullopt;
  RouteOf route;
  route.id = id;
  route.role = crew->role;
  fill(answers.take->plan(), *found, route);
  addGlass(answers, route);
  return route;
}

}  // namespace wend::sheets
