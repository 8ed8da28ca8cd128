/// The sample First Batch, resolved once a test program, and ways to change it.
#pragma once

#include <gtest/gtest.h>

#include "core/answers/answers.h"
#include "tests/samples.h"

namespace wend::answers {

inline const Answers& firstBatch() {
  static const AnswersPtr answers = *answersOf(sharedSample("first-batch.wend"));
  return *answers;
}

/// The moves of one axis, in order.
inline std::vector<snags::Move> movesOn(const Answers& answers, snags::Move::Axis axis) {
  std::vector<snags::Move> moves;
  for (const auto& move : answers.evidence->moves)
    if (move.axis == axis) moves.push_back(move);
  return moves;
}

}  // namespace wend::answers
