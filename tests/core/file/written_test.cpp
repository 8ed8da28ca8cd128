#include "core/file/written.h"

#include <gtest/gtest.h>

#include "core/file/write_parts.h"

namespace wend::file {
namespace {

TEST(Written, StaysOnOneLineWithoutLists) {
  Written object = Written::object();
  object.add("a", Written::number(0.1));
  Written list = Written::list();
  list.add(Written::flag(true));
  list.add(Written::point({1, -2.5}));
  Written outer = Written::object();
  object.add("b", std::move(list));
  object.add("c", Written::list(true));
  outer.add("x", std::move(object));
  EXPECT_EQ(outer.document(), "{\n  \"x\": {\"a\": 0.1, \"b\": [true, [1, -2.5]], \"c\": []}\n}\n");
}

TEST(Written, GivesItemsOfAListOfLinesALineEach) {
  Written lines = Written::list(true);
  lines.add(Written::number(1));
  lines.add(Written::number(2));
  Written inner = Written::object();
  inner.add("k", std::move(lines));
  inner.add("z", Written::text("end"));
  Written outer = Written::object();
  outer.add("x", std::move(inner));
  EXPECT_EQ(outer.document(), "{\n  \"x\": {\n    \"k\": [\n      1,\n      2\n    ],\n    \"z\": \"end\"\n  }\n}\n");
}

TEST(JsonText, EscapesWhatJsonAsksFor) {
  EXPECT_EQ(jsonText("a\"\\\n\t\r\x01\x1f/\u00e9"), "\"a\\\"\\\\\\n\\t\\r\\u0001\\u001f/\u00e9\"");
}

TEST(Extras, ComeBackWhereTheyWere) {
  const plan::Extras extras{{"hue", "1"}, {"on/a~1b", "2"}, {"on/deep/x", "3"}, {"ono", "4"}};
  Written top = Written::object();
  addExtras(top, extras, "");
  EXPECT_EQ(top.document(), "{\n  \"hue\": 1,\n  \"ono\": 4\n}\n");
  Written on = Written::object();
  addExtras(on, extras, "on/");
  EXPECT_EQ(on.document(), "{\n  \"a/b\": 2\n}\n");
  EXPECT_TRUE(keepsUnder(extras, "on/deep/"));
  EXPECT_FALSE(keepsUnder(extras, "at/"));
}

TEST(WrittenMoment, IsAsShortAsItCanBe) {
  const auto text = [](const plan::Moment& moment) {
    Written list = Written::list();
    list.add(writtenMoment(moment, {}, "at/"));
    return list.document();
  };
  EXPECT_EQ(text({"", 2.5}), "[\n  2.5\n]\n");
  EXPECT_EQ(text({"b1", 0}), "[\n  \"b1\"\n]\n");
  EXPECT_EQ(text({"b1", -0.5}), "[\n  {\"beat\": \"b1\", \"plus\": -0.5}\n]\n");
}

}  // namespace
}  // namespace wend::file
