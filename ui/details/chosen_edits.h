/// Edits of what is chosen as a whole: another mark or key at the playhead, or none.
#pragma once

#include <optional>

#include "ui/details/field.h"

namespace wend::ui {

/// An edit with its name for undo and what is chosen afterwards.
struct ChosenEdit {
  std::string label;
  std::function<PlanEdit()> edited;
  Selection after;
};

/// A mark of the chosen track, where its way is at the playhead, or a key of the chosen axis. Nothing where the chosen
/// has neither.
std::optional<ChosenEdit> addedAtPlayhead(const Subject& subject);

/// Without the chosen mark, key or thing. Nothing where nothing can be taken away.
std::optional<ChosenEdit> removedChosen(const Subject& subject);

}  // namespace wend::ui
