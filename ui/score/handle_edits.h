/// What dragging a handle of the score does to the plan.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "core/plan/references.h"
#include "ui/document/selection.h"

namespace wend::ui {

/// Where a handle goes. What is left out stays as it is.
struct HandleMove {
  std::optional<double> to;       ///< seconds
  std::optional<double> measure;  ///< as sheets::ScoreHandle::value
  bool whole = false;             ///< the key goes with both its ends; else the end that is held goes alone
};

/// The plan with the beat, key or pull of that handle (sheets::ScoreHandle::key) moved.
/// Ensures   (1) the end of a key that is held goes, the other stays: never over one another
///           (2) the first key of an axis and the first pull keep their time: they say how the take starts
///           (3) zoom and iris stay within the lens; a density is never negative
///           (4) focus on somebody or something has no value of its own: its measure is left aside
/// Fails     as the edits of core/plan; no-such-beat, no-such-key
base::Result<plan::Plan> movedHandle(const plan::Plan& plan, const std::string& key, const HandleMove& move);

/// What the handle is in the selection, and back; the key is empty for what has no handle.
Selection selectionOfHandle(const std::string& key);
std::string handleOf(const Selection& selection);

/// The axis of a key's handle; nothing for beats and pulls.
std::optional<plan::Axis> axisOfHandle(const std::string& key);

}  // namespace wend::ui
