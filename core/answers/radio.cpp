#include "core/answers/radio.h"

namespace wend::answers {

using snags::LinkAt;

namespace {

constexpr double kWallLoss = 10, kLeafLoss = 6;
/// Of a person's height: where a receiver hangs or a hand holds a remote.
constexpr double kWorn = 2.0 / 3;

double lossOfLeaf(const plan::Opening& opening) {
  if (opening.radioLoss) return *opening.radioLoss;
  const bool dense = opening.fill == plan::OpeningFill::solid || opening.fill == plan::OpeningFill::glass;
  return dense ? kLeafLoss : 0;
}

std::vector<crew::Body> peopleAt(const Take& take, double t, const geometry::Pose& sensor) {
  const plan::Plan& plan = take.plan();
  std::vector<crew::Body> bodies;
  for (std::size_t i = 0; i < plan.performers.size(); ++i) {
    const PerformerPose at = take.people().performerAt(i, t);
    const plan::Performer& performer = plan.performers[i];
    if (at.present) bodies.push_back({performer.id.text(), at.pos, performer.radius, at.floor, at.top});
  }
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    const CrewPose at = take.people().crewAt(i, t, sensor);
    if (at.present)
      bodies.push_back({plan.crew[i].id.text(), at.pos, plan.crew[i].radius, at.floor, at.floor + at.height});
  }
  return bodies;
}

}  // namespace

Radio::Radio(const Take& take, double t)
    : take_(take), sensor_(take.view().sensorAt(t)), now_(take.scene().at(t)), people_(peopleAt(take, t, sensor_)) {}

std::optional<Point3> Radio::aerialOf(const std::string& end) const {
  if (end == plan::kCameraEnd) return sensor_.at;
  for (const auto& body : people_)
    if (body.id == end) return geometry::at(body.at, geometry::lerp(body.bottom, body.top, kWorn));
  const plan::Gear* gear = take_.plan().gear.find(end);
  if (!gear) return std::nullopt;
  return geometry::at(gear->pos, take_.people().floorAt(gear->pos) + gear->height);
}

Point3 Radio::aerialAt(const plan::Crew& member, Point place) const {
  return geometry::at(place, take_.people().floorAt(place) + kWorn * member.height);
}

std::vector<crew::Body> Radio::othersThan(const plan::Link& link) const {
  std::vector<crew::Body> others;
  for (const auto& body : people_)
    if (body.id != link.from && body.id != link.to) others.push_back(body);
  return others;
}

crew::LossOf Radio::ofWall() const {
  return [&plan = take_.plan()](int tag) {
    return plan.set.walls[static_cast<std::size_t>(tag)].radioLoss.value_or(kWallLoss);
  };
}

crew::LossOf Radio::ofLeaf() const {
  return [&plan = take_.plan()](int tag) { return lossOfLeaf(plan.set.openings[static_cast<std::size_t>(tag)]); };
}

LinkAt Radio::between(const plan::Link& link, Point3 a, Point3 b) const {
  const crew::PathLoss loss = crew::pathLoss(now_, a, b, link.mhz, othersThan(link), ofWall(), ofLeaf());
  return LinkAt{loss.metres, link.budget - loss.total, static_cast<int>(loss.walls.size()),
                static_cast<int>(loss.leaves.size()), loss.bodies};
}

std::optional<LinkAt> Radio::over(const plan::Link& link) const {
  const auto from = aerialOf(link.from), to = aerialOf(link.to);
  if (!from || !to) return std::nullopt;
  return between(link, *from, *to);
}

std::optional<LinkAt> Radio::over(const plan::Link& link, const plan::Crew& member, Point place) const {
  const auto other = aerialOf(*otherEnd(link, member.id.text()));
  if (!other) return std::nullopt;
  return between(link, *other, aerialAt(member, place));
}

std::optional<crew::LinkFan> Radio::fanFrom(const plan::Link& link, const plan::Crew& member) const {
  const auto other = aerialOf(*otherEnd(link, member.id.text()));
  if (!other) return std::nullopt;
  const double reach = std::max(crew::kNearestMetres, crew::freeSpaceReach(link.mhz, link.budget));
  return crew::LinkFan(now_, *other, link.mhz, reach, othersThan(link), ofWall(), ofLeaf());
}

std::optional<std::string> otherEnd(const plan::Link& link, const std::string& member) {
  if (link.from == member) return link.to;
  if (link.to == member) return link.from;
  return std::nullopt;
}

}  // namespace wend::answers
