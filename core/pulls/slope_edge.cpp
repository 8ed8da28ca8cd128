#include "core/pulls/slope_edge.h"

#include <algorithm>

namespace wend::pulls {
namespace {

constexpr double kOriginKept = 32;  // seconds

}  // namespace

SlopeEdge::SlopeEdge(double least, double most, double t, double value)
    : lines_{{least, value}, {most, value}}, origin_(t) {}

void SlopeEdge::moveOrigin(double t) {
  if (t - origin_ < kOriginKept) return;
  for (Line& line : lines_) line.value = at(line, t);
  origin_ = t;
}

/// The line between two neighbours that is at `value`, which lies between theirs.
SlopeEdge::Line SlopeEdge::between(const Line& a, const Line& b, double t, double value) const {
  const double va = at(a, t), vb = at(b, t);
  const double share = vb > va ? std::clamp((value - va) / (vb - va), 0.0, 1.0) : 0;
  return through(a.slope + (b.slope - a.slope) * share, t, value);
}

SlopeEdge::Line SlopeEdge::ofSlope(const Line& a, const Line& b, double slope) {
  const double share = b.slope > a.slope ? (slope - a.slope) / (b.slope - a.slope) : 0;
  return {slope, a.value + (b.value - a.value) * share};
}

void SlopeEdge::raise(double t, double value) {
  moveOrigin(t);
  if (lowestAt(t) >= value) return;
  const double least = leastSlope();
  Line under = lines_.front();
  while (!lines_.empty() && at(lines_.front(), t) < value) {
    under = lines_.front();
    lines_.pop_front();
  }
  lines_.push_front(lines_.empty() ? through(under.slope, t, value) : between(under, lines_.front(), t, value));
  lines_.push_front(through(least, t, value));
}

void SlopeEdge::lower(double t, double value) {
  moveOrigin(t);
  if (highestAt(t) <= value) return;
  const double most = mostSlope();
  Line over = lines_.back();
  while (!lines_.empty() && at(lines_.back(), t) > value) {
    over = lines_.back();
    lines_.pop_back();
  }
  lines_.push_back(lines_.empty() ? through(over.slope, t, value) : between(lines_.back(), over, t, value));
  lines_.push_back(through(most, t, value));
}

void SlopeEdge::dropBelow(double t, double value) {
  if (lowestAt(t) >= value) return;
  Line under = lines_.front();
  while (lines_.size() > 1 && at(lines_.front(), t) < value) {
    under = lines_.front();
    lines_.pop_front();
  }
  if (lowestAt(t) >= value) lines_.push_front(between(under, lines_.front(), t, value));
}

void SlopeEdge::dropAbove(double t, double value) {
  if (highestAt(t) <= value) return;
  Line over = lines_.back();
  while (lines_.size() > 1 && at(lines_.back(), t) > value) {
    over = lines_.back();
    lines_.pop_back();
  }
  if (highestAt(t) <= value) lines_.push_back(between(lines_.back(), over, t, value));
}

void SlopeEdge::keepSlopes(double least, double most) {
  Line outside = lines_.front();
  while (lines_.size() > 1 && leastSlope() < least) {
    outside = lines_.front();
    lines_.pop_front();
  }
  if (leastSlope() > least && outside.slope < least) lines_.push_front(ofSlope(outside, lines_.front(), least));
  outside = lines_.back();
  while (lines_.size() > 1 && mostSlope() > most) {
    outside = lines_.back();
    lines_.pop_back();
  }
  if (mostSlope() < most && outside.slope > most) lines_.push_back(ofSlope(lines_.back(), outside, most));
}

}  // namespace wend::pulls
