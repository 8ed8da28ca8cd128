#include "core/crew/obstacles.h"

namespace wend::crew {
namespace {

Obstacle obstacleOf(const sight::Scene& scene, const sight::Prism& prism, const Named& named) {
  Obstacle obstacle{named.id, {}, false, 0, prism.bottom, prism.top, named.hot, false};
  switch (prism.form) {
    case sight::Prism::Form::outline: {
      const auto corners = scene.corners(prism);
      obstacle.points.assign(corners.begin(), corners.end());
      obstacle.closed = true;
      break;
    }
    case sight::Prism::Form::disc:
      obstacle.points = {prism.centre};
      obstacle.radius = prism.radius;
      break;
    case sight::Prism::Form::sheet:
      obstacle.points = {prism.sheet.a, prism.sheet.b};
      break;
  }
  return obstacle;
}

}  // namespace

std::vector<Obstacle> obstaclesOf(const sight::Scene& scene, const NameOf& nameOf) {
  std::vector<Obstacle> obstacles;
  for (const auto* list : {&scene.prisms(), &scene.glass()})
    for (const sight::Prism& prism : *list) obstacles.push_back(obstacleOf(scene, prism, nameOf(prism.source)));
  return obstacles;
}

std::vector<Obstacle> leavesOf(const sight::SceneAt& scene, const NameOf& nameOf,
                               const std::function<bool(int)>& stiff) {
  std::vector<Obstacle> obstacles;
  for (const sight::Prism& prism : scene.parked())
    obstacles.push_back(obstacleOf(scene.scene(), prism, nameOf(prism.source)));
  for (const sight::MovingPiece& piece : scene.moving()) {
    const Named named = nameOf({sight::Owner::piece, piece.tag});
    obstacles.push_back(
        {named.id, piece.points, piece.closed, piece.radius, piece.bottom, piece.top, named.hot, false});
  }
  for (const sight::Leaf& leaf : scene.leaves()) {
    if (!leaf.inWay && !(stiff && stiff(leaf.tag))) continue;
    const Named named = nameOf({sight::Owner::opening, leaf.tag});
    obstacles.push_back({named.id, {leaf.panel.a, leaf.panel.b}, false, 0, leaf.bottom, leaf.top, named.hot, false});
  }
  return obstacles;
}

}  // namespace wend::crew
