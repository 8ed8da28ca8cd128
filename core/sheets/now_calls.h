/// When people of the crew have to be gone from where they stand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/answers.h"

namespace wend::sheets {

/// The lens sees the ground somebody stands on from `seen` on; `early` seconds before that they have to be gone, or
/// sooner where the way they take from there has to be left sooner.
struct GoneBy {
  std::string id;
  std::string label;  ///< two letters, as on the plan
  double seen = 0;
  double by = 0;
  bool slip = false;  ///< the way they take from there decides, drawn or found
};

/// Of everybody of the crew who stands, as drawn or on a found route, on ground that is not in sight now and will be;
/// soonest first. Empty without the map of the ground.
///
/// Ensures   (1) `seen` is no later than the first instant after t at which the lens sees a person of the plan's rules
///               of sight who stands there; (2) by = seen - early, or the latest leave of the walk that starts
///           there where `slip`, which is sooner; slips of drawn ways are known once routes were looked for
/// Stops     holding for who crouches or is smaller: they may be seen later than said, or not at all.
std::vector<GoneBy> goneBy(const answers::Answers& answers, const answers::Instant& instant);

/// "FA gone by 47.8", "FA sets off by 45.6" where the slip decides, or "FA had to be gone by 47.8" once that is past.
std::string goneByWords(const GoneBy& call, double t);

}  // namespace wend::sheets
