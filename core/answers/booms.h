/// Poles and the lines of speech they pick up. Seconds from the take's start; places in plan metres.
#pragma once

#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/crew/boom.h"

namespace wend::answers {

/// Who holds the pole at t, by the plan's handovers (core/plan/holders.h).
std::string holderAt(const plan::Plan& plan, const plan::Pole& pole, double t);

/// The spans, in order, in which that member holds the pole.
std::vector<geometry::Span> heldSpans(const plan::Plan& plan, const plan::Pole& pole, const std::string& member);

/// The lines of speech that only this pole can pick up: those that name it, and those that name none where it is the
/// only one. Places in the plan's list.
std::vector<std::size_t> linesOnlyFor(const plan::Plan& plan, const plan::Pole& pole);

/// The pole held over a performer of that instant, or out in front of them where the frame is high, by somebody who
/// stands at a place. Where the microphone is does not depend on that place.
crew::BoomStand standOver(const plan::Pole& pole, const snags::PerformerAt& speaker, const Instant& instant,
                          Point holder, double holdersFloor);

}  // namespace wend::answers
