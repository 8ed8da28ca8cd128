#include <algorithm>

#include "core/base/text.h"
#include "core/optics/shot_size.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_plan.h"
#include "ui/details/choice_words.h"
#include "ui/details/fields.h"
#include "ui/details/member_fields.h"

namespace wend::ui {
namespace {

using plan::Plan;

constexpr Word<plan::BodiesHide> kHiding[] = {{"nobody", plan::BodiesHide::nobody},
                                              {"performers", plan::BodiesHide::performers},
                                              {"everybody", plan::BodiesHide::everybody}};
constexpr Word<plan::LinkKind> kLinks[] = {{"control", plan::LinkKind::control},
                                           {"picture", plan::LinkKind::picture},
                                           {"sound", plan::LinkKind::sound},
                                           {"talk", plan::LinkKind::talk}};

/// An edit of a whole entity: change(entity, value) on a copy that goes in its place.
template <class T, class Change>
auto changing(const std::string& id, Change change) {
  return [id, change](const Plan& p, const auto& value) {
    T changed = *tableOf<T>(p).find(id);
    change(changed, value);
    return plan::replaced(p, std::move(changed));
  };
}

void addCable(const plan::Cable& cable, int corner, Fields& fields) {
  const std::string id = cable.id.text();
  if (corner >= 0) {
    const auto i = std::size_t(corner);
    const auto to = [&](double geometry::Point::*axis) {
      return changing<plan::Cable>(id, [i, axis](plan::Cable& c, double metres) { c.points[i].*axis = metres; });
    };
    fields.push_back(lengthField("east x", cable.points[i].x, to(&geometry::Point::x)));
    fields.push_back(lengthField("north y", cable.points[i].y, to(&geometry::Point::y)));
  }
  fields.push_back(memberField<plan::Cable>("name", id, &plan::Cable::name, cable));
  fields.push_back(memberLength<plan::Cable>("height", id, &plan::Cable::height, cable));
  fields.push_back(
      optionalMomentField("from", cable.from, "the start", memberSet<plan::Cable>(id, &plan::Cable::from)));
  fields.push_back(
      optionalMomentField("until", cable.until, "the end", memberSet<plan::Cable>(id, &plan::Cable::until)));
}

void addPole(const Plan& plan, const plan::Pole& pole, Fields& fields) {
  const std::string id = pole.id.text();
  fields.push_back(memberField<plan::Pole>("name", id, &plan::Pole::name, pole));
  fields.push_back(choiceField("held by", pole.crew, idsOf(plan.crew), memberSet<plan::Pole>(id, &plan::Pole::crew)));
  fields.push_back(memberLength<plan::Pole>("reach", id, &plan::Pole::reach, pole));
  fields.push_back(memberLength<plan::Pole>("shoulder", id, &plan::Pole::shoulder, pole));
  fields.push_back(memberLength<plan::Pole>("over frame", id, &plan::Pole::above, pole));
  const auto gap = [&](std::size_t i) {
    return changing<plan::Pole>(id, [i](plan::Pole& p, double metres) { p.gap[i] = metres; });
  };
  fields.push_back(lengthField("mouth, least", pole.gap[0], gap(0)));
  fields.push_back(lengthField("mouth, most", pole.gap[1], gap(1)));
}

std::vector<std::string> linkEnds(const Plan& plan) {
  auto ends = idsOf(plan.crew, {plan::kCameraEnd});
  for (auto more : {idsOf(plan.gear), idsOf(plan.performers)}) ends.insert(ends.end(), more.begin(), more.end());
  return ends;
}

void addLink(const Plan& plan, const plan::Link& link, Fields& fields) {
  const std::string id = link.id.text();
  fields.push_back(memberField<plan::Link>("name", id, &plan::Link::name, link));
  fields.push_back(choiceOf("carries", link.kind, kLinks, memberSet<plan::Link>(id, &plan::Link::kind)));
  fields.push_back(choiceField("from", link.from, linkEnds(plan), memberSet<plan::Link>(id, &plan::Link::from)));
  fields.push_back(choiceField("to", link.to, linkEnds(plan), memberSet<plan::Link>(id, &plan::Link::to)));
  fields.push_back(numberField("frequency", link.mhz, "MHz", 10, 0, memberSet<plan::Link>(id, &plan::Link::mhz)));
  fields.push_back(numberField("budget", link.budget, "dB", 1, 0, memberSet<plan::Link>(id, &plan::Link::budget)));
  fields.push_back(secondsField("delay", link.delay, memberSet<plan::Link>(id, &plan::Link::delay)));
}

void addKeyTime(const plan::KeyTime& time, const plan::KeyRef& key, Fields& fields) {
  fields.push_back(momentField("at", time.at, plan::KeyStart{key}));
  fields.push_back(secondsField("over", time.over,
                                [key](const Plan& p, double seconds) { return plan::keyOverSet(p, key, seconds); }));
}

void addPieceMove(const plan::Piece& piece, std::size_t i, Fields& fields) {
  const std::string id = piece.id.text();
  const plan::KeyRef key{plan::Axis::piece, i, id};
  const plan::PieceKey& at = piece.moved[i];
  addKeyTime(at.time, key, fields);
  fields.push_back(lengthField("moved east", at.offset.x, [id, i, at](const Plan& p, double metres) {
    return plan::pieceMoveSet(p, id, i, {metres, at.offset.y}, at.turn);
  }));
  fields.push_back(lengthField("moved north", at.offset.y, [id, i, at](const Plan& p, double metres) {
    return plan::pieceMoveSet(p, id, i, {at.offset.x, metres}, at.turn);
  }));
  fields.push_back(angleField("turned", at.turn, [id, i, at](const Plan& p, double degrees) {
    return plan::pieceMoveSet(p, id, i, at.offset, degrees);
  }));
  fields.push_back(wordsField("cue", at.name, [key, by = at.by](const Plan& p, const std::string& name) {
    return plan::keyNamed(p, key, name, by);
  }));
}

void addDensity(const plan::Camera& camera, int index, Fields& fields) {
  if (index >= 0) {
    const auto i = std::size_t(index);
    addKeyTime(camera.nd[i].time, {plan::Axis::nd, i, {}}, fields);
    fields.push_back(numberField("variable", camera.nd[i].stops, "stops", 1.0 / 3, 2,
                                 [i](const Plan& p, double stops) { return plan::densityStopsSet(p, i, stops); }));
  }
  fields.push_back(numberField("fixed", camera.ndStops, "stops", 1.0 / 3, 2, plan::densitySet));
}

void addSight(const plan::SightRules& rules, Fields& fields) {
  const auto with = [](auto member) {
    return [member](const Plan& p, const auto& value) {
      plan::SightRules changed = p.sightRules;
      changed.*member = value;
      return plan::sightRulesSet(p, changed);
    };
  };
  using Rules = plan::SightRules;
  fields.push_back(angleField("margin", rules.margin, with(&Rules::margin)));
  fields.push_back(secondsField("early", rules.early, with(&Rules::early)));
  fields.push_back(secondsField("late", rules.late, with(&Rules::late)));
  fields.push_back(choiceOf("who hides", rules.bodiesHide, kHiding, with(&Rules::bodiesHide)));
  fields.push_back(lengthField("radius", rules.radius, with(&Rules::radius)));
  fields.push_back(lengthField("height", rules.height, with(&Rules::height)));
  fields.push_back(lengthField("cell", rules.cell, with(&Rules::cell)));
}

/// The usual sizes and those the plan names, from the widest.
void addSizes(const Plan& plan, Fields& fields) {
  optics::ShotSizes sizes = optics::usualShotSizes();
  for (const auto& [name, share] : plan.sizes)
    if (!optics::shotSizeNamed(name)) sizes.push_back({name, share});
  for (const auto& size : sizes) {
    const auto own = plan.sizes.find(size.name);
    fields.push_back(orNothing(
        numberField(size.name, own == plan.sizes.end() ? 0 : own->second, "\u00d7", 0.05, 2,
                    [name = size.name](const Plan& p, double share) { return plan::sizeShareSet(p, name, share); }),
        own == plan.sizes.end(), base::shortest(size.q),
        [name = size.name](const Plan& p) { return plan::sizeShareSet(p, name, std::nullopt); }));
  }
}

}  // namespace

Fields fieldsOfEquipment(const Subject& subject) {
  Fields fields;
  const Plan& plan = subject.plan;
  const auto& [kind, id, index] = subject.selection;
  if (kind == Kind::cable) addCable(*plan.cables.find(id), index, fields);
  if (kind == Kind::pole) addPole(plan, *plan.poles.find(id), fields);
  if (kind == Kind::link) addLink(plan, *plan.links.find(id), fields);
  if (kind == Kind::pieceMove && index >= 0) addPieceMove(*plan.set.pieces.find(id), std::size_t(index), fields);
  if (kind == Kind::density) addDensity(plan.camera, index, fields);
  if (kind == Kind::sight) addSight(plan.sightRules, fields);
  if (kind == Kind::sizes) addSizes(plan, fields);
  return fields;
}

}  // namespace wend::ui
