#include "core/base/text.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_plan.h"
#include "core/units/clock_time.h"
#include "ui/details/choice_words.h"
#include "ui/details/fields.h"
#include "ui/details/over_focal_words.h"
#include "ui/details/site_words.h"

namespace wend::ui {
namespace {

using plan::Plan;

constexpr Word<plan::RigKind> kRigs[] = {{"stabilised", plan::RigKind::stabilised},
                                         {"handheld", plan::RigKind::handheld},
                                         {"dolly", plan::RigKind::dolly},
                                         {"crane", plan::RigKind::crane}};
constexpr Word<plan::DistanceKind> kDistances[] = {
    {"flat", plan::DistanceKind::flat}, {"slant", plan::DistanceKind::slant}, {"floor", plan::DistanceKind::floor}};

void addExposure(const plan::Camera& camera, Fields& fields) {
  fields.push_back(numberField("index EI", camera.exposureIndex, "", 100, 0, plan::exposureIndexSet));
  fields.push_back(angleField("shutter", camera.shutterDeg, plan::shutterSet));
  fields.push_back(numberField("density ND", camera.ndStops, "stops", 1.0 / 3, 0, plan::densitySet));
}

void addSlack(const Subject& subject, Fields& fields) {
  const Plan& plan = subject.plan;
  const Kind kind = subject.selection.kind;
  if (kind == Kind::focus || kind == Kind::pull) {
    fields.push_back(choiceOf("measured", plan.focus.distance, kDistances, plan::focusDistanceSet));
    fields.push_back(percentField("blur share", plan.focus.blurShare, plan::blurShareSet));
  }
  if (kind == Kind::zoom) fields.push_back(percentField("slack", plan.zoom.slackShare, plan::slackShareSet));
  if (kind != Kind::iris) return;
  fields.push_back(numberField("slack", plan.iris.slackStops, "stops", 0.1, 2, plan::slackStopsSet));
  std::vector<std::string> who{"who is sharp"};
  for (const auto& performer : plan.performers) who.push_back(performer.id.text());
  const std::string now = plan.iris.exposePerformer;
  fields.push_back(choiceField("exposes for", now.empty() ? who.front() : now, who,
                               [first = who.front()](const Plan& p, const std::string& word) {
                                 return plan::exposeForSet(p, word == first ? std::string() : word);
                               }));
}

void addCamera(const plan::Camera& camera, Fields& fields) {
  fields.push_back(numberField("gate wide", camera.gate[0], "mm", 0.1, 1,
                               [](const Plan& p, double mm) { return plan::gateSet(p, mm, p.camera.gate[1]); }));
  fields.push_back(numberField("gate high", camera.gate[1], "mm", 0.1, 1,
                               [](const Plan& p, double mm) { return plan::gateSet(p, p.camera.gate[0], mm); }));
  fields.push_back(orNothing(numberField("aspect", camera.aspect.value_or(0), ": 1", 0.05, 2,
                                         [](const Plan& p, double aspect) { return plan::aspectSet(p, aspect); }),
                             !camera.aspect, "whole gate",
                             [](const Plan& p) { return plan::aspectSet(p, std::nullopt); }));
  fields.push_back(numberField("squeeze", camera.squeeze, "\u00d7", 0.1, 1, plan::squeezeSet));
  fields.push_back(numberField("blur circle", camera.blurCircle, "mm", 0.001, 3, plan::blurCircleSet));
  addExposure(camera, fields);
  fields.push_back(choiceOf("rig", camera.rig.kind, kRigs, plan::rigKindSet));
  fields.push_back(lengthField("rig radius", camera.rig.radius, plan::rigRadiusSet));
}

/// A member of the lens, changed through an edit that takes both of a pair.
template <class Edit>
SetNumber half(Edit edit, std::array<double, 2> plan::Lens::*pair, std::size_t which) {
  return [edit, pair, which](const Plan& p, double value) {
    auto both = p.lens ? (*p.lens).*pair : std::array<double, 2>{};
    both[which] = value;
    return edit(p, both[0], both[1]);
  };
}

void addLens(const plan::Lens& lens, Fields& fields) {
  fields.push_back(wordsField("lens", lens.name, plan::lensNamed));
  fields.push_back(numberField("shortest", lens.focal[0], "mm", 1, 0, half(plan::lensFocalSet, &plan::Lens::focal, 0)));
  fields.push_back(numberField("longest", lens.focal[1], "mm", 1, 0, half(plan::lensFocalSet, &plan::Lens::focal, 1)));
  fields.push_back(lengthField("close focus", lens.closeFocus, plan::closeFocusSet));
}

/// A number, or rows of value and focal length where it changes along the zoom.
template <class Edit>
Field overFocalField(const std::string& label, const plan::OverFocal& over, double scale, Edit edit) {
  return wordsField(label, overFocalText(over, scale), [=](const Plan& p, const std::string& text) -> PlanEdit {
    auto typed = overFocalFrom(text, scale);
    if (!typed) return typed.problems();
    return edit(p, std::move(*typed));
  });
}

void addLensMore(const plan::Lens& lens, Fields& fields) {
  fields.push_back(stopField("widest", lens.stop[0], half(plan::lensStopSet, &plan::Lens::stop, 0)));
  fields.push_back(stopField("smallest", lens.stop[1], half(plan::lensStopSet, &plan::Lens::stop, 1)));
  fields.push_back(lengthField("pupil ahead", lens.pupilAhead, plan::pupilAheadSet));
  fields.push_back(overFocalField("transmission, %", lens.transmission, 100, plan::transmissionSet));
  fields.push_back(overFocalField("breathing, %", lens.breathing, 100, plan::breathingSet));
  fields.push_back(overFocalField("balance moves, mm forward", lens.balance, 1000, plan::balanceSet));
  fields.push_back(numberField("barrel limit", lens.limits.focusDegPerSecond, "\u00b0/s", 10, 0, plan::barrelLimitSet));
  fields.push_back(numberField("iris limit", lens.limits.irisStopsPerSecond, "stops/s", 0.1, 1, plan::irisLimitSet));
  fields.push_back(numberField("zoom limit", lens.limits.zoomPercentPerSecond, "%/s", 5, 0, plan::zoomLimitSet));
}

Field mains(const plan::Clock& clock) {
  const auto set = [](const Plan& p, const std::string& word) {
    return plan::mainsSet(p, word == "50" ? std::optional(50) : word == "60" ? std::optional(60) : std::nullopt);
  };
  return choiceField("mains Hz", clock.mainsHz ? std::to_string(*clock.mainsHz) : "not known",
                     {"not known", "50", "60"}, set);
}

Field cycle(const plan::Clock& clock) {
  return orNothing(numberField("take to take", clock.cycleMinutes.value_or(0), "min", 1, 0,
                               [](const Plan& p, double minutes) { return plan::cycleSet(p, minutes); }),
                   !clock.cycleMinutes, "not known", [](const Plan& p) { return plan::cycleSet(p, std::nullopt); });
}

Field sunAt(const std::optional<plan::Site>& site) {
  Field field = wordsField("sun at", site ? siteText(*site) : std::string(),
                           [](const Plan& p, const std::string& text) -> PlanEdit {
                             const auto typed = siteFrom(text, p.site.value_or(plan::Site{}));
                             if (!typed) return typed.problems();
                             return plan::siteSet(p, *typed);
                           });
  return orNothing(field, !site, "north, east, day, UTC+",
                   [](const Plan& p) { return plan::siteSet(p, std::nullopt); });
}

Field northOf(const plan::Site& site) {
  return angleField("plan north", site.north, [](const Plan& p, double degrees) {
    plan::Site turned = *p.site;
    turned.north = degrees;
    return plan::siteSet(p, turned);
  });
}

SetNumber sightRule(double plan::SightRules::*member) {
  return [member](const Plan& p, double value) {
    plan::SightRules rules = p.sightRules;
    rules.*member = value;
    return plan::sightRulesSet(p, rules);
  };
}

Field timeOfDay(const plan::Clock& clock) {
  Field field = shortWordsField("starts at", clock.timeOfDay ? units::timeOfDayText(*clock.timeOfDay) : std::string(),
                                [](const Plan& p, const std::string& text) -> PlanEdit {
                                  const auto seconds = units::timeOfDayFrom(text);
                                  if (!seconds) return seconds.problems();
                                  return plan::timeOfDaySet(p, *seconds);
                                });
  return orNothing(field, !clock.timeOfDay, "any hour",
                   [](const Plan& p) { return plan::timeOfDaySet(p, std::nullopt); });
}

}  // namespace

Fields fieldsOfLens(const Subject& subject) {
  Fields fields;
  const Kind kind = subject.selection.kind;
  if (kind == Kind::lens) {
    addLens(*subject.plan.lens, fields);
    addLensMore(*subject.plan.lens, fields);
  }
  if (kind == Kind::camera) addCamera(subject.plan.camera, fields);
  addSlack(subject, fields);
  return fields;
}

Fields fieldsOfPlan(const Subject& subject) {
  const Plan& plan = subject.plan;
  Fields fields;
  fields.push_back(wordsField("title", plan.title, plan::titled));
  fields.push_back(shortWordsField("revision", plan.revision, plan::revisionSet));
  fields.push_back(secondsField("length", plan.clock.length, plan::clockLengthSet));
  fields.push_back(timeOfDay(plan.clock));
  fields.push_back(cycle(plan.clock));
  fields.push_back(mains(plan.clock));
  fields.push_back(sunAt(plan.site));
  if (plan.site) fields.push_back(northOf(*plan.site));
  fields.push_back(angleField("margin", plan.sightRules.margin, sightRule(&plan::SightRules::margin)));
  fields.push_back(secondsField("early", plan.sightRules.early, sightRule(&plan::SightRules::early)));
  fields.push_back(secondsField("late", plan.sightRules.late, sightRule(&plan::SightRules::late)));
  addExposure(plan.camera, fields);
  if (plan.lens) addLens(*plan.lens, fields);
  return fields;
}

Fields fieldsOf(const Subject& subject) {
  const Selection& selection = subject.selection;
  if (selection.kind == Kind::none) return fieldsOfPlan(subject);
  if (chosenMark(subject)) return fieldsOfMark(subject);
  switch (selection.kind) {
    case Kind::cable:
    case Kind::pole:
    case Kind::link:
    case Kind::pieceMove:
    case Kind::density:
    case Kind::sight:
    case Kind::sizes:
      return fieldsOfEquipment(subject);
    case Kind::aim:
    case Kind::focus:
    case Kind::pull:
    case Kind::zoom:
    case Kind::iris:
      return selection.index >= 0 ? fieldsOfKey(subject) : fieldsOfLens(subject);
    case Kind::camera:
    case Kind::lens:
      return fieldsOfLens(subject);
    case Kind::room:
    case Kind::wall:
    case Kind::opening:
    case Kind::piece:
    case Kind::area:
    case Kind::underlay:
      return fieldsOfSet(subject);
    default:
      return fieldsOfPeople(subject);
  }
}

}  // namespace wend::ui
