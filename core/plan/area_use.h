/// What an area of the floor is used as.
#pragma once

#include <algorithm>

#include "core/plan/set.h"

namespace wend::plan {

inline bool usedAs(const Area& area, AreaUse use) {
  return std::find(area.use.begin(), area.use.end(), use) != area.use.end();
}

}  // namespace wend::plan
