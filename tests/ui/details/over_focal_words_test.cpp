#include "ui/details/over_focal_words.h"

#include <gtest/gtest.h>

namespace wend::ui {
namespace {

const plan::OverFocal kRows{std::vector<plan::FocalValue>{{24, 0.8}, {70.5, 0.655}}};

TEST(OverFocalWords, ReadAsTheyAreShown) {
  EXPECT_EQ(overFocalText(kRows, 100), "80 at 24, 65.5 at 70.5");
  EXPECT_EQ(*overFocalFrom("80 at 24, 65.5 at 70.5", 100), kRows);
  EXPECT_EQ(overFocalText(plan::OverFocal(0.07), 100), "7") << "not 7.000000000000001";
  EXPECT_EQ(*overFocalFrom(" 7 ", 100), plan::OverFocal(0.07));
  EXPECT_EQ(*overFocalFrom("-6.5 at 55", 1000), plan::OverFocal({{55, -0.0065}}));
}

TEST(OverFocalWords, PutRowsInOrder) {
  EXPECT_EQ(*overFocalFrom("65.5 at 70.5,80at24", 100), kRows);
}

TEST(OverFocalWords, NameThePartThatCannotBeRead) {
  for (const char* text : {"80 at 24, 65", "80 at 24, x at 70", "80 at 24,", "", "80 at", "80 at 24 mm"}) {
    const auto read = overFocalFrom(text, 100);
    ASSERT_FALSE(read.ok()) << text;
    EXPECT_EQ(read.problems()[0].code, "bad-over-zoom") << text;
  }
  EXPECT_NE(overFocalFrom("80 at 24, 65", 100).problems()[0].found.find("\"65\""), std::string::npos);
}

}  // namespace
}  // namespace wend::ui
