/// What a radio link loses from one aerial to places all round it.
///
/// Frame     metres, heights above the datum, dB.
#pragma once

#include <vector>

#include "core/crew/link.h"

namespace wend::crew {

/// Looked for along rays half a degree apart, so that many places can be asked about at once.
class LinkFan {
 public:
  /// Requires mhz > 0, upTo > 0; `bodies` without the two who wear the aerials.
  LinkFan(const sight::SceneAt& now, Point3 aerial, double mhz, double upTo, std::span<const Body> bodies,
          const LossOf& ofWall, const LossOf& ofLeaf);

  /// The greater of the losses at the place's distance along the two rays beside it; along a ray it is `pathLoss`.
  /// Infinite further away than `upTo`.
  /// Error     what stands between the place's own path and both rays is missed: 9 mm wide a metre away at most.
  double lossTo(Point3 other) const;

 private:
  static constexpr int kRays = 720;
  double lossAlong(int ray, double run, double height) const;

  Point3 aerial_;
  double mhz_, upTo_;
  std::vector<LinkRay> rays_;
  LossOf ofWall_, ofLeaf_;
};

}  // namespace wend::crew
