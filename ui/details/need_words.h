/// Whether what somebody of the crew needs is met, in words.
#pragma once

#include "ui/details/chosen_words.h"

namespace wend::ui {

/// A line for each need of the chosen crew member: met all along, or when and why not. Of a route that is drawn the way
/// itself is looked at, frame by frame; of one that was found what the search says. Nothing before anything was
/// computed, and while the plan shown is not the one computed.
///
/// Cost      the take once for each need: not for every move of the mouse
void addNeedLines(const Subject& subject, std::vector<Computed>& lines);

}  // namespace wend::ui
