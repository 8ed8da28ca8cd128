/// Bodies that stand in the light, as core/light takes them, with the names they are told by. Plan metres.
#pragma once

#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/light/shadow.h"
#include "core/snags/evidence.h"

namespace wend::answers {

struct LightBlockers {
  std::vector<light::Blocker> bodies;
  std::vector<std::string> names;  ///< one a body: "camera", the id of a performer, of somebody of the crew or a pole
  void add(const light::Blocker& body, const std::string& name) {
    bodies.push_back(body);
    names.push_back(name);
  }
};

/// The camera, the crew and the poles that are held at the instant, by the sample of `boom` at it or within `near`
/// seconds of it.
LightBlockers gearInLight(const snags::Instant& instant, const std::vector<snags::BoomLine>& boom, double near = 0);

/// The performers after them.
void addPerformers(const Take& take, const snags::Instant& instant, LightBlockers& blockers);

/// Performers who stand between lamps and faces. A face inside a performer's own body is that performer's, and not in
/// the dark for it.
/// Requires  `take` outlives it.
light::BlockedAt performersInLight(const Take& take);

}  // namespace wend::answers
