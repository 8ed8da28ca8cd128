#include "ui/document/replace_plan.h"

#include <utility>

namespace wend::ui {

ReplacePlan::ReplacePlan(Document& document, Step step)
    : QUndoCommand(step.label), document_(document), step_(std::move(step)) {}

void ReplacePlan::undo() {
  document_.show(step_.before, step_.selectionBefore);
}

void ReplacePlan::redo() {
  document_.show(step_.after, step_.selectionAfter);
}

int ReplacePlan::id() const {
  return step_.mergeKey.isEmpty() ? -1 : 1;
}

bool ReplacePlan::mergeWith(const QUndoCommand* other) {
  const Step& next = static_cast<const ReplacePlan*>(other)->step_;
  if (next.mergeKey != step_.mergeKey) return false;
  step_.after = next.after;
  step_.selectionAfter = next.selectionAfter;
  // Nudged there and back again: nothing is left to undo.
  if (*step_.after == *step_.before) setObsolete(true);
  return true;
}

}  // namespace wend::ui
