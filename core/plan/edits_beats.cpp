#include "core/plan/edits_beats.h"

#include "core/plan/edits_entities.h"
#include "core/plan/edits_parts.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Result;

/// Calls change(Moment&) with the time a reference leads to.
template <class Change>
class AtMoment {
 public:
  AtMoment(const Plan& plan, Change& change) : plan_(plan), change_(change) {}

  Result<Plan> operator()(const Arrival& ref) const {
    return changedMark(plan_, ref.mark, [&](Mark& mark) { return change_(mark.at); });
  }
  Result<Plan> operator()(const Leaving& ref) const {
    return changedMark(plan_, ref.mark, [&](Mark& mark) {
      if (!mark.until) mark.until = mark.at;
      return change_(*mark.until);
    });
  }
  Result<Plan> operator()(const KeyStart& ref) const {
    return changedAxis(plan_, ref.key.axis, ref.key.id, [&](auto& keys) -> Trouble {
      if (Trouble trouble = missingKey(keys, ref.key.index)) return trouble;
      change_(keys[ref.key.index].time.at);
      return std::nullopt;
    });
  }
  Result<Plan> operator()(const PropEntryStart& ref) const {
    return changed<Prop>(plan_, ref.prop, [&](Prop& prop) { return row(prop.track, ref.index, &PropEntry::at); });
  }
  Result<Plan> operator()(const PullStart& ref) const {
    return changedPart(plan_, &Plan::focus, "/focus",
                       [&](Focus& focus) { return row(focus.pulls, ref.index, &HandPull::at); });
  }
  Result<Plan> operator()(const SpeechFrom& ref) const {
    return changedPart(plan_, &Plan::speech, "/speech",
                       [&](std::vector<Speech>& lines) { return row(lines, ref.index, &Speech::from); });
  }
  Result<Plan> operator()(const SpeechUntil& ref) const {
    return changedPart(plan_, &Plan::speech, "/speech",
                       [&](std::vector<Speech>& lines) { return row(lines, ref.index, &Speech::until); });
  }
  Result<Plan> operator()(const HandoverStart& ref) const {
    return changedPart(plan_, &Plan::handovers, "/handovers",
                       [&](std::vector<Handover>& rows) { return row(rows, ref.index, &Handover::at); });
  }

 private:
  template <class Row>
  Trouble row(std::vector<Row>& rows, std::size_t index, Moment Row::*moment) const {
    if (index >= rows.size())
      return notThere("", "row " + std::to_string(index + 1), std::to_string(rows.size()) + " rows");
    change_(rows[index].*moment);
    return std::nullopt;
  }
  const Plan& plan_;
  Change& change_;
};

template <class Change>
Result<Plan> changedMoment(const Plan& plan, const MomentRef& ref, Change change) {
  return std::visit(AtMoment<Change>(plan, change), ref);
}

void sortBeat(base::Table<Beat>& beats, const std::string& id) {
  const std::size_t from = beats.indexOf(id);
  std::size_t to = 0;
  for (std::size_t i = 0; i < beats.size(); ++i)
    if (i != from && (beats[i].time < beats[from].time || (beats[i].time == beats[from].time && i < from))) ++to;
  beats.move(from, to);
}

void freeFrom(Moment& moment, const Beat& beat) {
  if (moment.beat != beat.id.text()) return;
  moment = {"", quantised(beat.time + moment.seconds, kinds::kMoment)};
}
void freeFrom(std::optional<Moment>& moment, const Beat& beat) {
  if (moment) freeFrom(*moment, beat);
}
void freeFrom(std::vector<Mark>& marks, const Beat& beat) {
  for (Mark& mark : marks) {
    freeFrom(mark.at, beat);
    freeFrom(mark.until, beat);
  }
}
template <class Key>
void freeKeys(std::vector<Key>& keys, const Beat& beat) {
  for (Key& key : keys) freeFrom(key.time.at, beat);
}

/// Calls change on every entity, and replaces those that come out different.
template <class T, class Change>
void each(base::Table<T>& table, Change change) {
  for (std::size_t i = 0; i < table.size(); ++i) {
    T after = table[i];
    change(after);
    if (!(after == table[i])) table.replace(i, std::move(after));
  }
}

