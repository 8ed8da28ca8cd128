#include "ui/document/recent.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

namespace wend::ui {
namespace {

class RecentList : public ::testing::Test {
 protected:
  QTemporaryDir temporary;
  QString folder = temporary.filePath(QStringLiteral("state/wend"));
  RecentPlans recent{folder};
};

TEST_F(RecentList, IsEmptyAtFirstAndMakesNothing) {
  EXPECT_TRUE(recent.paths().isEmpty());
  EXPECT_FALSE(QDir(folder).exists());
}

TEST_F(RecentList, HasTheNewestFirstAndEachOnce) {
  recent.add(QStringLiteral("/a"));
  recent.add(QStringLiteral("/b"));
  recent.add(QStringLiteral("/a"));
  EXPECT_EQ(RecentPlans(folder).paths(), (QStringList{QStringLiteral("/a"), QStringLiteral("/b")}));
}

TEST_F(RecentList, KeepsAnyName) {
  const QStringList names{QStringLiteral("/with blank%20.wend"), QStringLiteral("/new\nline"),
                          QStringLiteral("/B\u00E4cker")};
  for (const QString& name : names) recent.add(name);
  EXPECT_EQ(recent.paths(), (QStringList{names[2], names[1], names[0]}));
}

TEST_F(RecentList, MakesPathsWhole) {
  recent.add(QStringLiteral("plan.wend"));
  EXPECT_EQ(recent.paths(), QStringList{QDir::current().absoluteFilePath(QStringLiteral("plan.wend"))});
}

TEST_F(RecentList, DropsTheOldestBeyondItsLength) {
  for (int i = 0; i < RecentPlans::kMost + 3; ++i) recent.add(QStringLiteral("/%1").arg(i));
  EXPECT_EQ(recent.paths().size(), RecentPlans::kMost);
  EXPECT_EQ(recent.paths().last(), QStringLiteral("/3"));
}

TEST_F(RecentList, Forgets) {
  recent.add(QStringLiteral("/a"));
  recent.add(QStringLiteral("/b"));
  recent.forget(QStringLiteral("/a"));
  EXPECT_EQ(recent.paths(), QStringList{QStringLiteral("/b")});
}

TEST_F(RecentList, ReadsADamagedFileAsFarAsItMakesSense) {
  recent.add(QStringLiteral("/a"));
  QFile file(folder + QStringLiteral("/recent"));
  ASSERT_TRUE(file.open(QIODevice::Append));
  file.write("relative\n\xFF\xFE%zz\n/b\n/b");
  file.close();
  EXPECT_EQ(recent.paths(), (QStringList{QStringLiteral("/a"), QStringLiteral("/b")}));
}

}  // namespace
}  // namespace wend::ui
