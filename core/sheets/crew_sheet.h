/// Who stands where and walks when: the drawn routes held against what the lens sees.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/answers.h"

namespace wend::sheets {

struct StandOf {
  geometry::Point pos;
  std::string shelter;
  geometry::Span span;
};

struct WalkOf {
  geometry::Span span;
  std::vector<geometry::Point> path;
  std::string beat;  ///< the beat it is triggered on, empty before the first
  double plus = 0;
  std::optional<double> latestLeave, earliestArrive;
  double speed = 0;  ///< peak, m/s
};

struct BreakOf {
  geometry::Span span;
  geometry::Point pos;
  std::string why;  ///< "seen", "taken", "fast"
};

struct RouteOf {
  std::string id;
  std::string role;
  bool drawn = false;  ///< false: no route is drawn, and finding one is not done yet
  bool carried = false;
  bool feasible = false;  ///< no break; meaningful when drawn
  std::vector<StandOf> stands;
  std::vector<WalkOf> walks;
  std::vector<BreakOf> breaks;
};

std::vector<RouteOf> routesOf(const answers::Answers& answers);

}  // namespace wend::sheets
