#include <gtest/gtest.h>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {

namespace {

TEST(TextTable, SetsWordsLeftAndNumbersRight) {
  TextTable table({"who", ">metres"});
  table.add({"ILSE", "1.20"});
  table.add({"TOM", "12.05"});
  EXPECT_EQ(table.text(),
            "who   metres\n"
            "ILSE    1.20\n"
            "TOM    12.05\n");
}

TEST(TextTable, CutsTheWidestWordsAndNeverANumber) {
  TextTable table({"a", ">n", "b"});
  const std::string number = "123456789.01";
  table.add({std::string(90, 'x'), number, std::string(20, 'y')});
  const std::string text = table.text();
  for (const auto& line : base::split(text, '\n')) EXPECT_LE(base::columns(line), 100U);
  EXPECT_NE(text.find(number), std::string::npos);
  EXPECT_NE(text.find("x\u2026"), std::string::npos);
  EXPECT_NE(text.find(std::string(20, 'y')), std::string::npos) << "the narrow column stays whole";
}

TEST(TextTable, CutsBetweenLetters) {
  TextTable table({"a"});
  std::string umlauts;
  for (int i = 0; i < 120; ++i) umlauts += "\u00e4";
  table.add({umlauts});
  EXPECT_TRUE(base::isUtf8(table.text()));
  EXPECT_NE(table.text().find("\u00e4\u2026\n"), std::string::npos);
}

TEST(TextTable, WrapsInsteadOfCuttingWhereAsked) {
  TextTable table({">n", "~words"});
  std::string words;
  for (int i = 0; i < 40; ++i) words += (i ? " word" : "word");
  table.add({"1", words});
  std::string back;
  for (const auto& line : base::split(table.text(), '\n')) {
    EXPECT_LE(base::columns(line), 100U);
    for (const auto& word : base::split(line, ' '))
      if (word == "word") back += (back.empty() ? "" : " ") + word;
  }
  EXPECT_EQ(back, words);
}

TEST(TextTable, WritesCsvWholeByRfc4180) {
  TextTable table({"who", ">n", "~says"});
  table.add({"a, \"b\"", "-1.5", std::string(150, 'w')});
  table.add({"=SUM(A1)", "2", ""});
  EXPECT_EQ(table.csv(), "who,n,says\r\n\"a, \"\"b\"\"\",-1.5," + std::string(150, 'w') + "\r\n'=SUM(A1),2,\r\n");
}

TEST(WrappedText, KeepsEveryWordAndTheWidth) {
  EXPECT_EQ(wrapped("", 10), std::vector<std::string>{""});
  EXPECT_EQ(wrapped("one two three", 7), (std::vector<std::string>{"one two", "three"}));
  EXPECT_EQ(wrapped("a muchtoolongword b", 5), (std::vector<std::string>{"a", "muchtoolongword", "b"}));
}

}  // namespace

}  // namespace wend::sheets
