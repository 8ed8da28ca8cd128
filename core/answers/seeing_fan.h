/// From where a point of space is seen, looked for in fans of rays so that many places can be asked about at once.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <vector>

#include "core/answers/take.h"
#include "core/base/cancel.h"
#include "core/crew/ground_time.h"

namespace wend::answers {

/// Where somebody's eyes, so high over the floor beneath the point, see a point of space; along rays half a degree
/// apart, a place between two being seen from when it is along both.
class SeeingFan {
 public:
  SeeingFan(const Take& take, double t, Point3 target, double eyes, double reach);
  bool sees(Point eye) const;

 private:
  static constexpr int kRays = 720;
  bool sees(int ray, double metres) const;

  Point foot_;
  std::array<std::vector<geometry::Span>, kRays> rays_;
};

/// Whether a place serves at an instant; empty where every place does.
using Serves = std::function<bool(Point)>;

/// Yes where the cell's centre serves at both ends of the step, and at all steps outside `steps`.
/// Fails     when cancelled: nothing.
std::optional<crew::CellTimes> servedThrough(const std::function<Serves(double t)>& at, crew::Steps steps,
                                             const geometry::Grid& grid, const crew::StepClock& clock,
                                             const base::Cancel& cancel);

}  // namespace wend::answers
