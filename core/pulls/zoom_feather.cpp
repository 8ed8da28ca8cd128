#include "core/pulls/zoom_feather.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::pulls {

std::vector<std::size_t> reversals(const std::vector<Move>& moves, double apart) {
  std::vector<std::size_t> found;
  for (std::size_t i = 1; i < moves.size(); ++i) {
    const double before = moves[i - 1].valueAfter - moves[i - 1].valueBefore;
    const double now = moves[i].valueAfter - moves[i].valueBefore;
    if (before * now < 0 && moves[i].from - moves[i - 1].until < apart) found.push_back(i);
  }
  return found;
}

}  // namespace wend::pulls
