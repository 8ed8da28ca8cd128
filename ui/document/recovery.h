/// Unsaved changes outlive a crash: a journal of the open plan every few seconds while it is modified, and the list of
/// what earlier sessions left.
///
/// Ensures   (1) 5 s after a change, or after 50 steps, whichever is first, the journal holds the plan with that change
///           (2) it holds the two latest states in two files, so that one survives damage of the other
///           (3) a saved, closed or discarded plan leaves nothing
///           (4) what a living session journals is never listed; what a dead one left always is, damaged or not
///           (5) nothing here ever touches the plan's own file
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QObject>
#include <QString>
#include <QTimer>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "ui/document/document.h"
#include "ui/document/file_lock.h"

namespace wend::ui {

/// One state of a plan as it was journalled.
struct JournalEntry {
  QString planPath;         ///< empty: never saved
  QByteArray planFileHash;  ///< of the plan's file when it was opened or saved last; tells whether it has changed since
  QDateTime when;           ///< UTC
  std::string planText;
  bool operator==(const JournalEntry&) const = default;
};

/// Text of a journal file and back. A file that was cut or changed anywhere gives a problem, "damaged-recovery".
QByteArray journalText(const JournalEntry& entry);
base::Result<JournalEntry> readJournal(const QByteArray& text);

/// What one ended session left. Holds that session's lock, so that no other window offers it too.
struct Unsaved {
  QString session;
  std::vector<JournalEntry> states;  ///< sound ones, newest first
  int damaged = 0;                   ///< states that could not be read
  std::shared_ptr<FileLock> lock;
};

/// Newest first; sessions without a sound state last.
std::vector<Unsaved> unsavedSessions(const QString& folder);

/// Removes what the session left. A recovered plan is discarded only after its new session has journalled it, so that
/// a second crash loses nothing either.
void discard(const QString& folder, const Unsaved& unsaved);

/// Journals one document while it lives.
class Recovery : public QObject {
  Q_OBJECT

 public:
  using TextOf = std::function<std::string(const plan::Plan&)>;

  static constexpr int kDelayMs = 5000;
  static constexpr int kMostSteps = 50;

  /// `textOf` writes a plan as a file's text. Requires that `document` outlives this.
  Recovery(Document& document, TextOf textOf, QString folder, int delayMs = kDelayMs, QObject* parent = nullptr);
  /// A modified document that is let go of was discarded by its owner: nothing stays.
  ~Recovery() override;

  /// Journals now what is not journalled yet. True when the journal holds the plan.
  bool writeNow();
  QString session() const { return session_; }

 Q_SIGNALS:
  /// The journal cannot be written: unsaved changes are not protected. One sentence with the reason.
  void failed(const QString& why);

 private:
  void planChanged();
  void clear();
  bool tellFailed(const QString& why);

  Document& document_;
  TextOf textOf_;
  QString folder_, session_;
  std::optional<FileLock> lock_;
  QTimer timer_;
  plan::PlanPtr written_, seen_;
  int slot_ = 0;
  int steps_ = 0;
};

}  // namespace wend::ui
