/// Links, booms, cables, exit lanes and ground outside the set as JSON. For sources of this folder only.
///
/// Ensures   a key is there when the plan has what it tells of, and only then.
#pragma once

#include "core/exchange/json_values.h"
#include "core/snags/evidence.h"

namespace wend::exchange {

/// At an instant: "links", "booms", "shutIn", "cameraCable". Nothing is added where nobody asked for them.
void addTraps(const snags::Instant& instant, Json& json);

/// Over the take: "links" where they are weakest and lost, "booms" with the most each line asks, "cables" and
/// "cameraCable", "lanes" that are taken, "outside" that is seen.
void addTraps(const snags::Evidence& evidence, Json& json);

}  // namespace wend::exchange
