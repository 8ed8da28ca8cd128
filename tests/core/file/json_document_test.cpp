#include "core/file/json_document.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace wend::file {
namespace {

std::vector<std::string> faults(const std::string& text) {
  ProblemList problems;
  JsonDocument document(text);
  document.parse(problems);
  std::vector<std::string> lines;
  for (const auto& problem : problems.told()) lines.push_back(problem.code + " " + problem.where);
  return lines;
}

std::string nested(std::size_t levels) {
  return std::string(levels, '[') + std::string(levels, ']');
}

std::string listOf(std::size_t items) {
  std::string text = "[0";
  for (std::size_t i = 1; i < items; ++i) text += ",0";
  return text + "]";
}

TEST(JsonDocument, KeepsEveryValueAsItWasWritten) {
  const std::string text =
      "\xEF\xBB\xBF { \"a\" : [ 1.50 ,-0,1e2 , \"x\\u00e9\\n\"], \"b\":{}, \"c\" : true,\"d\":null }\n";
  JsonDocument document(text);
  ProblemList problems;
  ASSERT_TRUE(document.parse(problems));
  const JsonValue root = document.root();
  EXPECT_EQ(root.count(), 4u);
  const JsonValue list = *root.member("a");
  EXPECT_EQ(list.raw(), "[ 1.50 ,-0,1e2 , \"x\\u00e9\\n\"]");
  std::vector<std::string> items;
  for (auto item = list.first(); item; item = item->next()) items.emplace_back(item->raw());
  EXPECT_EQ(items, (std::vector<std::string>{"1.50", "-0", "1e2", "\"x\\u00e9\\n\""}));
  EXPECT_EQ(root.member("b")->raw(), "{}");
  EXPECT_EQ(root.member("c")->raw(), "true");
  EXPECT_EQ(root.member("d")->kind(), JsonKind::null);
  EXPECT_FALSE(root.member("e"));
}

TEST(JsonDocument, ResolvesEscapesInTextAndKeys) {
  const std::string text = R"({"k\u0065y": "a\"\\\/\b\f\n\r\t\ud83d\ude00"})";
  JsonDocument document(text);
  ProblemList problems;
  ASSERT_TRUE(document.parse(problems));
  EXPECT_EQ(document.root().member("key")->text(), "a\"\\/\b\f\n\r\t\U0001F600");
}

TEST(JsonDocument, PointsAtEveryValue) {
  const std::string text = R"({"a": [0, {"b/c~d": 1}]})";
  JsonDocument document(text);
  ProblemList problems;
  ASSERT_TRUE(document.parse(problems));
  const JsonValue inner = *document.root().member("a")->first()->next();
  EXPECT_EQ(inner.pointer(), "/a/1");
  EXPECT_EQ(inner.first()->pointer(), "/a/1/b~1c~0d");
  EXPECT_EQ(inner.pointerTo("x/y"), "/a/1/x~1y");
  EXPECT_EQ(document.root().pointer(), "/");
  EXPECT_EQ(document.root().pointerTo("x"), "/x");
  EXPECT_EQ(keyOfStep(pointerStep("b/c~d~1")), "b/c~d~1");
}

TEST(JsonDocument, CompactsWithoutChangingTheValue) {
  for (const std::string text :
       {R"({ "a":[1,2 , {"b" : "x\u00e9" }], "c": {} })", R"([[],[ ], null ,true])", "-1.50e+3"}) {
    JsonDocument document(text);
    ProblemList problems;
    ASSERT_TRUE(document.parse(problems)) << text;
    const std::string compact = document.root().compact();
    EXPECT_EQ(nlohmann::json::parse(compact), nlohmann::json::parse(text));
    JsonDocument again(compact);
    ASSERT_TRUE(again.parse(problems));
    EXPECT_EQ(again.root().compact(), compact);
  }
}

