#include "app/arguments.h"

#include <gtest/gtest.h>

namespace wend::app {

namespace {

const std::vector<Option> kOptions = {
    {"--step", "S", ""}, {"--json", "", ""}, {"--output", "FILE", ""}, {"--help", "", ""}};

std::string codeOf(const std::vector<std::string>& words) {
  const auto arguments = Arguments::parsed(words, kOptions);
  return arguments ? "" : arguments.problems().front().code;
}

TEST(ArgumentWords, AreOperandsOrOptionsInAnyOrder) {
  const auto arguments = Arguments::parsed({"--json", "a", "--step=2", "-", "-o", "x", "-1.5", "-.5"}, kOptions);
  ASSERT_TRUE(arguments);
  EXPECT_EQ(arguments->operands(), (std::vector<std::string>{"a", "-", "-1.5", "-.5"}));
  EXPECT_TRUE(arguments->has("--json"));
  EXPECT_EQ(arguments->text("--step"), "2");
  EXPECT_EQ(arguments->text("--output"), "x");
  EXPECT_FALSE(arguments->has("--help"));
}

TEST(ArgumentWords, AfterADoubleHyphenAreOperands) {
  const auto arguments = Arguments::parsed({"--", "--json", "-o"}, kOptions);
  ASSERT_TRUE(arguments);
  EXPECT_EQ(arguments->operands(), (std::vector<std::string>{"--json", "-o"}));
}

TEST(ArgumentWords, AreRefusedWhenUnknownDoubledOrWithoutValue) {
  EXPECT_EQ(codeOf({"--jsn"}), "unknown-option");
  EXPECT_EQ(codeOf({"--json", "--json"}), "option-twice");
  EXPECT_EQ(codeOf({"--step"}), "option-value");
  EXPECT_EQ(codeOf({"--json=yes"}), "option-value");
}

TEST(ArgumentNumbers, KeepToTheirRange) {
  const auto arguments = Arguments::parsed({"--step", "2.5", "-3"}, kOptions);
  ASSERT_TRUE(arguments);
  EXPECT_DOUBLE_EQ(*arguments->number("--step", 1, 0, 3), 2.5);
  const auto over = arguments->number("--step", 1, 0, 2, "s");
  ASSERT_FALSE(over);
  EXPECT_EQ(over.problems().front().code, "out-of-range") << "a number, and too large";
  EXPECT_EQ(over.problems().front().expected, "a number from 0 to 2 s");
  EXPECT_DOUBLE_EQ(*arguments->operandNumber(0, "X", -10, 10), -3);
  EXPECT_DOUBLE_EQ(*arguments->number("--absent", 7, 0, 9), 7);
  const auto word = Arguments::parsed({"--step", "2,5"}, kOptions);
  EXPECT_EQ(word->number("--step", 1, 0, 3).problems().front().code, "not-a-number");
}

}  // namespace

}  // namespace wend::app
