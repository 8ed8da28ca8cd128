/// What can be done with a chosen span of the take: focus or iris planned anew in it, or the whole track taken into the
/// hand. Its ends can be typed, in seconds.
///
/// Ensures   (1) each action is one step of undo; one that changes nothing is none
///           (2) a refused action leaves the plan as it is and says why
#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QWidget>

#include "ui/score/score_view.h"

namespace wend::ui {

class SpanBar : public QWidget {
  Q_OBJECT

 public:
  SpanBar(Document& document, AnswersBridge& bridge, ScoreView& score, QWidget* parent = nullptr);

  QLineEdit* from() const { return from_; }
  QLineEdit* until() const { return until_; }
  QComboBox* axis() const { return axis_; }
  QPushButton* planButton() const { return plan_; }
  QPushButton* handButton() const { return hand_; }

 Q_SIGNALS:
  void told(const QString& words);

 private:
  void refresh();
  void typed();
  plan::Axis chosenAxis() const;
  void perform(const base::Result<plan::Plan>& edited, const QString& label, const QString& already);
  void planIt();
  void takeInHand();
  /// The take of the plan as it is, without what is only shown while something is dragged.
  bool ready() const;

  Document& document_;
  AnswersBridge& bridge_;
  ScoreView& score_;
  QLineEdit *from_, *until_;
  QComboBox* axis_;
  QPushButton *plan_, *hand_;
};

}  // namespace wend::ui
