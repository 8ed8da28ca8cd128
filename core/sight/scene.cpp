#include "core/sight/scene.h"

#include <algorithm>

#include "core/base/check.h"
#include "core/geometry/tolerance.h"

namespace wend::sight {

using geometry::Course;

std::size_t SceneAt::size() const {
  return scene_->prisms().size() + panels_.size();
}

const Prism& SceneAt::prism(std::size_t i) const {
  const auto& fixed = scene_->prisms();
  return i < fixed.size() ? fixed[i] : panels_[i - fixed.size()];
}

std::span<const Point> SceneAt::corners(const Prism& prism) const {
  return scene_->corners(prism);
}

namespace {

void circumscribe(Prism& prism, std::span<const Point> points) {
  const geometry::Extent box = geometry::extentOf(points);
  prism.centre = lerp(box.low, box.high, 0.5);
  prism.radius = 0;
  for (const Point& p : points) prism.radius = std::max(prism.radius, geometry::distance(prism.centre, p));
}

Prism sheetPrism(Segment sheet, Prism like) {
  like.form = Prism::Form::sheet;
  like.sheet = sheet;
  const std::array<Point, 2> ends{sheet.a, sheet.b};
  circumscribe(like, ends);
  return like;
}

}  // namespace

void Scene::addOutline(std::span<const Point> ring, Prism like, std::vector<Prism>& into) {
  like.form = Prism::Form::outline;
  like.first = static_cast<std::uint32_t>(corners_.size());
  like.count = static_cast<std::uint32_t>(ring.size());
  circumscribe(like, ring);
  corners_.insert(corners_.end(), ring.begin(), ring.end());
  if (geometry::signedArea(ring) < 0)
    std::reverse(corners_.end() - static_cast<std::ptrdiff_t>(ring.size()), corners_.end());
  into.push_back(like);
}

void Scene::addBand(const Course& course, double thickness, Span part, Prism like) {
  if (!(like.top > like.bottom)) return;
  for (const geometry::Quad& quad : geometry::bandAround(course, thickness, part)) addOutline(quad, like, prisms_);
}

void Scene::addWall(const SceneInput& input, std::size_t index) {
  const WallBand& wall = input.walls[index];
  const Course course(wall.points);
  std::vector<Span> cuts;
  for (const OpeningCut& cut : input.openings)
    if (cut.wall == index) cuts.push_back(cut.along);
  std::sort(cuts.begin(), cuts.end(), [](Span a, Span b) { return a.from < b.from; });
  Prism like;
  like.source = {Owner::wall, wall.tag};
  like.bottom = wall.bottom;
  like.top = wall.top;
  like.jamb = true;
  double reached = 0;
  for (const Span& cut : cuts) {
    if (cut.from > reached) addBand(course, wall.thickness, {reached, cut.from}, like);
    reached = std::max(reached, cut.until);
  }
  if (reached < course.length()) addBand(course, wall.thickness, {reached, course.length()}, like);
}

void Scene::addOpening(const SceneInput& input, const OpeningCut& cut) {
  const WallBand& wall = input.walls[cut.wall];
  const Course course(wall.points);
  const Span part{std::max(0.0, cut.along.from), std::min(course.length(), cut.along.until)};
  if (!(part.until > part.from)) return;
  Prism like;
  like.source = {Owner::wall, wall.tag};
  like.bottom = wall.bottom;
  like.top = std::min(cut.sill, wall.top);
  addBand(course, wall.thickness, part, like);
  like.bottom = std::max(cut.head, wall.bottom);
  like.top = wall.top;
  addBand(course, wall.thickness, part, like);

  Gap gap{{course.at(part.from)}, std::max(cut.sill, wall.bottom), std::min(cut.head, wall.top), cut.tag};
  for (std::size_t i = 0; i < course.points().size(); ++i)
    if (course.starts()[i] > part.from && course.starts()[i] < part.until) gap.course.push_back(course.points()[i]);
  gap.course.push_back(course.at(part.until));
  gaps_.push_back(std::move(gap));
  if (cut.fill == Fill::open) return;

  Segment shut{course.at(part.from), course.at(part.until)};
  if (cut.moves) {
    const Vec across = geometry::left(geometry::unit(shut.b - shut.a)) * (wall.thickness / 2);
    const Vec off = cut.moves->towards == Side::left ? across : -across;
    shut = {shut.a + off, shut.b + off};
    if (cut.moves->hinge == End::end) std::swap(shut.a, shut.b);
  }
  hangings_.push_back({cut, shut});
}

void Scene::addPiece(const PieceIn& piece) {
  Prism like;
  like.source = {Owner::piece, piece.tag};
  like.surface = piece.surface;
  like.bottom = piece.bottom;
  like.top = piece.top;
  std::vector<Prism>& into = piece.surface == Surface::glass ? glass_ : prisms_;
  if (const auto* outline = std::get_if<OutlineShape>(&piece.shape)) {
    addOutline(outline->points, like, into);
  } else if (const auto* disc = std::get_if<DiscShape>(&piece.shape)) {
    like.form = Prism::Form::disc;
    like.centre = disc->centre;
    like.radius = disc->radius;
    into.push_back(like);
  } else {
    const auto& points = std::get<LineShape>(piece.shape).points;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) into.push_back(sheetPrism({points[i], points[i + 1]}, like));
  }
  if (piece.surface == Surface::mirror) addMirrors(piece);
}

