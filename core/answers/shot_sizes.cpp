#include "core/answers/shot_sizes.h"

#include <algorithm>

#include "core/base/text.h"

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

base::Problems unknownSizes(const plan::Plan& plan) {
  base::Problems problems;
  const optics::ShotSizes sizes = sizesOf(plan);
  std::vector<std::string> names;
  std::string all;
  for (const auto& size : sizes) {
    names.push_back(size.name);
    all += (all.empty() ? "" : ", ") + size.name;
  }
  for (std::size_t i = 0; i < plan.zoom.keys.size(); ++i) {
    const std::string& asked = plan.zoom.keys[i].size;
    if (asked.empty() || optics::shotSizeNamed(asked, sizes)) continue;
    const auto nearest = base::nearestWord(asked, names);
    problems.push_back(
        {"unknown-word", "/zoom/keys/" + std::to_string(i) + "/size", "\"" + asked + "\"", "a shot size: " + all,
         nearest ? "did you mean " + *nearest + "?" : "choose another, or give it a number in \"sizes\""});
  }
  return problems;
}

}  // namespace wend::answers
