/// The samples, as tests read them.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "core/file/plan_reader.h"

namespace wend {

/// The plan of samples/<name>; throws where it has none.
inline plan::Plan samplePlan(const std::string& name) {
  std::ifstream in(WEND_SOURCE_DIR "/samples/" + name);
  std::ostringstream text;
  text << in.rdbuf();
  auto read = file::readPlan(text.str());
  if (!read) throw std::runtime_error(name + " is no plan");
  return std::move(read)->plan;
}

inline plan::PlanPtr sharedSample(const std::string& name) {
  return std::make_shared<const plan::Plan>(samplePlan(name));
}

}  // namespace wend
