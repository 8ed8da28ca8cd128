/// A property of a lens that may change along its zoom: transmission, breathing, balance.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

namespace wend::plan {

struct FocalValue {
  double focal = 0;  ///< mm
  double value = 0;  ///< in the unit of the property
  bool operator==(const FocalValue&) const = default;
};

/// One value for every focal length, or values at some of them.
///
/// Between two rows the value goes in a straight line over the logarithm of the focal length, so that half a zoom is
/// half way whichever end it is counted from; beyond the first and the last row it stays. How a real lens goes between
/// the focal lengths somebody measured is not known: a step, as where an iris starts to follow the zoom, needs two
/// rows.
///
/// Requires  rows strictly rising in focal length, all above 0 (the reader and the edits see to it).
/// Ensures   (1) at(row.focal) == row.value; (2) at() lies between the values of its two rows; (3) a plain number
///           converts, and is the same everywhere.
struct OverFocal {
  double everywhere = 0;         ///< counts while there are no rows; 0 otherwise
  std::vector<FocalValue> rows;  ///< mm and value

  // A number stands for itself everywhere; that it converts unasked is the point.
  OverFocal(double value = 0) : everywhere(value) {}
  explicit OverFocal(std::vector<FocalValue> values) : rows(std::move(values)) {}

  double at(double focal) const;
  bool constant() const { return rows.size() < 2; }
  bool operator==(const OverFocal&) const = default;
};

/// The first row whose focal length does not lie above the one before it, or the number of rows.
std::size_t firstNotRising(const std::vector<FocalValue>& rows);

}  // namespace wend::plan
