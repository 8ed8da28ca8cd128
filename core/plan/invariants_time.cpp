#include <cmath>

#include "core/geometry/tolerance.h"
#include "core/plan/arc_leg.h"
#include "core/plan/invariants_parts.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Problems;

std::string at(const std::string& list, std::size_t i) {
  return list + "/" + std::to_string(i);
}

class Times {
 public:
  Times(const Plan& plan, Problems& problems) : plan_(plan), problems_(problems) {}

  double seconds(const Moment& moment) const { return secondsOf(plan_, moment); }

  void notBeforeStart(double time, const std::string& what, const std::string& where) {
    if (time < -kSameTime)
      problems_.push_back({"time-before-start", where, what + " at " + secondsText(time), "0 s or later",
                           "Put it at the start of the take or after it."});
  }

  void marks(const std::vector<Mark>& marks, const std::string& who, const std::string& where) {
    for (std::size_t i = 0; i < marks.size(); ++i) {
      const std::string place = at(where + "/marks", i);
      const std::string name = who + "'s mark " + std::to_string(i + 1);
      const double reached = seconds(marks[i].at);
      const double left = marks[i].until ? seconds(*marks[i].until) : reached;
      notBeforeStart(reached, name, place + "/at");
      if (left < reached - kSameTime)
        problems_.push_back({"mark-left-early", place + "/until",
                             name + " left at " + secondsText(left) + ", reached at " + secondsText(reached),
                             secondsText(reached) + " or later", "Leave it later, or reach it earlier."});
      if (i + 1 == marks.size()) break;
      const double soonest = isHold(marks[i], marks[i + 1]) ? left - 3 * kSameTime : left;
      nextMark(marks[i + 1], name, who + "'s mark " + std::to_string(i + 2), soonest, at(where + "/marks", i + 1));
      if (auto problem =
              arcProblem(marks[i].leg, placeOf(plan_, marks[i]), placeOf(plan_, marks[i + 1]), place + "/leg"))
        problems_.push_back(*problem);
    }
  }

  /// Names the axis' keys in messages by `what`: "focus key".
  template <class Key>
  void keys(const std::vector<Key>& keys, const std::string& what, const std::string& where) {
    for (std::size_t i = 0; i < keys.size(); ++i) {
      const double start = seconds(keys[i].time.at);
      if (i == 0 && std::abs(start) > kSameTime)
        problems_.push_back({"first-key", at(where, 0) + "/at", "the first " + what + " at " + secondsText(start),
                             "0 s",
                             "The first key says how the take starts; free it from its beat, or add another key."});
      if (i > 0) keyAfter(keys[i - 1].time, start, what, i, where);
    }
  }

  void span(const Moment& from, const Moment& until, const std::string& what, const std::string& where) {
    notBeforeStart(seconds(from), what, where + "/from");
    if (seconds(until) < seconds(from) - kSameTime)
      problems_.push_back({"span-backwards", where + "/until",
                           what + " until " + secondsText(seconds(until)) + ", from " + secondsText(seconds(from)),
                           "an end after its start", "End it later, or start it earlier."});
  }

  void entries(const std::vector<PropEntry>& track, const std::string& who, const std::string& where) {
    for (std::size_t i = 0; i < track.size(); ++i) {
      const double time = seconds(track[i].at);
      notBeforeStart(time, who, at(where + "/track", i) + "/at");
      if (i > 0 && time < seconds(track[i - 1].at) - kSameTime)
        problems_.push_back(
            {"entry-order", at(where + "/track", i) + "/at",
             who + "'s entry " + std::to_string(i + 1) + " at " + secondsText(time),
             secondsText(seconds(track[i - 1].at)) + " or later, when entry " + std::to_string(i) + " begins",
             "Move it later, or move the other one first."});
    }
  }

 private:
  /// Two marks in one place may share an instant: nobody travels between them.
  bool isHold(const Mark& mark, const Mark& next) const {
    return mark.leg.shape == LegShape::straight && mark.leg.via.empty() &&
           geometry::distance(placeOf(plan_, mark), placeOf(plan_, next)) <= geometry::kHold;
  }

  void nextMark(const Mark& next, const std::string& name, const std::string& nextName, double left,
                const std::string& where) {
    const double reached = seconds(next.at);
    if (reached > left + kSameTime) return;
    const std::string bound = next.at.beat.empty() ? "" : " (on beat \"" + next.at.beat + "\")";
    problems_.push_back({"mark-order", where + "/at", nextName + " reached at " + secondsText(reached) + bound,
                         "later than " + secondsText(left) + ", when " + name + " is left",
                         "Reach it later, leave the mark before it earlier, or take one of the two out."});
  }

  void keyAfter(const KeyTime& before, double start, const std::string& what, std::size_t i, const std::string& where) {
    const double begun = seconds(before.at), done = begun + before.over;
    if (start >= done - kSameTime) return;
    const std::string name = what + " " + std::to_string(i);
    problems_.push_back({"key-order", at(where, i) + "/at",
                         what + " " + std::to_string(i + 1) + " starting at " + secondsText(start),
                         secondsText(done) + " or later, when " + name + " is done",
                         start < begun - kSameTime ? "Start it after " + name + ", or move that one first."
                                                   : "Start it later, or let " + name + " take less time."});
  }

  const Plan& plan_;
  Problems& problems_;
};

