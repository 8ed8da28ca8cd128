/// Whom and what the lens must not see: the crew, the gear, and the rig itself.
#pragma once

#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/sight/take_look.h"
#include "core/snags/evidence.h"

namespace wend::answers {

struct Watched {
  std::string id;  ///< "camera" for the rig
  snags::BodyKind kind = snags::BodyKind::crew;
  sight::BodyAt body;
  int self = sight::kNobody;  ///< by which it does not hide itself
};

/// Somebody who stands at a place all take, `height` and `radius` in metres.
Watched standingAt(const Take& take, Point pos, double height, double radius);

/// Crew, gear, then the rig. `take` must outlive them.
std::vector<Watched> watchedOf(const Take& take);

}  // namespace wend::answers
