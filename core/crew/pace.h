/// When one pace is more than another.
#pragma once

namespace wend::crew {

/// A pace is over another where it is so much more, metres a second: half of the last digit that is told.
inline constexpr double kPaceTold = 0.005;

}  // namespace wend::crew
