#include "core/plan/holders.h"

#include <algorithm>

namespace wend::plan {

std::vector<Holder> holdersOf(const Plan& plan, std::string_view what, std::string first) {
  struct Done {
    double at = 0;
    const Handover* handover = nullptr;
  };
  std::vector<Done> all;
  for (const Handover& handover : plan.handovers)
    if (handover.what == what) all.push_back({secondsOf(plan, handover.at) + handover.over, &handover});
  std::stable_sort(all.begin(), all.end(), [](const Done& a, const Done& b) { return a.at < b.at; });
  if (first.empty() && !all.empty()) first = all.front().handover->from;
  if (first.empty()) return {};
  std::vector<Holder> holders{{0, std::move(first)}};
  for (const Done& done : all)
    if (done.handover->from == holders.back().who) holders.push_back({done.at, done.handover->to});
  return holders;
}

std::string holderAt(const std::vector<Holder>& holders, double t) {
  std::string who;
  for (const Holder& holder : holders)
    if (who.empty() || holder.from <= t) who = holder.who;
  return who;
}

}  // namespace wend::plan
