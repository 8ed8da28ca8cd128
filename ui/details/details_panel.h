/// Details: whatever is chosen, edited by number. Nothing chosen: the plan itself.
///
/// Ensures   (1) a typed value becomes one step of undo; nudges in a row become one
///           (2) a refused edit changes nothing: its text stays, its field is marked, and one line says why and what
///               to do
///           (3) shows the preview while something is dragged
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
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
  /// Takes all marks of whoever is chosen out; shown while they have some.
  QPushButton* wayButton() const { return way_; }
  /// Makes the found route of the chosen crew member their marks; shown while there is one.
  QPushButton* routeButton() const { return route_; }
  /// Shown while the lens is chosen.
  LensMarksTable* lensMarks() const { return lensMarks_; }
  /// The place to type in of the field so called; null where the chosen has none.
  QWidget* editorOf(const QString& label) const;

 public Q_SLOTS:
  /// Takes the chosen mark, key or thing out of the plan.
  void removeChosen();
  /// The Delete key, where no field has the keyboard: as removeChosen, but what came to be chosen only because its last
  /// mark or key went stays. Somebody without marks is still wanted, their route is looked for, and a key that is hit
  /// once more, or held, must not take them along unseen; the button does, which says what it takes.
  void removeByKey();
  /// Adds a mark to the chosen track or a key to the chosen axis at the playhead.
  void addAtPlayhead();
  /// Adds a thing of that kind ("performer") near the camera at the playhead and chooses it.
  void addThing(const QString& label);

 Q_SIGNALS:
  /// What keeps an edit from being made, in one line.
  void toldProblem(const QString& line);
  /// It was mended, taken back, or is no longer what is chosen.
  void problemOver();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  Subject subject() const;
  void layOut();
  void refresh();
  void refreshComputed(const Subject& subject);
  void refreshButtons(const Subject& subject);
  void placeRoute(bool first);
  void refreshChange();
  void offerNewThings();
  void commit(int field);
  void nudge(int field, double steps);
  bool propose(const Field& field, const Value& value, const QString& mergeKey);
  bool perform(const std::optional<ChosenEdit>& edit);
  void performRemoval(const std::optional<ChosenEdit>& edit);
  void refuse(const QString& what, const base::Problem& problem);
  void refuseAsNamed(const QString& what, const std::string& referrers);
  void tellProblem(const QString& line);
  void clearProblem();

  Document& document_;
  AnswersBridge& bridge_;
  sheets::Theme theme_ = sheets::Theme::dark;
  Selection chosen_;   ///< what is chosen, as far as the shown plan has it
  Selection emptied_;  ///< chosen because its last part went
  Fields fields_;
  QLabel *heading_, *remark_, *problem_, *computed_, *change_;
  ContentsBox* contents_;
  FieldGrid* grid_;
  LensMarksTable* lensMarks_;
  QPushButton *add_, *remove_, *way_, *route_, *new_;
  QVBoxLayout* rows_ = nullptr;
  QWidget* wayButtons_ = nullptr;
};

}  // namespace wend::ui
