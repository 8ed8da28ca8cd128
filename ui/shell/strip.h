/// The strip at the foot of the window: on the left what was said last, on the right what the last edit did to the
/// snags.
///
/// Ensures   (1) however long the words, they ask for no width: what does not fit is cut with an ellipsis, and the
///           whole stands in the tool tip and is what is read aloud; (2) a refusal goes with the next edit that
///           succeeds; other words stay until there are new ones
#pragma once

#include <QLabel>
#include <QWidget>

namespace wend::ui {

/// One line, cut where there is no room for it. `text()` is the whole.
class CutLabel : public QLabel {
  Q_OBJECT

 public:
  explicit CutLabel(QWidget* parent = nullptr);

  /// What is seen of the text.
  QString shownText() const;

 protected:
  void paintEvent(QPaintEvent* event) override;
};

class Strip : public QWidget {
  Q_OBJECT

 public:
  /// `resting` is said while there is nothing else to say.
  explicit Strip(const QString& resting, QWidget* parent = nullptr);

  void say(const QString& words);
  void refuse(const QString& words);
  /// What was refused is over.
  void settle();
  /// Lines; empty: nothing was edited.
  void showChange(const QString& lines);

  const CutLabel& said() const { return *said_; }
  const CutLabel& change() const { return *change_; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  /// What is said has the left, the change the right and half of it where both need more.
  void shareOut();

  QString resting_;
  CutLabel *said_, *change_;
  bool refused_ = false;
};

}  // namespace wend::ui
