/// The eye during a short step of time: straight from where it is at the start to where it is at the end, and how far
/// it may stray from that.
///
/// Frame     as Eye; bearings unwrapped, so that a step may turn by any angle.
/// Tests     tests/property/set_view_test.cpp
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "core/sight/eye.h"
#include "core/sight/frame_sides.h"
#include "core/sight/swept_view.h"

namespace wend::sight {

/// Who looks, at any time: nothing while there is no lens.
using EyeAt = std::function<std::optional<Eye>(double)>;

struct EyeStep {
  SweptStep flat;  ///< the pupil's foot and the wedge that holds the widened frame at every tilt
  Span heights;    ///< of the pupil
  StepSides sides;
  bool operator==(const EyeStep&) const = default;
};
using EyeSteps = std::vector<std::optional<EyeStep>>;

/// Where between its ends a step is looked at.
inline constexpr std::array<double, 3> kQuarters{0.25, 0.5, 0.75};

/// Nothing when there is no eye at any instant looked at.
///
/// Ensures   (1) at both ends the wedge is that of `Frame::turns`; (2) `sway` and `turn` are half as much again as the
///           furthest the eye, or a side of its wedge, stands off the straight step at the quarters of the step.
/// Error     a curve departs furthest from its chord near the middle and a corner or a cut is seen at one of the
///           quarters to two thirds at least, so that the half as much holds them; two cuts within one step may not be
///           held, nor an eye there at one end of the step only.
/// Requires  time.until > time.from.
std::optional<EyeStep> eyeStep(const EyeAt& eye, Span time);
/// The same with what is seen by at both ends known before.
std::optional<EyeStep> eyeStep(const EyeAt& eye, Span time, const std::optional<Eye>& first,
                               const std::optional<Eye>& last);

/// One step that holds steps which follow each other; nothing where none has an eye. Its sides tell nothing.
std::optional<EyeStep> joined(std::span<const std::optional<EyeStep>> steps);

/// The ground with every place the eyes are at, sway and a metre around them.
geometry::Extent withEyes(geometry::Extent ground, const EyeSteps& eyes);

}  // namespace wend::sight
