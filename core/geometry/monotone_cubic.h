/// Curves through given values that never turn where the values do not: how a move gathers and loses speed, and how a
/// lens scale runs between its marks. Units are the caller's: a slope is y over x.
#pragma once

#include <optional>
#include <vector>

namespace wend::geometry {

/// One cubic between two knots, given by value and slope at both. x0 < x1.
struct Hermite {
  double x0 = 0, x1 = 1;
  double y0 = 0, y1 = 0;
  double slope0 = 0, slope1 = 0;

  double chord() const { return (y1 - y0) / (x1 - x0); }
  /// Requires x in [x0, x1].
  double value(double x) const;
  double slope(double x) const;
  /// The largest |slope| between a and b, in closed form. Requires x0 <= a <= b <= x1.
  double steepest(double a, double b) const;
  /// The x where the value is y, to the last few bits. Requires a monotone cubic and y between y0 and y1.
  double inverse(double y) const;
};

/// The slope where two chords meet, `chord0` over a width h0 and `chord1` over h1: 0 where they differ in sign or one
/// is 0, else their harmonic mean with the weights 2 h1 + h0 and h1 + 2 h0.
///
/// Ensures   never more than three times the flatter chord, so that the cubics on both sides stay monotone.
/// Requires  h0 > 0, h1 > 0.
/// Source    F. N. Fritsch, J. Butland, "A method for constructing local monotone piecewise cubic interpolants",
///           SIAM J. Sci. Stat. Comput. 5 (1984), 300-304.
double harmonicSlope(double h0, double chord0, double h1, double chord1);

/// The monotone cubic through knots (x, y).
///
/// Ensures   1. passes through every knot, with a continuous slope;
///           2. between two knots never leaves the range of their two values, so flat stays exactly flat;
///           3. at both ends takes the slope given, or else that of the end chord;
///           4. beyond the ends the end values hold.
/// Error     third order at best in the knots' distance, second beside turning points and ends.
class MonotoneCubic {
 public:
  /// Requires at least one knot, x strictly increasing, as many y, all finite; end slopes within 0 to 3 end chords.
  MonotoneCubic(std::vector<double> x, std::vector<double> y, std::optional<double> firstSlope = {},
                std::optional<double> lastSlope = {});

  double operator()(double x) const;
  /// 0 beyond the ends; at a knot the slope there.
  double slope(double x) const;
  /// The x where the curve is y; y outside the values gives the nearer end. Requires y strictly monotone in the knots.
  double inverse(double y) const;

  double firstX() const { return x_.front(); }
  double lastX() const { return x_.back(); }

 private:
  Hermite piece(std::size_t i) const;
  std::size_t pieceAt(double x) const;

  std::vector<double> x_, y_, slopes_;
};

}  // namespace wend::geometry
