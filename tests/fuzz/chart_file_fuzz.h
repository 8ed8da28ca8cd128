/// The laws of round_trip.h for the chart reader.
#pragma once

#include "core/file/chart_file.h"
#include "tests/fuzz/round_trip.h"

namespace wend::file {

inline bool chartReadsAndWritesBack(std::string_view bytes) {
  return roundTrips(
      bytes, readChart, writeChart, [](const auto& read) -> const auto& { return read.chart; });
}

}  // namespace wend::file
