/// The sample First Batch, resolved once a test program, and ways to change it.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "core/answers/answers.h"
#include "core/file/plan_reader.h"

namespace wend::answers {

inline plan::PlanPtr samplePlan(const std::string& name) {
  std::ifstream in(WEND_SOURCE_DIR "/samples/" + name);
  std::ostringstream text;
  text << in.rdbuf();
  return std::make_shared<const plan::Plan>(file::readPlan(text.str())->plan);
}

inline const Answers& firstBatch() {
  static const AnswersPtr answers = *answersOf(samplePlan("first-batch.wend"));
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
