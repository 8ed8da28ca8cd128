#include "core/answers/panes.h"

#include <algorithm>
#include <cmath>

#include "core/answers/set_scene.h"
#include "core/sight/mirror_leg.h"
#include "core/sight/ray.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

namespace {

using geometry::Segment;

/// A part is at most so long and so high: over it the look changes by a few degrees from where a lens stands.
constexpr double kPart = 0.4, kPartHigh = 0.6;

struct Pane {
  std::string id;
  Segment foot;
  double bottom = 0, top = 0;
  double thickness = 0;  ///< of the wall around it, doubled where it hangs on the wall's face
};

void addOpenings(const Take& take, const sight::SceneAt& now, std::vector<Pane>& panes) {
  const plan::Set& set = take.plan().set;
  for (const sight::Leaf& leaf : now.leaves()) {
    if (!leaf.pane) continue;
    const plan::Opening& opening = set.openings[static_cast<std::size_t>(leaf.tag)];
    const double thickness = set.walls.find(opening.wall)->thickness * (opening.moves ? 2 : 1);
    panes.push_back({opening.id.text(), leaf.panel, leaf.bottom, leaf.top, thickness});
  }
}

void addPieces(const Take& take, const std::vector<sight::Prism>& prisms, std::vector<Pane>& panes) {
  for (const sight::Prism& prism : prisms)
    if (prism.surface == sight::Surface::glass && prism.form == sight::Prism::Form::sheet)
      panes.push_back({idOf(take.plan(), prism.source), prism.sheet, prism.bottom, prism.top, 0});
}

std::vector<Pane> panesOf(const Take& take, const sight::SceneAt& now) {
  std::vector<Pane> panes;
  addOpenings(take, now, panes);
  addPieces(take, take.scene().glass(), panes);
  addPieces(take, now.parked(), panes);
  return panes;
}

int partsIn(double length, double most) {
  return std::max(1, static_cast<int>(std::ceil(length / most - 1e-9)));
}

/// The parts of a pane as mirrors that show on the eye's side.
std::vector<sight::Mirror> partsOf(const Pane& pane, Point eye) {
  std::vector<sight::Mirror> parts;
  sight::Mirror whole{pane.foot, pane.bottom, pane.top, 0};
  if (!sight::shows(whole, eye)) std::swap(whole.face.a, whole.face.b);
  const Segment foot = whole.face;
  if (!sight::shows(whole, eye) || !(pane.top > pane.bottom)) return parts;
  const int across = partsIn(geometry::distance(foot.a, foot.b), kPart),
            up = partsIn(pane.top - pane.bottom, kPartHigh);
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < up; ++k)
      parts.push_back({{lerp(foot.a, foot.b, double(i) / across), lerp(foot.a, foot.b, (i + 1.0) / across)},
                       geometry::lerp(pane.bottom, pane.top, double(k) / up),
                       geometry::lerp(pane.bottom, pane.top, (k + 1.0) / up),
                       0});
  return parts;
}

Point3 middleOf(const sight::Mirror& part) {
  return geometry::at(lerp(part.face.a, part.face.b, 0.5), (part.bottom + part.top) / 2);
}

bool againstAWall(const Take& take, const Pane& pane, Point middle) {
  const geometry::Vec off = geometry::left(geometry::unit(pane.foot.b - pane.foot.a)) * (pane.thickness / 2 + 0.05);
  return sight::crossesWall(take.scene(), middle - off, middle + off);
}

}  // namespace

std::vector<TurnedGlass> turnedGlass(const Take& take, const sight::SceneAt& now, const sight::Eye& eye, double t) {
  const double least = snags::threshold(take.plan(), "glass-mirror").value;
  sight::Eye narrow = eye;
  narrow.marginDegrees = 0;
  const sight::Frame delivered(narrow);
  std::vector<TurnedGlass> turned;
  for (const Pane& pane : panesOf(take, now)) {
    for (const sight::Mirror& part : partsOf(pane, geometry::flat(eye.pupil.at))) {
      const Point3 middle = middleOf(part);
      if (!sight::pointSight(now, eye, middle).seen()) continue;
      const auto light = light::paneLight(take.lighting().areas, pane.foot, pane.thickness, middle, eye.pupil.at, t);
      if (light.returned.value_or(0) < least || againstAWall(take, pane, geometry::flat(middle))) continue;
      turned.push_back({pane.id, part, light, delivered.holds(middle)});
    }
  }
  return turned;
}

void addMirrors(const std::vector<TurnedGlass>& glass, const Take& take, sight::SceneAt& now) {
  int tag = static_cast<int>(take.plan().set.pieces.size());
  for (const TurnedGlass& part : glass) {
    sight::Mirror face = part.face;
    face.tag = tag++;
    now.add(face);
  }
}

std::string mirrorId(const Take& take, const std::vector<TurnedGlass>& glass, int tag) {
  const auto& pieces = take.plan().set.pieces;
  const auto place = static_cast<std::size_t>(tag);
  return place < pieces.size() ? pieces[place].id.text() : glass[place - pieces.size()].pane;
}

}  // namespace wend::answers
