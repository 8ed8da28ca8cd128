/// Details: whatever is chosen, edited by number. Nothing chosen: the plan itself.
///
/// Ensures   (1) a typed value becomes one step of undo; nudges in a row become one
///           (2) a refused edit changes nothing: its text stays, its field is outlined, and one line says why and what
///               to do
///           (3) shows the preview while something is dragged
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "core/sheets/theme.h"
#include "ui/details/chosen_edits.h"
#include "ui/details/contents_box.h"
#include "ui/details/field_grid.h"
#include "ui/details/lens_marks_table.h"
#include "ui/document/answers_bridge.h"
#include "ui/document/document.h"

namespace wend::ui {

class DetailsPanel : public QWidget {
  Q_OBJECT

 public:
  DetailsPanel(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);
  ~DetailsPanel() override;

  void setTheme(sheets::Theme theme);
  /// What the plan does not have yet, to be added.
  QPushButton* newButton() const { return new_; }
  /// Shown while the lens is chosen.
  LensMarksTable* lensMarks() const { return lensMarks_; }
  /// The place to type in of the field so called; null where the chosen has none.
  QWidget* editorOf(const QString& label) const;

 public Q_SLOTS:
  /// Takes the chosen mark, key or thing out of the plan. Also the Delete key, where no field has the keyboard.
  void removeChosen();
  /// Adds a mark to the chosen track or a key to the chosen axis at the playhead.
  void addAtPlayhead();
  /// Adds a thing of that kind ("performer") near the camera at the playhead and chooses it.
  void addThing(const QString& label);

 Q_SIGNALS:
  /// What keeps an edit from being made, in one line.
  void toldProblem(const QString& line);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  Subject subject() const;
  void layOut();
  void refresh();
  void refreshComputed(const Subject& subject);
  void refreshButtons(const Subject& subject);
  void refreshChange();
  void offerNewThings();
  void commit(int field);
  void nudge(int field, double steps);
  bool propose(const Field& field, const Value& value, const QString& mergeKey);
  void perform(const std::optional<ChosenEdit>& edit);
  void refuse(const QString& what, const base::Problem& problem);
  void clearProblem();

  Document& document_;
  AnswersBridge& bridge_;
  sheets::Theme theme_ = sheets::Theme::dark;
  Selection chosen_;  ///< what is chosen, as far as the shown plan has it
  Fields fields_;
  QLabel *heading_, *remark_, *problem_, *computed_, *change_;
  ContentsBox* contents_;
  FieldGrid* grid_;
  LensMarksTable* lensMarks_;
  QPushButton *add_, *remove_, *new_;
};

}  // namespace wend::ui