TEST(JsonDocument, SaysWhereTheTextIsNoJson) {
  EXPECT_EQ(faults("{\n  \"a\": NaN\n}"), std::vector<std::string>{"json-syntax line 2, column 8"});
  EXPECT_EQ(faults("{\"a\": 01}").size(), 1u);
  EXPECT_EQ(faults("[1,]").size(), 1u);
  EXPECT_EQ(faults("[1] 2").size(), 1u);
  EXPECT_EQ(faults("{'a': 1}").size(), 1u);
  EXPECT_EQ(faults("\"\\ud800\"").size(), 1u);
  EXPECT_EQ(faults("\"a\tb\"").size(), 1u);
  ProblemList problems;
  JsonDocument cut("{\"a\": [1, 2");
  EXPECT_FALSE(cut.parse(problems));
  EXPECT_EQ(problems.told().front().found, "the end of the file");
}

TEST(JsonDocument, RefusesNumbersThatNoDoubleHolds) {
  EXPECT_EQ(faults("[1e308]"), std::vector<std::string>());
  EXPECT_EQ(faults("[1e309]"), std::vector<std::string>{"out-of-range line 1, column 2"});
}

TEST(JsonDocument, LimitsDepthOnBothSides) {
  EXPECT_TRUE(faults(nested(kMostDepth)).empty());
  EXPECT_EQ(faults(nested(kMostDepth + 1)), std::vector<std::string>{"too-deep line 1, column 66"});
  EXPECT_EQ(faults(std::string(1000000, '[')).size(), 1u);
}

TEST(JsonDocument, LimitsListsOnBothSides) {
  EXPECT_TRUE(faults(listOf(kMostItems)).empty());
  EXPECT_EQ(faults(listOf(kMostItems + 1)).size(), 1u);
}

TEST(JsonDocument, LimitsTheNumberOfValues) {
  std::string text = "[";
  const std::string list = listOf(kMostItems);
  for (std::size_t i = 0; i * kMostItems < kMostValues; ++i) text += (i ? "," : "") + list;
  ASSERT_EQ(faults(text + "]").size(), 1u);
  EXPECT_EQ(faults(text + "]").front().substr(0, 8), "too-many");
}

TEST(JsonDocument, LimitsTextOnBothSides) {
  const std::string longest(kMostCharacters, 'a');
  EXPECT_TRUE(faults("[\"" + longest + "\"]").empty());
  EXPECT_EQ(faults("[\"" + longest + "a\"]"), std::vector<std::string>{"text-too-long /0"});
  std::string accents;
  for (std::size_t i = 0; i < kMostCharacters; ++i) accents += "\u00e9";
  EXPECT_TRUE(faults("[\"" + accents + "\"]").empty());
  EXPECT_TRUE(faults("{\"" + longest + "\": 1}").empty());
  EXPECT_EQ(faults("{\"" + longest + "a\": 1}").size(), 1u);
}

TEST(JsonDocument, LimitsBytes) {
  EXPECT_TRUE(faults("[" + std::string(kMostBytes - 2, ' ') + "]").empty());
  EXPECT_EQ(faults("[" + std::string(kMostBytes - 1, ' ') + "]"), std::vector<std::string>{"too-large the whole file"});
}

TEST(JsonDocument, RefusesBytesThatAreNotUtf8) {
  EXPECT_EQ(faults("{\n\n\"a\": \"\xFC\"}"), std::vector<std::string>{"not-utf8 line 3"});
  EXPECT_EQ(faults("[\"\xED\xA0\x80\"]"), std::vector<std::string>{"not-utf8 line 1"});
}

TEST(JsonDocument, NamesEveryRepeatedKeyOnce) {
  EXPECT_EQ(faults(R"({"a": 1, "b": 2, "a": 3, "\u0061": 4, "c": {"d": 1, "d": 1}})"),
            (std::vector<std::string>{"duplicate-key /c/d", "duplicate-key /a"}));
}

}  // namespace
}  // namespace wend::file
