#include "core/motion/track.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/geometry/tolerance.h"
#include "core/motion/pointer.h"

namespace wend::motion {
namespace {

using base::fixed;

void findOutOfOrder(const std::vector<TrackMark>& marks, base::Problems& problems) {
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (marks[i].until < marks[i].at)
      problems.push_back({"marks-out-of-order", pointer(i, "/until"), fixed(marks[i].until, 3) + " s",
                          "no earlier than " + fixed(marks[i].at, 3) + " s, when it is reached",
                          "Give the mark a later time to leave, or none."});
    if (i > 0 && marks[i].at < marks[i - 1].until)
      problems.push_back({"marks-out-of-order", pointer(i, "/at"), fixed(marks[i].at, 3) + " s",
                          "no earlier than " + fixed(marks[i - 1].until, 3) + " s, when the mark before is left",
                          "Put the marks in order of time."});
  }
}

void findHurry(const std::vector<TrackMark>& marks, const std::vector<geometry::Curve>& ways,
               base::Problems& problems) {
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const bool moves = ways[i].length() > 0 || std::abs(marks[i + 1].height - marks[i].height) >= geometry::kHold;
    if (moves && marks[i + 1].at <= marks[i].until)
      problems.push_back({"no-time-to-travel", pointer(i + 1, "/at"),
                          fixed(ways[i].length(), 3) + " m at once, at " + fixed(marks[i + 1].at, 3) + " s",
                          "a time after the mark before is left", "Give the leg some time, or the marks one place."});
  }
}

}  // namespace

base::Result<Track> trackThrough(std::vector<TrackMark> marks) {
  if (marks.empty())
    return base::Problem{"no-marks", "", "no mark", "one mark or more", "Place the first mark on the plan."};
  const auto ways = waysBetween(marks);
  if (!ways) return ways.problems();
  base::Problems problems;
  findOutOfOrder(marks, problems);
  if (problems.empty()) findHurry(marks, *ways, problems);
  if (!problems.empty()) return problems;
  Track track;
  track.marks_ = std::move(marks);
  double before = 0;
  for (std::size_t i = 0; i < ways->size(); ++i) {
    const double metres = (*ways)[i].length();
    track.legs_.push_back({(*ways)[i], {}, before});
    const Span time{track.marks_[i].until, track.marks_[i + 1].at};
    track.figures_.push_back({time, metres, metres > 0 ? metres / time.length() : 0, 0, metres == 0});
    before += metres;
  }
  track.addTimes();
  return track;
}

double Track::slopeAtMark(std::size_t mark) const {
  if (mark == 0 || mark == legs_.size() || marks_[mark].until > marks_[mark].at) return 0;
  const LegFigures &before = figures_[mark - 1], &after = figures_[mark];
  if (before.hold || after.hold) return 0;
  return geometry::harmonicSlope(before.time.length(), before.meanSpeed, after.time.length(), after.meanSpeed);
}

void Track::addTimes() {
  for (std::size_t i = 0; i < legs_.size(); ++i) {
    LegFigures& leg = figures_[i];
    if (leg.hold) continue;
    const bool eased = marks_[i].leg.eased;
    legs_[i].metres = {leg.time.from,
                       leg.time.until,
                       0,
                       leg.length,
                       eased ? slopeAtMark(i) : leg.meanSpeed,
                       eased ? slopeAtMark(i + 1) : leg.meanSpeed};
    leg.peakSpeed = eased ? legs_[i].metres.steepest(leg.time.from, leg.time.until) : leg.meanSpeed;
  }
}

std::size_t Track::markAt(double t) const {
  const auto after =
      std::upper_bound(marks_.begin() + 1, marks_.end(), t, [](double v, const TrackMark& m) { return v < m.at; });
  return static_cast<std::size_t>(after - marks_.begin()) - 1;
}

double Track::metresOnLeg(std::size_t leg, double t) const {
  return std::clamp(legs_[leg].metres.value(t), 0.0, figures_[leg].length);
}

double Track::shareOfLeg(std::size_t leg, double t) const {
  const LegFigures& figures = figures_[leg];
  if (!figures.hold) return metresOnLeg(leg, t) / figures.length;
  const double share = (t - figures.time.from) / figures.time.length();
  return marks_[leg].leg.eased ? geometry::smoothstep(share) : share;
}

Progress Track::progress(double t) const {
  const std::size_t mark = markAt(t);
  return {mark, onLeg(mark, t) ? shareOfLeg(mark, t) : 0};
}

std::optional<std::size_t> Track::legAt(double t) const {
  const std::size_t mark = markAt(t);
  return onLeg(mark, t) ? std::optional(mark) : std::nullopt;
}

Point Track::place(double t) const {
  const std::size_t mark = markAt(t);
  if (!onLeg(mark, t)) return marks_[mark].pos;
  if (figures_[mark].hold) return lerp(marks_[mark].pos, marks_[mark + 1].pos, shareOfLeg(mark, t));
  return legs_[mark].way.place(metresOnLeg(mark, t));
}

double Track::height(double t) const {
  const Progress on = progress(t);
  if (on.share == 0) return marks_[on.mark].height;
  return geometry::lerp(marks_[on.mark].height, marks_[on.mark + 1].height, on.share);
}

double Track::speed(double t) const {
  const std::size_t mark = markAt(t);
  if (!onLeg(mark, t) || figures_[mark].hold) return 0;
  return marks_[mark].leg.eased ? std::max(0.0, legs_[mark].metres.slope(t)) : figures_[mark].meanSpeed;
}

std::optional<Vec> Track::travelDirection(double t) const {
  for (std::size_t i = std::min(markAt(t) + 1, legs_.size()); i-- > 0;) {
    if (figures_[i].hold || t < figures_[i].time.from) continue;
    return legs_[i].way.heading(t < figures_[i].time.until ? metresOnLeg(i, t) : figures_[i].length);
  }
  for (std::size_t i = 0; i < legs_.size(); ++i)
    if (!figures_[i].hold) return legs_[i].way.heading(0);
  return std::nullopt;
}

double Track::totalLength() const {
  return legs_.empty() ? 0 : legs_.back().startsAt + figures_.back().length;
}

double Track::peakSpeed(Span time) const {
  double peak = 0;
  for (std::size_t i = markAt(time.from); i < legs_.size() && figures_[i].time.from <= time.until; ++i) {
    const double a = std::max(time.from, figures_[i].time.from), b = std::min(time.until, figures_[i].time.until);
    if (figures_[i].hold || a > b) continue;
    peak = std::max(peak, marks_[i].leg.eased ? legs_[i].metres.steepest(a, b) : figures_[i].meanSpeed);
  }
  return peak;
}

std::vector<PathPoint> Track::path(double tolerance) const {
  std::vector<PathPoint> points;
  for (std::size_t i = 0; i < marks_.size(); ++i) {
    const TrackMark& mark = marks_[i];
    points.push_back({mark.at, mark.pos, mark.height});
    if (mark.until > mark.at) points.push_back({mark.until, mark.pos, mark.height});
    if (i == legs_.size() || figures_[i].hold) continue;
    const std::vector<geometry::CurvePoint> way = legs_[i].way.polyline(tolerance);
    for (std::size_t k = 1; k + 1 < way.size(); ++k) {
      const double height = geometry::lerp(mark.height, marks_[i + 1].height, way[k].s / figures_[i].length);
      points.push_back({legs_[i].metres.inverse(way[k].s), way[k].place, height});
    }
  }
  return points;
}

}  // namespace wend::motion
