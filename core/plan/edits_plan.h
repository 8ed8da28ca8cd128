/// Edits of the plan itself: title, clock, units, speech, handovers, accepted snags, takes. The laws of edits_marks.h
/// hold.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

namespace wend::plan {

base::Result<Plan> titled(const Plan& plan, const std::string& title);
base::Result<Plan> revisionSet(const Plan& plan, const std::string& revision);
base::Result<Plan> notesSet(const Plan& plan, const std::string& notes);
/// What lengths are shown and typed in; nothing stored changes.
base::Result<Plan> displayUnitSet(const Plan& plan, LengthUnit unit);

/// The take's length in seconds. What hangs on "end" moves with it; refused while a beat lies beyond.
base::Result<Plan> clockLengthSet(const Plan& plan, double seconds);
/// Frames a second as a fraction, 24/1 or 30000/1001. Drop frame counts only at 30000/1001 and 60000/1001.
base::Result<Plan> frameRateSet(const Plan& plan, int numerator, int denominator, bool dropFrame);
/// Seconds after midnight at the take's start; nothing: not known.
base::Result<Plan> timeOfDaySet(const Plan& plan, std::optional<double> seconds);
/// The timecode of the take's first frame, as HH:MM:SS:FF or, with drop frame, HH:MM:SS;FF.
base::Result<Plan> startTimecodeSet(const Plan& plan, const std::string& timecode);

/// Cycles a second of the mains the lamps hang on, 50 or 60; nothing: not known.
base::Result<Plan> mainsSet(const Plan& plan, std::optional<int> hertz);
/// Minutes from one take's start to the next; nothing: not known.
base::Result<Plan> cycleSet(const Plan& plan, std::optional<double> minutes);
/// Where on Earth and on which day; nothing: not known, and no sun is worked out.
base::Result<Plan> siteSet(const Plan& plan, std::optional<Site> site);

base::Result<Plan> speechSet(const Plan& plan, std::vector<Speech> speech);
base::Result<Plan> handoversSet(const Plan& plan, std::vector<Handover> handovers);

/// The factor on one threshold's value; 1 takes it out of the plan.
base::Result<Plan> thresholdFactorSet(const Plan& plan, const std::string& name, double factor);

/// The frame's height over standing height of one shot size; nothing: the table's own, or none where the plan named it.
base::Result<Plan> sizeShareSet(const Plan& plan, const std::string& size, std::optional<double> share);

/// The snag of that key accepted by somebody, with a note; again: by somebody else or with another note.
base::Result<Plan> acceptedSnag(const Plan& plan, const std::string& key, const std::string& by,
                                const std::string& note);
/// The snag of that key no longer accepted.
base::Result<Plan> unacceptedSnag(const Plan& plan, const std::string& key);

/// The log of a take at the end of the list.
base::Result<Plan> loggedTake(const Plan& plan, Take take);

}  // namespace wend::plan
