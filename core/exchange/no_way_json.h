/// Why nobody found a way for somebody, as the JSON of `wend routes` has it. The schema stands with the verb's.
#pragma once

#include "core/exchange/json_values.h"
#include "core/sheets/crew_sheet.h"

namespace wend::exchange {

/// Null where there is nothing to tell. `kind` is "seen" where every way is seen, "closed" where there is none even
/// seen, "uncovered" where the map of the ground is not for them and nobody looked; `words` are the printed ones.
/// What frees, frees alone: its `figure` is in its `unit`, both null where it is all or nothing.
Json noWayJson(const sheets::RouteOf& route);

}  // namespace wend::exchange
