/// Stretches in which the focus can be left alone: one setting that holds from the nearest distance asked for to
/// infinity.
///
/// Frame     as depth_of_field.h: metres from the entrance pupil, millimetres, f-numbers; seconds.
/// Source    the hyperfocal distance, as in depth_of_field.h. To leave the ring at it: common practice, no source.
/// Stops     holding where depth_of_field.h does. Sharp means the full blur circle here: far things are only just.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/optics/depth_of_field.h"

namespace wend::optics {

/// The settings at which everything from `nearest` to infinity is blurred by at most the blur circle; `far` may be
/// infinite.
///
/// Requires  nearest > 0, closest > focal length
/// Ensures   (1) contains a setting exactly when depthOfField there reaches from `nearest` or nearer to infinity
///           (2) nothing when there is none, or when `nearest` is nearer than `closest`
std::optional<Range> settingsToInfinity(double nearest, const Optics& optics, double closest);

/// An instant: which settings would do, and whether focal length and stop stand still.
struct FarSample {
  double t = 0;
  std::optional<Range> settings;
  bool still = true;
};

/// Samples `first` to `last` share `setting`, the nearest that does for all of them: it leaves the most room in front.
struct FarRun {
  std::size_t first = 0, last = 0;
  double setting = 0;
};

/// Runs of samples that one setting serves, from left to right, each as long as can be from where it starts, left out
/// where shorter than `leastSeconds`. A run starts and ends on a still sample: the tail of a zoom on its way to a wider
/// lens would cost room in front for the whole of it.
///
/// Requires  samples in order of time
/// Ensures   (1) settings of every sample of a run contain its setting
///           (2) runs do not overlap; none could go on to the right to a still sample
/// Cost      linear, times the samples in leastSeconds
std::vector<FarRun> farRuns(const std::vector<FarSample>& samples, double leastSeconds);

}  // namespace wend::optics
