/// The fields of every kind of thing that can be chosen, a line each.
#pragma once

#include "ui/details/field.h"

namespace wend::ui {

/// The fields of what is chosen; of the plan itself when nothing is; none for a snag.
/// Requires  exists(subject.plan, subject.selection)
Fields fieldsOf(const Subject& subject);

Fields fieldsOfMark(const Subject& subject);
Fields fieldsOfKey(const Subject& subject);
Fields fieldsOfSet(const Subject& subject);
Fields fieldsOfPeople(const Subject& subject);
Fields fieldsOfLens(const Subject& subject);
Fields fieldsOfPlan(const Subject& subject);
/// Cables, poles, links, pieces that move, the variable density, the rules of sight, the table of shot sizes.
Fields fieldsOfEquipment(const Subject& subject);
/// What a crew member needs, each need a row, and a choice that adds one.
void addNeeds(const Subject& subject, const plan::Crew& crew, Fields& fields);

/// How a field with no edit of its own changes an entity: a copy with one member set goes in its place.
template <class T>
const base::Table<T>& tableOf(const plan::Plan& plan) {
  if constexpr (std::is_same_v<T, plan::Beat>) return plan.beats;
  if constexpr (std::is_same_v<T, plan::Room>) return plan.set.rooms;
  if constexpr (std::is_same_v<T, plan::Wall>) return plan.set.walls;
  if constexpr (std::is_same_v<T, plan::Opening>) return plan.set.openings;
  if constexpr (std::is_same_v<T, plan::Piece>) return plan.set.pieces;
  if constexpr (std::is_same_v<T, plan::Area>) return plan.set.areas;
  if constexpr (std::is_same_v<T, plan::Prop>) return plan.props;
  if constexpr (std::is_same_v<T, plan::Performer>) return plan.performers;
  if constexpr (std::is_same_v<T, plan::Fixture>) return plan.fixtures;
  if constexpr (std::is_same_v<T, plan::Crew>) return plan.crew;
  if constexpr (std::is_same_v<T, plan::Shelter>) return plan.shelters;
  if constexpr (std::is_same_v<T, plan::Gear>) return plan.gear;
  if constexpr (std::is_same_v<T, plan::Cable>) return plan.cables;
  if constexpr (std::is_same_v<T, plan::Pole>) return plan.poles;
  if constexpr (std::is_same_v<T, plan::Link>) return plan.links;
}

/// The mark of a selection with an index, of the camera, a performer or a crew member; null else.
const plan::Mark* chosenMark(const Subject& subject);
plan::MarkRef chosenMarkRef(const Selection& selection);
const std::vector<plan::Mark>& marksOf(const plan::Plan& plan, const plan::MarkRef& ref);

/// The keyed axis of a selection; nothing where it has none.
std::optional<plan::Axis> chosenAxis(Kind kind);

/// Ids of performers and props, which aim and focus can be on.
std::vector<std::string> subjectIds(const plan::Plan& plan);

}  // namespace wend::ui
