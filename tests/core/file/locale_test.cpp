/// A program whose locale writes commas reads and writes the same plans.
#include <gtest/gtest.h>

#include <clocale>

#include "tests/core/file/plan_text.h"

namespace wend::file {
namespace {

TEST(Locale, NeverReachesAPlan) {
  const plan::Plan before = planOf(kEveryKey);
  const std::string text = writePlan(before);
  int tried = 0;
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "tr_TR.UTF-8", "C.UTF-8"}) {
    if (std::setlocale(LC_ALL, name) == nullptr) continue;
    ++tried;
    EXPECT_TRUE(planOf(kEveryKey) == before) << name;
    EXPECT_EQ(writePlan(before), text) << name;
    const auto extra = readPlan(planWith(R"("zoomed": 1.250, "titel": [0.5])"));
    ASSERT_TRUE(extra.ok()) << name;
    EXPECT_EQ(extra->plan.extra[0].text, "1.250") << name;
    EXPECT_EQ(extra->plan.extra[1].text, "[0.5]") << name;
  }
  std::setlocale(LC_ALL, "C");
  EXPECT_GT(tried, 0) << "no locale but C is installed";
}

}  // namespace
}  // namespace wend::file
