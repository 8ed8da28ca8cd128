// Slots: where a change would hide, against every start and length on a fine grid.
#include "core/pulls/slot.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace wend::pulls {
namespace {

using geometry::Span;

/// The largest margin of any span on a grid of `step`, tried one by one, each instant of it asked.
double bestByTrying(const std::vector<CoverSpan>& covers, const SlotQuestion& question, double end, double step) {
  double best = 0;
  const int n = static_cast<int>(std::lround(end / step));
  for (int from = 0; from <= n; ++from) {
    double least = std::numeric_limits<double>::infinity();
    for (int until = from; until <= n && (until - from) * step <= question.longest + 1e-9; ++until) {
      // Between the grid's instants as well: covers begin and end on it.
      least = std::min(least, rateAllowed(covers, question.axis, until * step));
      if (until > from) least = std::min(least, rateAllowed(covers, question.axis, (until - 0.5) * step));
      const bool free = std::any_of(question.free.begin(), question.free.end(), [&](const Span& span) {
        return span.from <= from * step + 1e-9 && span.until >= until * step - 1e-9;
      });
      const double seconds = (until - from) * step;
      if (!free || seconds < question.shortest - 1e-9 || least <= 0) continue;
      const double rate = middleRate(question.change, seconds, std::isinf(least) ? 0 : question.feather);
      if (rate <= least * (1 + 1e-12)) best = std::max(best, least / rate);
    }
  }
  return best;
}

TEST(SlotsFor, FindWhatTryingEverySpanFinds) {
  const unsigned seed = 11;
  std::mt19937_64 random(seed);
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  const double step = 0.25, end = 20;
  int found = 0, none = 0;
  for (int i = 0; i < 150; ++i) {
    std::vector<CoverSpan> covers;
    for (int k = 2 + below(5); k > 0; --k) {
      const double from = below(76) * step;
      covers.push_back({static_cast<CoverKind>(below(10)), {from, from + (1 + below(20)) * step}, 1, ""});
    }
    SlotQuestion question{.axis = below(2) ? Hidden::iris : Hidden::zoom};
    question.change = question.axis == Hidden::iris ? 0.25 * (1 + below(12)) : 4.0 * (1 + below(12));
    const double gap = (20 + below(20)) * step;
    question.free = {{0, gap}, {gap + 3, end}};
    question.near = below(20);
    question.longest = 2 + below(5);
    question.feather = below(2);
    const auto slots = slotsFor(covers, question);
    const double best = bestByTrying(covers, question, end, step);
    ASSERT_EQ(slots.empty(), best == 0) << "seed " << seed << " case " << i;
    slots.empty() ? ++none : ++found;
    if (slots.empty()) continue;
    if (std::isinf(best)) {
      EXPECT_TRUE(std::isinf(slots[0].margin()));
    } else {
      EXPECT_NEAR(slots[0].margin(), best, 1e-9) << "seed " << seed << " case " << i;
    }
    for (const auto& slot : slots)
      for (int k = 0; k <= 40; ++k)
        EXPECT_LE(slot.rate, rateAllowed(covers, question.axis, slot.span.from + slot.span.length() * k / 40) + 1e-9);
  }
  EXPECT_GT(found, 30);
  EXPECT_GT(none, 5);
}

TEST(SlotsFor, HideAZoomUnderAFastPan) {
  // 42 to 32 mm under 50 degrees a second for 2.5 s: 10.9 percent a second without feathers.
  const std::vector<CoverSpan> covers{{CoverKind::fastPan, {113, 115.5}, 49.6, ""}};
  SlotQuestion question{.axis = Hidden::zoom, .change = 100 * std::log(32.0 / 42), .free = {{100, 130}}, .near = 120};
  auto slots = slotsFor(covers, question);
  ASSERT_EQ(slots.size(), 1u);
  EXPECT_EQ(slots[0].span, (Span{113, 115.5}));
  EXPECT_NEAR(slots[0].rate, 10.88, 0.01);
  question.feather = 1;
  slots = slotsFor(covers, question);
  ASSERT_EQ(slots.size(), 1u);
  EXPECT_NEAR(slots[0].rate, 27.19 / 1.5, 0.01) << "two feathers of a second leave one and a half at full rate";
  question.change = 45;
  EXPECT_TRUE(slotsFor(covers, question).empty()) << "30 percent a second is over 25";
}

TEST(SlotsFor, LieAsNearAsMayBeAndDoNotOverlap) {
  const std::vector<CoverSpan> covers{{CoverKind::travel, {0, 30}, 1, ""}, {CoverKind::doorway, {10, 12}, 1, "D1"}};
  const auto slots = slotsFor(covers, {.axis = Hidden::iris, .change = 1, .free = {{0, 30}}, .near = 20, .longest = 4});
  ASSERT_EQ(slots.size(), 1u + 1u);
  EXPECT_EQ(slots[0].span, (Span{18, 22})) << "0.25 where 0.5 may be, which the doorway's 0.5 where 1 may be equals";
  EXPECT_EQ(slots[1].span, (Span{10, 12}));
}

}  // namespace
}  // namespace wend::pulls
