/// Where no track stays inside a tube: the one that is least outside.
///
/// What is made least is the integral over time of how far the value lies outside the tube, in the axis' working
/// coordinate: at each sample that is not open max(lo - value, value - hi, 0), times the seconds the sample stands for,
/// half of the way to each neighbour. Where lo > hi that is (lo - hi) / 2 plus the distance from the middle. Between
/// samples the miss is not looked at: it is convex there, so the sum is never less than the integral of it.
///
/// The plain distance, not its square and not its share of the slack's width: a track that gives up little things
/// altogether and keeps the rest beats one that is a little soft throughout, which is how a puller chooses; and where
/// the slack is so thin that its width is mostly rounding, a share of it would drown all the rest.
///
/// Frame     that of the tube.
#pragma once

#include <vector>

#include "core/pulls/tube.h"

namespace wend::pulls {

/// Seconds sample i stands for; a microsecond at least, so that a lone one counts.
double secondsAt(const Tube& tube, std::size_t i);

/// How far outside the sample; 0 where it is open.
double missAt(const TubeSample& sample, double value);

/// The integral above of a track given by its value at every sample.
double missOf(const Tube& tube, const std::vector<double>& values);

/// The values at the samples from `from` to `until` of a track of least integral over them, at no more than `rate`; of
/// several one that rests where it can; kNowhere where nothing is asked. The rest of the tube is not looked at.
///
/// Method    values so far are worth a convex function of the last one, made of straight pieces: a sample adds two, the
///           way to the next shifts those that fall to the left and those that rise to the right. What is best last is
///           followed back.
/// Requires  times in order, rate > 0, from <= until < samples
/// Ensures   (1) no track at this rate has a lesser integral over these samples, to rounding
///           (2) steps at no more than the rate, to rounding
/// Cost      n log n
std::vector<double> leastMiss(const Tube& tube, std::size_t from, std::size_t until, double rate);

}  // namespace wend::pulls
