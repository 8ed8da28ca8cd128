/// What must hold of the chart reader for any bytes at all; shared by the fuzz target and the ordinary tests.
#pragma once

#include "core/base/check.h"
#include "core/base/text.h"
#include "core/file/chart_file.h"

namespace wend::file {

/// As readsAndWritesBack of plan_reader_fuzz.h, for charts.
inline bool chartReadsAndWritesBack(std::string_view bytes) {
  const auto read = readChart(bytes);
  const base::Problems& told = read.ok() ? read->notes : read.problems();
  for (const auto& problem : told)
    WEND_CHECK(!problem.where.empty() && !problem.remedy.empty() && base::isUtf8(base::toText(problem)));
  if (!read.ok()) return false;
  const std::string text = writeChart(read->chart);
  const auto back = readChart(text);
  WEND_CHECK(back.ok() && back->chart == read->chart && writeChart(back->chart) == text);
  return true;
}

}  // namespace wend::file
