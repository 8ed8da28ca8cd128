/// The one undo command: a plan for another.
#pragma once

#include <QUndoCommand>

#include "ui/document/document.h"

namespace wend::ui {

class ReplacePlan : public QUndoCommand {
 public:
  ReplacePlan(Document& document, Step step);

  void undo() override;
  void redo() override;
  int id() const override;
  bool mergeWith(const QUndoCommand* other) override;

 private:
  Document& document_;
  Step step_;
};

}  // namespace wend::ui
