#include "ui/document/save.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/file.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <csignal>
#include <functional>

#include "ui/document/open.h"

namespace wend::ui {
namespace {

constexpr std::size_t kMost = std::size_t{1} << 20;

class SavedFile : public ::testing::Test {
 protected:
  SavedFile() { ::chmod(QFile::encodeName(folder.path()).constData(), 0777); }

  QString at(const QString& name) const { return folder.filePath(name); }
  QString plan() const { return at(QStringLiteral("plan.wend")); }
  static std::string bytesOf(const QString& path) {
    const auto content = readFile(path, kMost);
    return content ? content->bytes : "(" + content.problems()[0].code + ")";
  }
  static std::string codeOf(const base::Result<Written>& result) { return result ? "" : result.problems()[0].code; }
  QStringList left() const {
    return QDir(folder.path()).entryList(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot);
  }
  void put(const QString& path, const std::string& bytes) const {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes.data(), qint64(bytes.size()));
  }
  /// What `act` returns, run by a child process.
  static int inChild(const std::function<int()>& act) {
    const pid_t child = ::fork();
    if (child == 0) ::_exit(act());
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }
  static void becomeNobody() {
    if (::geteuid() != 0) return;
    if (::setgid(65534) != 0 || ::setuid(65534) != 0) ::_exit(99);
  }

