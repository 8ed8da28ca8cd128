/// What must hold of the plan reader for any bytes at all; shared by the fuzz target and the replay of saved cases.
#pragma once

#include <string_view>

#include "core/base/check.h"
#include "core/base/text.h"
#include "core/file/plan_reader.h"
#include "core/file/plan_writer.h"

namespace wend::file {

/// Reads `bytes`. Refused: every problem has a place, a remedy and text that can be shown. Accepted: the plan is
/// written, read back equal and written to the same bytes. Aborts otherwise; true when it was accepted.
inline bool readsAndWritesBack(std::string_view bytes) {
  const auto read = readPlan(bytes);
  const base::Problems& told = read.ok() ? read->notes : read.problems();
  for (const auto& problem : told)
    WEND_CHECK(!problem.where.empty() && !problem.remedy.empty() && base::isUtf8(base::toText(problem)));
  if (!read.ok()) return false;
  const std::string text = writePlan(read->plan);
  const auto back = readPlan(text);
  WEND_CHECK(back.ok());
  WEND_CHECK(back->plan == read->plan);
  WEND_CHECK(writePlan(back->plan) == text);
  return true;
}

}  // namespace wend::file
