#include "ui/document/recovery.h"

#include <QDir>
#include <QFile>
#include <QUuid>
#include <algorithm>
#include <utility>

#include "ui/document/open.h"
#include "ui/document/save.h"
#include "ui/document/state_folder.h"

namespace wend::ui {
namespace {

constexpr char kMagic[] = "wend-recovery 1";
constexpr std::size_t kMostJournalBytes = std::size_t{256} << 20;

base::Problem damaged(const std::string& found) {
  return {"damaged-recovery", "", found, "a whole recovery file",
          "Use the other state of this session, if there is one."};
}

/// Every line but the last is of the head: the hash stands over all that follows it.
QByteArray sealed(const QByteArray& body) {
  return QByteArray(kMagic) + '\n' + contentHashOf(body) + '\n' + body;
}

QString slotPath(const QString& folder, const QString& session, int slot) {
  return folder + QLatin1Char('/') + session + QStringLiteral(".%1.journal").arg(slot);
}

QString lockPath(const QString& folder, const QString& session) {
  return folder + QLatin1Char('/') + session + QStringLiteral(".lock");
}

/// Files first, the lock last: whoever is stopped in between leaves a session that is listed again.
void removeSession(const QString& folder, const QString& session) {
  for (const int slot : {0, 1}) {
    QFile::remove(slotPath(folder, session, slot));
    QFile::remove(folder + QStringLiteral("/.%1.%2.journal.saving").arg(session).arg(slot));
  }
  QFile::remove(lockPath(folder, session));
}

Unsaved leftBy(const QString& folder, const QString& session, FileLock lock) {
  Unsaved unsaved{session, {}, 0, std::make_shared<FileLock>(std::move(lock))};
  for (const int slot : {0, 1}) {
    const QString path = slotPath(folder, session, slot);
    if (!QFile::exists(path)) continue;
    const auto content = readFile(path, kMostJournalBytes);
    auto entry = content ? readJournal(QByteArray::fromStdString(content->bytes)) : content.problems();
    if (entry)
      unsaved.states.push_back(std::move(entry).value());
    else
      ++unsaved.damaged;
  }
  std::sort(unsaved.states.begin(), unsaved.states.end(),
            [](const JournalEntry& a, const JournalEntry& b) { return a.when > b.when; });
  return unsaved;
}

QStringList sessionsIn(const QString& folder) {
  QStringList sessions;
  for (const QString& file : QDir(folder).entryList({QStringLiteral("*.journal")}, QDir::Files | QDir::Hidden))
    sessions.append(file.section(QLatin1Char('.'), 0, 0));
  sessions.removeDuplicates();
  return sessions;
}

}  // namespace

QByteArray journalText(const JournalEntry& entry) {
  return sealed(entry.planPath.toUtf8().toPercentEncoding() + '\n' + entry.planFileHash + '\n' +
                entry.when.toUTC().toString(Qt::ISODateWithMs).toLatin1() + '\n' +
                QByteArray::fromStdString(entry.planText));
}

base::Result<JournalEntry> readJournal(const QByteArray& text) {
  const QByteArray head = QByteArray(kMagic) + '\n';
  if (!text.startsWith(head)) return damaged("no recovery file");
  const qsizetype hashEnd = text.indexOf('\n', head.size());
  if (hashEnd < 0) return damaged("a cut file");
  const QByteArray body = text.mid(hashEnd + 1);
  if (contentHashOf(body) != text.mid(head.size(), hashEnd - head.size())) return damaged("a cut or changed file");
  const qsizetype first = body.indexOf('\n'), second = body.indexOf('\n', first + 1);
  const qsizetype third = body.indexOf('\n', second + 1);
  if (first < 0 || second < 0 || third < 0) return damaged("a file of another make");
  JournalEntry entry;
  entry.planPath = QString::fromUtf8(QByteArray::fromPercentEncoding(body.left(first)));
  entry.planFileHash = body.mid(first + 1, second - first - 1);
  entry.when = QDateTime::fromString(QString::fromLatin1(body.mid(second + 1, third - second - 1)), Qt::ISODateWithMs);
  entry.planText = body.mid(third + 1).toStdString();
  if (!entry.when.isValid()) return damaged("a file without its time");
  return entry;
}

std::vector<Unsaved> unsavedSessions(const QString& folder) {
  std::vector<Unsaved> found;
  for (const QString& session : sessionsIn(folder))
    if (auto lock = FileLock::taken(lockPath(folder, session)))
      found.push_back(leftBy(folder, session, std::move(*lock)));
  std::stable_sort(found.begin(), found.end(), [](const Unsaved& a, const Unsaved& b) {
    if (a.states.empty() || b.states.empty()) return a.states.size() > b.states.size();
    return a.states[0].when > b.states[0].when;
  });
  return found;
}

void discard(const QString& folder, const Unsaved& unsaved) {
  removeSession(folder, unsaved.session);
}

Recovery::Recovery(Document& document, TextOf textOf, QString folder, int delayMs, QObject* parent)
    : QObject(parent),
      document_(document),
      textOf_(std::move(textOf)),
      folder_(std::move(folder)),
      session_(QUuid::createUuid().toString(QUuid::Id128)) {
  timer_.setSingleShot(true);
  timer_.setInterval(delayMs);
  connect(&timer_, &QTimer::timeout, this, &Recovery::writeNow);
  connect(&document_, &Document::planChanged, this, &Recovery::planChanged);
  connect(&document_, &Document::modifiedChanged, this, &Recovery::planChanged);
  planChanged();
}

Recovery::~Recovery() {
  clear();
}

void Recovery::planChanged() {
  if (!document_.isModified()) return clear();
  if (document_.plan() == seen_ || document_.plan() == written_) return;
  seen_ = document_.plan();
  if (++steps_ >= kMostSteps)
    writeNow();
  else if (!timer_.isActive())
    timer_.start();
}

bool Recovery::writeNow() {
  timer_.stop();
  steps_ = 0;
  if (!document_.isModified() || document_.plan() == written_) return true;
  if (!lock_ && madePrivate(folder_)) lock_ = FileLock::taken(lockPath(folder_, session_));
  if (!lock_) return tellFailed(QStringLiteral("no lock in %1").arg(folder_));
  const plan::PlanPtr plan = document_.plan();
  const JournalEntry entry{document_.path(), document_.contentHash(), QDateTime::currentDateTimeUtc(), textOf_(*plan)};
  const auto written = writeFile(slotPath(folder_, session_, slot_), journalText(entry));
  if (!written) return tellFailed(QString::fromStdString(written.problems()[0].found));
  written_ = plan;
  slot_ = 1 - slot_;
  return true;
}

bool Recovery::tellFailed(const QString& why) {
  seen_ = nullptr;  // the next change tries again
  Q_EMIT failed(QStringLiteral("Unsaved changes are not protected against a crash: %1.").arg(why));
  return false;
}

void Recovery::clear() {
  timer_.stop();
  steps_ = 0;
  slot_ = 0;
  written_ = seen_ = nullptr;
  if (!lock_) return;
  removeSession(folder_, session_);
  lock_.reset();
}

}  // namespace wend::ui
