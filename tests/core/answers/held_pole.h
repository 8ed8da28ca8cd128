/// A pole held still over a whole take, as a line of speech has it.
#pragma once

#include <vector>

#include "core/snags/evidence.h"

namespace wend::answers {

inline snags::BoomLine heldStill(const std::vector<snags::Instant>& samples, const snags::PoleLine& held) {
  snags::BoomLine line;
  line.pole = "pole";
  for (const auto& sample : samples) {
    snags::BoomAt at;
    at.time = sample.time;
    at.held = held;
    line.at.push_back(at);
  }
  return line;
}

}  // namespace wend::answers
