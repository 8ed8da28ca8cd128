#include "core/light/pane.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/point.h"

namespace wend::light {

FaceReturns faceReturns(double incidence, double n) {
  const double outside = geometry::radians(std::clamp(std::abs(incidence), 0.0, 90.0));
  const double ci = std::cos(outside);
  const double sine = std::sin(outside) / n;
  const double ct = std::sqrt(1 - sine * sine);
  const double across = (ci - n * ct) / (ci + n * ct), within = (n * ci - ct) / (n * ci + ct);
  return {across * across, within * within};
}

double paneReflectance(double incidence, double n) {
  const auto bothFaces = [](double r) { return 2 * r / (1 + r); };
  const FaceReturns face = faceReturns(incidence, n);
  return (bothFaces(face.across) + bothFaces(face.within)) / 2;
}

std::optional<bool> actsAsMirror(double incidence, std::optional<double> nearStop, std::optional<double> farStop) {
  if (!nearStop || !farStop) return std::nullopt;
  const double r = paneReflectance(incidence);
  return r * *nearStop * *nearStop >= (1 - r) * *farStop * *farStop / 2;
}

double mirrorContrast(double incidence) {
  const double r = paneReflectance(incidence);
  return std::log2((1 - r) / (2 * r));
}

}  // namespace wend::light
