#include "core/sheets/need_state.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/text.h"
#include "core/crew/boom.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using base::fixed;
using snags::Evidence;

namespace {

/// Samples that were known, and those that failed.
struct Tally {
  std::size_t known = 0, failed = 0;
  double first = 0;

  void add(double t, bool fails) {
    ++known;
    if (fails && failed++ == 0) first = t;
  }
  std::string words(double step) const {
    if (failed == 0) return "met";
    return "not met for " + fixed(static_cast<double>(failed) * step, 1) + " s, first at " + units::takeTimeText(first);
  }
};

std::string decibels(double value) {
  return fixed(std::abs(value), 0) + " dB";
}

}  // namespace

std::string linkState(const Evidence& evidence, const std::string& link, geometry::Span during) {
  Tally tally;
  std::optional<double> least;
  for (const auto& over : evidence.links) {
    if (over.id != link) continue;
    for (std::size_t i = 0; i < std::min(over.at.size(), evidence.samples.size()); ++i) {
      const double t = evidence.samples[i].time;
      if (!over.at[i] || !during.contains(t)) continue;
      const double margin = over.at[i]->margin;
      tally.add(t, margin < 0);
      least = std::min(least.value_or(margin), margin);
    }
  }
  if (!least) return "unknown: an end of it has no place";
  return tally.words(evidence.step) +
         (*least < 0 ? ", up to " + decibels(*least) + " short" : ", " + decibels(*least) + " to spare at least");
}

std::string poleState(const Evidence& evidence, const std::string& id, geometry::Span during) {
  const plan::Pole& pole = *evidence.plan->poles.find(id);
  Tally tally;
  double shortBy = 0, gap = 0;
  bool walled = false, spoken = false;
  for (const auto& line : evidence.boom) {
    if (line.pole != id) continue;
    for (const auto& at : line.at) {
      if (!during.contains(at.time)) continue;
      spoken = true;
      if (!at.reach || !at.gap) continue;
      const bool beyond = crew::beyond(*at.reach, pole.reach);
      tally.add(at.time, beyond || at.walled || crew::beyond(*at.gap, pole.gap[1]));
      if (beyond) shortBy = std::max(shortBy, *at.reach - pole.reach);
      walled = walled || at.walled;
      gap = std::max(gap, *at.gap);
    }
  }
  if (!spoken) return "met: nobody speaks";
  if (tally.known == 0) return "unknown: nobody who holds it has a place, or nothing is known of the frame";
  const auto length = [&](double metres) { return snags::lengthText(*evidence.plan, metres); };
  return tally.words(evidence.step) + (shortBy > 0 ? ", up to " + length(shortBy) + " short"
                                       : walled    ? ", the set stands in its way"
                                                   : ", " + length(gap) + " from the mouth at most");
}

}  // namespace wend::sheets