void addBeats(const Plan& plan, Problems& problems) {
  for (std::size_t i = 0; i < plan.beats.size(); ++i) {
    const Beat& beat = plan.beats[i];
    if (beat.time >= -kSameTime && beat.time <= plan.clock.length + kSameTime) continue;
    problems.push_back({"beat-outside", at("/beats", i) + "/time",
                        "beat \"" + called(beat.name, beat.id.text()) + "\" at " + secondsText(beat.time),
                        "0 s to " + secondsText(plan.clock.length) + ", the length of the take",
                        "Move the beat into the take, or make the take longer."});
  }
}

void addPeople(const Plan& plan, const Fresh& fresh, Times& times) {
  for (std::size_t i = 0; i < plan.performers.size(); ++i) {
    const Performer& performer = plan.performers[i];
    if (fresh(&Plan::performers, plan.performers, i))
      times.marks(performer.marks, called(performer.name, performer.id.text()), at("/performers", i));
  }
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    const Crew& crew = plan.crew[i];
    if (!fresh(&Plan::crew, plan.crew, i)) continue;
    times.marks(crew.marks, called(crew.role, crew.id.text()), at("/crew", i));
    for (std::size_t k = 0; k < crew.needs.size(); ++k)
      times.span(crew.needs[k].from.value_or(Moment{}), crew.needs[k].until.value_or(Moment{kEndBeat, 0}),
                 "what " + called(crew.role, crew.id.text()) + " needs", at(at("/crew", i) + "/needs", k));
  }
  for (std::size_t i = 0; i < plan.props.size(); ++i)
    if (fresh(&Plan::props, plan.props, i))
      times.entries(plan.props[i].track, called(plan.props[i].name, plan.props[i].id.text()), at("/props", i));
}

void addSwitches(const Plan& plan, const Fresh& fresh, Times& times) {
  for (std::size_t i = 0; i < plan.set.openings.size(); ++i)
    if (fresh(&Set::openings, plan.set.openings, i))
      times.keys(plan.set.openings[i].open, called(plan.set.openings[i].name, plan.set.openings[i].id.text()) + " key",
                 at("/set/openings", i) + "/open");
  for (std::size_t i = 0; i < plan.set.areas.size(); ++i)
    if (fresh(&Set::areas, plan.set.areas, i))
      times.keys(plan.set.areas[i].states, called(plan.set.areas[i].name, plan.set.areas[i].id.text()) + " state",
                 at("/set/areas", i) + "/states");
  for (std::size_t i = 0; i < plan.set.pieces.size(); ++i)
    if (fresh(&Set::pieces, plan.set.pieces, i))
      times.keys(plan.set.pieces[i].moved, called(plan.set.pieces[i].name, plan.set.pieces[i].id.text()) + " move",
                 at("/set/pieces", i) + "/moved");
  for (std::size_t i = 0; i < plan.fixtures.size(); ++i)
    if (fresh(&Plan::fixtures, plan.fixtures, i))
      times.keys(plan.fixtures[i].level, called(plan.fixtures[i].name, plan.fixtures[i].id.text()) + " level",
                 at("/fixtures", i) + "/level");
}

void addCables(const Plan& plan, const Fresh& fresh, Times& times) {
  for (std::size_t i = 0; i < plan.cables.size(); ++i) {
    const Cable& cable = plan.cables[i];
    if (fresh(&Plan::cables, plan.cables, i))
      times.span(cable.from.value_or(Moment{}), cable.until.value_or(Moment{kEndBeat, 0}),
                 called(cable.name, cable.id.text()), at("/cables", i));
  }
}

void addPulls(const Plan& plan, Times& times, Problems& problems) {
  const auto& pulls = plan.focus.pulls;
  for (std::size_t i = 0; i < pulls.size(); ++i) {
    const double start = times.seconds(pulls[i].at);
    times.notBeforeStart(start, "a pull by hand", at("/focus/pulls", i) + "/at");
    if (i == 0) continue;
    const double done = times.seconds(pulls[i - 1].at) + pulls[i - 1].over;
    if (start < done - kSameTime)
      problems.push_back({"pull-order", at("/focus/pulls", i) + "/at", "a pull starting at " + secondsText(start),
                          secondsText(done) + " or later, when the pull before it is done",
                          "Start it later, or let the pull before it take less time."});
  }
}

}  // namespace

void addTimeProblems(const Plan& plan, const Fresh& fresh, Problems& problems) {
  Times times(plan, problems);
  addBeats(plan, problems);
  addPeople(plan, fresh, times);
  addSwitches(plan, fresh, times);
  addCables(plan, fresh, times);
  times.marks(plan.camera.marks, "the camera", "/camera");
  times.keys(plan.camera.aims, "aim key", "/camera/aims");
  times.keys(plan.camera.nd, "density key", "/camera/nd");
  times.keys(plan.focus.keys, "focus key", "/focus/keys");
  times.keys(plan.zoom.keys, "zoom key", "/zoom/keys");
  times.keys(plan.iris.keys, "iris key", "/iris/keys");
  addPulls(plan, times, problems);
  for (std::size_t i = 0; i < plan.speech.size(); ++i)
    times.span(plan.speech[i].from, plan.speech[i].until, "a line", at("/speech", i));
  for (std::size_t i = 0; i < plan.handovers.size(); ++i)
    times.notBeforeStart(times.seconds(plan.handovers[i].at), "a handover", at("/handovers", i) + "/at");
}

}  // namespace wend::plan
