/// What must hold of a reader and its writer for any bytes at all; shared by fuzz targets and ordinary tests.
#pragma once

#include <string>
#include <string_view>

#include "core/base/check.h"
#include "core/base/text.h"

namespace wend::file {

/// Reads `bytes`. Refused: every problem has a place, a remedy and text that can be shown. Accepted: what was read, got
/// at by `part`, is written, read back equal and written to the same bytes. Aborts otherwise; true when accepted.
template <class Read, class Write, class Part>
bool roundTrips(std::string_view bytes, Read readBytes, Write write, Part part) {
  const auto read = readBytes(bytes);
  const base::Problems& told = read.ok() ? read->notes : read.problems();
  for (const auto& problem : told)
    WEND_CHECK(!problem.where.empty() && !problem.remedy.empty() && base::isUtf8(base::toText(problem)));
  if (!read.ok()) return false;
  const std::string text = write(part(*read));
  const auto back = readBytes(std::string_view(text));
  WEND_CHECK(back.ok());
  WEND_CHECK(part(*back) == part(*read));
  WEND_CHECK(write(part(*back)) == text);
  return true;
}

}  // namespace wend::file
