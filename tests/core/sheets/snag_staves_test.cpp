#include "core/sheets/snag_staves.h"

#include <gtest/gtest.h>

#include <set>

#include "core/sheets/score_drawing.h"
#include "core/snags/rules.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

std::string staveFor(const std::string& rule, const std::string& who) {
  snags::Snag snag;
  snag.rule = rule;
  snag.who = who;
  return staveOf(snag);
}

TEST(SnagStaves, HaveAPlaceForEveryRule) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  std::set<std::string> staves;
  for (const auto& box : stavesOf(plan, ScoreView{})) staves.insert(box.name);
  for (const auto& rule : snags::rules()) {
    EXPECT_TRUE(staves.count(staveFor(rule.name, "ilse"))) << rule.name;
    // Only what is told of an axis of the lens may depend on whom it names.
    if (staveFor(rule.name, "ilse") == "snags") {
      EXPECT_TRUE(rule.name == "ramp-seen" || rule.name == "slack-unmet" || rule.name == "lens-limits") << rule.name;
    }
  }
}

TEST(SnagStaves, FollowTheAxisWhereARuleJudgesThemAll) {
  EXPECT_EQ(staveFor("ramp-seen", "zoom"), "zoom");
  EXPECT_EQ(staveFor("ramp-seen", "density"), "iris, faces");
  EXPECT_EQ(staveFor("slack-unmet", "focus"), "sharp");
  EXPECT_EQ(staveFor("lens-limits", "iris"), "iris, faces");
}

}  // namespace
}  // namespace wend::sheets
