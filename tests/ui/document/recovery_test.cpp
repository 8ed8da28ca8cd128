#include "ui/document/recovery.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest/QTest>
#include <random>

#include "ui/document/state_folder.h"

namespace wend::ui {
namespace {

std::string titleOf(const plan::Plan& plan) {
  return plan.title;
}

plan::PlanPtr named(const std::string& title) {
  plan::Plan plan;
  plan.title = title;
  return std::make_shared<const plan::Plan>(std::move(plan));
}

JournalEntry sampleEntry() {
  return {QStringLiteral("/home/x/B\u00E4ckerei\n1.wend"), "0123abcd",
          QDateTime::fromString(QStringLiteral("2024-03-01T10:11:12.345Z"), Qt::ISODateWithMs),
          "{\n \"title\": \"x\"\n}\n"};
}

TEST(Journal, ReadsBackWhatWasWritten) {
  for (const std::string& text : {std::string("{}"), std::string("a\nb\n"), std::string(), std::string("\0\xFF", 2)}) {
    JournalEntry entry = sampleEntry();
    entry.planText = text;
    const auto back = readJournal(journalText(entry));
    ASSERT_TRUE(back.ok());
    EXPECT_EQ(*back, entry);
  }
}

TEST(Journal, NoticesEveryCutAndEveryChangedByte) {
  const QByteArray whole = journalText(sampleEntry());
  for (qsizetype size = 0; size < whole.size(); ++size) EXPECT_FALSE(readJournal(whole.left(size)).ok()) << size;
  for (qsizetype at = 0; at < whole.size(); ++at) {
    QByteArray changed = whole;
    changed[at] = char(changed[at] ^ 1);
    EXPECT_FALSE(readJournal(changed).ok()) << at;
  }
  EXPECT_FALSE(readJournal(whole + "x").ok());
}

class Journalled : public ::testing::Test {
 protected:
  QStringList files() const { return QDir(folder).entryList(QDir::Files | QDir::Hidden); }
  /// Leaves what a session that was killed after these titles leaves. Empty text: the two latest are journalled.
  void crashAfter(const std::vector<std::string>& titles, const QString& path = {}) const {
    const pid_t child = ::fork();
    if (child == 0) {
      Document document;
      document.start(named("saved"), path, "hash");
      Recovery recovery(document, titleOf, folder);
      for (const std::string& title : titles) {
        document.propose(named(title), QStringLiteral("Edit"));
        recovery.writeNow();
      }
      ::_exit(0);  // nothing is cleaned up
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_EQ(status, 0);
  }

  QTemporaryDir temporary;
  QString folder = temporary.filePath(QStringLiteral("state/recovery"));
};

TEST_F(Journalled, NothingIsKeptOfAnUnmodifiedPlan) {
  Document document;
  Recovery recovery(document, titleOf, folder);
  EXPECT_TRUE(recovery.writeNow());
  EXPECT_FALSE(QDir(folder).exists());
}

TEST_F(Journalled, AKilledSessionIsOfferedWithItsTwoLatestStates) {
  crashAfter({"one", "two", "three"}, QStringLiteral("/plans/a.wend"));
  const auto found = unsavedSessions(folder);
  ASSERT_EQ(found.size(), 1u);
  ASSERT_EQ(found[0].states.size(), 2u);
  EXPECT_EQ(found[0].states[0].planText, "three");
  EXPECT_EQ(found[0].states[1].planText, "two");
  EXPECT_EQ(found[0].states[0].planPath, QStringLiteral("/plans/a.wend"));
  EXPECT_EQ(found[0].states[0].planFileHash, QByteArray("hash"));
  EXPECT_LT(std::abs(found[0].states[0].when.secsTo(QDateTime::currentDateTimeUtc())), 60);
  EXPECT_EQ(found[0].damaged, 0);
}

TEST_F(Journalled, PlansWithoutAFileAndSeveralSessionsAreOfferedToo) {
  crashAfter({"first"});
  crashAfter({"second"}, QStringLiteral("/plans/b.wend"));
  const auto found = unsavedSessions(folder);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].states[0].planText, "second");
  EXPECT_TRUE(found[1].states[0].planPath.isEmpty());
}

TEST_F(Journalled, ALivingSessionIsNotOffered) {
  Document document;
  Recovery recovery(document, titleOf, folder);
  document.propose(named("mine"), QStringLiteral("Edit"));
  ASSERT_TRUE(recovery.writeNow());
  EXPECT_TRUE(unsavedSessions(folder).empty());
}

TEST_F(Journalled, AnOfferIsMadeByOneWindowOnly) {
  crashAfter({"one"});
  const auto mine = unsavedSessions(folder);
  ASSERT_EQ(mine.size(), 1u);
  EXPECT_TRUE(unsavedSessions(folder).empty());
}

TEST_F(Journalled, ADiscardedSessionLeavesNothing) {
  crashAfter({"one", "two"});
  for (const Unsaved& unsaved : unsavedSessions(folder)) discard(folder, unsaved);
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Journalled, TheOtherStateSurvivesDamageOfOne) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 20; ++i) {
    crashAfter({"one", "two"});
    const QStringList journals = QDir(folder).entryList({QStringLiteral("*.journal")});
    ASSERT_EQ(journals.size(), 2);
    QFile file(folder + QLatin1Char('/') + journals[int(random() % 2)]);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    if (i % 2 == 0) {
      ASSERT_TRUE(file.resize(qint64(random() % std::uint64_t(file.size()))));
    } else {
      file.seek(qint64(random() % std::uint64_t(file.size())));
      const QByteArray byte = file.peek(1);
      file.write(QByteArray(1, char(byte[0] ^ 4)));
    }
    file.close();
    const auto found = unsavedSessions(folder);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].states.size(), 1u);
    EXPECT_EQ(found[0].damaged, 1);
    discard(folder, found[0]);
  }
}

