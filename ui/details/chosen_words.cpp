#include "ui/details/chosen_words.h"

#include <algorithm>
#include <cmath>

#include "core/answers/routes.h"
#include "core/answers/shelter_at.h"
#include "core/base/text.h"
#include "core/sheets/route_lines.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/length.h"
#include "core/units/stop.h"
#include "ui/details/fields.h"
#include "ui/details/need_words.h"

namespace wend::ui {
namespace {

using base::fixed;
using plan::Plan;

std::string numbered(const std::string& words, int index) {
  return words + " " + std::to_string(index + 1);
}

std::string length(const Subject& subject, double metres) {
  return units::lengthText(metres, subject.plan.display);
}

/// The name of an entity with one, else its id.
std::string named(const Subject& subject) {
  return snags::nameOf(subject.plan, subject.selection.id);
}

struct KindWord {
  Kind kind;
  const char* thing;
  const char* part;  ///< what an index counts
};
constexpr KindWord kWords[] = {{Kind::beat, "Beat", ""},
                               {Kind::room, "Room", "corner"},
                               {Kind::wall, "Wall", "point"},
                               {Kind::opening, "Opening", "cue"},
                               {Kind::piece, "Piece", "corner"},
                               {Kind::area, "Area", "corner"},
                               {Kind::underlay, "Floor plan image", ""},
                               {Kind::prop, "Prop", "entry"},
                               {Kind::performer, "", "mark"},
                               {Kind::camera, "Camera", "mark"},
                               {Kind::aim, "Aim", "key"},
                               {Kind::lens, "Lens", ""},
                               {Kind::focus, "Focus", "key"},
                               {Kind::pull, "Pull", "by hand"},
                               {Kind::zoom, "Zoom", "key"},
                               {Kind::iris, "Iris", "key"},
                               {Kind::fixture, "Fixture", "cue"},
                               {Kind::crew, "", "mark"},
                               {Kind::shelter, "Shelter", ""},
                               {Kind::gear, "Gear", ""},
                               {Kind::cable, "Cable", "point"},
                               {Kind::pole, "Pole", ""},
                               {Kind::link, "Link", ""},
                               {Kind::pieceMove, "Piece", "move"},
                               {Kind::density, "Density", "key"},
                               {Kind::sight, "Rules of sight", ""},
                               {Kind::sizes, "Shot sizes", ""},
                               {Kind::speech, "Line", ""},
                               {Kind::handover, "Handover", ""},
                               {Kind::snag, "Snag", ""}};

/// When what is chosen begins; nothing for what has no time.
std::optional<double> timeOf(const Subject& subject) {
  const Plan& plan = subject.plan;
  const auto i = std::size_t(std::max(0, subject.selection.index));
  const auto at = [&](const plan::Moment& moment) { return std::optional(plan::secondsOf(plan, moment)); };
  if (const plan::Mark* mark = chosenMark(subject)) return at(mark->at);
  if (subject.selection.index < 0) return std::nullopt;
  switch (subject.selection.kind) {
    case Kind::aim:
      return at(plan.camera.aims[i].time.at);
    case Kind::focus:
      return at(plan.focus.keys[i].time.at);
    case Kind::zoom:
      return at(plan.zoom.keys[i].time.at);
    case Kind::iris:
      return at(plan.iris.keys[i].time.at);
    case Kind::pull:
      return at(plan.focus.pulls[i].at);
    case Kind::opening:
      return at(plan.set.openings.find(subject.selection.id)->open[i].time.at);
    case Kind::fixture:
      return at(plan.fixtures.find(subject.selection.id)->level[i].time.at);
    case Kind::density:
      return at(plan.camera.nd[i].time.at);
    case Kind::pieceMove:
      return at(plan.set.pieces.find(subject.selection.id)->moved[i].time.at);
    case Kind::prop:
      return at(plan.props.find(subject.selection.id)->track[i].at);
    default:
      return std::nullopt;
  }
}

const snags::Snag* chosenSnag(const Subject& subject) {
  if (subject.selection.kind != Kind::snag || !subject.answers || !subject.answers->snags) return nullptr;
  for (const auto& snag : *subject.answers->snags)
    if (snag.key == subject.selection.id) return &snag;
  return nullptr;
}

const motion::Track* trackOf(const Subject& subject) {
  if (!subject.answers) return nullptr;
  const auto& people = subject.answers->take->people();
  const Plan& plan = subject.answers->take->plan();
  const std::string& id = subject.selection.id;
  if (subject.selection.kind == Kind::camera) return &people.camera();
  if (subject.selection.kind == Kind::performer && plan.performers.find(id))
    return people.performer(plan.performers.indexOf(id));
  if (subject.selection.kind == Kind::crew && plan.crew.find(id)) return people.crew(plan.crew.indexOf(id));
  return nullptr;
}

std::string shapeWords(const Subject& subject, const plan::Mark& mark) {
  if (mark.leg.shape == plan::LegShape::straight) return "straight";
  if (mark.leg.shape == plan::LegShape::smooth) return "smooth curve";
  return "arc, centre " + fixed(mark.leg.centre.x, 2) + ", " + fixed(mark.leg.centre.y, 2) + " \u00b7 radius " +
         length(subject, geometry::distance(mark.leg.centre, mark.pos));
}

void addMarkLines(const Subject& subject, std::vector<Computed>& lines) {
  const plan::Mark& mark = *chosenMark(subject);
  const auto i = std::size_t(subject.selection.index);
  if (!mark.at.beat.empty())
    lines.push_back({"arrive", "hangs on " + mark.at.beat + (mark.at.seconds < 0 ? " - " : " + ") +
                                   fixed(std::abs(mark.at.seconds), 1) + " s"});
  const motion::Track* track = trackOf(subject);
  if (!track || i >= track->marks().size()) return;
  const double stands = track->marks()[i].until - track->marks()[i].at;
  const std::string in = stands > 0 && subject.selection.kind == Kind::crew && mark.shelter.empty()
                             ? answers::shelterAt(subject.plan, mark.pos)
                             : "";
  if (stands > 0) lines.push_back({"stands", fixed(stands, 1) + " s" + (in.empty() ? "" : ", in the circle of " + in)});
  if (i >= track->legs().size()) return;
  const auto& leg = track->legs()[i];
  const std::string time = fixed(leg.time.length(), 1) + " s";
  if (leg.hold) return lines.push_back({"leg", "stays for " + time});
  lines.push_back({"leg", shapeWords(subject, mark) + " \u00b7 " + length(subject, leg.length) + " in " + time});
  lines.push_back({"speed", fixed(leg.meanSpeed, 2) + " m/s, at most " + fixed(leg.peakSpeed, 2) + " m/s"});
}

void addKeyLines(const Subject& subject, std::vector<Computed>& lines) {
  const auto from = timeOf(subject);
  if (!from || !subject.answers) return;
  const answers::Take& take = *subject.answers->take;
  const double t = std::clamp(*from, 0.0, take.length());
  const answers::Instant instant = answers::sampleAt(take, t);
  const Kind kind = subject.selection.kind;
  if (kind == Kind::focus && instant.focus.known)
    lines.push_back({"at its start", "wanted " + length(subject, instant.focus.wantedDistance) + ", set " +
                                         length(subject, instant.focus.setDistance) + ", barrel " +
                                         fixed(instant.focus.barrel, 0) + "\u00b0"});
  if (kind == Kind::zoom && instant.lens)
    lines.push_back({"at its start", fixed(instant.lens->focal, 1) + " mm, " + fixed(instant.lens->hfov, 1) +
                                         "\u00b0 wide, " + fixed(instant.lens->vfov, 1) + "\u00b0 high"});
  if (kind == Kind::iris)
    lines.push_back({"at its start", instant.iris.needed ? "the face asks for " + units::stopText(*instant.iris.needed)
                                                         : std::string("what the face asks for is unknown")});
  if (kind == Kind::aim)
    lines.push_back({"at its start", "bearing " + fixed(instant.camera.sensor.bearing, 1) + "\u00b0, tilt " +
                                         fixed(instant.camera.sensor.tilt, 1) + "\u00b0"});
}

/// The corners of walks as drawn; their stands are the marks, each with fields of its own.
void addDrawnWalks(const Subject& subject, std::vector<Computed>& lines) {
  const answers::Take& take = *subject.answers->take;
  if (!take.plan().crew.find(subject.selection.id)) return;
  for (const auto& walk : sheets::drawnWalksOf(take, take.plan().crew.indexOf(subject.selection.id))) {
    lines.push_back({"walks", sheets::spanText(walk.span) + " on " + sheets::triggerText(walk.beat, walk.plus)});
    lines.push_back({"by way of", sheets::wayText(walk)});
  }
}

/// The route that was found for somebody without marks, or why there is none.
void addRouteLines(const Subject& subject, std::vector<Computed>& lines) {
  const std::string& id = subject.selection.id;
  if (!subject.answers) return;
  if (!subject.plan.crew.find(id)->marks.empty()) return addDrawnWalks(subject, lines);
  const auto route = sheets::soughtRouteOf(*subject.answers, id);
  if (!route) {
    if (answers::routesSearched(*subject.answers)) lines.push_back({"route", "searching for a route"});
    return;
  }
  if (!route->why.empty()) return lines.push_back({"route", "none: " + route->why});
  lines.push_back({"route", "found, not drawn; " + sheets::routeRoom(*route)});
  for (const std::string& note : route->notes) lines.push_back({"note", note});
  auto told = sheets::routeLines(*route);
  std::stable_sort(told.begin(), told.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
  for (const auto& line : told) {
    // The columns of the printed words are of no use in running text.
    const auto words = base::split(line.words, ' ');
    std::string text;
    for (std::size_t i = 1; i < words.size(); ++i)
      if (!words[i].empty()) text += (text.empty() ? "" : " ") + words[i];
    lines.push_back({words.front(), text});
    if (!line.way.empty()) lines.push_back({"by way of", line.way});
  }
}

void addThingLines(const Subject& subject, std::vector<Computed>& lines) {
  const auto& [kind, id, index] = subject.selection;
  const Plan& plan = subject.plan;
  if (kind == Kind::opening) {
    const plan::Opening& opening = *plan.set.openings.find(id);
    lines.push_back({"clear", length(subject, opening.along.until - opening.along.from) + " wide, " +
                                  length(subject, opening.head - opening.sill) + " high, in " +
                                  snags::nameOf(plan, opening.wall)});
  }
  if (kind == Kind::beat) {
    const std::size_t i = plan.beats.indexOf(id);
    const double end = i + 1 < plan.beats.size() ? plan.beats[i + 1].time : plan.clock.length;
    lines.push_back({"lasts", fixed(end - plan.beats[i].time, 1) + " s"});
  }
  if (kind == Kind::performer && index < 0)
    lines.push_back({"marks", std::to_string(plan.performers.find(id)->marks.size())});
  if (kind == Kind::crew && index < 0) {
    lines.push_back({"marks", std::to_string(plan.crew.find(id)->marks.size())});
    addNeedLines(subject, lines);
    addRouteLines(subject, lines);
  }
}

void addPlanLines(const Subject& subject, std::vector<Computed>& lines) {
  const plan::Clock& clock = subject.plan.clock;
  lines.push_back({"take", units::takeTimeText(clock.length) + " \u00b7 " + std::to_string(subject.plan.beats.size()) +
                               " beats \u00b7 " + fixed(std::floor(clock.length * clock.rate() + 0.05), 0) +
                               " frames"});
  if (subject.answers)
    lines.push_back({"camera way", length(subject, subject.answers->take->people().camera().totalLength())});
  if (!subject.plan.lens) lines.push_back({"lens", "none: what the lens sees is unknown"});
}

}  // namespace

std::string afterBeat(const Plan& plan, double seconds) {
  std::size_t before = 0;
  while (before < plan.beats.size() && plan.beats[before].time <= seconds) ++before;
  if (before == 0) return fixed(seconds, 1) + " s";
  return "beat " + std::to_string(before) + " + " + fixed(seconds - plan.beats[before - 1].time, 1) + " s";
}

std::string headingOf(const Subject& subject) {
  const auto& [kind, id, index] = subject.selection;
  if (kind == Kind::none) return "The plan";
  const auto* word = std::find_if(std::begin(kWords), std::end(kWords), [&](const auto& w) { return w.kind == kind; });
  std::string heading = word->thing;
  if (kind == Kind::beat)
    heading = numbered(heading, int(subject.plan.beats.indexOf(id)));
  else if (!id.empty() && kind != Kind::snag)
    heading += (heading.empty() ? "" : " ") + named(subject);
  if (index >= 0) heading = numbered(word->part[0] ? heading + " " + word->part : heading, index);
  if (const auto time = timeOf(subject)) heading += ", " + afterBeat(subject.plan, *time);
  if (const snags::Snag* snag = chosenSnag(subject)) heading += ", " + afterBeat(subject.plan, snag->from);
  return heading;
}

std::string remarkOf(const Subject& subject) {
  if (const plan::Mark* mark = chosenMark(subject)) {
    if (mark->leg.shape == plan::LegShape::arc) return "on an arc";
    if (!mark->shelter.empty()) return "in " + snags::nameOf(subject.plan, mark->shelter);
    return mark->taped ? "taped" : "";
  }
  const snags::Snag* snag = chosenSnag(subject);
  return snag && snag->accepted ? "accepted by " + snag->accepted->by : "";
}

std::vector<Computed> computedOf(const Subject& subject) {
  std::vector<Computed> lines;
  if (subject.selection.kind == Kind::none) addPlanLines(subject, lines);
  if (chosenMark(subject))
    addMarkLines(subject, lines);
  else if (subject.selection.index >= 0)
    addKeyLines(subject, lines);
  addThingLines(subject, lines);
  if (subject.selection.kind != Kind::snag) return lines;
  const snags::Snag* snag = chosenSnag(subject);
  if (!snag) return {{"snag", "no longer in the plan"}};
  lines.push_back({"what", snag->text});
  lines.push_back({"when", units::takeTimeText(snag->from) + " to " + units::takeTimeText(snag->until)});
  if (!snag->mend.empty()) lines.push_back({"mend", snag->mend});
  if (snag->accepted && !snag->accepted->note.empty()) lines.push_back({"note", snag->accepted->note});
  return lines;
}

}  // namespace wend::ui
