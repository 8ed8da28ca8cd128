/// Keeps Answers up with the document: the shown instant at once, the whole take on a worker.
///
/// Ensures   (1) take and instant are of document.shown() whenever changed() is told
///           (2) evidence, snags and ground are of a plan that was shown; while it is not the shown one, stale() is
///           true (3) the newest plan wins: older work is cancelled and never told; a cancelled run publishes nothing
///           (4) a plan that cannot be resolved keeps the last take, and trouble() says why
#pragma once

#include <QObject>
#include <condition_variable>
#include <mutex>
#include <thread>

#include "core/answers/answers.h"
#include "ui/document/attached.h"
#include "ui/document/document.h"

namespace wend::ui {

class AnswersBridge : public QObject {
  Q_OBJECT

 public:
  explicit AnswersBridge(Document& document, QObject* parent = nullptr);
  ~AnswersBridge() override;

  /// Never null after the first plan that could be resolved.
  const answers::AnswersPtr& answers() const { return shown_; }
  const answers::Instant& instant() const { return instant_; }
  bool stale() const { return stale_; }
  const base::Problems& trouble() const { return trouble_; }
  /// What there is to say of the photometric files the shown plan names.
  const base::Problems& attachedNotes() const { return attached_.notes(); }
  /// What the last finished edit did to the snags.
  const snags::SnagChange& change() const { return change_; }
  /// Waits for the whole take of the shown plan; for tests and for what prints.
  void finish();

 Q_SIGNALS:
  /// Take or instant changed.
  void changed();
  /// The whole take arrived, or fell behind.
  void takeChanged();

 private:
  struct Job {
    answers::TakePtr take;
    std::stop_source stop;
    quint64 number = 0;
  };
  void planShown();
  void edited();
  void compare();
  void moved();
  void playheadMoved();
  void work(std::stop_token stop);
  void deliver(quint64 number, answers::AnswersPtr answers);
  answers::AnswersPtr withOldEvidence(const answers::TakePtr& take) const;

  Document& document_;
  Attached attached_;
  plan::PlanPtr plan_;
  answers::AnswersPtr shown_, whole_;
  answers::Instant instant_;
  bool stale_ = true;
  base::Problems trouble_;
  /// Of the plan as it is, and of the plan before the last edit: what is shown while something is dragged is neither.
  std::shared_ptr<const snags::Snags> now_, before_;
  snags::SnagChange change_;
  quint64 asked_ = 0;

  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Job> waiting_;
  std::stop_source running_;
  std::jthread worker_;  // last: joined before what it uses goes
};

}  // namespace wend::ui