TEST_F(Journalled, ASessionOfDamagedStatesIsStillTold) {
  crashAfter({"one"});
  QFile file(folder + QLatin1Char('/') + QDir(folder).entryList({QStringLiteral("*.journal")})[0]);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.close();
  const auto found = unsavedSessions(folder);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(found[0].states.empty());
  EXPECT_EQ(found[0].damaged, 1);
}

TEST_F(Journalled, ASecondCrashDuringRecoveryLosesNothing) {
  crashAfter({"one"});
  // The recovering session opens the state and dies before it has journalled: the first one is offered again.
  const pid_t child = ::fork();
  if (child == 0) {
    const auto found = unsavedSessions(folder);
    Document document;
    document.start(named(found.at(0).states.at(0).planText), {}, {}, true);
    const Recovery recovery(document, titleOf, folder);
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  const auto again = unsavedSessions(folder);
  ASSERT_EQ(again.size(), 1u);
  EXPECT_EQ(again[0].states[0].planText, "one");
}

TEST_F(Journalled, ARecoveredPlanIsJournalledBeforeAnyEdit) {
  Document document;
  Recovery recovery(document, titleOf, folder);
  document.start(named("recovered"), {}, {}, true);
  EXPECT_TRUE(recovery.writeNow());
  EXPECT_EQ(QDir(folder).entryList({QStringLiteral("*.journal")}).size(), 1);
}

TEST_F(Journalled, SavingOrUndoingEverythingRemovesTheJournal) {
  Document document;
  Recovery recovery(document, titleOf, folder);
  document.propose(named("a"), QStringLiteral("Edit"));
  ASSERT_TRUE(recovery.writeNow());
  EXPECT_FALSE(files().isEmpty());
  document.saved(QStringLiteral("/a.wend"), "hash");
  EXPECT_TRUE(files().isEmpty());
  document.propose(named("b"), QStringLiteral("Edit"));
  ASSERT_TRUE(recovery.writeNow());
  EXPECT_FALSE(files().isEmpty());
  document.undoStack().undo();
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Journalled, LettingGoOfADocumentRemovesTheJournal) {
  {
    Document document;
    Recovery recovery(document, titleOf, folder);
    document.propose(named("a"), QStringLiteral("Edit"));
    ASSERT_TRUE(recovery.writeNow());
  }
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Journalled, FiftyStepsAreWrittenAtOnce) {
  Document document;
  Recovery recovery(document, titleOf, folder);
  for (int i = 1; i < Recovery::kMostSteps; ++i) document.propose(named(std::to_string(i)), QStringLiteral("Edit"));
  EXPECT_FALSE(QDir(folder).exists());
  document.propose(named("fifty"), QStringLiteral("Edit"));
  EXPECT_EQ(QDir(folder).entryList({QStringLiteral("*.journal")}).size(), 1);
}

TEST_F(Journalled, AChangeIsWrittenByItselfAfterTheDelay) {
  EXPECT_LE(Recovery::kDelayMs, 10000);
  Document document;
  Recovery recovery(document, titleOf, folder, 10);
  document.propose(named("a"), QStringLiteral("Edit"));
  EXPECT_TRUE(files().isEmpty());
  EXPECT_TRUE(QTest::qWaitFor([&] { return !files().isEmpty(); }));
  const QStringList first = files();
  document.propose(named("b"), QStringLiteral("Edit"));
  EXPECT_TRUE(QTest::qWaitFor([&] { return files().size() > first.size(); }));
}

TEST_F(Journalled, TroubleIsToldAndTriedAgain) {
  QFile blocked(temporary.filePath(QStringLiteral("state")));
  ASSERT_TRUE(blocked.open(QIODevice::WriteOnly));  // a file where the folder should be
  blocked.close();
  Document document;
  Recovery recovery(document, titleOf, folder);
  QSignalSpy failures(&recovery, &Recovery::failed);
  document.propose(named("a"), QStringLiteral("Edit"));
  EXPECT_FALSE(recovery.writeNow());
  EXPECT_EQ(failures.count(), 1);
  EXPECT_TRUE(blocked.remove());
  EXPECT_TRUE(recovery.writeNow());
  EXPECT_EQ(failures.count(), 1);
}

TEST(StateFolder, FollowsTheEnvironmentWhenItIsAbsolute) {
  EXPECT_EQ(stateFolder(QStringLiteral("/var/s"), QStringLiteral("/home/x")), QStringLiteral("/var/s/wend"));
  EXPECT_EQ(stateFolder({}, QStringLiteral("/home/x")), QStringLiteral("/home/x/.local/state/wend"));
  EXPECT_EQ(stateFolder(QStringLiteral("relative"), QStringLiteral("/home/x")),
            QStringLiteral("/home/x/.local/state/wend"));
}

TEST(PlanLock, IsOneForAllPathsToAFile) {
  QTemporaryDir temporary;
  const QString plan = temporary.filePath(QStringLiteral("a.wend")),
                link = temporary.filePath(QStringLiteral("link.wend"));
  QFile file(plan);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  ASSERT_TRUE(QFile::link(QStringLiteral("a.wend"), link));
  const QString locks = temporary.filePath(QStringLiteral("locks"));
  auto mine = planLock(locks, plan);
  ASSERT_TRUE(mine.has_value());
  EXPECT_FALSE(planLock(locks, link).has_value());
  EXPECT_TRUE(planLock(locks, temporary.filePath(QStringLiteral("b.wend"))).has_value());
  mine.reset();
  EXPECT_TRUE(planLock(locks, link).has_value());
}

TEST(PlanLock, OfADeadProcessIsFree) {
  QTemporaryDir temporary;
  const QString locks = temporary.filePath(QStringLiteral("locks")),
                plan = temporary.filePath(QStringLiteral("a.wend"));
  const pid_t child = ::fork();
  if (child == 0) {
    const auto lock = planLock(locks, plan);
    ::_exit(lock ? 0 : 1);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_EQ(status, 0);
  EXPECT_TRUE(planLock(locks, plan).has_value());
}

}  // namespace
}  // namespace wend::ui
