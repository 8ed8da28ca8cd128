#include <algorithm>

#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// Focus hot from second 4 to 6, and an iris move.
Snags beside(double from, double until, double before, double after) {
  return with([&](Evidence& e) {
    e.plan = [&] {
      auto plan = std::make_shared<plan::Plan>(*e.plan);
      plan->lens->focal = {24, 85};
      return plan;
    }();
    for (auto& sample : e.samples)
      if (sample.time >= 4 - 1e-9 && sample.time <= 6 + 1e-9) sample.focus.warmth = 0.7;
    Move move;
    move.axis = Move::Axis::iris;
    move.from = from;
    move.until = until;
    move.valueBefore = before;
    move.valueAfter = after;
    e.moves = {move};
  });
}

bool opens(const Snags& snags) {
  return std::any_of(snags.begin(), snags.end(), [](const Snag& snag) { return snag.rule == "opens-at-hot-pull"; });
}

TEST(OpensAtHotPull, CountsWithinHalfASecondOfTheHotStretch) {
  EXPECT_TRUE(opens(beside(4.5, 5.5, 5.6, 4)));
  EXPECT_TRUE(opens(beside(2, 3.5, 5.6, 4)));
  EXPECT_FALSE(opens(beside(2, 3.4, 5.6, 4)));
  EXPECT_TRUE(opens(beside(6.5, 8, 5.6, 4)));
  EXPECT_FALSE(opens(beside(6.6, 8, 5.6, 4)));
}

TEST(OpensAtHotPull, LeavesAnIrisThatClosesAlone) {
  EXPECT_FALSE(opens(beside(4.5, 5.5, 4, 5.6)));
}

TEST(OpensAtHotPull, IsARiskWithBothStopsInItsWords) {
  const Snags snags = beside(4.5, 5.5, 5.6569, 4);
  const auto found =
      std::find_if(snags.begin(), snags.end(), [](const Snag& s) { return s.rule == "opens-at-hot-pull"; });
  ASSERT_NE(found, snags.end());
  EXPECT_EQ(found->severity, Severity::risks);
  EXPECT_EQ(found->key, "opens-at-hot-pull/iris//b1/1");
  EXPECT_NE(found->text.find("from T5.6 to T4 beside hot focus on ILSE"), std::string::npos) << found->text;
}

}  // namespace
}  // namespace wend::snags
