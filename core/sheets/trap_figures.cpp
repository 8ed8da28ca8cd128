#include "core/sheets/trap_figures.h"

#include <algorithm>

namespace wend::sheets {

using namespace snags;

namespace {

/// The most of a line's values, where any is known.
template <class Value>
std::optional<double> mostOf(const BoomLine& line, Value value) {
  std::optional<double> most;
  for (const auto& at : line.at)
    if (const std::optional<double> one = value(at)) most = std::max(most.value_or(*one), *one);
  return most;
}

}  // namespace

std::optional<std::size_t> weakestOf(const LinkOver& link) {
  std::optional<std::size_t> least;
  for (std::size_t i = 0; i < link.at.size(); ++i)
    if (link.at[i] && (!least || link.at[i]->margin < link.at[*least]->margin)) least = i;
  return least;
}

std::optional<double> mostGapOf(const BoomLine& line) {
  return mostOf(line, [](const BoomAt& at) { return at.gap; });
}

std::optional<double> mostReachOf(const BoomLine& line) {
  return mostOf(line, [](const BoomAt& at) { return at.reach; });
}

std::optional<double> nearestLampOf(const BoomLine& line) {
  const auto most = mostOf(
      line, [](const BoomAt& at) { return at.lamp.empty() ? std::nullopt : std::optional<double>(-at.lampMetres); });
  return most ? std::optional<double>(-*most) : std::nullopt;
}

bool isWalled(const BoomLine& line) {
  return std::any_of(line.at.begin(), line.at.end(), [](const BoomAt& at) { return at.walled; });
}

}  // namespace wend::sheets
