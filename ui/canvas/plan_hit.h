/// What of a plan lies under the pointer.
#pragma once

#include <optional>

#include "core/answers/answers.h"
#include "core/plan/references.h"
#include "core/sheets/plan_view.h"
#include "ui/document/selection.h"

namespace wend::ui {

/// The reach of a pointer, px.
inline constexpr double kReach = 12;

struct PlanHit {
  Selection what;
  std::optional<plan::MarkRef> mark;  ///< when it is a mark, which can be dragged
};

/// What a click there means, as the picture is drawn: a snag; the nearest mark within reach, the one whose time is
/// nearest to the instant's among those at one place, unless a body is clearly nearer; whoever stands or walks there;
/// the camera; a shelter or gear; an opening or a mirror; the topmost piece; a wall; else nothing.
std::optional<PlanHit> planHit(const answers::Answers& answers, const answers::Instant& instant,
                               const sheets::PlanView& view, geometry::Point px);

/// The selection as pictures name it.
sheets::Chosen chosenOf(const Selection& selection);
/// The mark that is selected, if it is one.
std::optional<plan::MarkRef> markOf(const Selection& selection);

}  // namespace wend::ui
