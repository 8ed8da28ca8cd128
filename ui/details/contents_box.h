/// A box with everything the plan has, by kind and name: what cannot be clicked on the plan is chosen here.
#pragma once

#include <QComboBox>
#include <vector>

#include "ui/document/document.h"

namespace wend::ui {

/// A thing of the plan and the words it is listed by.
struct Content {
  QString words;
  Selection what;
};

/// The plan itself first, then what is of the camera and the lens, the set, people, equipment and keys, each kind in
/// the plan's order.
/// Ensures   (1) everything listed exists in the plan
std::vector<Content> contentsOf(const plan::Plan& plan);

class ContentsBox : public QComboBox {
  Q_OBJECT

 public:
  explicit ContentsBox(Document& document, QWidget* parent = nullptr);

 private:
  void refresh();
  void showChosen();

  Document& document_;
  std::vector<Content> contents_;
  plan::PlanPtr listed_;
};

}  // namespace wend::ui