void freeEntities(Plan& plan, const Beat& beat) {
  each(plan.set.openings, [&](Opening& opening) { freeKeys(opening.open, beat); });
  each(plan.set.areas, [&](Area& area) { freeKeys(area.states, beat); });
  each(plan.set.pieces, [&](Piece& piece) { freeKeys(piece.moved, beat); });
  each(plan.cables, [&](Cable& cable) {
    freeFrom(cable.from, beat);
    freeFrom(cable.until, beat);
  });
  each(plan.fixtures, [&](Fixture& fixture) { freeKeys(fixture.level, beat); });
  each(plan.performers, [&](Performer& who) { freeFrom(who.marks, beat); });
  each(plan.props, [&](Prop& prop) {
    for (PropEntry& entry : prop.track) freeFrom(entry.at, beat);
  });
  each(plan.crew, [&](Crew& who) {
    freeFrom(who.marks, beat);
    for (Need& need : who.needs) {
      freeFrom(need.from, beat);
      freeFrom(need.until, beat);
    }
  });
}

void freeCues(Plan& plan, const Beat& beat) {
  freeFrom(plan.camera.marks, beat);
  freeKeys(plan.camera.aims, beat);
  freeKeys(plan.camera.nd, beat);
  freeKeys(plan.focus.keys, beat);
  freeKeys(plan.zoom.keys, beat);
  freeKeys(plan.iris.keys, beat);
  for (HandPull& pull : plan.focus.pulls) freeFrom(pull.at, beat);
  for (Handover& handover : plan.handovers) freeFrom(handover.at, beat);
  for (Speech& line : plan.speech) {
    freeFrom(line.from, beat);
    freeFrom(line.until, beat);
  }
}

void noteTaps(std::vector<Take>& takes, const Beat& beat) {
  for (Take& take : takes) {
    for (const auto& [id, second] : take.beats)
      if (id == beat.id.text()) take.notes.push_back({second, called(beat.name, id), {}});
    std::erase_if(take.beats, [&](const auto& tap) { return tap.first == beat.id.text(); });
  }
}

}  // namespace

Result<Plan> movedBeat(const Plan& plan, const BeatRef& beat, double seconds) {
  Result<Plan> moved = changed<Beat>(plan, beat.id, [&](Beat& b) { b.time = seconds; });
  if (moved) sortBeat(moved.value().beats, beat.id);
  return moved;
}

Result<Plan> renamedBeat(const Plan& plan, const BeatRef& beat, const std::string& name) {
  return changed<Beat>(plan, beat.id, [&](Beat& b) {
    b.name = name;
    return textTrouble(name, "/beats/name");
  });
}

Result<Plan> beatCueSet(const Plan& plan, const BeatRef& beat, const std::string& cue) {
  return changed<Beat>(plan, beat.id, [&](Beat& b) {
    b.cue = cue;
    return textTrouble(cue, "/beats/cue");
  });
}

Result<Plan> insertedBeat(const Plan& plan, double seconds, const std::string& name) {
  if (Trouble trouble = textTrouble(name, "/beats/name")) return *trouble;
  Beat beat;
  beat.id = base::Id<Beat>(freshId(plan, "b"));
  beat.name = name;
  beat.time = seconds;
  Result<Plan> next = added(plan, beat);
  if (next) sortBeat(next.value().beats, beat.id.text());
  return next;
}

Result<Plan> removedBeat(const Plan& plan, const BeatRef& beat) {
  const std::size_t i = plan.beats.indexOf(beat.id);
  if (i == plan.beats.size()) return notThere("/beats", "\"" + beat.id + "\"", "a beat of this plan");
  const Beat gone = plan.beats[i];
  Plan next = plan;
  next.beats.remove(i);
  freeEntities(next, gone);
  freeCues(next, gone);
  noteTaps(next.takes, gone);
  return kept(plan, std::move(next));
}

std::optional<double> secondsAt(const Plan& plan, const MomentRef& moment) {
  std::optional<double> seconds;
  const auto read = changedMoment(plan, moment, [&](Moment& m) { seconds = secondsOf(plan, m); });
  return read ? seconds : std::nullopt;
}

Result<Plan> boundMoment(const Plan& plan, const MomentRef& moment, const std::string& beat) {
  if (!hasBeat(plan, beat)) return notThere("/beats", "\"" + beat + "\"", "a beat of this plan, or \"end\"");
  return changedMoment(plan, moment, [&](Moment& m) {
    m = {beat, quantised(secondsOf(plan, m) - secondsOf(plan, {beat, 0}), kinds::kMoment)};
  });
}

Result<Plan> freedMoment(const Plan& plan, const MomentRef& moment) {
  return changedMoment(plan, moment, [&](Moment& m) { m = {"", quantised(secondsOf(plan, m), kinds::kMoment)}; });
}

Result<Plan> retimedMoment(const Plan& plan, const MomentRef& moment, double seconds) {
  return changedMoment(plan, moment, [&](Moment& m) { m.seconds = seconds - (secondsOf(plan, m) - m.seconds); });
}

}  // namespace wend::plan
