/// All snags of the take in a list: gone to, accepted by name, taken back.
///
/// Ensures   (1) accepting and taking back are one step of undo each
///           (2) what is current and where the list is scrolled to stay while the take is computed anew
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QWidget>

#include "core/sheets/theme.h"
#include "ui/document/answers_bridge.h"
#include "ui/document/document.h"

namespace wend::ui {

class SnagList : public QWidget {
  Q_OBJECT

 public:
  SnagList(Document& document, AnswersBridge& bridge, QWidget* parent = nullptr);

  void setTheme(sheets::Theme theme);
  QListWidget* list() const { return list_; }
  /// Narrows the list to snags that have all its words in their text, mend, rule or name.
  QLineEdit* filter() const { return filter_; }
  QLineEdit* acceptedBy() const { return by_; }
  QLineEdit* note() const { return note_; }
  QPushButton* acceptButton() const { return accept_; }
  QPushButton* takeBackButton() const { return takeBack_; }

 Q_SIGNALS:
  void toldProblem(const QString& line);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void layOut();
  void refresh();
  void refreshButtons();
  void selectionChanged();
  QString currentKey() const;
  void goTo(const QListWidgetItem* item);
  void acceptPressed();
  void accept();
  void takeBack();
  void closeEntry();
  void propose(base::Result<plan::Plan> edited, const QString& label);

  Document& document_;
  AnswersBridge& bridge_;
  sheets::Theme theme_ = sheets::Theme::dark;
  QLabel* count_;
  QLineEdit* filter_;
  QListWidget* list_;
  QWidget* entry_;
  QLineEdit *by_, *note_;
  QPushButton *accept_, *takeBack_;
  QLabel* problem_;
};

}  // namespace wend::ui
