// Radio links between the people, the gear and the camera of a plan.
#include "core/answers/whole_take.h"
#include "core/crew/link.h"

namespace wend::answers {

using namespace snags;

namespace {

constexpr double kWallLoss = 10, kLeafLoss = 6;
/// Of a person's height: where a receiver hangs or a hand holds a remote.
constexpr double kWorn = 2.0 / 3;

double lossOfLeaf(const plan::Opening& opening) {
  if (opening.radioLoss) return *opening.radioLoss;
  const bool dense = opening.fill == plan::OpeningFill::solid || opening.fill == plan::OpeningFill::glass;
  return dense ? kLeafLoss : 0;
}

std::vector<crew::Body> peopleAt(const plan::Plan& plan, const Instant& instant) {
  std::vector<crew::Body> bodies;
  for (std::size_t i = 0; i < instant.performers.size(); ++i) {
    const PerformerAt& at = instant.performers[i];
    if (at.present) bodies.push_back({at.id, at.pos, plan.performers[i].radius, at.floor, at.top});
  }
  for (const auto& at : instant.crew)
    if (at.present) bodies.push_back({at.id, at.pos, at.radius, at.floor, at.floor + at.height});
  return bodies;
}

/// Where the aerial of a link's end is.
std::optional<Point3> aerialOf(const Take& take, const Instant& instant, const std::vector<crew::Body>& people,
                               const std::string& end) {
  if (end == plan::kCameraEnd) return instant.camera.sensor.at;
  for (const auto& body : people)
    if (body.id == end) return geometry::at(body.at, geometry::lerp(body.bottom, body.top, kWorn));
  const plan::Gear* gear = take.plan().gear.find(end);
  if (!gear) return std::nullopt;
  return geometry::at(gear->pos, take.people().floorAt(gear->pos) + gear->height);
}

std::optional<LinkAt> linkAt(const Take& take, const plan::Link& link, const Instant& instant,
                             const sight::SceneAt& now, const std::vector<crew::Body>& people) {
  const plan::Plan& plan = take.plan();
  const auto from = aerialOf(take, instant, people, link.from), to = aerialOf(take, instant, people, link.to);
  if (!from || !to) return std::nullopt;
  std::vector<crew::Body> others;
  for (const auto& body : people)
    if (body.id != link.from && body.id != link.to) others.push_back(body);
  const auto ofWall = [&](int tag) {
    return plan.set.walls[static_cast<std::size_t>(tag)].radioLoss.value_or(kWallLoss);
  };
  const auto ofLeaf = [&](int tag) { return lossOfLeaf(plan.set.openings[static_cast<std::size_t>(tag)]); };
  const crew::PathLoss loss = crew::pathLoss(now, *from, *to, link.mhz, others, ofWall, ofLeaf);
  return LinkAt{loss.metres, link.budget - loss.total, static_cast<int>(loss.walls.size()),
                static_cast<int>(loss.leaves.size()), loss.bodies};
}

}  // namespace

std::vector<LinkOver> linksOver(const Take& take, const std::vector<Instant>& samples) {
  std::vector<LinkOver> links;
  for (const auto& link : take.plan().links) links.push_back({link.id.text(), {}});
  if (links.empty()) return links;
  for (const auto& instant : samples) {
    const sight::SceneAt now = take.scene().at(instant.time);
    const auto people = peopleAt(take.plan(), instant);
    for (std::size_t i = 0; i < links.size(); ++i)
      links[i].at.push_back(linkAt(take, take.plan().links[i], instant, now, people));
  }
  return links;
}

}  // namespace wend::answers
