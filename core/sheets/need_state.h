/// Whether a radio link and a pole do what somebody needs of them, and how nearly not, in words.
#pragma once

#include <string>

#include "core/snags/evidence.h"

namespace wend::sheets {

/// "met, 6 dB to spare at least", "not met for 1.2 s, first at 0:12.0, up to 3 dB short", or "unknown: an end of it has
/// no place" where nothing is known of it in the span. As sampled; people whose route was found are where it leads.
/// Requires  a link of the plan.
std::string linkState(const snags::Evidence& evidence, const std::string& link, geometry::Span during);

/// The same of a pole over its lines in the span: "met, 0.62 m from the mouth at most", "not met for ..., up to 0.30 m
/// short" where it does not reach, or "... 1.10 m from the mouth at most" where it does and is too far off. "met:
/// nobody speaks" without a line. Requires a pole of the plan.
std::string poleState(const snags::Evidence& evidence, const std::string& pole, geometry::Span during);

}  // namespace wend::sheets
