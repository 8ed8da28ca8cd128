/// Links, lines of speech that run and cables at one instant after another.
#pragma once

#include "core/answers/answers.h"
#include "core/answers/cables.h"

namespace wend::answers {

class Traps {
 public:
  /// Lines of speech are told of only where `evidence` is given. Requires  both to outlive it.
  explicit Traps(const Take& take, const Evidence* evidence = nullptr);
  snags::TrapsNow at(const Instant& instant) const;

 private:
  const Take& take_;
  const Evidence* evidence_;
  std::vector<Pinch> pinches_;
  CableLength cable_;
};

}  // namespace wend::answers
