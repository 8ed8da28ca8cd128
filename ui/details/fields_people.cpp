#include <cmath>

#include "core/base/text.h"
#include "core/plan/edits_beats.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_people.h"
#include "core/plan/edits_plan.h"
#include "ui/details/choice_words.h"
#include "ui/details/fields.h"
#include "ui/details/member_fields.h"

namespace wend::ui {
namespace {

using plan::Plan;

/// An edit that takes the id of what it is about before its number or words.
template <class Edit>
auto about(const std::string& id, Edit edit) {
  return [id, edit](const Plan& p, const auto& value) { return edit(p, id, value); };
}

PlanEdit wholeNumber(double value, const std::function<PlanEdit(int)>& set) {
  if (value == std::round(value) && value >= 0 && value <= 1000) return set(int(value));
  return base::Problem{"bad-count", "", base::shortest(value), "a whole number", "type how many"};
}

void addPerformer(const plan::Performer& performer, Fields& fields) {
  const std::string id = performer.id.text();
  fields.push_back(wordsField("name", performer.name, about(id, plan::performerNamed)));
  fields.push_back(shortWordsField("letter", performer.letter, about(id, plan::performerLettered)));
  fields.push_back(lengthField("stature", performer.stature, about(id, plan::statureSet)));
  fields.push_back(lengthField("radius", performer.radius, about(id, plan::performerRadiusSet)));
}

void addCrew(const Subject& subject, const plan::Crew& crew, Fields& fields) {
  const std::string id = crew.id.text();
  fields.push_back(wordsField("role", crew.role, about(id, plan::crewRoleSet)));
  fields.push_back(lengthField("radius", crew.radius, about(id, plan::crewRadiusSet)));
  fields.push_back(numberField("speed", crew.speed, "m/s", 0.05, 2, about(id, plan::crewSpeedSet)));
  fields.push_back(lengthField("height", crew.height, [id](const Plan& p, double metres) {
    return plan::crewHeightsSet(p, id, metres, p.crew.find(id)->crouch);
  }));
  fields.push_back(lengthField("crouched", crew.crouch, [id](const Plan& p, double metres) {
    return plan::crewHeightsSet(p, id, p.crew.find(id)->height, metres);
  }));
  fields.push_back(choiceOf("gives light", crew.glows, kYesNo, memberSet<plan::Crew>(id, &plan::Crew::glows)));
  addNeeds(subject, crew, fields);
}

void addProp(const plan::Prop& prop, Fields& fields) {
  const std::string id = prop.id.text();
  fields.push_back(memberField<plan::Prop>("name", id, &plan::Prop::name, prop));
  fields.push_back(memberLength<plan::Prop>("wobble", id, &plan::Prop::wobble, prop));
}

void addPropEntry(const Subject& subject, const plan::Prop& prop, std::size_t i, Fields& fields) {
  const std::string id = prop.id.text();
  const plan::PropEntry& entry = prop.track[i];
  fields.push_back(momentField("from", entry.at, plan::PropEntryStart{id, i}));
  std::vector<std::string> carriers{"nobody"};
  for (const auto& performer : subject.plan.performers) carriers.push_back(performer.id.text());
  fields.push_back(choiceField("carried by", entry.by.empty() ? "nobody" : entry.by, carriers,
                               [id, i](const Plan& p, const std::string& who) {
                                 return who == "nobody" ? plan::movedProp(p, id, i, p.props.find(id)->track[i].pos)
                                                        : plan::propCarried(p, id, i, who);
                               }));
  fields.push_back(lengthField(
      "height", entry.height, [id, i](const Plan& p, double metres) { return plan::propHeightSet(p, id, i, metres); }));
  if (!entry.by.empty()) return;
  fields.push_back(lengthField("east x", entry.pos.x, [id, i](const Plan& p, double x) {
    return plan::movedProp(p, id, i, {x, p.props.find(id)->track[i].pos.y});
  }));
  fields.push_back(lengthField("north y", entry.pos.y, [id, i](const Plan& p, double y) {
    return plan::movedProp(p, id, i, {p.props.find(id)->track[i].pos.x, y});
  }));
}

/// East and north of what stands in one place; `table` finds it again.
template <class T, class Moved>
void addPlace(const T& thing, Moved edit, Fields& fields) {
  const std::string id = thing.id.text();
  fields.push_back(lengthField("east x", thing.pos.x, [id, edit](const Plan& p, double x) {
    return edit(p, id, plan::Point{x, tableOf<T>(p).find(id)->pos.y});
  }));
  fields.push_back(lengthField("north y", thing.pos.y, [id, edit](const Plan& p, double y) {
    return edit(p, id, plan::Point{tableOf<T>(p).find(id)->pos.x, y});
  }));
}

void addShelter(const plan::Shelter& shelter, Fields& fields) {
  const std::string id = shelter.id.text();
  fields.push_back(memberField<plan::Shelter>("name", id, &plan::Shelter::name, shelter));
  addPlace(shelter, plan::movedShelter, fields);
  fields.push_back(lengthField("radius", shelter.radius, [id](const Plan& p, double metres) {
    return plan::shelterSized(p, id, metres, p.shelters.find(id)->holds);
  }));
  fields.push_back(numberField("holds", shelter.holds, "heads", 1, 0, [id](const Plan& p, double heads) {
    return wholeNumber(heads, [&](int n) { return plan::shelterSized(p, id, p.shelters.find(id)->radius, n); });
  }));
}

void addGear(const plan::Gear& gear, Fields& fields) {
  const std::string id = gear.id.text();
  fields.push_back(memberField<plan::Gear>("name", id, &plan::Gear::name, gear));
  addPlace(gear, plan::movedGear, fields);
  fields.push_back(lengthField("radius", gear.radius, [id](const Plan& p, double metres) {
    return plan::gearSized(p, id, metres, p.gear.find(id)->height);
  }));
  fields.push_back(lengthField("height", gear.height, [id](const Plan& p, double metres) {
    return plan::gearSized(p, id, p.gear.find(id)->radius, metres);
  }));
  fields.push_back(choiceOf("gives light", gear.glows, kYesNo, memberSet<plan::Gear>(id, &plan::Gear::glows)));
}

void addFixture(const plan::Fixture& fixture, Fields& fields) {
  const std::string id = fixture.id.text();
  fields.push_back(memberField<plan::Fixture>("name", id, &plan::Fixture::name, fixture));
  addPlace(fixture, plan::movedFixture, fields);
  fields.push_back(lengthField("height", fixture.height, about(id, plan::fixtureHeightSet)));
  fields.push_back(angleField("bearing", fixture.bearing, [id](const Plan& p, double degrees) {
    return plan::fixtureAimed(p, id, degrees, p.fixtures.find(id)->tilt);
  }));
  fields.push_back(angleField("tilt", fixture.tilt, [id](const Plan& p, double degrees) {
    return plan::fixtureAimed(p, id, p.fixtures.find(id)->bearing, degrees);
  }));
  const auto* output = std::get_if<plan::BeamOutput>(&fixture.output);
  if (!output) return;
  const auto with = [id, at = *output](double plan::BeamOutput::*member) {
    return [id, at, member](const Plan& p, double value) {
      plan::BeamOutput changed = at;
      changed.*member = value;
      return plan::fixtureOutputSet(p, id, changed);
    };
  };
  fields.push_back(numberField("output", output->candela, "cd", 100, 0, with(&plan::BeamOutput::candela)));
  fields.push_back(angleField("beam", output->beam, with(&plan::BeamOutput::beam)));
  fields.push_back(angleField("field", output->field, with(&plan::BeamOutput::field)));
}

void addLevelKey(const plan::Fixture& fixture, std::size_t i, Fields& fields) {
  const plan::KeyRef key{plan::Axis::level, i, fixture.id.text()};
  const plan::LevelKey& at = fixture.level[i];
  fields.push_back(momentField("at", at.time.at, plan::KeyStart{key}));
  fields.push_back(secondsField("over", at.time.over,
                                [key](const Plan& p, double seconds) { return plan::keyOverSet(p, key, seconds); }));
  fields.push_back(
      percentField("level", at.share, [key](const Plan& p, double share) { return plan::keyShareSet(p, key, share); }));
  fields.push_back(wordsField("cue", at.name, [key, by = at.by](const Plan& p, const std::string& name) {
    return plan::keyNamed(p, key, name, by);
  }));
}

void addBeat(const plan::Beat& beat, Fields& fields) {
  const plan::BeatRef ref{beat.id.text()};
  fields.push_back(wordsField(
      "name", beat.name, [ref](const Plan& p, const std::string& name) { return plan::renamedBeat(p, ref, name); }));
  fields.push_back(wordsField("cue", beat.cue,
                              [ref](const Plan& p, const std::string& cue) { return plan::beatCueSet(p, ref, cue); }));
  fields.push_back(secondsField("time", beat.time,
                                [ref](const Plan& p, double seconds) { return plan::movedBeat(p, ref, seconds); }));
}

void addSpeech(const plan::Speech& line, std::size_t i, Fields& fields) {
  fields.push_back(momentField("from", line.from, plan::SpeechFrom{i}));
  fields.push_back(momentField("until", line.until, plan::SpeechUntil{i}));
  fields.push_back(wordsField("words", line.words, [i](const Plan& p, const std::string& words) {
    auto speech = p.speech;
    speech[i].words = words;
    return plan::speechSet(p, std::move(speech));
  }));
}

void addHandover(const plan::Handover& handover, std::size_t i, Fields& fields) {
  const auto with = [i](auto change) {
    return [i, change](const Plan& p, const auto& value) {
      auto rows = p.handovers;
      change(rows[i], value);
      return plan::handoversSet(p, std::move(rows));
    };
  };
  fields.push_back(
      wordsField("what", handover.what, with([](plan::Handover& h, const std::string& v) { h.what = v; })));
  fields.push_back(
      wordsField("from", handover.from, with([](plan::Handover& h, const std::string& v) { h.from = v; })));
  fields.push_back(wordsField("to", handover.to, with([](plan::Handover& h, const std::string& v) { h.to = v; })));
  fields.push_back(momentField("at", handover.at, plan::HandoverStart{i}));
  fields.push_back(secondsField("over", handover.over, with([](plan::Handover& h, double v) { h.over = v; })));
}

}  // namespace

Fields fieldsOfPeople(const Subject& subject) {
  Fields fields;
  const Plan& plan = subject.plan;
  const auto& [kind, id, index] = subject.selection;
  const auto i = std::size_t(std::max(0, index));
  if (kind == Kind::performer) addPerformer(*plan.performers.find(id), fields);
  if (kind == Kind::crew) addCrew(subject, *plan.crew.find(id), fields);
  if (kind == Kind::prop && index < 0) addProp(*plan.props.find(id), fields);
  if (kind == Kind::prop && index >= 0) addPropEntry(subject, *plan.props.find(id), i, fields);
  if (kind == Kind::shelter) addShelter(*plan.shelters.find(id), fields);
  if (kind == Kind::gear) addGear(*plan.gear.find(id), fields);
  if (kind == Kind::fixture && index < 0) addFixture(*plan.fixtures.find(id), fields);
  if (kind == Kind::fixture && index >= 0) addLevelKey(*plan.fixtures.find(id), i, fields);
  if (kind == Kind::beat) addBeat(*plan.beats.find(id), fields);
  if (kind == Kind::speech && index >= 0) addSpeech(plan.speech[i], i, fields);
  if (kind == Kind::handover && index >= 0) addHandover(plan.handovers[i], i, fields);
  return fields;
}

}  // namespace wend::ui
