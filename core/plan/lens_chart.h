/// A lens as its owner measured it, on its own: what a chart shelf keeps and a plan may take over.
#pragma once

#include <string>

#include "core/plan/camera.h"

namespace wend::plan {

struct LensChart {
  Lens lens;
  std::string notes;  ///< who measured it, when, with what
  Extras extra;
  bool operator==(const LensChart&) const = default;
};

}  // namespace wend::plan
