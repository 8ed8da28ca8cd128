/// The figures of links and booms that a whole take comes down to, for papers and programs alike.
#pragma once

#include <optional>

#include "core/snags/evidence.h"

namespace wend::sheets {

/// The sample in which a link has least to spare; nothing where it is known at none.
std::optional<std::size_t> weakestOf(const snags::LinkOver& link);

/// The most a line asks of its pole; nothing where nobody knows.
std::optional<double> mostGapOf(const snags::BoomLine& line);
std::optional<double> mostReachOf(const snags::BoomLine& line);
/// From the pole to a lamp.
std::optional<double> nearestLampOf(const snags::BoomLine& line);
bool isWalled(const snags::BoomLine& line);

}  // namespace wend::sheets
