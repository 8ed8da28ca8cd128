#include "core/answers/shelter_at.h"

namespace wend::answers {

std::string shelterAt(const plan::Plan& plan, geometry::Point pos) {
  for (const auto& shelter : plan.shelters)
    if (geometry::distance(pos, shelter.pos) <= shelter.radius) return shelter.id.text();
  return "";
}

}  // namespace wend::answers
