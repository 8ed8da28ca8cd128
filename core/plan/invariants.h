/// What every plan keeps, however it was made: ids that are words and unique, references that exist, marks and keys in
/// order of time, arcs that close, shapes that enclose something.
///
/// Everything here is a fault of the document. Faults of the take (a person in frame, a pull too fast) are snags.
#pragma once

#include "core/plan/plan.h"

namespace wend::plan {

/// Two times nearer than this are one, so that 25.0 + 0.3 meets 25.3.
inline constexpr double kSameTime = 1e-6;

/// Everything `plan` breaks, each with the place in the file.
///   time        a mark is left no earlier than it is reached, and before the next is reached; the first key of an axis
///               stands at 0 and none starts before the one before it is done; beats lie within the take; a span ends
///               after it starts; nothing is before 0
///   references  beats, performers, props, walls, shelters, crew, poles and links that are named exist
///   set         outlines enclose ground, walls have length, openings fit their wall, tops lie above bottoms, cables
///   have
///               length
///   equipment   the marks of a lens run one way, rows over the focal length rise, a pole's gap is the right way round,
///               a link has two ends
///   ids         are letters and digits, each once in the document
base::Problems problemsOf(const Plan& plan);

/// What an edit from `before` to `after` broke: the problems of `after` that `before` did not have. Looks only at what
/// the two do not share.
/// Ensures   (1) brokenBy(p, q) is empty when q has no problems  (2) a plan that came with problems can be edited, and
///           mended step by step, without being held to all of them at once
base::Problems brokenBy(const Plan& before, const Plan& after);

/// The owner's name, else its id: how messages call people.
std::string called(const std::string& name, const std::string& id);

/// "12.5 s".
std::string secondsText(double seconds);

/// Where a mark stands: at its shelter's place when it names one that exists.
Point placeOf(const Plan& plan, const Mark& mark);

}  // namespace wend::plan
