/// Stops: T-numbers as they are engraved, typed and read, in full stops and thirds.
///
/// Exact T-numbers are T = 2^(k/6), k counted in thirds of a stop from T1; engraved ones are rounded (5.6 for 5.657).
/// A typed number is taken as it stands; a typed third multiplies it by 2^(1/6). Engraved rounding is up to 0.09 stop
/// on full marks, so a distance in stops between typed numbers is a distance between what was typed; how far a ring has
/// to go from mark to mark is another question (stopsBetweenMarks).
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wend::units {

/// Plans hold stops from 0.5 to 128.
inline constexpr double kWidestStop = 0.5;
inline constexpr double kClosedStop = 128;

/// 2^(thirds/6): the exact T-number that many thirds of a stop from T1.
double exactStop(int thirds);

/// The nearest whole number of thirds from T1. Requires stop > 0.
int nearestThirds(double stop);

/// Stops from T1, in which an iris runs evenly, and back: 2 log2 T and 2^(stops/2). Requires tNumber > 0.
double stopsOf(double tNumber);
double tNumberOf(double stops);

/// Stops from one T-number to another, positive when closing: 2 log2(to / from). Requires both > 0.
double stopsBetween(double from, double to);

/// The same as the ring has it: numbers with one figure behind the point at most that lie within the rounding of
/// engraved thirds, 0.09 stop, and exact thirds stand for the marks, and between marks it is whole thirds. From T4 to
/// T6.3 it is 1 1/3. Requires both > 0.
double stopsBetweenMarks(double from, double to);

/// `stop` closed by that many stops, or opened where they are negative: stop x 2^(stops/2).
double closedBy(double stop, double stops);

/// "T5.6⅓": the nearest third under its engraved full stop. T6.3 prints so; beyond T0.5 and T128 the full stop is the
/// exact one, shortened: "T181". Requires stop > 0, finite.
std::string stopText(double stop);

/// "+1⅓", "-⅔", "0": a difference in stops to the nearest third. Requires finite.
std::string stopsText(double stops);

/// A typed stop: "5.6", "T5.6⅓", "t4 1/3", "2,8 2/3", "6.3".
///
/// Ensures   (1) a third multiplies by 2^(1/6), two thirds by 2^(1/3); (2) reading a printed stop and printing it gives
///           the same text, for every third from T0.5 to T128
/// Fails     bad-stop for anything else; out-of-range outside 0.5 to 128
base::Result<double> stopFrom(std::string_view text);

}  // namespace wend::units
