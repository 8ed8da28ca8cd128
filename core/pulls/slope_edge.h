/// One edge of a set of straight lines in time, slope by slope: over a range of slopes, the value of the line of each
/// slope that lies furthest up, or furthest down. The value never falls as the slope rises.
///
/// Frame     seconds; values in an axis' working coordinate; slopes in value a second.
#pragma once

#include <deque>

namespace wend::pulls {

/// Straight in between a few lines it keeps. Time may only go on from call to call.
///
/// Ensures   (1) after raise no line lies below the value, after lower none above; a line beyond it is as it was
///           (2) what is cut are slopes, from the steep or the flat end; one line at least is always left
/// Cost      amortised constant a call
class SlopeEdge {
 public:
  /// Every line of a slope from `least` to `most` through `value` at `t`.
  SlopeEdge(double least, double most, double t, double value);

  double leastSlope() const { return lines_.front().slope; }
  double mostSlope() const { return lines_.back().slope; }
  /// Where the line of the least slope is at `t`, and that of the most.
  double lowestAt(double t) const { return at(lines_.front(), t); }
  double highestAt(double t) const { return at(lines_.back(), t); }

  /// Lines that lie lower at `t` give way to those through `value`.
  void raise(double t, double value);
  /// Lines that lie higher at `t` give way to those through `value`.
  void lower(double t, double value);
  /// Slopes whose line lies below `value` at `t` are dropped.
  void dropBelow(double t, double value);
  /// Slopes whose line lies above `value` at `t` are dropped.
  void dropAbove(double t, double value);
  /// Slopes outside the range are dropped.
  void keepSlopes(double least, double most);

 private:
  struct Line {
    double slope = 0, value = 0;  ///< value at origin_
  };

  double at(const Line& line, double t) const { return line.value + line.slope * (t - origin_); }
  Line through(double slope, double t, double value) const { return {slope, value - slope * (t - origin_)}; }
  Line between(const Line& a, const Line& b, double t, double value) const;
  static Line ofSlope(const Line& a, const Line& b, double slope);
  void moveOrigin(double t);

  std::deque<Line> lines_;  ///< by slope
  double origin_;           ///< moved along now and then, so that values keep their last digits
};

}  // namespace wend::pulls
