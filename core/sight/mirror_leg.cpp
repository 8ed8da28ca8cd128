#include "core/sight/mirror_leg.h"

#include <algorithm>
#include <cmath>

#include "core/sight/ray.h"

namespace wend::sight {

namespace {

/// Metres off the mirror for each metre along the ray.
double slantTo(const Mirror& mirror, Vec direction) {
  return std::abs(geometry::cross(geometry::unit(mirror.face.b - mirror.face.a), direction));
}

/// The half behind the mirror, ready to be asked prism by prism.
class SecondLeg {
 public:
  SecondLeg(const SceneAt& now, const Mirror& mirror, Point foot, Vec direction, double mirrorAt)
      : now_(now),
        from_(foot + direction * mirrorAt),
        onward_(geometry::reflected(direction, mirror.face)),
        slant_(slantTo(mirror, direction)),
        mirrorAt_(mirrorAt) {}

  void append(std::uint32_t index, std::vector<MirrorHit>& hits) {
    crossings_.clear();
    appendCrossings(now_, now_.prism(index), from_, onward_, crossings_);
    for (const Crossing& c : crossings_)
      if (c.box.far * slant_ > kMirrorSkin)
        hits.push_back({{c.box.near + mirrorAt_, c.box.far + mirrorAt_, c.box.bottom, c.box.top}, index});
  }

 private:
  const SceneAt& now_;
  Point from_;
  Vec onward_;
  double slant_, mirrorAt_;
  std::vector<Crossing> crossings_;
};

}  // namespace

bool shows(const Mirror& mirror, Point foot) {
  return geometry::cross(mirror.face.b - mirror.face.a, foot - mirror.face.a) > 0;
}

void appendFirstLeg(const MirrorHit& hit, const Mirror& mirror, Vec direction, double mirrorAt,
                    std::vector<MirrorHit>& hits) {
  if ((mirrorAt - hit.box.near) * slantTo(mirror, direction) <= kMirrorSkin) return;
  hits.push_back({{hit.box.near, std::min(hit.box.far, mirrorAt), hit.box.bottom, hit.box.top}, hit.prism});
}

void appendSecondLeg(const SceneAt& now, const Mirror& mirror, Point foot, Vec direction, double mirrorAt,
                     std::vector<MirrorHit>& hits) {
  SecondLeg leg(now, mirror, foot, direction, mirrorAt);
  for (std::size_t i = 0; i < now.size(); ++i) leg.append(static_cast<std::uint32_t>(i), hits);
}

void appendSecondLeg(const SceneAt& now, std::span<const std::uint32_t> candidates, const Mirror& mirror, Point foot,
                     Vec direction, double mirrorAt, std::vector<MirrorHit>& hits) {
  SecondLeg leg(now, mirror, foot, direction, mirrorAt);
  for (const std::uint32_t i : candidates) leg.append(i, hits);
}

}  // namespace wend::sight
