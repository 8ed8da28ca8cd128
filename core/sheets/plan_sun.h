/// The sun on the floor plan: the shadows of people and camera on level ground.
#pragma once

#include "core/sheets/plan_view.h"

namespace wend::sheets {

/// Shadows of performers, crew, camera and the poles held at the instant, of whoever the sun reaches at the top, with
/// the metres of each performer's shadow at its end. Nothing where the sun is down or not known.
///
/// Stops holding where ground is not level or something stands in the shadow's way: it is drawn as on an open floor.
Layer sunLayer(const answers::Answers& answers, const answers::Instant& instant, const PlanView& view);

}  // namespace wend::sheets
