#include <cmath>

#include "core/plan/edits_legs.h"
#include "core/plan/edits_marks.h"
#include "ui/details/choice_words.h"
#include "ui/details/fields.h"

namespace wend::ui {
namespace {

using plan::MarkRef;
using plan::Owner;
using plan::Plan;

constexpr Word<plan::Posture> kPerformerPostures[] = {{"stand", plan::Posture::stand},
                                                      {"sit", plan::Posture::sit},
                                                      {"kneel", plan::Posture::kneel},
                                                      {"lie", plan::Posture::lie}};
constexpr Word<plan::Posture> kCrewPostures[] = {{"stand", plan::Posture::stand}, {"crouch", plan::Posture::crouch}};
constexpr Word<plan::LegShape> kShapes[] = {
    {"straight", plan::LegShape::straight}, {"smooth", plan::LegShape::smooth}, {"arc", plan::LegShape::arc}};
constexpr Word<plan::Pace> kPaces[] = {{"even", plan::Pace::even}, {"eased", plan::Pace::eased}};

/// Where a mark stands: crew in a shelter stand at the shelter.
plan::Point placeOf(const Plan& plan, const MarkRef& ref) {
  const plan::Mark& mark = marksOf(plan, ref)[ref.index];
  const plan::Shelter* shelter = mark.shelter.empty() ? nullptr : plan.shelters.find(mark.shelter);
  return shelter ? shelter->pos : mark.pos;
}

Field moved(const std::string& label, const Plan& plan, const MarkRef& ref, double plan::Point::*axis) {
  return lengthField(label, placeOf(plan, ref).*axis, [ref, axis](const Plan& p, double metres) {
    plan::Point pos = placeOf(p, ref);
    pos.*axis = metres;
    return plan::movedMark(p, ref, pos);
  });
}

Field leaving(const plan::Mark& mark, const MarkRef& ref) {
  Field field = momentField("leave", mark.until.value_or(mark.at), plan::Leaving{ref});
  return orNothing(field, !mark.until, "at once",
                   [ref](const Plan& p) { return plan::leavingSet(p, ref, std::nullopt); });
}

void addLeg(const plan::Mark& mark, const MarkRef& ref, Fields& fields) {
  const plan::Leg& leg = mark.leg;
  fields.push_back(choiceOf("leg", leg.shape, kShapes,
                            [ref](const Plan& p, plan::LegShape shape) { return plan::legShaped(p, ref, shape); }));
  fields.push_back(choiceOf("pace", leg.pace, kPaces,
                            [ref](const Plan& p, plan::Pace pace) { return plan::legPaced(p, ref, pace); }));
  if (leg.shape != plan::LegShape::arc) return;
  fields.push_back(angleField("turns by", leg.sweep,
                              [ref](const Plan& p, double degrees) { return plan::legSwept(p, ref, degrees); }));
}

void addCamera(const Subject& subject, const MarkRef& ref, Fields& fields) {
  const plan::Mark& mark = *chosenMark(subject);
  fields.push_back(lengthField("lens z", mark.height.value_or(0),
                               [ref](const Plan& p, double metres) { return plan::markHeightSet(p, ref, metres); }));
}

/// What the lens does while the camera is on the mark; computed, so not to be typed.
void addAim(const Subject& subject, Fields& fields) {
  if (!subject.answers) return;
  const answers::Take& take = *subject.answers->take;
  const double t = plan::secondsOf(subject.plan, chosenMark(subject)->at);
  if (t < 0 || t > take.length()) return;
  const geometry::Pose sensor = take.view().sensorAt(t);
  fields.push_back(angleField("bearing", std::round(sensor.bearing * 10) / 10, nullptr));
  fields.push_back(angleField("tilt", std::round(sensor.tilt * 10) / 10, nullptr));
  if (const auto focal = take.view().focalAt(t))
    fields.push_back(numberField("length", std::round(*focal * 10) / 10, "mm", 0, 0, nullptr));
  fields.push_back(stopField("stop", take.lens().irisAt(t), nullptr));
  const double set = take.lens().focusAt(t);
  fields.push_back(lengthField("set", std::isinf(set) ? set : std::round(set * 1000) / 1000, nullptr));
}

void addPerformer(const plan::Mark& mark, const MarkRef& ref, Fields& fields) {
  fields.push_back(
      orNothing(angleField("facing", mark.facing.value_or(0),
                           [ref](const Plan& p, double degrees) { return plan::markFacingSet(p, ref, degrees); }),
                !mark.facing, "along way", [ref](const Plan& p) { return plan::markFacingSet(p, ref, std::nullopt); }));
  fields.push_back(choiceOf("posture", mark.posture, kPerformerPostures, [ref](const Plan& p, plan::Posture posture) {
    return plan::markPostureSet(p, ref, posture);
  }));
  fields.push_back(choiceOf("taped", mark.taped, kYesNo,
                            [ref](const Plan& p, bool taped) { return plan::markTapedSet(p, ref, taped); }));
}

void addCrew(const Subject& subject, const plan::Mark& mark, const MarkRef& ref, Fields& fields) {
  fields.push_back(choiceOf("posture", mark.posture, kCrewPostures, [ref](const Plan& p, plan::Posture posture) {
    return plan::markPostureSet(p, ref, posture);
  }));
  std::vector<std::string> shelters{"none"};
  for (const auto& shelter : subject.plan.shelters) shelters.push_back(shelter.id.text());
  fields.push_back(choiceField(
      "shelter", mark.shelter.empty() ? "none" : mark.shelter, shelters, [ref](const Plan& p, const std::string& word) {
        return word == "none" ? plan::movedMark(p, ref, placeOf(p, ref)) : plan::markSheltered(p, ref, word);
      }));
}

}  // namespace

plan::MarkRef chosenMarkRef(const Selection& selection) {
  const Owner owner = selection.kind == Kind::camera      ? Owner::camera
                      : selection.kind == Kind::performer ? Owner::performer
                                                          : Owner::crew;
  return {owner, selection.id, std::size_t(std::max(0, selection.index))};
}

const std::vector<plan::Mark>& marksOf(const Plan& plan, const MarkRef& ref) {
  if (ref.owner == Owner::camera) return plan.camera.marks;
  return ref.owner == Owner::performer ? plan.performers.find(ref.id)->marks : plan.crew.find(ref.id)->marks;
}

const plan::Mark* chosenMark(const Subject& subject) {
  const Kind kind = subject.selection.kind;
  const bool person = kind == Kind::camera || kind == Kind::performer || kind == Kind::crew;
  if (!person || subject.selection.index < 0) return nullptr;
  const MarkRef ref = chosenMarkRef(subject.selection);
  return &marksOf(subject.plan, ref)[ref.index];
}

Fields fieldsOfMark(const Subject& subject) {
  const plan::Mark& mark = *chosenMark(subject);
  const MarkRef ref = chosenMarkRef(subject.selection);
  Fields fields;
  fields.push_back(moved("east x", subject.plan, ref, &plan::Point::x));
  fields.push_back(moved("north y", subject.plan, ref, &plan::Point::y));
  if (ref.owner == Owner::camera) addCamera(subject, ref, fields);
  fields.push_back(momentField("arrive", mark.at, plan::Arrival{ref}));
  fields.push_back(leaving(mark, ref));
  if (ref.owner == Owner::performer) addPerformer(mark, ref, fields);
  if (ref.owner == Owner::crew) addCrew(subject, mark, ref, fields);
  if (ref.index + 1 < marksOf(subject.plan, ref).size()) addLeg(mark, ref, fields);
  if (ref.owner == Owner::camera) addAim(subject, fields);
  return fields;
}

}  // namespace wend::ui
