/// What must hold of the photometric reader for any bytes at all; shared by the fuzz target and the replay of wounded
/// files.
#pragma once

#include <cmath>
#include <string_view>

#include "core/base/check.h"
#include "core/base/text.h"
#include "core/exchange/ies_reader.h"

namespace wend::exchange {

/// Reads `bytes`. Refused or noted: every problem has a line, what was found, what was expected, a remedy, and text
/// that can be shown. Accepted: the light is finite and nowhere negative. Aborts otherwise; true when it was accepted.
inline bool readsAsLightOrRefuses(std::string_view bytes) {
  const auto read = readIes(bytes);
  for (const auto& problem : read.ok() ? read->notes : read.problems()) {
    WEND_CHECK(problem.where.starts_with("line ") && !problem.found.empty() && !problem.expected.empty());
    WEND_CHECK(!problem.remedy.empty() && base::isUtf8(base::toText(problem)));
  }
  if (!read.ok()) return false;
  for (const auto& label : read->labels) WEND_CHECK(base::isUtf8(label.keyword) && base::isUtf8(label.text));
  const light::Photometry& table = read->luminaire.photometry;
  WEND_CHECK(std::isfinite(table.peak()) && table.peak() >= 0);
  for (double vertical = 0; vertical <= 180; vertical += 22.5)
    for (double horizontal = -30; horizontal < 400; horizontal += 47) {
      const double candela = table.candelaAt(vertical, horizontal);
      WEND_CHECK(candela >= 0 && candela <= table.peak() * (1 + 1e-9));
    }
  WEND_CHECK(table.spread(0.5, 10) >= 0 && table.spread(0.5, 10) <= 360);
  WEND_CHECK(light::tiltFactor(read->luminaire.tilt, 45) >= 0);
  return true;
}

}  // namespace wend::exchange
