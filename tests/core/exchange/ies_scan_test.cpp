#include "core/exchange/ies_scan.h"

#include <gtest/gtest.h>

#include "core/base/text.h"

namespace wend::exchange {
namespace {

TEST(IesScan, CountsLinesWhateverEndsThem) {
  IesScan scan("a\r\nb\rc\n\nd e\n");
  for (const auto& [text, line] : {std::pair{"a", 1}, {"b", 2}, {"c", 3}, {"", 4}, {"d e", 5}}) {
    const auto piece = scan.line();
    ASSERT_TRUE(piece);
    EXPECT_EQ(piece->text, text);
    EXPECT_EQ(piece->line, line);
  }
  EXPECT_FALSE(scan.line());
}

TEST(IesScan, WordsArePartedByBlanksCommasAndLineEnds) {
  IesScan scan("first line\n 1,2\t3 ,\r\n\r\n4\x1a");
  EXPECT_EQ(scan.line()->text, "first line");
  for (const auto& [text, line] : {std::pair{"1", 2}, {"2", 2}, {"3", 2}, {"4", 4}}) {
    const auto piece = scan.word();
    ASSERT_TRUE(piece);
    EXPECT_EQ(piece->text, text);
    EXPECT_EQ(piece->line, line);
  }
  EXPECT_FALSE(scan.word());
  EXPECT_EQ(scan.lineNumber(), 4);
}

TEST(IesScan, PassesOverAMarkOfUtf8) {
  IesScan scan("\xEF\xBB\xBFx");
  EXPECT_EQ(scan.line()->text, "x");
  EXPECT_FALSE(IesScan("").word());
}

TEST(ShownText, IsAlwaysUtf8) {
  EXPECT_EQ(shownText("Gr\xFC\xDF\x65"), "Gr\xC3\xBC\xC3\x9F\x65");
  EXPECT_EQ(shownText("Gr\xC3\xBC\xC3\x9F\x65"), "Gr\xC3\xBC\xC3\x9F\x65");
  EXPECT_EQ(shownText(std::string_view("a\0b\x7F", 4)), "a?b?");
  EXPECT_EQ(shownText("abcdef", 3), "abc...");
  EXPECT_EQ(shownText("ab\xC3\xBC", 3), "ab...") << "a sign of two bytes is not cut through";
  EXPECT_TRUE(base::isUtf8(shownText("\xFF\xFE\x80")));
}

}  // namespace
}  // namespace wend::exchange
