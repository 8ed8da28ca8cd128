// The stave of the crew: a lane each, drawn or found, with where the lens sees them and where a need fails.
#include <algorithm>

#include "core/answers/routes.h"
#include "core/answers/shelter_at.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/stave.h"
#include "core/sheets/text_width.h"

namespace wend::sheets {

using namespace geometry;

namespace {

constexpr double kRow = 12, kSpot = 16;

const snags::SightOf* sightOf(const snags::Evidence& evidence, const std::string& id) {
  for (const auto& sight : evidence.sight)
    if (sight.id == id) return &sight;
  return nullptr;
}

/// Where a need fails: hollow, under the lane.
void drawUnmet(StavePainter& p, Span span, double y) {
  p.block(span.from, span.until, y + 3, 3, {Tone::page}, {.tone = Tone::ink, .width = 1, .dash = {}});
}

/// Flat where someone stands, sloping where they walk, the shelter's name at each arrival.
void drawLane(StavePainter& p, const motion::Track& track, const plan::Crew& crew, double y) {
  std::vector<Point> line;
  std::vector<std::pair<double, std::string>> names;
  std::string in;
  for (std::size_t k = 0; k < track.marks().size(); ++k) {
    const motion::TrackMark& mark = track.marks()[k];
    const double until = k + 1 == track.marks().size() ? p.take.length() : mark.until;
    const double x = p.view.x(mark.at);
    if (k > 0 && !track.legs()[k - 1].hold) {
      p.line(line, Tone::crew, 2);
      line.clear();
      p.line({{p.view.x(track.marks()[k - 1].until), y + 4}, {x, y - 4}}, Tone::crew, 1.6);
    }
    line.push_back({x, y});
    line.push_back({p.view.x(until), y});
    const bool stands = until > mark.at;
    const std::string& named = crew.marks[k].shelter;
    const std::string shelter = named.empty() && stands ? answers::shelterAt(p.plan, mark.pos) : named;
    if (!shelter.empty() && shelter != in) names.emplace_back(x + 10, shelter);
    in = shelter;
  }
  p.line(line, Tone::crew, 2);
  // Over the line, which the halo cuts: a name that is struck through is no name.
  for (const auto& [x, name] : names) p.text({x, y + 4}, name, Tone::ink2);
}

/// A route that was found: the same lane dashed, for nobody has drawn it. How late a walk may start is a tick.
void drawFound(StavePainter& p, const answers::FoundRoute& route, double y) {
  std::string in;
  for (const auto& stand : route.stands) {
    p.line({{p.view.x(stand.span.from), y}, {p.view.x(stand.span.until), y}}, Tone::crew, 2, {5, 3});
    if (!stand.shelter.empty() && stand.shelter != in)
      p.text({p.view.x(stand.span.from) + 10, y + 4}, stand.shelter, Tone::ink2);
    in = stand.shelter;
  }
  for (const auto& walk : route.walks) {
    const Span span = walk.walk.span;
    p.line({{p.view.x(span.from), y + 4}, {p.view.x(span.until), y - 4}}, Tone::crew, 1.6, {4, 2});
    if (walk.walk.latestLeave)
      p.line({{p.view.x(*walk.walk.latestLeave), y - 4}, {p.view.x(*walk.walk.latestLeave), y + 4}}, Tone::ink, 1);
  }
  for (const auto& broken : route.breaks) drawUnmet(p, broken.span, y);
}

/// In glass that the light has turned into a mirror: a risk, and lighter than what the lens sees for certain.
void drawInGlass(StavePainter& p, Span span, double y) {
  p.block(span.from, span.until, y - 4, 9, {Tone::line2, Pattern::rising},
          {.tone = Tone::line2, .width = 1, .dash = {2, 3}});
}

void drawUndrawn(StavePainter& p, const std::string& id, double y) {
  const answers::FoundRoute* route = p.answers.routes ? p.answers.routes->find(id) : nullptr;
  if (route && route->found) return drawFound(p, *route, y);
  const std::string words = route              ? "no route: " + route->whole()
                            : p.view.searching ? "searching for a route"
                                               : "no route drawn";
  p.text({p.view.labels + 8, y + 4}, cutToWidth(words, 12, p.view.width - p.view.labels - p.view.scales - 16),
         Tone::ink3);
}

}  // namespace

std::vector<CrewLane> crewLanes(const answers::Answers& answers, const ScoreView& view) {
  std::vector<CrewLane> lanes;
  const answers::Take& take = *answers.take;
  for (const auto& box : stavesOf(take.plan(), view)) {
    if (box.name != "crew" || box.folded) continue;
    double y = box.top + 6 + (view.spotLane ? kSpot : 0);
    for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
      if (take.people().crewAt(i, 0, take.view().sensorAt(0)).carried) continue;
      lanes.push_back({i, y});
      y += kRow;
    }
  }
  return lanes;
}

void drawCrewStave(StavePainter& p) {
  const auto labels = crewLabels(p.plan);
  bool inGlass = false;
  for (const auto& [i, y] : crewLanes(p.answers, p.view)) {
    const auto& crew = p.plan.crew[i];
    if (p.view.chosenCrew == crew.id.text()) drawChosen(p.drawing, {p.view.labels - 16, y}, 8);
    p.text({p.view.labels - 8, y + 4}, labels[i], Tone::ink, true, Align::right);
    if (const auto* track = p.take.people().crew(i))
      drawLane(p, *track, crew, y);
    else
      drawUndrawn(p, crew.id.text(), y);
    if (p.answers.evidence)
      for (const auto& unmet : p.answers.evidence->unmetNeeds)
        if (unmet.who == crew.id.text()) drawUnmet(p, unmet.span, y);
    if (p.answers.evidence)
      for (const auto& pane : p.answers.evidence->panes)
        if (pane.who == crew.id.text()) drawInGlass(p, pane.span, y), inGlass = true;
    const auto* sight = p.answers.evidence ? sightOf(*p.answers.evidence, crew.id.text()) : nullptr;
    if (sight)
      for (const auto& seen : sight->seen)
        p.block(seen.span.from, seen.span.until, y - 4, 9, {Tone::grain, Pattern::seen},
                {.tone = Tone::ink, .width = 1.25, .dash = {}});
  }
  std::vector<const char*> words{"plain: clear", "grain: seen", "slope: slip", "dashed: found", "hollow: unmet"};
  if (inGlass) words.insert(words.begin() + 2, "lined: in glass");
  double at = p.box.top + 10;
  for (const char* word : words) {
    if (at + 4 > p.box.top + p.box.height) break;
    p.scale(at, word);
    at += 14;
  }
}

}  // namespace wend::sheets
