/// The plan's set as sight, light and bodies take it. Tags are places in the plan's lists.
#pragma once

#include <string>
#include <vector>

#include "core/crew/obstacles.h"
#include "core/crew/walking.h"
#include "core/light/face.h"
#include "core/light/luminaire.h"
#include "core/plan/plan.h"
#include "core/sight/scene.h"

namespace wend::answers {

sight::Scene sceneOf(const plan::Plan& plan);

/// Areas, lamps and exposure. `scene` must outlive it. Core reads no files: the luminaires of photometric files come
/// with the plan, by the names it gives them. A lamp whose file did not come shines nobody knows how much: faces it
/// would have to be added to are unknown.
light::Lighting lightingOf(const plan::Plan& plan, const sight::Scene& scene, const light::Luminaires& luminaires = {});
/// The keys of the variable density in front of the lens.
std::vector<light::DensityKey> densityKeys(const plan::Plan& plan);

/// What an area reads by the clock; empty where it goes by states.
std::vector<light::ClockReading> clockReadingsOf(const plan::Area& area);

/// The id of what a sight result points at.
std::string idOf(const plan::Plan& plan, const sight::Source& source);

/// The ids by which bodies meet the things of the set, and whether they are hot. `plan` must outlive it.
crew::NameOf namesOf(const plan::Plan& plan);

/// Kerbs and thresholds.
std::vector<crew::GroundEdge> groundEdges(const plan::Plan& plan);

/// A closed polygon around an area or a piece; discs get 64 corners.
std::vector<geometry::Point> outlineOf(const plan::Footprint& shape);

}  // namespace wend::answers
