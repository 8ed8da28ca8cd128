/// The plan that is open and everything the three faces share about it: undo, a preview while something is dragged,
/// the playhead, what is chosen, the file. Knows nothing of files' text, of answers or of widgets.
///
/// Ensures   (1) every change of the plan is one step of undo; undone and redone states are the very same plans
///           (2) a step brings back what was chosen before it, and on redo what was chosen after it
///           (3) steps with the same non-empty merge key in a row become one, as nudges by arrow keys do
///           (4) what is chosen and the playhead always exist in the shown plan
///           (5) playhead, selection and preview are never steps of undo and never make the document modified
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <optional>

#include "core/plan/plan.h"
#include "ui/document/selection.h"

namespace wend::ui {

/// One change of the plan.
struct Step {
  plan::PlanPtr before, after;
  QString label;     ///< "Move mark A2", after "Undo "
  QString mergeKey;  ///< empty: never merges
  Selection selectionBefore, selectionAfter;
};

class Document : public QObject {
  Q_OBJECT

 public:
  /// Starts with an empty plan that has no file.
  explicit Document(QObject* parent = nullptr);
  ~Document() override;

  /// The plan as it would be saved. Never null.
  const plan::PlanPtr& plan() const { return plan_; }
  /// What views draw: the preview while there is one, else the plan. Never null.
  const plan::PlanPtr& shown() const { return preview_ ? preview_ : plan_; }
  bool hasPreview() const { return preview_ != nullptr; }

  /// Replaces the document: no undo, no selection, playhead at the start. Not modified, unless it was recovered.
  /// Requires plan not null.
  void start(plan::PlanPtr plan, const QString& path, const QByteArray& contentHash = {}, bool recovered = false);

  /// Makes `after` the plan, as one step; drops a preview. An equal plan is no step. Without a selection what is chosen
  /// stays. Requires after not null.
  void propose(plan::PlanPtr after, const QString& label, const QString& mergeKey = {},
               std::optional<Selection> selection = std::nullopt);

  /// Shows a plan that is not a step yet. Requires preview not null.
  void setPreview(plan::PlanPtr preview);
  /// Back to the plan.
  void dropPreview();
  /// Makes the preview the plan, as one step. Without a preview nothing happens.
  void commitPreview(const QString& label, const QString& mergeKey = {});

  QUndoStack& undoStack() { return undo_; }

  double playhead() const { return playhead_; }
  /// Seconds, held within the take. Requires a number.
  void setPlayhead(double seconds);

  const Selection& selection() const { return selection_; }
  /// What does not exist in the shown plan chooses nothing.
  void select(const Selection& selection);

  /// Empty before the first save.
  const QString& path() const { return path_; }
  /// Of the file as it was last read or written; empty when there is none.
  const QByteArray& contentHash() const { return contentHash_; }
  bool isModified() const { return recovered_ || !undo_.isClean(); }
  /// To be told after the plan was written.
  void saved(const QString& path, const QByteArray& contentHash);

 Q_SIGNALS:
  void planChanged();
  /// The shown plan changed without a step: a preview came, moved or was dropped.
  void previewChanged();
  void playheadChanged(double seconds);
  void selectionChanged();
  void pathChanged();
  void modifiedChanged(bool modified);

 private:
  friend class ReplacePlan;
  void show(plan::PlanPtr plan, const Selection& selection);
  void keepInPlan();
  void tellModified();

  plan::PlanPtr plan_, preview_;
  Selection selection_;
  double playhead_ = 0;
  QString path_;
  QByteArray contentHash_;
  bool recovered_ = false;
  bool toldModified_ = false;
  QUndoStack undo_;
};

}  // namespace wend::ui
