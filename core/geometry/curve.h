/// A way over the floor, told by how far along it one is: straight runs, arcs and cubics in a row.
///
/// Frame     plan metres; `s` is metres from the start along the way.
/// Ensures   1. place(0) and place(length()) are the ends exactly; place is continuous;
///           2. |place(a) - place(b)| <= |a - b|, up to the errors below;
///           3. heading is a unit vector, at a corner that of the run that starts there.
/// Error     cubics: s and place agree within 10 micrometres over curves a few metres long, hairpins included (tested
///           against fine polylines). Arcs whose ends differ in radius by d: places are even in angle, so off even
///           distance by at most d / radius of the distance.
/// Cost      place and heading: logarithmic in the runs, and a few square roots on a cubic.
#pragma once

#include <cstddef>
#include <variant>
#include <vector>

#include "core/geometry/spline.h"

namespace wend::geometry {

/// Round a centre: radius and bearing (seen from the centre) go linearly from one end to the other. Sweep in degrees,
/// clockwise positive, any number of turns.
struct Arc {
  Point centre;
  double fromRadius = 0, toRadius = 0;  ///< > 0
  double fromBearing = 0, sweep = 0;

  Point place(double share) const;
  Vec heading(double share) const;  ///< unit; requires sweep not 0
  double length() const;
};

/// A place of a polyline drawn along a curve.
struct CurvePoint {
  double s = 0;
  Point place;
};

class Curve {
 public:
  /// A single place: length 0, heading north.
  Curve() : Curve(Point{}) {}
  explicit Curve(Point place);
  /// Straight through the points. Requires one point or more.
  static Curve through(const std::vector<Point>& points);
  static Curve along(const Arc& arc);
  /// Requires one piece or more, each starting where the one before ends.
  static Curve along(const std::vector<Cubic>& pieces);

  double length() const { return starts_.back(); }
  /// `s` outside [0, length()] gives the nearer end.
  Point place(double s) const;
  Vec heading(double s) const;

  /// Places along the curve, ends included, such that the straight line between two neighbours stays within
  /// `tolerance` metres of the curve, or a million to a run where that would take more. Requires tolerance > 0.
  std::vector<CurvePoint> polyline(double tolerance) const;

 private:
  struct Line {
    Point from, to;
  };
  /// A cubic with its metres at equal steps of u.
  struct Measured {
    Cubic cubic;
    std::vector<double> metres;
    double parameter(double s) const;
    double metresAt(double u) const;
  };
  using Run = std::variant<Line, Arc, Measured>;
  struct Spot {
    std::size_t run;
    double s;  ///< metres from the run's start
  };

  void append(Run run, double metres);
  Spot spot(double s) const;
  double runLength(std::size_t run) const { return starts_[run + 1] - starts_[run]; }

  Point start_;
  std::vector<Run> runs_;
  std::vector<double> starts_{0};  ///< of each run, and the end of the last
};

}  // namespace wend::geometry
