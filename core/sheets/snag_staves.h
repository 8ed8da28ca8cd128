/// Which department a snag belongs to: the stave of the score on which it is told while that stave is folded.
#pragma once

#include <string>

#include "core/snags/snag.h"

namespace wend::sheets {

/// The name of a stave. Snags of rules that judge every axis of the lens go to the axis they name; what belongs to
/// nobody's stave goes to "snags".
std::string staveOf(const snags::Snag& snag);

}  // namespace wend::sheets
