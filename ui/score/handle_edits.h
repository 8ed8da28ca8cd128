/// What dragging a handle of the score does to the plan.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "ui/document/selection.h"

namespace wend::ui {

/// The plan with the beat or key of that handle (sheets::ScoreHandle::key) moved by so many seconds and, where it has a
/// value on its stave, to `measure` (log2 mm for zoom, stops from T1 for iris). Focus keys move in time only.
/// Fails     as the edits of core/plan
base::Result<plan::Plan> movedHandle(const plan::Plan& plan, const std::string& key, double bySeconds,
                                     std::optional<double> measure);

/// What the handle is in the selection, and back; the key is empty for what has no handle.
Selection selectionOfHandle(const std::string& key);
std::string handleOf(const Selection& selection);

}  // namespace wend::ui
