/// The tables of the plan's lens: marks of the focus, iris and zoom ring, each with what leaving it out shows, and
/// which to measure next.
///
/// Keys      a digit or F2 types over a cell, Return takes it, Escape leaves it as it was; Delete takes the row out
/// Ensures   (1) a typed mark, an added and a removed one are one step of undo each
///           (2) what is refused changes nothing; the line below names the row and what to do
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTabBar>
#include <QTableWidget>
#include <QWidget>

#include "ui/details/lens_marks.h"
#include "ui/document/document.h"

namespace wend::ui {

class LensMarksTable : public QWidget {
  Q_OBJECT

 public:
  explicit LensMarksTable(Document& document, QWidget* parent = nullptr);

  enum Column { valueColumn, degreesColumn, witnessColumn, missColumn, columns };

  QTabBar* rings() const { return rings_; }
  QTableWidget* table() const { return table_; }
  QLineEdit* newValue() const { return value_; }
  QLineEdit* newDegrees() const { return degrees_; }
  QLineEdit* newWitness() const { return witness_; }
  QPushButton* addButton() const { return add_; }
  QLabel* advice() const { return advice_; }
  QLabel* problem() const { return problem_; }
  /// Something else has been done since: an old refusal is no news.
  void dropRefusal() { problem_->hide(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  optics::ScaleOf of() const { return static_cast<optics::ScaleOf>(rings_->currentIndex()); }
  void layOut();
  void refresh();
  void showRow(int row, const RingMark& mark, const QString& miss);
  void showAdvice();
  void typed(int row, int column);
  void add();
  void removeRow();
  /// `turnsBack` is said in place of a refusal that the marks turn back.
  bool propose(base::Result<plan::Plan> edited, const QString& label, const std::string& turnsBack = {});
  void refuse(const base::Problem& problem) { refuse(base::toText(problem)); }
  void refuse(const std::string& why);

  Document& document_;
  QTabBar* rings_;
  QTableWidget* table_;
  QLineEdit *value_, *degrees_, *witness_;
  QPushButton *add_, *remove_;
  QLabel *advice_, *problem_;
  bool filling_ = false;
};

}  // namespace wend::ui
