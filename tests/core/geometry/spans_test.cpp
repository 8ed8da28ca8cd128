#include "core/geometry/spans.h"

#include <gtest/gtest.h>

#include <random>

namespace wend::geometry {
namespace {

/// Spans on a grid of whole seconds, so that every instant k + 1/2 tells the sets apart.
Spans randomSpans(std::mt19937_64& random) {
  Spans spans;
  for (int k = 0; k < 6; ++k) {
    const double from = static_cast<double>(random() % 30);
    spans.push_back({from, from + static_cast<double>(random() % 6)});
  }
  return spans;
}

bool inAny(const Spans& spans, double t) {
  for (const Span& span : spans)
    if (span.contains(t)) return true;
  return false;
}

void expectTidy(const Spans& spans) {
  for (std::size_t i = 0; i < spans.size(); ++i) {
    EXPECT_LE(spans[i].from, spans[i].until);
    EXPECT_TRUE(i == 0 || spans[i].from > spans[i - 1].until);
  }
}

TEST(SpansWhere, EdgesHoldAndLieWithinAMillisecondOfTheTruth) {
  const auto holds = [](double t) { return std::sin(t) > 0.5; };
  const Spans spans = spansWhere({0, 14}, 0.25, holds);
  ASSERT_EQ(spans.size(), 3u);
  const double rise = std::numbers::pi / 6, fall = 5 * std::numbers::pi / 6, year = 2 * std::numbers::pi;
  for (int k = 0; k < 3; ++k) {
    const Span& span = spans[static_cast<std::size_t>(k)];
    EXPECT_TRUE(holds(span.from) && holds(span.until));
    EXPECT_NEAR(span.from, rise + k * year, 1e-3);
    if (k < 2) {
      EXPECT_NEAR(span.until, fall + k * year, 1e-3);
    }
  }
  EXPECT_EQ(spans[2].until, 14) << "sin 14 is 0.99: the third span is cut by the end of the take";
}

TEST(SpansWhere, AlwaysNeverAndTheEndsOfTheTake) {
  EXPECT_EQ(spansWhere({0, 10}, 3, [](double) { return true; }), (Spans{{0, 10}}));
  EXPECT_TRUE(spansWhere({0, 10}, 3, [](double) { return false; }).empty());
  EXPECT_EQ(spansWhere({0, 10}, 3, [](double t) { return t == 0 || t == 10; }), (Spans{{0, 0}, {10, 10}}));
  EXPECT_EQ(spansWhere({4, 4}, 1, [](double) { return true; }), (Spans{{4, 4}}));
}

TEST(SpansWhere, FindsARunSeenAtOneStepOnly) {
  const Spans spans = spansWhere({0, 10}, 1, [](double t) { return std::abs(t - 4) < 0.2; });
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_NEAR(spans[0].from, 3.8, 1e-3);
  EXPECT_NEAR(spans[0].until, 4.2, 1e-3);
}

TEST(Spans, OperationsAgreeWithMembershipInstantByInstant) {
  std::mt19937_64 random(20240611);
  for (int run = 0; run < 200; ++run) {
    const Spans rawA = randomSpans(random), rawB = randomSpans(random);
    const Spans a = tidy(rawA), b = tidy(rawB);
    Spans rawBoth = rawA;
    rawBoth.insert(rawBoth.end(), rawB.begin(), rawB.end());
    const Spans both = tidy(rawBoth), common = intersection(a, b);
    for (const Spans* list : {&a, &b, &both, &common}) expectTidy(*list);
    for (double t = -0.5; t < 40; t += 1) {
      EXPECT_EQ(contains(a, t), inAny(rawA, t)) << run;
      EXPECT_EQ(contains(both, t), inAny(rawA, t) || inAny(rawB, t)) << run;
      EXPECT_EQ(contains(common, t), inAny(rawA, t) && inAny(rawB, t)) << run;
    }
    EXPECT_NEAR(totalLength(a) + totalLength(b), totalLength(both) + totalLength(common), 1e-9) << run;
  }
}

TEST(Spans, TouchingSpansShareNothingButAnInstantInsideCounts) {
  EXPECT_TRUE(intersection({{0, 2}}, {{2, 4}}).empty());
  EXPECT_EQ(intersection({{0, 2}}, {{2, 2}}), (Spans{{2, 2}}));
  EXPECT_EQ(tidy({{2, 4}, {0, 2}, {5, 4}}), (Spans{{0, 4}}));
}

TEST(Spans, GrowingJoinsNeighboursAndShrinkingDropsTheShort) {
  EXPECT_EQ(grown({{1, 2}, {4, 5}}, 1, 1), (Spans{{0, 6}}));
  EXPECT_EQ(grown({{1, 2}, {4, 9}}, -1, -1), (Spans{{5, 8}}));
  EXPECT_EQ(grown({{10, 11}}, 2, 1), (Spans{{8, 12}}));
}

}  // namespace
}  // namespace wend::geometry
