#include "core/plan/rig_balance.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::plan {

namespace {

constexpr double kGravity = 9.80665;

/// The course of the balance between two focal lengths: it bends at these only.
std::vector<FocalValue> bendsOf(const OverFocal& balance, double shortest, double longest) {
  std::vector<FocalValue> bends{{shortest, balance.at(shortest)}};
  for (const FocalValue& row : balance.rows)
    if (row.focal > shortest && row.focal < longest) bends.push_back(row);
  bends.push_back({longest, balance.at(longest)});
  return bends;
}

}  // namespace

std::optional<double> rigMass(const Rig& rig) {
  if (rig.items.empty()) return std::nullopt;
  double kg = 0;
  for (const RigItem& item : rig.items) kg += item.kg;
  return kg;
}

double balanceMoment(double kg, double metres) {
  return kg * kGravity * metres;
}

BestBalance bestBalance(const OverFocal& balance, double shortest, double longest) {
  WEND_CHECK(shortest > 0 && shortest <= longest);
  const auto bends = bendsOf(balance, shortest, longest);
  const auto [rear, fore] =
      std::minmax_element(bends.begin(), bends.end(), [](const auto& a, const auto& b) { return a.value < b.value; });
  const double middle = (rear->value + fore->value) / 2, most = (fore->value - rear->value) / 2;
  for (std::size_t i = 0; i + 1 < bends.size(); ++i) {
    const FocalValue &a = bends[i], &b = bends[i + 1];
    if ((a.value - middle) * (b.value - middle) > 0) continue;
    const double share = a.value == b.value ? 0 : (middle - a.value) / (b.value - a.value);
    return {a.focal * std::pow(b.focal / a.focal, share), most};
  }
  return {shortest, most};
}

}  // namespace wend::plan
