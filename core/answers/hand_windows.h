/// When focus, a boom or the rig may change hands.
///
/// Source    common practice, no source: never inside a hot pull.
#pragma once

#include "core/answers/answers.h"

namespace wend::answers {

/// What has to be quiet so long on either side of a change of hands, seconds. Common practice, no source.
inline constexpr double kQuietAside = 0.5;

/// Focus: where it is known, on one subject, its band at least 1.5 times the wobble, and no pull of it runs. Boom:
/// where nobody speaks. Rig: where the camera stands. Spans shorter than kQuietAside are left out. Requires  samples of
/// the whole take and its moves, in order
std::vector<snags::HandWindows> handWindows(const Take& take, const std::vector<Instant>& samples,
                                            const std::vector<snags::Move>& moves);

}  // namespace wend::answers
