/// The chart shelf in a window of its own: charts on the left, the marks of the plan's lens on the right.
///
/// Keys      typed words narrow the list, Down goes into it, Return takes the current chart into the plan, F2 renames,
///           Delete moves to `removed`, Ctrl+Z and Ctrl+Shift+Z undo and redo in the plan, Escape closes
/// Ensures   (1) taking a chart is one step of undo; (2) the plan's lens is a copy: charts change only by being kept,
///           renamed or removed; (3) what could not be done is said in words and changed nothing
#pragma once

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <optional>

#include "ui/details/lens_marks_table.h"
#include "ui/document/document.h"
#include "ui/shelf/chart_shelf.h"

namespace wend::ui {

class ShelfWindow : public QDialog {
  Q_OBJECT

 public:
  ShelfWindow(Document& document, ChartShelf shelf, QWidget* parent = nullptr);

  QLineEdit* search() const { return search_; }
  QListWidget* list() const { return list_; }
  QLineEdit* newName() const { return newName_; }
  LensMarksTable* marks() const { return marks_; }
  QLabel* status() const { return status_; }
  QPushButton* useButton() const { return use_; }
  QPushButton* keepButton() const { return keep_; }
  QPushButton* removeButton() const { return remove_; }
  QPushButton* putBackButton() const { return putBack_; }
  const ChartShelf& shelf() const { return shelf_; }

  void importFrom(const QString& path);
  void exportTo(const QString& path);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void layOut();
  QWidget* chartsSide();
  QPushButton* newButton(const QString& words, const QString& tip, void (ShelfWindow::*act)());
  void addKeys();
  void refresh();
  void refreshButtons();
  const ShelvedChart* current() const;
  void choose(const QString& path);
  void use();
  void keep();
  void askImport();
  void askExport();
  void startRename();
  void rename();
  void remove();
  void putBack();
  /// Says what was done, or why not, and shows the chart it was about.
  void told(const base::Result<QString>& done, const QString& words);

  Document& document_;
  ChartShelf shelf_;
  QLineEdit *search_, *newName_;
  QListWidget* list_;
  QLabel *facts_, *status_;
  LensMarksTable* marks_;
  QPushButton *use_, *keep_, *import_, *export_, *rename_, *remove_, *putBack_;
  QString lastRemoved_;
};

/// Opens the user's shelf, or raises it where it is open. Requires a window that outlives the document's use.
void showShelf(Document& document, QWidget* window);

}  // namespace wend::ui
