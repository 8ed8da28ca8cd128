/// Snags as lines of text.
#pragma once

#include <QString>

#include "core/snags/snag.h"

namespace wend::ui {

/// "3 bars", "2 bars", "1 bar": how bad, without a hue.
QString barsOf(snags::Severity severity);

/// "After the last edit: no snag came or went", or a line for each that came (+) and went (-), at most `most`.
QString changeWords(const snags::SnagChange& change, int most);

}  // namespace wend::ui
