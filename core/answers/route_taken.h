/// A found route as the marks of a plan, with the shelters it leads to by name.
#pragma once

#include <vector>

#include "core/answers/routes.h"

namespace wend::answers {

/// `marksOf`, each stand in a shelter a mark of that shelter. Who is in a shelter by name stands at its place, so a
/// stand keeps its own place and no name where that would not do.
///
/// Requires  a found route of these answers.
/// Ensures   (1) at a shelter's place they are out of sight as they were, `early` seconds before sight and `late` after
///           it, as sound as the map is; (2) the ways there are no faster than the person walks, as far out of sight,
///           and as clear of what stands all along as the route is; (3) there they come so much later and leave so much
///           sooner than on the route as the way to the shelter's place and back takes; (4) everything else is as in
///           `marksOf`.
std::vector<plan::Mark> takenOver(const Answers& answers, const FoundRoute& route);

}  // namespace wend::answers
