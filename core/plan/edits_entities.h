/// Edits of whole entities: whatever has an id of its own. The laws of edits_marks.h hold.
///
/// T is one of Beat, Room, Wall, Opening, Piece, Area, Prop, Performer, Fixture, Crew, Shelter, Gear, Cable,
/// Pole, Link.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::plan {

/// The plan with `entity` at the end of its list, or before index `at`. Its id must be new.
template <class T>
base::Result<Plan> added(const Plan& plan, T entity, std::optional<std::size_t> at = std::nullopt);

/// The plan with `entity` in the place of the one of its id: the edit for everything that has no function of its own.
template <class T>
base::Result<Plan> replaced(const Plan& plan, T entity);

/// The plan without it; refused while something names it, and the problems say what. Beats go by removedBeat.
template <class T>
base::Result<Plan> removed(const Plan& plan, const std::string& id);

/// The plan with the entity at another index of its list: areas lie on top of those before them.
template <class T>
base::Result<Plan> reordered(const Plan& plan, const std::string& id, std::size_t to);

/// `stem` with the smallest number after it that no id of the plan has: "c45" leads to "c45", "c45x2", "c45x3" ...
/// when the stem ends in a digit, else "wall1", "wall2" ... Requires the stem to be an id of at most 50 characters.
std::string freshId(const Plan& plan, const std::string& stem);

}  // namespace wend::plan
