#include "ui/details/new_things.h"

#include <algorithm>
#include <cmath>

#include "core/plan/edits_beats.h"
#include "core/plan/edits_entities.h"
#include "core/plan/edits_plan.h"

namespace wend::ui {
namespace {

using plan::Plan;

constexpr double kAway = 2;       ///< metres from the lens
constexpr double kLineLasts = 2;  ///< seconds, a line of speech as well as a handover

/// So far ahead of the lens along the floor, or behind it; the origin before anything was computed.
geometry::Point beside(const Subject& subject, double ahead) {
  if (!subject.answers) return {};
  const geometry::Pose sensor = subject.answers->take->view().sensorAt(subject.playhead);
  const geometry::Vec3 way = sensor.forward();
  const double level = std::hypot(way.x, way.y);
  if (level < 1e-6) return geometry::flat(sensor.at);
  return geometry::flat(sensor.at) + geometry::Vec{way.x, way.y} * (ahead / level);
}

template <class T>
T called(const Plan& plan, const std::string& stem) {
  T thing;
  thing.id = base::Id<T>(plan::freshId(plan, stem));
  return thing;
}

plan::Mark firstMark(const Plan& plan, geometry::Point pos) {
  plan::Mark mark;
  mark.id = plan::freshId(plan, "mark");
  mark.pos = pos;
  return mark;
}

/// Named by its id until somebody names it.
template <class T>
T named(const Plan& plan, const std::string& stem) {
  T thing = called<T>(plan, stem);
  thing.name = thing.id.text();
  return thing;
}

plan::Performer newPerformer(const Subject& subject) {
  auto performer = named<plan::Performer>(subject.plan, "performer");
  performer.marks = {firstMark(subject.plan, beside(subject, kAway))};
  return performer;
}

plan::Crew newCrew(const Subject& subject) {
  auto crew = called<plan::Crew>(subject.plan, "crew");
  crew.role = crew.id.text();
  crew.marks = {firstMark(subject.plan, beside(subject, -kAway))};
  return crew;
}

plan::Prop newProp(const Subject& subject) {
  auto prop = named<plan::Prop>(subject.plan, "prop");
  plan::PropEntry entry;
  entry.pos = beside(subject, kAway);
  prop.track = {entry};
  return prop;
}

plan::Cable newCable(const Subject& subject) {
  auto cable = named<plan::Cable>(subject.plan, "cable");
  const geometry::Point from = beside(subject, -kAway);
  cable.points = {from, from + geometry::Vec{1, 0}};
  return cable;
}

plan::Pole newPole(const Subject& subject) {
  auto pole = named<plan::Pole>(subject.plan, "pole");
  pole.crew = subject.plan.crew[0].id.text();
  return pole;
}

plan::Link newLink(const Subject& subject) {
  auto link = named<plan::Link>(subject.plan, "link");
  link.from = plan::kCameraEnd;
  link.to = subject.plan.crew[0].id.text();
  return link;
}

template <class T>
T standing(const Subject& subject, const std::string& stem) {
  T thing = named<T>(subject.plan, stem);
  thing.pos = beside(subject, -kAway);
  return thing;
}

template <class T>
ChosenEdit adding(const char* label, const Subject& subject, Kind kind, T thing) {
  const Selection after{kind, thing.id.text(), -1};
  return {label, [&plan = subject.plan, thing] { return plan::added(plan, thing); }, after};
}

plan::Moment moment(double seconds) {
  return {"", seconds};
}

ChosenEdit newLine(const Subject& subject) {
  const Plan& plan = subject.plan;
  const double from = subject.playhead, until = std::min(from + kLineLasts, plan.clock.length);
  return {"line of speech",
          [&plan, from, until] {
            auto speech = plan.speech;
            plan::Speech line;
            line.who = plan.performers[0].id.text();
            line.from = moment(from);
            line.until = moment(until);
            speech.push_back(line);
            return plan::speechSet(plan, std::move(speech));
          },
          {Kind::speech, {}, int(plan.speech.size())}};
}

ChosenEdit newHandover(const Subject& subject) {
  const Plan& plan = subject.plan;
  return {"handover",
          [&plan, at = subject.playhead] {
            auto handovers = plan.handovers;
            plan::Handover handover;
            handover.what = "focus";
            handover.from = plan.crew[0].id.text();
            handover.to = plan.crew[1].id.text();
            handover.at = moment(at);
            handover.over = std::min(kLineLasts, plan.clock.length - at);
            handovers.push_back(handover);
            return plan::handoversSet(plan, std::move(handovers));
          },
          {Kind::handover, {}, int(plan.handovers.size())}};
}

ChosenEdit newBeat(const Subject& subject) {
  return {"beat", [&plan = subject.plan, at = subject.playhead] { return plan::insertedBeat(plan, at, "new beat"); },
          subject.selection};
}

}  // namespace

std::vector<ChosenEdit> newThings(const Subject& subject) {
  const Plan& plan = subject.plan;
  std::vector<ChosenEdit> things{newBeat(subject),
                                 adding("performer", subject, Kind::performer, newPerformer(subject)),
                                 adding("prop", subject, Kind::prop, newProp(subject)),
                                 adding("crew", subject, Kind::crew, newCrew(subject)),
                                 adding("shelter", subject, Kind::shelter, standing<plan::Shelter>(subject, "shelter")),
                                 adding("gear", subject, Kind::gear, standing<plan::Gear>(subject, "gear")),
                                 adding("cable", subject, Kind::cable, newCable(subject))};
  if (!plan.crew.empty()) {
    things.push_back(adding("pole", subject, Kind::pole, newPole(subject)));
    things.push_back(adding("link", subject, Kind::link, newLink(subject)));
  }
  if (!plan.performers.empty()) things.push_back(newLine(subject));
  if (plan.crew.size() > 1) things.push_back(newHandover(subject));
  return things;
}

}  // namespace wend::ui
