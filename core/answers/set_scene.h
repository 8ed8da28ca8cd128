/// The plan's set as sight, light and bodies take it. Tags are places in the plan's lists.
#pragma once

#include <string>
#include <vector>

#include "core/crew/bodies.h"
#include "core/crew/walking.h"
#include "core/light/face.h"
#include "core/plan/plan.h"
#include "core/sight/scene.h"

namespace wend::answers {

sight::Scene sceneOf(const plan::Plan& plan);

/// Areas, lamps and exposure. `scene` must outlive it. Lamps of a photometric file give no light yet: their candela is
/// unknown here, and `unknownFixtures` names them.
light::Lighting lightingOf(const plan::Plan& plan, const sight::Scene& scene);
std::vector<std::string> unknownFixtures(const plan::Plan& plan);

/// The id of what a sight result points at.
std::string idOf(const plan::Plan& plan, const sight::Source& source);

/// Everything fixed that a body can run into, glass included, leaves left out.
std::vector<crew::Obstacle> fixedObstacles(const plan::Plan& plan, const sight::Scene& scene);
/// The leaves at an instant; those in motion count where they are.
std::vector<crew::Obstacle> leafObstacles(const plan::Plan& plan, const sight::SceneAt& now);

/// Kerbs and thresholds.
std::vector<crew::GroundEdge> groundEdges(const plan::Plan& plan);

/// A closed polygon around an area or a piece; discs get 64 corners.
std::vector<geometry::Point> outlineOf(const plan::Footprint& shape);

}  // namespace wend::answers
