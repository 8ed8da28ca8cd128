/// The laws of round_trip.h for the plan reader.
#pragma once

#include "core/file/plan_reader.h"
#include "core/file/plan_writer.h"
#include "tests/fuzz/round_trip.h"

namespace wend::file {

inline bool readsAndWritesBack(std::string_view bytes) {
  return roundTrips(
      bytes, readPlan, writePlan, [](const auto& read) -> const auto& { return read.plan; });
}

}  // namespace wend::file