void Scene::addMirrors(const PieceIn& piece) {
  const auto add = [&](Point a, Point b) {
    if (geometry::distance(a, b) >= geometry::kTouch) mirrors_.push_back({{a, b}, piece.bottom, piece.top, piece.tag});
  };
  if (const auto* outline = std::get_if<OutlineShape>(&piece.shape)) {
    const auto& ring = outline->points;
    const bool counterClockwise = geometry::signedArea(ring) > 0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
      counterClockwise ? add(ring[i], ring[j]) : add(ring[j], ring[i]);
  } else if (const auto* line = std::get_if<LineShape>(&piece.shape)) {
    if (!piece.reflects) return;
    for (std::size_t i = 0; i + 1 < line->points.size(); ++i)
      *piece.reflects == Side::left ? add(line->points[i], line->points[i + 1])
                                    : add(line->points[i + 1], line->points[i]);
  }
}

Scene::Scene(const SceneInput& input) {
  for (const OpeningCut& cut : input.openings) {
    WEND_CHECK(cut.wall < input.walls.size());
    WEND_CHECK(cut.keys.size() == cut.shares.size());
  }
  for (std::size_t i = 0; i < input.walls.size(); ++i) addWall(input, i);
  for (const OpeningCut& cut : input.openings) addOpening(input, cut);
  for (const PieceIn& piece : input.pieces) addPiece(piece);
  std::vector<Point> all;
  for (const std::vector<Prism>* list : {&prisms_, &glass_})
    for (const Prism& prism : *list) {
      all.push_back(prism.centre + Vec{-prism.radius, -prism.radius});
      all.push_back(prism.centre + Vec{prism.radius, prism.radius});
    }
  if (!all.empty()) extent_ = geometry::extentOf(all);
}

namespace {

struct Opened {
  double share = 0;
  bool moving = false;
};

Opened openedAt(const OpeningCut& cut, double t) {
  if (cut.keys.empty()) return {};
  const geometry::KeyBlend blend = geometry::blendAt(cut.keys, t);
  const double before = cut.shares[blend.before], after = cut.shares[blend.after];
  return {geometry::lerp(before, after, blend.share), blend.before != blend.after && before != after};
}

/// Counter-clockwise for a hinge at the start that opens to the left; each of the two turns it round.
double swingSense(const LeafMotion& moves) {
  return (moves.hinge == End::start) == (moves.towards == Side::left) ? 1 : -1;
}

void move(Leaf& leaf, const LeafMotion& moves, double share) {
  const Vec across = leaf.panel.b - leaf.panel.a;
  if (moves.kind == LeafKind::swing) {
    const double angle = geometry::radians(moves.fullDegrees) * share * swingSense(moves);
    leaf.panel.b = leaf.panel.a + geometry::turned(across, angle);
  } else if (moves.kind == LeafKind::slide) {
    leaf.panel = {leaf.panel.a - across * share, leaf.panel.b - across * share};
  } else {
    const double lift = (leaf.top - leaf.bottom) * share;
    leaf.bottom += lift;
    leaf.top += lift;
  }
}

}  // namespace

Leaf Scene::leafAt(const Hanging& hanging, double t) {
  const OpeningCut& cut = hanging.cut;
  const Opened opened = openedAt(cut, t);
  Leaf leaf{hanging.shut, cut.sill, cut.head, opened.moving, false, false, cut.tag};
  const bool curtain = cut.fill == Fill::curtain;
  if (cut.moves && !curtain) move(leaf, *cut.moves, opened.share);
  const bool stands = curtain ? opened.share < 1 : cut.moves.has_value() || opened.share == 0;
  leaf.hides = stands && !opened.moving && cut.fill != Fill::glass;
  const bool shut = cut.barsWay && (opened.share == 0 || opened.moving);
  leaf.inWay = shut || (cut.moves && !curtain && opened.share > 0);
  return leaf;
}

SceneAt Scene::at(double t) const {
  SceneAt now;
  now.scene_ = this;
  for (const Hanging& hanging : hangings_) {
    const Leaf leaf = leafAt(hanging, t);
    now.leaves_.push_back(leaf);
    if (!leaf.hides) continue;
    Prism like;
    like.source = {Owner::opening, leaf.tag};
    like.bottom = leaf.bottom;
    like.top = leaf.top;
    now.panels_.push_back(sheetPrism(leaf.panel, like));
  }
  return now;
}

std::vector<double> Scene::changes() const {
  std::vector<double> times;
  for (const Hanging& hanging : hangings_) {
    if (hanging.cut.fill == Fill::glass) continue;
    for (const geometry::KeySpan& key : hanging.cut.keys) {
      times.push_back(key.at);
      if (key.over > 0) times.push_back(key.at + key.over);
    }
  }
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

}  // namespace wend::sight
