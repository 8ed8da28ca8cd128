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
/// Ensures   after a mark, key or point its neighbour is chosen, the next one first; after the last of them what had it
std::optional<ChosenEdit> removedChosen(const Subject& subject);

/// Without all marks of the chosen performer or crew member, or of whoever has the chosen mark. Nothing where there are
/// none, and for the camera, which keeps one.
std::optional<ChosenEdit> removedWay(const Subject& subject);

/// With the route that was found for the chosen of the crew as their marks. Nothing where none was found.
std::optional<ChosenEdit> routeTakenOver(const Subject& subject);

}  // namespace wend::ui
