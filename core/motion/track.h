/// Where somebody or something that goes from mark to mark is, and how fast, at any instant.
#pragma once

#include <optional>
#include <vector>

#include "core/geometry/monotone_cubic.h"
#include "core/motion/way.h"

namespace wend::motion {

using geometry::Span;
using geometry::Vec;

/// What a leg amounts to.
struct LegFigures {
  Span time;             ///< seconds: leaves the one mark, reaches the other
  double length = 0;     ///< metres over the floor
  double meanSpeed = 0;  ///< m/s
  double peakSpeed = 0;  ///< m/s: what a limit reads
  bool hold = false;     ///< does not travel: shorter than geometry::kHold
};

/// Between which marks: from mark `mark`, `share` of the way to the next one. On a mark share is 0.
struct Progress {
  std::size_t mark = 0;
  double share = 0;
};

/// A place of the drawn path and the instant it is passed.
struct PathPoint {
  double t = 0;
  Point place;
  double height = 0;
};

/// Motion from mark to mark.
///
/// Frame     plan metres and seconds from the take's start; speeds are over the floor, climbing apart.
/// Ensures   1. stands on a mark's place from `at` to `until`, then travels its leg, reaching the next at its `at`;
///           2. an even leg has constant speed. On an eased one metres against time are a monotone cubic: speed 0 at
///              every stop (the first and last mark, a mark stood on, a neighbour that is a hold), and at a mark passed
///              through the weighted harmonic mean of the mean speeds of the two legs (geometry::harmonicSlope). An
///              even neighbour counts with its mean speed and keeps it, so speed may jump where even meets eased;
///           3. place and height are continuous over the whole track; height is linear in the metres of a leg, and on
///              a hold in time, as a smoothstep when eased;
///           4. before the first mark not present (and place is the first mark's); after the last it stands there;
///           5. no speed exceeds the leg's peakSpeed, and some instant reaches it.
/// Error     as geometry::Curve. On a hold the up to 1 mm between its marks is crossed at a speed that reads 0.
/// Cost      logarithmic in the marks, plus that of geometry::Curve.
class Track {
 public:
  bool present(double t) const { return t >= marks_.front().at; }
  Point place(double t) const;
  double height(double t) const;
  geometry::Point3 position(double t) const { return at(place(t), height(t)); }

  double speed(double t) const;  ///< m/s; at the instant two legs meet, that of the later one

  /// The unit direction of travel; while standing the last one travelled, before the first move that of the first
  /// travelling leg. Nothing when the track never travels.
  std::optional<Vec> travelDirection(double t) const;

  /// The leg on the way at t, by the index of its first mark; nothing while standing on a mark.
  std::optional<std::size_t> legAt(double t) const;
  Progress progress(double t) const;

  const std::vector<TrackMark>& marks() const { return marks_; }
  /// One per pair of neighbouring marks.
  const std::vector<LegFigures>& legs() const { return figures_; }
  /// Metres along a leg against time, as a cubic. Requires a leg that travels.
  const geometry::Hermite& timing(std::size_t leg) const { return legs_[leg].metres; }
  double totalLength() const;         ///< metres over the floor, first mark to last
  double peakSpeed(Span time) const;  ///< the highest speed in a span, in closed form

  /// The path as a polyline within `tolerance` metres of the floor path, each place with its time; a mark that is
  /// stood on comes twice. Requires tolerance > 0.
  std::vector<PathPoint> path(double tolerance) const;

 private:
  friend base::Result<Track> trackThrough(std::vector<TrackMark> marks);
  struct Leg {
    geometry::Curve way;
    geometry::Hermite metres;  ///< against time
    double startsAt = 0;       ///< metres of the track before it
  };

  Track() = default;
  double slopeAtMark(std::size_t mark) const;
  void addTimes();
  std::size_t markAt(double t) const;
  bool onLeg(std::size_t mark, double t) const { return mark < legs_.size() && t >= marks_[mark].until; }
  double metresOnLeg(std::size_t leg, double t) const;
  double shareOfLeg(std::size_t leg, double t) const;

  std::vector<TrackMark> marks_;
  std::vector<Leg> legs_;
  std::vector<LegFigures> figures_;
};

/// The track through marks in order of time.
///
/// Fails     as waysBetween; "no-marks"; "marks-out-of-order" (`until` before `at`, or a mark before the one before it
///           is left); "no-time-to-travel" (a leg of no duration between different places or heights). Every one
///           found, `where` a pointer into the list ("/3/at").
base::Result<Track> trackThrough(std::vector<TrackMark> marks);

}  // namespace wend::motion