  QTemporaryDir folder;
};

TEST_F(SavedFile, HoldsExactlyTheBytesAndTellsTheirHash) {
  for (const std::size_t size :
       {std::size_t{0}, std::size_t{200}, std::size_t{16384}, std::size_t{24576}, std::size_t{300000}}) {
    const std::string bytes(size, char('a' + size % 26));
    const auto written = writeFile(plan(), bytes);
    ASSERT_TRUE(written.ok());
    EXPECT_EQ(bytesOf(plan()), bytes);
    EXPECT_EQ(written->contentHash, readFile(plan(), kMost)->contentHash);
  }
  EXPECT_EQ(left(), QStringList{QStringLiteral("plan.wend")});
}

TEST_F(SavedFile, MayHaveAnyName) {
  for (const char* name : {"with blank.wend", "new\nline.wend",
                           "B\xC3\xA4"
                           "cker \xE2\x86\x92.wend",
                           "-rf", "%s.wend"}) {
    const QString path = at(QString::fromUtf8(name));
    EXPECT_TRUE(writeFile(path, QByteArrayView("x")).ok()) << name;
    EXPECT_EQ(bytesOf(path), "x") << name;
  }
}

TEST_F(SavedFile, KeepsItsPermissionsAndANewOneFollowsTheMask) {
  put(plan(), "old");
  ::chmod(QFile::encodeName(plan()).constData(), 0640);
  ASSERT_TRUE(writeFile(plan(), QByteArrayView("new")).ok());
  struct stat is {};
  ::stat(QFile::encodeName(plan()).constData(), &is);
  EXPECT_EQ(is.st_mode & 07777, 0640u);
  const mode_t mask = ::umask(027);
  ASSERT_TRUE(writeFile(at(QStringLiteral("fresh")), QByteArrayView("new")).ok());
  ::umask(mask);
  ::stat(QFile::encodeName(at(QStringLiteral("fresh"))).constData(), &is);
  EXPECT_EQ(is.st_mode & 07777, 0640u);
}

TEST_F(SavedFile, KeepsItsOwnerWhenRootSaves) {
  if (::geteuid() != 0) GTEST_SKIP() << "only root can give a file away";
  put(plan(), "old");
  ASSERT_EQ(::chown(QFile::encodeName(plan()).constData(), 1234, 2345), 0);
  ASSERT_TRUE(writeFile(plan(), QByteArrayView("new")).ok());
  struct stat is {};
  ::stat(QFile::encodeName(plan()).constData(), &is);
  EXPECT_EQ(is.st_uid, 1234u);
  EXPECT_EQ(is.st_gid, 2345u);
}

TEST_F(SavedFile, IsTheTargetOfALinkAndTheLinkStays) {
  QDir(folder.path()).mkdir(QStringLiteral("real"));
  put(at(QStringLiteral("real/plan")), "old");
  ASSERT_TRUE(QFile::link(QStringLiteral("real/plan"), plan()));
  const auto written = writeFile(plan(), QByteArrayView("new"));
  ASSERT_TRUE(written.ok());
  EXPECT_TRUE(written->path.endsWith(QStringLiteral("real/plan")));
  EXPECT_TRUE(QFileInfo(plan()).isSymLink());
  EXPECT_EQ(bytesOf(at(QStringLiteral("real/plan"))), "new");
}

TEST_F(SavedFile, IsMadeWhereALinkLeadsToNothingYet) {
  QDir(folder.path()).mkdir(QStringLiteral("real"));
  ASSERT_TRUE(QFile::link(QStringLiteral("real/plan"), plan()));
  ASSERT_TRUE(writeFile(plan(), QByteArrayView("new")).ok());
  EXPECT_TRUE(QFileInfo(plan()).isSymLink());
  EXPECT_EQ(bytesOf(at(QStringLiteral("real/plan"))), "new");
}

TEST_F(SavedFile, IsNeverADeviceAPipeOrAFolder) {
  QDir(folder.path()).mkdir(QStringLiteral("folder"));
  const QString pipe = at(QStringLiteral("pipe"));
  ASSERT_EQ(::mkfifo(QFile::encodeName(pipe).constData(), 0666), 0);
  EXPECT_EQ(codeOf(writeFile(pipe, QByteArrayView("x"))), "not-a-file");
  EXPECT_EQ(codeOf(writeFile(at(QStringLiteral("folder")), QByteArrayView("x"))), "not-a-file");
  EXPECT_EQ(codeOf(writeFile(at(QStringLiteral("folder/")), QByteArrayView("x"))), "not-a-file");
  EXPECT_EQ(codeOf(writeFile(QStringLiteral("/dev/null"), QByteArrayView("x"))), "not-a-file");
  struct stat is {};
  ASSERT_EQ(::stat("/dev/null", &is), 0);
  EXPECT_TRUE(S_ISCHR(is.st_mode));
}

TEST_F(SavedFile, NeedsAFolderAndAShortEnoughName) {
  EXPECT_EQ(codeOf(writeFile(at(QStringLiteral("none/plan")), QByteArrayView("x"))), "no-folder");
  EXPECT_EQ(codeOf(writeFile(QString(), QByteArrayView("x"))), "no-folder");
  EXPECT_TRUE(writeFile(at(QString(247, QLatin1Char('n'))), QByteArrayView("x")).ok());
  EXPECT_EQ(codeOf(writeFile(at(QString(248, QLatin1Char('n'))), QByteArrayView("x"))), "file-name-too-long");
}

TEST_F(SavedFile, IsNotReplacedWhenWriteProtected) {
  put(plan(), "old");
  ::chmod(QFile::encodeName(plan()).constData(), 0444);
  EXPECT_EQ(inChild([&] {
              becomeNobody();
              return codeOf(writeFile(plan(), QByteArrayView("new"))) == "write-protected" ? 0 : 1;
            }),
            0);
  EXPECT_EQ(bytesOf(plan()), "old");
}

TEST_F(SavedFile, TellsWhenItsFolderCannotBeWritten) {
  ::chmod(QFile::encodeName(folder.path()).constData(), 0555);
  EXPECT_EQ(inChild([&] {
              becomeNobody();
              return codeOf(writeFile(plan(), QByteArrayView("new"))) == "write-failed" ? 0 : 1;
            }),
            0);
  ::chmod(QFile::encodeName(folder.path()).constData(), 0777);
  EXPECT_TRUE(left().isEmpty());
}

TEST_F(SavedFile, StaysOldWhenFilesMayNotGrowThatLarge) {
  put(plan(), "old");
  EXPECT_EQ(inChild([&] {
              const rlimit limit{1000, 1000};
              ::signal(SIGXFSZ, SIG_IGN);
              ::setrlimit(RLIMIT_FSIZE, &limit);
              return codeOf(writeFile(plan(), std::string(5000, 'n'))) == "write-failed" ? 0 : 1;
            }),
            0);
  EXPECT_EQ(bytesOf(plan()), "old");
  EXPECT_EQ(left(), QStringList{QStringLiteral("plan.wend")});
}

TEST_F(SavedFile, StaysOldOnAFullDiskAndIsNewOnceThereIsRoom) {
  const QByteArray disk = QFile::encodeName(at(QStringLiteral("disk")));
  ::mkdir(disk.constData(), 0777);
  if (::mount("tmpfs", disk.constData(), "tmpfs", 0, "size=64k") != 0) GTEST_SKIP() << "no right to mount";
  const QString path = at(QStringLiteral("disk/plan.wend"));
  const QString ballast = at(QStringLiteral("disk/ballast"));
  const std::string old(20000, 'o');
  EXPECT_TRUE(writeFile(path, old).ok());
  put(ballast, std::string(30000, 'b'));
  for (const std::size_t size : {std::size_t{16384}, std::size_t{24576}, std::size_t{300000}}) {
    const auto failed = writeFile(path, std::string(size, 'n'));
    ASSERT_FALSE(failed.ok()) << size;
    EXPECT_EQ(failed.problems()[0].code, "write-failed");
    EXPECT_NE(failed.problems()[0].found.find("space"), std::string::npos);
    EXPECT_EQ(bytesOf(path), old);
  }
  QFile::remove(ballast);
  EXPECT_TRUE(writeFile(path, std::string(24576, 'n')).ok());
  EXPECT_EQ(bytesOf(path), std::string(24576, 'n'));
  EXPECT_EQ(::umount(disk.constData()), 0);
}

TEST_F(SavedFile, SweepsWhatAKilledSaveLeftAndNothingElse) {
  put(plan(), "old");
  put(at(QStringLiteral(".plan.wend.saving")), "half");
  const QStringList others{QStringLiteral(".other.wend.saving"), QStringLiteral("plan.wend.backup"),
                           QStringLiteral("plan.wend.saving"), QStringLiteral(".plan.wend.saving2")};
  for (const QString& name : others) put(at(name), "mine");
  ASSERT_TRUE(writeFile(plan(), QByteArrayView("new")).ok());
  for (const QString& name : others) EXPECT_EQ(bytesOf(at(name)), "mine") << qPrintable(name);
  EXPECT_FALSE(QFile::exists(at(QStringLiteral(".plan.wend.saving"))));
  EXPECT_EQ(bytesOf(plan()), "new");
}

TEST_F(SavedFile, WaitsForNobodyWhileAnotherSaveRuns) {
  const QString temporary = at(QStringLiteral(".plan.wend.saving"));
  put(temporary, "another's half");
  const int other = ::open(QFile::encodeName(temporary).constData(), O_WRONLY);
  ASSERT_EQ(::flock(other, LOCK_EX | LOCK_NB), 0);
  EXPECT_EQ(codeOf(writeFile(plan(), QByteArrayView("new"))), "being-saved");
  EXPECT_EQ(bytesOf(temporary), "another's half");
  ::close(other);
  EXPECT_TRUE(writeFile(plan(), QByteArrayView("new")).ok());
}

TEST_F(SavedFile, IsNotWrittenThroughALinkInTheTemporarysPlace) {
  put(at(QStringLiteral("precious")), "mine");
  ASSERT_TRUE(QFile::link(QStringLiteral("precious"), at(QStringLiteral(".plan.wend.saving"))));
  EXPECT_EQ(codeOf(writeFile(plan(), QByteArrayView("new"))), "write-failed");
  EXPECT_EQ(bytesOf(at(QStringLiteral("precious"))), "mine");
}

TEST_F(SavedFile, IsWholeWhenManySaveAtOnce) {
  std::vector<pid_t> children;
  for (int k = 0; k < 4; ++k) {
    const pid_t child = ::fork();
    if (child == 0) {
      const std::string bytes(20000, char('a' + k));
      for (int i = 0; i < 50; ++i)
        if (const std::string code = codeOf(writeFile(plan(), bytes)); !code.empty() && code != "being-saved")
          ::_exit(1);
      ::_exit(0);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_EQ(status, 0);
  }
  const std::string bytes = bytesOf(plan());
  ASSERT_EQ(bytes.size(), 20000u);
  EXPECT_EQ(bytes, std::string(20000, bytes[0]));
  EXPECT_EQ(left(), QStringList{QStringLiteral("plan.wend")});
}

// ---- Faults injected by strace into each system call of a save.

class FaultySave : public SavedFile {
 protected:
  void SetUp() override {
    probe = qEnvironmentVariable("WEND_SAVE_PROBE", QStringLiteral(WEND_SAVE_PROBE));
    if (!QFile::exists(probe)) GTEST_SKIP() << "the probe is not built";
    if (std::system("strace -o /dev/null true 2>/dev/null") != 0) GTEST_SKIP() << "strace cannot be used here";
  }

  /// What the probe says under the injection, for example "fsync:error=EIO:when=1".
  std::string saidUnder(const std::string& injection, std::size_t size) const {
    // A leak checker cannot look into a traced program and would end it.
    const std::string command =
        "ASAN_OPTIONS=detect_leaks=0 strace -o /dev/null -e trace=write,fsync,rename,fchmod -e inject=" + injection +
        " '" + probe.toStdString() + "' '" + plan().toStdString() + "' " + std::to_string(size) + " 2>/dev/null";
    FILE* pipe = ::popen(command.c_str(), "r");
    char line[64] = "";
    if (::fgets(line, sizeof line, pipe) == nullptr) line[0] = '\0';
    ::pclose(pipe);
    return std::string(line).substr(0, std::string(line).find('\n'));
  }

  QString probe;
};

TEST_F(FaultySave, LeavesTheOldOrTheNewFileAndNeverClaimsANewOneFalsely) {
  struct Fault {
    const char* injection;
    const char* said;
    bool isNew;
  };
  const Fault faults[] = {
      {"write:error=ENOSPC:when=1", "write-failed", false},
      {"write:error=EIO:when=1", "write-failed", false},
      {"write:error=EDQUOT:when=1", "write-failed", false},
      {"write:retval=0:when=1", "write-failed", false},
      {"write:signal=KILL:when=1", "", false},
      {"fchmod:error=EACCES:when=1", "write-failed", false},
      {"fsync:error=EIO:when=1", "write-failed", false},
      {"fsync:error=ENOSPC:when=1", "write-failed", false},
      {"fsync:signal=KILL:when=1", "", false},
      {"rename:error=EIO:when=1", "write-failed", false},
      {"rename:error=EACCES:when=1", "write-failed", false},
      {"fsync:error=EIO:when=2", "not-confirmed", true},
      {"fsync:signal=KILL:when=2", "", true},
      {"fsync:error=EINVAL:when=2", "saved", true},
  };
  for (const std::size_t size : {std::size_t{200}, std::size_t{16384}, std::size_t{300000}})
    for (const Fault& fault : faults) {
      QFile::remove(plan());
      put(plan(), "old");
      EXPECT_EQ(saidUnder(fault.injection, size), fault.said) << fault.injection << " " << size;
      EXPECT_EQ(bytesOf(plan()), fault.isNew ? std::string(size, 'n') : "old") << fault.injection << " " << size;
      ASSERT_TRUE(writeFile(plan(), QByteArrayView("next")).ok()) << fault.injection;
      EXPECT_EQ(left(), QStringList{QStringLiteral("plan.wend")}) << fault.injection;
    }
}

}  // namespace
}  // namespace wend::ui
