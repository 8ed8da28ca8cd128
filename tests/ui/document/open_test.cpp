#include "ui/document/open.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

namespace wend::ui {
namespace {

class NamedFile : public ::testing::Test {
 protected:
  QString at(const QString& name) const { return folder.filePath(name); }
  void put(const QString& path, const std::string& bytes) const {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes.data(), qint64(bytes.size()));
  }
  static std::string codeOf(const QString& path, std::size_t most = 1000) {
    const auto content = readFile(path, most);
    return content ? "" : content.problems()[0].code;
  }
  QTemporaryDir folder;
};

// FIPS 180-2, appendix B.1: the digest of "abc".
TEST(ContentHash, IsSha256) {
  EXPECT_EQ(contentHashOf("abc"), QByteArray("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
}

TEST_F(NamedFile, IsReadWholeWithItsZeros) {
  const std::string bytes("{\0}\n\xFF", 5);
  put(at(QStringLiteral("plan")), bytes);
  const auto content = readFile(at(QStringLiteral("plan")), 1000);
  ASSERT_TRUE(content.ok());
  EXPECT_EQ(content->bytes, bytes);
  EXPECT_EQ(content->contentHash, contentHashOf(bytes));
  EXPECT_TRUE(QDir::isAbsolutePath(content->path));
}

TEST_F(NamedFile, MayBeAsLargeAsTheLimitAndNotAByteMore) {
  put(at(QStringLiteral("plan")), std::string(1000, 'x'));
  EXPECT_EQ(codeOf(at(QStringLiteral("plan")), 1000), "");
  EXPECT_EQ(codeOf(at(QStringLiteral("plan")), 999), "too-large");
  put(at(QStringLiteral("empty")), "");
  EXPECT_EQ(codeOf(at(QStringLiteral("empty")), 0), "");
}

TEST_F(NamedFile, IsReadOnlyToTheLimitWhenItHidesItsSize) {
  // Files of procfs say 0 bytes and hold more.
  EXPECT_EQ(codeOf(QStringLiteral("/proc/self/maps"), 100), "too-large");
  EXPECT_EQ(codeOf(QStringLiteral("/proc/self/maps"), 10'000'000), "");
}

TEST_F(NamedFile, IsRefusedWithoutWaitingWhenItIsNoFile) {
  ASSERT_EQ(::mkfifo(QFile::encodeName(at(QStringLiteral("pipe"))).constData(), 0666), 0);
  EXPECT_EQ(codeOf(at(QStringLiteral("pipe"))), "not-a-file");
  EXPECT_EQ(codeOf(folder.path()), "not-a-file");
  EXPECT_EQ(codeOf(QStringLiteral("/dev/zero")), "not-a-file");
  ASSERT_TRUE(QFile::link(QStringLiteral("/dev/zero"), at(QStringLiteral("link"))));
  EXPECT_EQ(codeOf(at(QStringLiteral("link"))), "not-a-file");
}

TEST_F(NamedFile, IsToldToBeMissing) {
  EXPECT_EQ(codeOf(at(QStringLiteral("none"))), "no-file");
  ASSERT_TRUE(QFile::link(QStringLiteral("none"), at(QStringLiteral("link"))));
  EXPECT_EQ(codeOf(at(QStringLiteral("link"))), "no-file");
  ASSERT_TRUE(QFile::link(QStringLiteral("ring"), at(QStringLiteral("ring"))));
  EXPECT_EQ(codeOf(at(QStringLiteral("ring"))), "not-readable");
}

TEST_F(NamedFile, IsToldToBeUnreadable) {
  put(at(QStringLiteral("plan")), "x");
  ::chmod(QFile::encodeName(at(QStringLiteral("plan"))).constData(), 0000);
  ::chmod(QFile::encodeName(folder.path()).constData(), 0755);
  const pid_t child = ::fork();
  if (child == 0) {
    if (::geteuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) ::_exit(2);
    ::_exit(codeOf(at(QStringLiteral("plan"))) == "not-readable" ? 0 : 1);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_EQ(status, 0);
}

TEST_F(NamedFile, EveryRefusalNamesPlaceAndRemedy) {
  for (const QString& path : {at(QStringLiteral("none")), folder.path(), QStringLiteral("/dev/zero")}) {
    const auto content = readFile(path, 10);
    ASSERT_FALSE(content.ok());
    const base::Problem& problem = content.problems()[0];
    EXPECT_EQ(problem.where, path.toStdString());
    EXPECT_FALSE(problem.found.empty());
    EXPECT_FALSE(problem.expected.empty());
    EXPECT_FALSE(problem.remedy.empty());
  }
}

TEST_F(NamedFile, IsChangedWhenItsBytesAreAndNotWhenOnlyItsTimeIs) {
  const QString path = at(QStringLiteral("plan"));
  put(path, "one");
  const QByteArray hash = readFile(path, 100)->contentHash;
  put(path, "one");
  EXPECT_FALSE(changedOnDisk(path, hash, 100));
  put(path, "two");
  EXPECT_TRUE(changedOnDisk(path, hash, 100));
  QFile::remove(path);
  EXPECT_TRUE(changedOnDisk(path, hash, 100));
}

}  // namespace
}  // namespace wend::ui
