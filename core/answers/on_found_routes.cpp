#include "core/answers/on_found_routes.h"

#include <algorithm>

#include "core/answers/reuse.h"
#include "core/answers/whole_take.h"

namespace wend::answers {

namespace {

/// Times nearer than this are one.
constexpr double kSame = 1e-9;

/// Glass turns where it turns in the take as planned, whoever goes where.
std::optional<std::vector<snags::PaneMirror>> panesOn(const Take& drawn, const Take& planned, const Evidence& evidence,
                                                      const base::Cancel& cancel) {
  ByInstant<GlassAt> glass;
  if (evidence.known) glass = {drawn, planned, evidence.known->glass, planned.plan().sightRules.margin};
  return paneMirrors(drawn, cancel, &glass);
}

plan::Mark markAt(double t, Point pos) {
  plan::Mark mark;
  mark.at = {"", t};
  mark.pos = pos;
  return mark;
}

}  // namespace

std::vector<plan::Mark> marksOf(const FoundRoute& route, double length) {
  std::vector<plan::Mark> marks;
  for (const auto& stand : route.stands) {
    marks.push_back(markAt(stand.span.from, stand.pos));
    marks.back().until = plan::Moment{"", stand.span.until};
    if (stand.crouch) marks.back().posture = plan::Posture::crouch;
  }
  const auto stands = [&](double t) {
    return std::any_of(route.stands.begin(), route.stands.end(), [t](const FoundStand& stand) {
      return t > stand.span.from - kSame && t < stand.span.until + kSame;
    });
  };
  for (const auto& walk : route.walks) {
    for (const auto& corner : walk.path)
      if (corner.time < length - kSame && !stands(corner.time)) marks.push_back(markAt(corner.time, corner.at));
    // A walk may lead past the take's end, which cuts it off.
    if (walk.path.back().time > length - kSame && !stands(length)) marks.push_back(markAt(length, route.at(length)));
  }
  std::sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) { return a.at.seconds < b.at.seconds; });
  return marks;
}

TakePtr takeOnRoutes(const Take& take, const FoundRoutes& routes, std::vector<std::string>& routed) {
  auto plan = std::make_shared<plan::Plan>(take.plan());
  for (const auto& route : routes.people) {
    if (!route.found) continue;
    plan::Crew crew = *plan->crew.find(route.id);
    crew.marks = marksOf(route, take.length());
    plan->crew.replace(plan->crew.indexOf(route.id), crew);
    routed.push_back(route.id);
  }
  if (routed.empty()) return nullptr;
  auto drawn = Take::of(plan, take.luminaires());
  return drawn ? *drawn : nullptr;
}

bool putOnFoundRoutes(const Take& take, const FoundRoutes& routes, const base::Cancel& cancel, Evidence& evidence,
                      Evidence* forRules) {
  std::vector<std::string> routed;
  const TakePtr drawn = takeOnRoutes(take, routes, routed);
  if (!drawn) return false;
  std::vector<Instant> samples;
  for (const Instant& like : evidence.samples) {
    if (cancel.fired()) return false;
    samples.push_back(sampleLike(*drawn, take, like));
  }
  auto panes = panesOn(*drawn, take, evidence, cancel);
  if (!panes) return false;
  evidence.panes = *std::move(panes);
  evidence.links = linksOver(*drawn, samples);
  evidence.boom = boomLines(*drawn, samples);
  evidence.shadows = shadowsOn(*drawn, samples, evidence.boom);
  evidence.surfaceShadows = surfaceShadows(*drawn, samples, evidence.boom);
  evidence.lanes = lanesTaken(*drawn, samples);
  evidence.sunShadows = sunShadows(*drawn, samples, evidence.boom);
  std::optional<std::vector<snags::ClearanceAt>> clearances;
  if (forRules) {
    clearances = clearancesOf(*drawn, samples, cancel);
    if (!clearances) return false;
  }
  evidence.routed = std::move(routed);
  if (!forRules) return true;
  *forRules = evidence;
  forRules->clearances = *std::move(clearances);
  forRules->crossings = crossingsOf(*drawn);
  forRules->samples = std::move(samples);
  return true;
}

base::Result<AnswersPtr> drawnOut(const AnswersPtr& answers, const base::Cancel& cancel) {
  std::vector<std::string> routed;
  const TakePtr drawn = answers->routes ? takeOnRoutes(*answers->take, *answers->routes, routed) : nullptr;
  return drawn ? answersOf(drawn, cancel) : answers;
}

}  // namespace wend::answers
