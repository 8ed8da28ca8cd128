// Radio links between the people, the gear and the camera of a plan.
#include "core/answers/radio.h"
#include "core/answers/whole_take.h"

namespace wend::answers {

using namespace snags;

std::vector<LinkOver> linksOver(const Take& take, const std::vector<Instant>& samples) {
  std::vector<LinkOver> links;
  for (const auto& link : take.plan().links) links.push_back({link.id.text(), {}});
  if (links.empty()) return links;
  for (const auto& instant : samples) {
    const Radio radio(take, instant.time);
    for (std::size_t i = 0; i < links.size(); ++i) links[i].at.push_back(radio.over(take.plan().links[i]));
  }
  return links;
}

}  // namespace wend::answers
