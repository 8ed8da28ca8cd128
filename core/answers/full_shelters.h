/// Shelters in which somebody has to stay while they are full, in words and as what would free a place.
///
/// Frame     seconds from the take's start.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/answers/routes.h"

namespace wend::answers {

struct FullShelter {
  std::string id;
  geometry::Span span;           ///< from the first instant to the last at which no place is left
  std::vector<std::size_t> who;  ///< of the crew, in it then, at the first such instant
};

/// Those that `member` needs to stay in and that others fill then: whose way is drawn and stands in it, and who of
/// `placed`, for whom a route is found, has to stay in it as well. Looked at every quarter of a second.
std::vector<FullShelter> fullShelters(const Take& take, std::size_t member, const std::vector<std::size_t>& placed);

/// "west is full 10.0–20.0 s: it holds 2, and grip and gaffer are in it"; one after another, no full stop at the end.
std::string fullWords(const plan::Plan& plan, const std::vector<FullShelter>& full);

/// What frees a place, each tried by `frees` in a plan changed so: the shelter holding one more, and one of `placed`
/// not staying there.
std::vector<Freeing> freedPlaces(const plan::Plan& plan, const std::vector<FullShelter>& full,
                                 const std::vector<std::size_t>& placed,
                                 const std::function<bool(const plan::Plan&)>& frees);

}  // namespace wend::answers
