#include "core/answers/shot_sizes.h"

#include <algorithm>

namespace wend::answers {

optics::ShotSizes sizesOf(const plan::Plan& plan) {
  optics::ShotSizes sizes = optics::usualShotSizes();
  for (const auto& [name, q] : plan.sizes) {
    const auto known = std::find_if(sizes.begin(), sizes.end(), [&](const auto& size) { return size.name == name; });
    if (known != sizes.end())
      known->q = q;
    else
      sizes.push_back({name, q});
  }
  std::stable_sort(sizes.begin(), sizes.end(), [](const auto& a, const auto& b) { return a.q > b.q; });
  return sizes;
}

}  // namespace wend::answers
