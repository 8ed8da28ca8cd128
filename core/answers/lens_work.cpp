#include "core/answers/lens_work.h"

#include <algorithm>
#include <cctype>

#include "core/plan/holders.h"
#include "core/snags/stretch.h"

namespace wend::answers {

using snags::LensWork;
using snags::Move;

namespace {

bool holdsWord(std::string text, const std::string& word) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text.find(word) != std::string::npos;
}

std::string byRole(const plan::Plan& plan, const std::vector<const char*>& words) {
  for (const char* word : words)
    for (const auto& crew : plan.crew)
      if (holdsWord(crew.role, word)) return crew.id.text();
  return {};
}

bool exact(const Move& move) {
  return move.axis == Move::Axis::focus || move.peakDegPerSecond >= kBriskDegrees ||
         move.peakStopsPerSecond >= kBriskStops || move.peakPercentPerSecond >= kBriskPercent;
}

pulls::AxisMove workOf(const Move& move) {
  return {static_cast<std::size_t>(move.axis), {move.from, move.until}, move.peakDegPerSecond, exact(move)};
}

int handsIn(const pulls::Workload& load, const Move& move) {
  int most = 1;
  for (const auto& stretch : load.stretches)
    if (stretch.span.from < move.until && stretch.span.until > move.from) most = std::max(most, stretch.hands);
  return most;
}

}  // namespace

std::string holderOf(const plan::Plan& plan, Move::Axis axis, double t) {
  const std::string handed = plan::holderAt(plan::holdersOf(plan, snags::wordOf(axis)), t);
  if (!handed.empty()) return handed;
  if (axis == Move::Axis::focus) return byRole(plan, {"focus", "first assistant camera"});
  const std::string own = byRole(plan, {snags::wordOf(axis)});
  if (!own.empty()) return own;
  return holderOf(plan, axis == Move::Axis::density ? Move::Axis::iris : Move::Axis::focus, t);
}

std::vector<LensWork> lensWork(const plan::Plan& plan, std::vector<Move>& moves) {
  std::vector<LensWork> work;
  std::vector<std::vector<pulls::AxisMove>> own;
  std::vector<std::size_t> whose;
  for (const Move& move : moves) {
    const std::string who = holderOf(plan, move.axis, move.from);
    const auto known = std::find_if(work.begin(), work.end(), [&](const LensWork& one) { return one.who == who; });
    whose.push_back(static_cast<std::size_t>(known - work.begin()));
    if (known == work.end()) work.push_back({who, {}, {}}), own.emplace_back();
    auto& axes = work[whose.back()].axes;
    if (std::find(axes.begin(), axes.end(), move.axis) == axes.end()) axes.push_back(move.axis);
    if (move.from < move.until) own[whose.back()].push_back(workOf(move));
  }
  for (std::size_t i = 0; i < work.size(); ++i) work[i].load = pulls::workloadOf(own[i]);
  for (std::size_t k = 0; k < moves.size(); ++k) moves[k].hands = handsIn(work[whose[k]].load, moves[k]);
  return work;
}

}  // namespace wend::answers
