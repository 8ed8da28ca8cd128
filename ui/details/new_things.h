/// People and things that the plan has not yet, each as an edit: put near the camera at the playhead, to be moved and
/// named afterwards.
#pragma once

#include <vector>

#include "ui/details/chosen_edits.h"

namespace wend::ui {

/// In the order in which they are offered; `label` is what is added ("performer"). What cannot be there yet (a pole
/// without crew, a line without performers) is left out. Performers stand 2 m ahead of the lens, everything else 2 m
/// behind it; lines and handovers begin at the playhead.
std::vector<ChosenEdit> newThings(const Subject& subject);

}  // namespace wend::ui
