#include "core/light/photometry.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "core/base/text.h"
#include "core/geometry/point.h"

namespace wend::light {
namespace {

using base::Problem;

bool increases(const std::vector<double>& angles) {
  return std::adjacent_find(angles.begin(), angles.end(), [](double a, double b) { return !(a < b); }) == angles.end();
}

bool meansASymmetry(const std::vector<double>& h) {
  if (h.empty()) return false;
  if (h.size() == 1) return h.front() == 0;
  if (h.front() == 90) return h.back() == 270;
  return h.front() == 0 && (h.back() == 90 || h.back() == 180 || h.back() == 360);
}

/// What the angles of a type must be.
struct AngleRule {
  double least, most;  ///< vertical
  const char* vertical;
  const char* horizontal;
};

AngleRule ruleOf(PhotometryType type) {
  if (type == PhotometryType::c)
    return {0, 180, "two or more, increasing, within 0 to 180",
            "0 alone, or increasing over 0 to 90, 0 to 180, 90 to 270 or 0 to 360"};
  return {-90, 90, "two or more, increasing, within -90 to 90",
          "two or more, increasing within -90 to 90, from 0 or from below"};
}

bool spansASide(const std::vector<double>& h) {
  return h.size() >= 2 && h.front() >= -90 && h.front() <= 0 && h.back() <= 90;
}

base::Problems wrongAngles(const std::vector<double>& v, const std::vector<double>& h, PhotometryType type) {
  const AngleRule rule = ruleOf(type);
  base::Problems problems;
  if (v.size() < 2 || !increases(v) || v.front() < rule.least || v.back() > rule.most)
    problems.push_back({"photometry-angles", "vertical angles", std::to_string(v.size()) + " angles", rule.vertical,
                        "export the file again from where it came"});
  const bool ranged = type == PhotometryType::c ? meansASymmetry(h) : spansASide(h);
  if (h.empty() || !increases(h) || !ranged)
    problems.push_back({"photometry-angles", "horizontal angles",
                        h.empty() ? "none" : base::shortest(h.front()) + " to " + base::shortest(h.back()),
                        rule.horizontal, "export the file again from where it came"});
  return problems;
}

bool isATable(const std::vector<std::vector<double>>& rows, std::size_t count, std::size_t width) {
  return rows.size() == count && std::all_of(rows.begin(), rows.end(), [width](const auto& row) {
           return row.size() == width &&
                  std::all_of(row.begin(), row.end(), [](double c) { return std::isfinite(c) && c >= 0; });
         });
}

/// Any horizontal angle, brought into the range that the table covers.
double folded(double angle, const std::vector<double>& range) {
  const double whole = std::fmod(std::fmod(angle, 360) + 360, 360);
  if (range.size() == 1) return 0;
  if (range.back() == 360) return whole;
  if (range.front() == 90) return whole > 270 ? 540 - whole : whole < 90 ? 180 - whole : whole;
  const double half = whole > 180 ? 360 - whole : whole;
  return range.back() == 90 && half > 90 ? 180 - half : half;
}

/// Between which two entries a value lies, and how far on from the first.
struct Between {
  std::size_t low = 0, high = 0;
  double share = 0;
};
Between between(const std::vector<double>& angles, double angle) {
  if (angles.size() == 1) return {};
  const auto above = std::upper_bound(angles.begin() + 1, angles.end() - 1, angle);
  const auto high = static_cast<std::size_t>(above - angles.begin());
  return {high - 1, high, (angle - angles[high - 1]) / (angles[high] - angles[high - 1])};
}

/// The integral of a value that goes linearly from `from` at a to `until` at b, times the sine. Angles in radians.
double linearTimesSine(double a, double b, double from, double until) {
  const double slope = (until - from) / (b - a);
  return from * std::cos(a) - until * std::cos(b) + slope * (std::sin(b) - std::sin(a));
}

/// The same times the cosine.
double linearTimesCosine(double a, double b, double from, double until) {
  const double slope = (until - from) / (b - a);
  return until * std::sin(b) - from * std::sin(a) + slope * (std::cos(b) - std::cos(a));
}

double linear(double a, double b, double from, double until) {
  return (b - a) * (from + until) / 2;
}

/// The integral over all of a course of angles, given in degrees, piece by piece.
template <class Piece>
double integral(const std::vector<double>& angles, const std::vector<double>& values, Piece piece) {
  double sum = 0;
  for (std::size_t i = 1; i < angles.size(); ++i)
    sum += piece(geometry::radians(angles[i - 1]), geometry::radians(angles[i]), values[i - 1], values[i]);
  return sum;
}

/// The angles under which a table of type A or B has a direction given by those of type C.
struct TableAngles {
  double vertical = 0, horizontal = 0;
};
TableAngles anglesIn(PhotometryType type, double vertical, double horizontal) {
  const double v = geometry::radians(vertical), h = geometry::radians(horizontal);
  const double right = -std::sin(v) * std::sin(h), up = std::sin(v) * std::cos(h), ahead = std::cos(v);
  const auto poleward = [](double share) { return geometry::degrees(std::asin(std::clamp(share, -1.0, 1.0))); };
  if (type == PhotometryType::b) return {geometry::degrees(std::atan2(up, ahead)), poleward(right)};
  return {poleward(up), geometry::degrees(std::atan2(right, ahead))};
}

/// Rounding at the edge of a table is not beyond it.
bool within(const std::vector<double>& angles, double& angle) {
  constexpr double kRounding = 1e-9;  // degrees
  if (angle < angles.front() - kRounding || angle > angles.back() + kRounding) return false;
  angle = std::clamp(angle, angles.front(), angles.back());
  return true;
}

}  // namespace

base::Result<Photometry> Photometry::of(std::vector<double> vertical, std::vector<double> horizontal,
                                        std::vector<std::vector<double>> candela, PhotometryType type) {
  base::Problems problems = wrongAngles(vertical, horizontal, type);
  if (!isATable(candela, horizontal.size(), vertical.size()))
    problems.push_back({"photometry-table", "candela values", std::to_string(candela.size()) + " rows",
                        "a row of finite values, 0 or more, for each of " + std::to_string(horizontal.size()) +
                            " horizontal angles, with " + std::to_string(vertical.size()) + " values each",
                        "check the counts in the file against its tables"});
  if (!problems.empty()) return problems;
  Photometry photometry;
  photometry.type_ = type;
  photometry.vertical_ = std::move(vertical);
  photometry.horizontal_ = std::move(horizontal);
  photometry.candela_ = std::move(candela);
  return photometry;
}

double Photometry::candelaAt(double vertical, double horizontal) const {
  if (ownPlanes()) {
    if (vertical < vertical_.front() || vertical > vertical_.back()) return 0;
    return valueAt(vertical, folded(horizontal, horizontal_));
  }
  TableAngles at = anglesIn(type_, vertical, horizontal);
  if (horizontal_.front() == 0) at.horizontal = std::abs(at.horizontal);
  if (!within(vertical_, at.vertical) || !within(horizontal_, at.horizontal)) return 0;
  return valueAt(at.vertical, at.horizontal);
}

/// Of the table's own angles, in their range.
double Photometry::valueAt(double vertical, double horizontal) const {
  const Between h = between(horizontal_, horizontal), v = between(vertical_, vertical);
  const auto along = [&](const std::vector<double>& row) { return geometry::lerp(row[v.low], row[v.high], v.share); };
  return geometry::lerp(along(candela_[h.low]), along(candela_[h.high]), h.share);
}

double Photometry::totalFlux() const {
  // What a step of either angle covers of the sphere: sin v in type C, cos V in type A, cos H in type B.
  const auto row = type_ == PhotometryType::c   ? linearTimesSine
                   : type_ == PhotometryType::a ? linearTimesCosine
                                                : linear;
  std::vector<double> rows;
  for (const auto& values : candela_) rows.push_back(integral(vertical_, values, row));
  if (!ownPlanes()) {
    const double sides = horizontal_.front() == 0 ? 2 : 1;
    return sides * integral(horizontal_, rows, type_ == PhotometryType::b ? linearTimesCosine : linear);
  }
  const double round = 2 * std::numbers::pi;
  if (horizontal_.size() == 1) return round * rows.front();
  return round * integral(horizontal_, rows, linear) / geometry::radians(horizontal_.back() - horizontal_.front());
}

double Photometry::peak() const {
  double most = 0;
  for (const auto& row : candela_) most = std::max(most, *std::max_element(row.begin(), row.end()));
  return most;
}

/// The largest vertical angle at that horizontal one with at least `level` candela; 0 when there is none.
double Photometry::outermost(double level, double horizontal) const {
  if (!ownPlanes()) {
    for (int tenths = 1800; tenths > 0; --tenths)
      if (candelaAt(tenths / 10.0, horizontal) >= level) return tenths / 10.0;
    return 0;
  }
  for (std::size_t i = vertical_.size(); i-- > 0;) {
    const double here = candelaAt(vertical_[i], horizontal);
    if (here < level) continue;
    if (i + 1 == vertical_.size()) return vertical_[i];
    const double next = candelaAt(vertical_[i + 1], horizontal);
    return geometry::lerp(vertical_[i], vertical_[i + 1], (here - level) / (here - next));
  }
  return 0;
}

double Photometry::spread(double share, double plane) const {
  const double level = share * peak();
  if (level <= 0) return 0;
  return outermost(level, plane) + outermost(level, plane + 180);
}

}  // namespace wend::light
