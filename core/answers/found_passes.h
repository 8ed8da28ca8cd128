/// What people pass on the routes found for them.
#pragma once

#include <span>

#include "core/answers/routes.h"

namespace wend::answers {

/// Puts into each route found the narrowest of its clearances, which were taken with people on their routes.
void tellNearest(std::span<const snags::ClearanceAt> clearances, FoundRoutes& routes);

/// Notes in each route found which pieces are moved past them within `kMindful`, how near, how fast and when: a
/// caution, for a piece may be a vehicle.
void tellMovers(const Take& take, FoundRoutes& routes);

/// Metres, edge to edge. Common practice, no source.
inline constexpr double kMindful = 1;

}  // namespace wend::answers
