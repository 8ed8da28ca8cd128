#include "core/answers/hiders.h"

namespace wend::answers {

namespace {

void addPerformers(const Take& take, double t, std::vector<sight::Hider>& hiders) {
  for (std::size_t i = 0; i < take.plan().performers.size(); ++i) {
    const auto figure = take.figureAt(i, t);
    if (!figure) continue;
    const double floor = figure->foot.z;
    hiders.push_back({{geometry::flat(figure->foot), figure->radius, floor, floor + figure->top}, static_cast<int>(i)});
  }
}

void addCrew(const Take& take, double t, std::vector<sight::Hider>& hiders) {
  const geometry::Pose sensor = take.view().sensorAt(t);
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
    const CrewPose pose = take.people().crewAt(i, t, sensor);
    if (!pose.present) continue;
    const sight::Body body{pose.pos, take.plan().crew[i].radius, pose.floor, pose.floor + pose.height};
    hiders.push_back({body, crewTag(take, i)});
  }
}

}  // namespace

sight::HidersAt hidersOf(const Take& take) {
  const plan::BodiesHide hide = take.plan().sightRules.bodiesHide;
  if (hide == plan::BodiesHide::nobody) return {};
  return [&take, hide](double t) {
    std::vector<sight::Hider> hiders;
    addPerformers(take, t, hiders);
    if (hide == plan::BodiesHide::everybody) addCrew(take, t, hiders);
    return hiders;
  };
}

}  // namespace wend::answers
