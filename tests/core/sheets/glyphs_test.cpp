// Letters of the crew. That an operator is told by OP and a spotter by SP is common practice, no source.
#include "core/sheets/glyphs.h"

#include <gtest/gtest.h>

#include <set>

#include "core/plan/plan.h"

namespace wend::sheets {
namespace {

std::vector<std::string> labelsOf(const std::vector<std::string>& roles) {
  plan::Plan plan;
  for (std::size_t i = 0; i < roles.size(); ++i) {
    plan::Crew crew;
    crew.id = base::Id<plan::Crew>("c" + std::to_string(i));
    crew.role = roles[i];
    plan.crew.add(crew);
  }
  return crewLabels(plan);
}

using Labels = std::vector<std::string>;

TEST(CrewLabels, AreFromTheWordsOfTheRole) {
  EXPECT_EQ(labelsOf({"camera operator", "operator's spotter"}), (Labels{"OP", "SP"}));
  EXPECT_EQ(labelsOf({"operator's spotter", "camera operator"}), (Labels{"SP", "OP"}));
  EXPECT_EQ(labelsOf({"first assistant camera", "second assistant camera", "First Assistant Director"}),
            (Labels{"FA", "SA", "FD"}));
  EXPECT_EQ(labelsOf({"director of photography", "gaffer at the dimmer", "grip"}), (Labels{"DP", "GA", "GR"}));
}

TEST(CrewLabels, OfEqualRolesDifferAndStayTheirOwn) {
  EXPECT_EQ(labelsOf({"boom operator", "boom operator"}), (Labels{"BO", "BM"}));
}

TEST(CrewLabels, AreAllDifferentAndTwoLettersHoweverManyThereAre) {
  const auto labels = labelsOf(Labels(100, "grip"));
  EXPECT_EQ(std::set<std::string>(labels.begin(), labels.end()).size(), 100u);
  for (const auto& label : labels) {
    ASSERT_EQ(label.size(), 2u);
    EXPECT_TRUE(label[0] >= 'A' && label[0] <= 'Z' && label[1] >= 'A' && label[1] <= 'Z') << label;
  }
}

TEST(CrewLabels, AreThereForARoleWithoutALetterToo) {
  const auto labels = labelsOf({"", "\u6444\u5f71"});
  EXPECT_EQ(labels.size(), 2u);
  EXPECT_NE(labels[0], labels[1]);
}

}  // namespace
}  // namespace wend::sheets
