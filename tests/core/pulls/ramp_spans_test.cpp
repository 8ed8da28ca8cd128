#include "core/pulls/ramp_spans.h"

#include <gtest/gtest.h>

namespace wend::pulls {
namespace {

TEST(RampSpans, CarryTheLeastThatIsAllowedBetweenTheirEnds) {
  const std::vector<CoverSpan> covers{{CoverKind::pan, {2, 4}, 30, ""}, {CoverKind::lightCue, {3, 6}, 1, "D1"}};
  RampQuestion question;
  question.starts = {1, 4};
  question.ends = {3, 7};
  question.step = 0.5;
  std::size_t looked = 0;
  for (const RampSpan& ramp : rampSpans(covers, question)) {
    EXPECT_GE(ramp.span.length(), 0.5);
    EXPECT_LE(ramp.span.length(), 6);
    const bool bare = ramp.span.from < 2 || ramp.span.until > 6.05, cue = ramp.span.from >= 3;
    EXPECT_EQ(ramp.allowed, bare ? 0 : cue ? 1 : 0.5) << ramp.span.from << " " << ramp.span.until;
    ++looked;
  }
  EXPECT_GT(looked, 40u);
}

TEST(RampSpans, AreNoneWhereNothingMayStartOrEnd) {
  RampQuestion question;
  question.starts = {4, 3};
  question.ends = {0, 9};
  EXPECT_TRUE(rampSpans({}, question).empty());
}

}  // namespace
}  // namespace wend::pulls
