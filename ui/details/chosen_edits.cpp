#include "ui/details/chosen_edits.h"

#include <algorithm>

#include "core/answers/route_taken.h"
#include "core/plan/edits_beats.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_entities.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_marks.h"
#include "core/plan/edits_plan.h"
#include "core/plan/edits_set.h"
#include "ui/details/chosen_words.h"
#include "ui/details/fields.h"

namespace wend::ui {
namespace {

using plan::Plan;

/// A new key takes this long where nothing else says so, seconds.
constexpr double kNewKeyOver = 1;

bool hasTrack(Kind kind) {
  return kind == Kind::camera || kind == Kind::performer || kind == Kind::crew;
}

/// Where the track is at the playhead; where the camera is for somebody who has no track yet.
geometry::Point placeAt(const Subject& subject) {
  if (!subject.answers) return {};
  const auto& people = subject.answers->take->people();
  const Plan& plan = subject.answers->take->plan();
  const auto& [kind, id, index] = subject.selection;
  const motion::Track* track = &people.camera();
  if (kind == Kind::performer && plan.performers.find(id)) track = people.performer(plan.performers.indexOf(id));
  if (kind == Kind::crew && plan.crew.find(id)) track = people.crew(plan.crew.indexOf(id));
  return (track ? *track : people.camera()).place(subject.playhead);
}

std::size_t marksBefore(const Subject& subject, const plan::MarkRef& ref) {
  const auto& marks = marksOf(subject.plan, ref);
  return std::size_t(std::count_if(marks.begin(), marks.end(), [&](const plan::Mark& mark) {
    return plan::secondsOf(subject.plan, mark.at) <= subject.playhead;
  }));
}

ChosenEdit newMark(const Subject& subject) {
  const plan::MarkRef ref = chosenMarkRef(subject.selection);
  const plan::TrackRef track{ref.owner, ref.id};
  const auto at = placeAt(subject);
  Selection after = subject.selection;
  after.index = int(marksBefore(subject, ref));
  return {"Add mark",
          [&plan = subject.plan, track, t = subject.playhead, at] { return plan::insertedMark(plan, track, t, at); },
          after};
}

std::vector<plan::KeyTime> keyTimes(const Plan& plan, plan::Axis axis, const std::string& id) {
  std::vector<plan::KeyTime> times;
  const auto from = [&](const auto& keys) {
    for (const auto& key : keys) times.push_back(key.time);
  };
  if (axis == plan::Axis::aim) from(plan.camera.aims);
  if (axis == plan::Axis::focus) from(plan.focus.keys);
  if (axis == plan::Axis::zoom) from(plan.zoom.keys);
  if (axis == plan::Axis::iris) from(plan.iris.keys);
  if (axis == plan::Axis::door) from(plan.set.openings.find(id)->open);
  if (axis == plan::Axis::level) from(plan.fixtures.find(id)->level);
  if (axis == plan::Axis::nd) from(plan.camera.nd);
  if (axis == plan::Axis::piece) from(plan.set.pieces.find(id)->moved);
  return times;
}

ChosenEdit newKey(const Subject& subject, plan::Axis axis) {
  const auto times = keyTimes(subject.plan, axis, subject.selection.id);
  std::size_t before = 0;
  double next = subject.plan.clock.length;
  for (const auto& time : times) {
    const double at = plan::secondsOf(subject.plan, time.at);
    if (at <= subject.playhead)
      ++before;
    else
      next = std::min(next, at);
  }
  const double over = times.empty() ? 0 : std::clamp(next - subject.playhead, 0.0, kNewKeyOver);
  Selection after = subject.selection;
  after.index = int(before);
  return {"Add key",
          [&plan = subject.plan, axis, t = subject.playhead, over, id = subject.selection.id] {
            return plan::insertedKey(plan, axis, t, over, id);
          },
          after};
}

PlanEdit withoutThing(const Plan& plan, Kind kind, const std::string& id) {
  switch (kind) {
    case Kind::beat:
      return plan::removedBeat(plan, {id});
    case Kind::room:
      return plan::removed<plan::Room>(plan, id);
    case Kind::wall:
      return plan::removed<plan::Wall>(plan, id);
    case Kind::opening:
      return plan::removed<plan::Opening>(plan, id);
    case Kind::piece:
      return plan::removed<plan::Piece>(plan, id);
    case Kind::area:
      return plan::removed<plan::Area>(plan, id);
    case Kind::prop:
      return plan::removed<plan::Prop>(plan, id);
    case Kind::performer:
      return plan::removed<plan::Performer>(plan, id);
    case Kind::fixture:
      return plan::removed<plan::Fixture>(plan, id);
    case Kind::crew:
      return plan::removed<plan::Crew>(plan, id);
    case Kind::shelter:
      return plan::removed<plan::Shelter>(plan, id);
    case Kind::gear:
      return plan::removed<plan::Gear>(plan, id);
    case Kind::cable:
      return plan::removed<plan::Cable>(plan, id);
    case Kind::pole:
      return plan::removed<plan::Pole>(plan, id);
    case Kind::link:
      return plan::removed<plan::Link>(plan, id);
    default:
      return plan::underlaySet(plan, std::nullopt);
  }
}

bool isThing(Kind kind) {
  constexpr Kind kThings[] = {Kind::beat,     Kind::room,  Kind::wall,      Kind::opening, Kind::piece, Kind::area,
                              Kind::underlay, Kind::prop,  Kind::performer, Kind::fixture, Kind::crew,  Kind::shelter,
                              Kind::gear,     Kind::cable, Kind::pole,      Kind::link};
  return std::find(std::begin(kThings), std::end(kThings), kind) != std::end(kThings);
}

/// A row of one of the plan's plain lists gone.
template <class Row, class Set>
PlanEdit withoutRow(const Plan& plan, std::vector<Row> rows, int index, Set set) {
  rows.erase(rows.begin() + index);
  return set(plan, std::move(rows));
}

/// What is chosen once the chosen mark, key or point is gone: the next one, which has its number then, else the one
/// before, else the whole.
Selection neighbourOf(const Subject& subject) {
  Selection next = subject.selection, before = next, whole = next;
  ++next.index;
  --before.index;
  whole.index = -1;
  return exists(subject.plan, next) ? subject.selection : before.index >= 0 ? before : whole;
}

}  // namespace

std::optional<ChosenEdit> addedAtPlayhead(const Subject& subject) {
  if (hasTrack(subject.selection.kind)) return newMark(subject);
  if (const auto axis = chosenAxis(subject.selection.kind)) return newKey(subject, *axis);
  return std::nullopt;
}

std::optional<ChosenEdit> removedChosen(const Subject& subject) {
  const Plan& plan = subject.plan;
  const auto& [kind, id, index] = subject.selection;
  const Selection after = neighbourOf(subject);
  if (chosenMark(subject))
    return ChosenEdit{"Remove mark",
                      [&plan, ref = chosenMarkRef(subject.selection)] { return plan::removedMark(plan, ref); }, after};
  const auto axis = chosenAxis(kind);
  if (axis && index >= 0) {
    const plan::KeyRef key{*axis, std::size_t(index), id};
    return ChosenEdit{"Remove key", [&plan, key] { return plan::removedKey(plan, key); }, after};
  }
  const auto row = [&](const char* label, auto rows, auto set) {
    return ChosenEdit{label, [&plan, rows, set, i = index] { return withoutRow(plan, rows, i, set); }, {}};
  };
  if (kind == Kind::pull && index >= 0) return row("Remove pull", plan.focus.pulls, plan::pullsSet);
  if (kind == Kind::speech && index >= 0) return row("Remove line", plan.speech, plan::speechSet);
  if (kind == Kind::handover && index >= 0) return row("Remove handover", plan.handovers, plan::handoversSet);
  if (kind == Kind::wall && index >= 0)
    return ChosenEdit{"Remove point",
                      [&plan, wall = id, i = index] { return plan::removedWallPoint(plan, wall, std::size_t(i)); },
                      after};
  if (!isThing(kind) || index >= 0) return std::nullopt;
  return ChosenEdit{
      "Remove " + headingOf(subject), [&plan, k = kind, thing = id] { return withoutThing(plan, k, thing); }, {}};
}

std::optional<ChosenEdit> removedWay(const Subject& subject) {
  const auto& [kind, id, index] = subject.selection;
  const Plan& plan = subject.plan;
  const Selection whole{kind, id, -1};
  const auto without = [&](const auto* who) -> std::optional<ChosenEdit> {
    if (!who || who->marks.empty()) return std::nullopt;
    return ChosenEdit{"Remove all marks",
                      [&plan, left = *who]() mutable {
                        left.marks.clear();
                        return plan::replaced(plan, left);
                      },
                      whole};
  };
  if (kind == Kind::performer) return without(plan.performers.find(id));
  if (kind == Kind::crew) return without(plan.crew.find(id));
  return std::nullopt;
}

std::optional<ChosenEdit> routeTakenOver(const Subject& subject) {
  const std::string& id = subject.selection.id;
  if (subject.selection.kind != Kind::crew || !subject.answers || !subject.answers->routes) return std::nullopt;
  const plan::Crew* crew = subject.plan.crew.find(id);
  const auto* route = subject.answers->routes->find(id);
  if (!crew || !crew->marks.empty() || !route || !route->found) return std::nullopt;
  const auto taken = [&plan = subject.plan, crew, route, answers = subject.answers] {
    plan::Crew goes = *crew;
    goes.marks = answers::takenOver(*answers, *route);
    return plan::replaced(plan, goes);
  };
  return ChosenEdit{"Take this route over", taken, Selection{Kind::crew, id, -1}};
}

}  // namespace wend::ui
