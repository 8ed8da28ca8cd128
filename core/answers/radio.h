/// The radio links of a plan at one instant: where aerials are and what stands between them. Plan metres; losses in dB.
///
/// Aerials   the camera's at its sensor, a piece of gear's at its top, a person's at two thirds of their height, which
///           is a belt or a chest. What walls and leaves take where the plan does not say: 10 dB a wall, 6 dB a solid
///           or glass leaf, nothing a curtain. Common practice, no source.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/crew/link_fan.h"
#include "core/snags/evidence.h"

namespace wend::answers {

class Radio {
 public:
  /// With everybody who is there at t; those whose way is still to be found are nowhere. Requires `take` to live on.
  Radio(const Take& take, double t);

  /// Nothing while that end is not there or nobody knows where.
  std::optional<Point3> aerialOf(const std::string& end) const;
  /// Of somebody of the crew who stands upright at a place.
  Point3 aerialAt(const plan::Crew& member, Point place) const;

  /// Nothing while an end is not there.
  std::optional<snags::LinkAt> over(const plan::Link& link) const;
  /// With one end, somebody of the crew, at another place. Requires the member to be an end of the link.
  std::optional<snags::LinkAt> over(const plan::Link& link, const plan::Crew& member, Point place) const;
  /// What the link loses from its other end to places all round, as far as its budget carries in the open.
  std::optional<crew::LinkFan> fanFrom(const plan::Link& link, const plan::Crew& member) const;

 private:
  snags::LinkAt between(const plan::Link& link, Point3 a, Point3 b) const;
  std::vector<crew::Body> othersThan(const plan::Link& link) const;
  crew::LossOf ofWall() const;
  crew::LossOf ofLeaf() const;

  const Take& take_;
  geometry::Pose sensor_;
  sight::SceneAt now_;
  std::vector<crew::Body> people_;
};

/// The end of a link that is not that member; nothing when neither is.
std::optional<std::string> otherEnd(const plan::Link& link, const std::string& member);

}  // namespace wend::answers
