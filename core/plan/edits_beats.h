/// Edits of beats, and of the times that hang on them. The laws of edits_marks.h hold. Seconds from the take's start.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "core/plan/references.h"

namespace wend::plan {

/// The beat at `seconds`, with everything that hangs on it. Refused when that would put marks or keys out of order,
/// naming them all, or the beat outside the take. Beats are kept in order of time.
base::Result<Plan> movedBeat(const Plan& plan, const BeatRef& beat, double seconds);

base::Result<Plan> renamedBeat(const Plan& plan, const BeatRef& beat, const std::string& name);
/// What is called out loud at the beat.
base::Result<Plan> beatCueSet(const Plan& plan, const BeatRef& beat, const std::string& cue);

/// A new beat at `seconds` with a fresh id, put in order of time.
base::Result<Plan> insertedBeat(const Plan& plan, double seconds, const std::string& name);

/// Without the beat. What hung on it keeps its time and hangs on nothing; a tap logged for it in a take stays in that
/// take as a note with the beat's name.
base::Result<Plan> removedBeat(const Plan& plan, const BeatRef& beat);

/// The time of a mark, key, entry, line or handover in seconds, or nothing when the reference leads nowhere.
std::optional<double> secondsAt(const Plan& plan, const MomentRef& moment);

/// The time hangs on the beat (or on "end") from now on, at the same second: its offset is what lies between.
base::Result<Plan> boundMoment(const Plan& plan, const MomentRef& moment, const std::string& beat);
/// The time hangs on nothing from now on, at the same second.
base::Result<Plan> freedMoment(const Plan& plan, const MomentRef& moment);
/// The time at `seconds`; one that hangs on a beat keeps hanging on it, at another offset.
base::Result<Plan> retimedMoment(const Plan& plan, const MomentRef& moment, double seconds);

}  // namespace wend::plan
