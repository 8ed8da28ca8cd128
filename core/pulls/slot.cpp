#include "core/pulls/slot.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/check.h"

namespace wend::pulls {

using geometry::Span;
using geometry::Spans;

namespace {

constexpr double kSame = 1e-9;

/// Where a change of that rate and no faster hides. Closed spans that meet in an instant are one.
Spans spansAllowing(const std::vector<CoverSpan>& covers, Hidden axis, double rate, const Spans& free) {
  if (rateUncovered(axis) >= rate) return free;
  Spans spans;
  for (const auto& cover : covers)
    if (rateUnder(cover.kind, axis) >= rate) spans.push_back(cover.span);
  return geometry::intersection(geometry::tidy(spans), free);
}

/// The best slot of one span in which `allowed` holds throughout: as long as may be, and as near as may be.
Slot slotIn(const Span& span, double allowed, const SlotQuestion& question) {
  const double seconds = std::min(span.length(), question.longest);
  const double from = std::clamp(question.near - seconds / 2, span.from, span.until - seconds);
  const double feather = std::isinf(allowed) ? 0 : question.feather;
  return {{from, from + seconds}, middleRate(question.change, seconds, feather), allowed};
}

double away(const Slot& slot, double near) {
  return std::abs((slot.span.from + slot.span.until) / 2 - near);
}

bool better(const Slot& a, const Slot& b, double near) {
  if (a.margin() != b.margin()) return a.margin() > b.margin();
  if (away(a, near) != away(b, near)) return away(a, near) < away(b, near);
  return a.span.from < b.span.from;
}

bool overlap(const Slot& a, const Slot& b) {
  return std::min(a.span.until, b.span.until) - std::max(a.span.from, b.span.from) > kSame;
}

}  // namespace

double middleRate(double change, double seconds, double feather) {
  if (feather > 0 && seconds < 2 * feather) return std::numeric_limits<double>::infinity();
  return std::abs(change) / (seconds - feather);
}

std::vector<Slot> slotsFor(const std::vector<CoverSpan>& covers, const SlotQuestion& question) {
  WEND_CHECK(question.change != 0 && question.shortest > 0 && question.shortest <= question.longest &&
             question.feather >= 0);
  std::set<double> levels{rateUncovered(question.axis)};
  for (const auto& cover : covers) levels.insert(rateUnder(cover.kind, question.axis));
  std::vector<Slot> all;
  for (const double level : levels) {
    for (const auto& span : spansAllowing(covers, question.axis, level, question.free)) {
      if (level <= 0 || span.length() < question.shortest - kSame) continue;
      const Slot slot = slotIn(span, level, question);
      if (slot.rate <= level) all.push_back(slot);
    }
  }
  std::stable_sort(all.begin(), all.end(), [&](const Slot& a, const Slot& b) { return better(a, b, question.near); });
  std::vector<Slot> kept;
  for (const auto& slot : all)
    if (std::none_of(kept.begin(), kept.end(), [&](const Slot& other) { return overlap(slot, other); }))
      kept.push_back(slot);
  return kept;
}

}  // namespace wend::pulls
