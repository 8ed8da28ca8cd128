/// The centripetal Catmull-Rom curve through given points: the line a smooth move draws over the floor.
///
/// Centripetal, because its knots grow with the square root of the chords: no piece has a cusp or crosses itself,
/// however uneven the points (uniform knots loop at a short chord between long ones, chordal knots swing wide).
/// Source    E. Catmull, R. Rom, "A class of local interpolating splines", in Computer Aided Geometric Design,
///           Academic Press 1974, 317-326; C. Yuksel, S. Schaefer, J. Keyser, "Parameterization and applications of
///           Catmull-Rom curves", Computer-Aided Design 43 (2011), 747-755.
#pragma once

#include <vector>

#include "core/geometry/point.h"

namespace wend::geometry {

/// A cubic between two points, with u from 0 to 1: P(u), from P(0) = from to P(1) = to, starting along `leaving` and
/// ending along `arriving` (dP/du at the two ends).
struct Cubic {
  Point from, to;
  Vec leaving, arriving;

  Point place(double u) const;
  Vec slope(double u) const;  ///< dP/du
  Vec bend(double u) const;   ///< d2P/du2
  /// Metres from P(a) to P(b), by Gauss-Legendre quadrature of five points over this stretch.
  double length(double a, double b) const;
};

/// The pieces of the curve, one between each two neighbours.
///
/// Ensures   1. passes through every point; direction and dP/dknot are continuous;
///           2. its two ends continue by the mirrored neighbour 2 P0 - P1, so that it starts along its first chord and
///              ends along its last, and two points give a straight line;
///           3. a piece depends on its two points and their two neighbours only.
/// Requires  two points or more, neighbours further apart than kTouch.
std::vector<Cubic> catmullRom(const std::vector<Point>& points);

}  // namespace wend::geometry
