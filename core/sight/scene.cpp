#include "core/sight/scene.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/geometry/tolerance.h"

namespace wend::sight {

using geometry::Course;

std::size_t SceneAt::size() const {
  return scene_->prisms().size() + passing_.size();
}

const Prism& SceneAt::prism(std::size_t i) const {
  const auto& fixed = scene_->prisms();
  return i < fixed.size() ? fixed[i] : passing_[i - fixed.size()];
}

const std::vector<Mirror>& SceneAt::mirrors() const {
  return mirrors_.empty() ? scene_->mirrors() : mirrors_;
}

void SceneAt::add(const Mirror& mirror) {
  if (mirrors_.empty()) mirrors_ = scene_->mirrors();
  mirrors_.push_back(mirror);
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
  if (!(like.top > like.base)) return;
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
  like.bottom = wall.foot.value_or(wall.bottom);
  like.base = wall.bottom;
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
  like.bottom = wall.foot.value_or(wall.bottom);
  like.base = wall.bottom;
  like.top = std::min(cut.sill, wall.top);
  addBand(course, wall.thickness, part, like);
  like.bottom = like.base = std::max(cut.head, wall.bottom);
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
  const double base = std::min(cut.sill, wall.bottom);
  hangings_.push_back({cut, shut, std::min(base, wall.foot.value_or(base)), base, std::max(cut.head, wall.top)});
}

namespace {

Point shifted(Point p, Point pivot, const Shift& shift) {
  return pivot + geometry::turned(p - pivot, -geometry::radians(shift.turnDegrees)) + shift.offset;
}

}  // namespace

PieceShape shifted(PieceShape shape, Point pivot, const Shift& shift) {
  if (auto* disc = std::get_if<DiscShape>(&shape)) disc->centre = shifted(disc->centre, pivot, shift);
  if (auto* outline = std::get_if<OutlineShape>(&shape))
    for (Point& p : outline->points) p = shifted(p, pivot, shift);
  if (auto* line = std::get_if<LineShape>(&shape))
    for (Point& p : line->points) p = shifted(p, pivot, shift);
  return shape;
}

std::span<const Point> pointsOf(const PieceShape& shape) {
  if (const auto* disc = std::get_if<DiscShape>(&shape)) return {&disc->centre, 1};
  if (const auto* outline = std::get_if<OutlineShape>(&shape)) return outline->points;
  return std::get<LineShape>(shape).points;
}

Scene::Standing Scene::standing(const PieceIn& piece, const PieceShape& shape) {
  Standing stands;
  Prism like;
  like.source = {Owner::piece, piece.tag};
  like.surface = piece.surface;
  like.bottom = piece.foot.value_or(piece.bottom);
  like.base = piece.bottom;
  like.top = piece.top;
  if (const auto* outline = std::get_if<OutlineShape>(&shape)) {
    addOutline(outline->points, like, stands.prisms);
  } else if (const auto* disc = std::get_if<DiscShape>(&shape)) {
    like.form = Prism::Form::disc;
    like.centre = disc->centre;
    like.radius = disc->radius;
    stands.prisms.push_back(like);
  } else {
    const auto& points = std::get<LineShape>(shape).points;
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
      stands.prisms.push_back(sheetPrism({points[i], points[i + 1]}, like));
  }
  if (piece.surface == Surface::mirror) addMirrors(piece, shape, stands.mirrors);
  return stands;
}

void Scene::addPiece(const PieceIn& piece) {
  if (piece.keys.empty()) {
    const Standing stands = standing(piece, piece.shape);
    std::vector<Prism>& into = piece.surface == Surface::glass ? glass_ : prisms_;
    into.insert(into.end(), stands.prisms.begin(), stands.prisms.end());
    mirrors_.insert(mirrors_.end(), stands.mirrors.begin(), stands.mirrors.end());
    return;
  }
  Mover mover{piece, {}};
  for (const Shift& shift : piece.shifts)
    mover.places.push_back(standing(piece, shifted(piece.shape, piece.pivot, shift)));
  mirrorsMove_ = mirrorsMove_ || piece.surface == Surface::mirror;
  movers_.push_back(std::move(mover));
}

void Scene::addMirrors(const PieceIn& piece, const PieceShape& shape, std::vector<Mirror>& into) {
  const auto add = [&](Point a, Point b) {
    if (geometry::distance(a, b) >= geometry::kTouch)
      into.push_back({{a, b}, piece.bottom, piece.top, piece.tag, false});
  };
  if (const auto* outline = std::get_if<OutlineShape>(&shape)) {
    const auto& ring = outline->points;
    const bool counterClockwise = geometry::signedArea(ring) > 0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
      counterClockwise ? add(ring[i], ring[j]) : add(ring[j], ring[i]);
  } else if (const auto* line = std::get_if<LineShape>(&shape)) {
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
  for (const PieceIn& piece : input.pieces) {
    WEND_CHECK(piece.keys.size() == piece.shifts.size());
    addPiece(piece);
  }
  std::vector<Point> all;
  const auto around = [&all](const std::vector<Prism>& list) {
    for (const Prism& prism : list) {
      all.push_back(prism.centre + Vec{-prism.radius, -prism.radius});
      all.push_back(prism.centre + Vec{prism.radius, prism.radius});
    }
  };
  around(prisms_);
  around(glass_);
  for (const Mover& mover : movers_)
    for (const Standing& place : mover.places) around(place.prisms);
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
  Leaf leaf{.panel = hanging.shut, .bottom = cut.sill, .top = cut.head, .moving = opened.moving, .tag = cut.tag};
  const bool curtain = cut.fill == Fill::curtain;
  if (cut.moves && !curtain) move(leaf, *cut.moves, opened.share);
  const bool stands = curtain ? opened.share < 1 : cut.moves.has_value() || opened.share == 0;
  leaf.hides = stands && !opened.moving && cut.fill != Fill::glass;
  leaf.pane = stands && !opened.moving && cut.fill == Fill::glass;
  const bool shut = cut.barsWay && (opened.share == 0 || opened.moving);
  leaf.inWay = shut || (cut.moves && !curtain && opened.share > 0);
  return leaf;
}

/// Shut, or a curtain: it hangs where the wall would be, and between wall below and wall above.
bool Scene::fills(const Hanging& hanging, const Leaf& leaf) {
  return leaf.panel == hanging.shut && leaf.bottom == hanging.cut.sill && leaf.top == hanging.cut.head;
}

namespace {

MovingPiece onTheWay(const PieceIn& piece, const Shift& shift) {
  MovingPiece moving;
  moving.bottom = piece.bottom;
  moving.top = piece.top;
  moving.tag = piece.tag;
  const PieceShape shape = shifted(piece.shape, piece.pivot, shift);
  if (const auto* disc = std::get_if<DiscShape>(&shape)) {
    moving.points = {disc->centre};
    moving.radius = disc->radius;
  } else if (const auto* outline = std::get_if<OutlineShape>(&shape)) {
    moving.points = outline->points;
    moving.closed = true;
  } else {
    moving.points = std::get<LineShape>(shape).points;
  }
  return moving;
}

Shift between(const Shift& a, const Shift& b, double share) {
  return {a.offset * (1 - share) + b.offset * share, geometry::lerp(a.turnDegrees, b.turnDegrees, share)};
}

}  // namespace

void Scene::placeMovers(SceneAt& now, double t) const {
  bool mirrors = false;
  for (const Mover& mover : movers_) {
    const geometry::KeyBlend blend = geometry::blendAt(mover.piece.keys, t);
    const Shift &before = mover.piece.shifts[blend.before], &after = mover.piece.shifts[blend.after];
    mirrors = mirrors || mover.piece.surface == Surface::mirror;
    if (before != after) {
      const Shift shift = between(before, after, blend.share);
      now.moving_.push_back(onTheWay(mover.piece, shift));
      if (mover.piece.surface == Surface::mirror) {
        const std::size_t first = now.mirrors_.size();
        addMirrors(mover.piece, shifted(mover.piece.shape, mover.piece.pivot, shift), now.mirrors_);
        for (std::size_t i = first; i < now.mirrors_.size(); ++i) now.mirrors_[i].moving = true;
      }
      continue;
    }
    const Standing& place = mover.places[blend.after];
    now.parked_.insert(now.parked_.end(), place.prisms.begin(), place.prisms.end());
    if (mover.piece.surface != Surface::glass)
      now.passing_.insert(now.passing_.end(), place.prisms.begin(), place.prisms.end());
    now.mirrors_.insert(now.mirrors_.end(), place.mirrors.begin(), place.mirrors.end());
  }
  if (mirrors) now.mirrors_.insert(now.mirrors_.begin(), mirrors_.begin(), mirrors_.end());
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
    like.bottom = like.base = leaf.bottom;
    like.top = leaf.top;
    if (fills(hanging, leaf)) like.bottom = hanging.foot, like.base = hanging.base, like.top = hanging.crown;
    now.passing_.push_back(sheetPrism(leaf.panel, like));
  }
  placeMovers(now, t);
  return now;
}

void Drift::take(const Drift& other) {
  metres = std::max(metres, other.metres), degrees = std::max(degrees, other.degrees);
}

Drift Scene::driftOf(int tag, double from, double until) const {
  Drift drift;
  for (const Mover& mover : movers_) {
    const PieceIn& piece = mover.piece;
    if (piece.tag != tag) continue;
    const auto shiftAt = [&](double t) {
      const geometry::KeyBlend blend = geometry::blendAt(piece.keys, t);
      return between(piece.shifts[blend.before], piece.shifts[blend.after], blend.share);
    };
    const Shift a = shiftAt(from), b = shiftAt(until);
    const double degrees = std::abs(b.turnDegrees - a.turnDegrees);
    double reach = 0;
    for (const Point& p : pointsOf(piece.shape)) reach = std::max(reach, geometry::distance(p, piece.pivot));
    const double turned = 2 * std::sin(geometry::radians(std::min(degrees, 180.0)) / 2) * reach;
    drift.take({geometry::length(b.offset - a.offset) + turned, degrees});
  }
  return drift;
}

std::vector<double> Scene::changes() const {
  std::vector<double> times;
  const auto add = [&times](const std::vector<geometry::KeySpan>& keys) {
    for (const geometry::KeySpan& key : keys) {
      times.push_back(key.at);
      if (key.over > 0) times.push_back(key.at + key.over);
    }
  };
  for (const Hanging& hanging : hangings_)
    if (hanging.cut.fill != Fill::glass) add(hanging.cut.keys);
  for (const Mover& mover : movers_)
    if (mover.piece.surface != Surface::glass) add(mover.piece.keys);
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

}  // namespace wend::sight
