#include "core/answers/whole_take.h"
namespace wend::answers {
std::optional<std::vector<snags::ThroughSight>> throughSights(const Take&, const base::Cancel&) {
  return std::vector<snags::ThroughSight>{};
}
}  // namespace wend::answers
