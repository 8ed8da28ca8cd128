#include "core/base/table.h"

#include <gtest/gtest.h>

#include "core/base/id.h"

namespace wend::base {
namespace {

struct Thing {
  Id<Thing> id;
  int value = 0;
  bool operator==(const Thing&) const = default;
};

Table<Thing> three() {
  Table<Thing> table;
  for (const char* id : {"b", "a", "c"}) table.add({Id<Thing>(id), 0});
  return table;
}

TEST(Table, KeepsItsOrderAndFindsById) {
  const Table<Thing> table = three();
  ASSERT_EQ(table.size(), 3U);
  EXPECT_EQ(table[0].id.text(), "b");
  EXPECT_EQ(table.indexOf("c"), 2U);
  EXPECT_EQ(table.indexOf("d"), 3U);
  EXPECT_EQ(table.find("a"), &table[1]);
  EXPECT_EQ(table.find("d"), nullptr);
}

TEST(Table, SharesAllEntitiesButTheOneThatWasReplaced) {
  const Table<Thing> before = three();
  Table<Thing> after = before;
  EXPECT_EQ(after.ref(1), before.ref(1));
  after.replace(1, {Id<Thing>("a"), 7});
  EXPECT_NE(after.ref(1), before.ref(1));
  EXPECT_EQ(after.ref(0), before.ref(0));
  EXPECT_EQ(after.ref(2), before.ref(2));
  EXPECT_EQ(before[1].value, 0);
  EXPECT_EQ(after[1].value, 7);
}

TEST(TableDeathTest, HasNoIdTwice) {
  Table<Thing> table = three();
  EXPECT_DEATH(table.add({Id<Thing>("a"), 0}), "find");
  EXPECT_DEATH(table.append({{Id<Thing>("d"), 0}, {Id<Thing>("d"), 0}}), "insert");
}

}  // namespace
}  // namespace wend::base
