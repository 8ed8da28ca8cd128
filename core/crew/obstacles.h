/// What a body can meet of the set: the walls, pieces, panes and leaves that stand in a sight scene.
#pragma once

#include "core/crew/bodies.h"
#include "core/sight/scene.h"

namespace wend::crew {

/// What the caller knows of a thing of the scene.
struct Named {
  std::string id;
  bool hot = false;
};
using NameOf = std::function<Named(sight::Source)>;

/// Everything that stands all along, glass too. A wall comes in pieces that all bear its name.
std::vector<Obstacle> obstaclesOf(const sight::Scene& scene, const NameOf& nameOf);

/// What moves during the take, where it is at the instant: pieces that stand at one of their places or are on their
/// way, and the leaves that the scene puts in the way (doors that stand or swing, shut openings that bar it) or that
/// the caller calls stiff.
/// Frame     `stiff` is asked with a leaf's tag: a door is stiff even where people may push through it, a curtain
///           never.
std::vector<Obstacle> leavesOf(const sight::SceneAt& scene, const NameOf& nameOf,
                               const std::function<bool(int)>& stiff = {});

}  // namespace wend::crew
