// No false clear in continuous time, with heights, leaves, mirrors and bodies: the look of a step against the sight of
// one body at a hundred instants of it.
#include "core/sight/set_view.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <numbers>

#include "core/sight/mirror_leg.h"
#include "core/sight/triangulation.h"
#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

using world::uniform;

const geometry::Extent kGround{{-2, -2}, {10, 10}};

struct Counts {
  int seen = 0, inMirror = 0, maySee = 0, asked = 0, falseClear = 0;
  int hardly = 0;  ///< instants at which only the exclusions show them
};

SceneInput randomSet(std::mt19937_64& random) {
  SceneInput input;
  const auto place = [&] { return Point{uniform(random, 0, 8), uniform(random, 0, 8)}; };
  for (int i = 0; i < 3; ++i) {
    const Point a = place();
    input.walls.push_back(world::wall({a, a + Vec{uniform(random, -4, 4), uniform(random, -4, 4)}}, 0.1));
  }
  for (int i = 0; i < 3; ++i) {
    const Point low = place();
    const Point high = low + Vec{uniform(random, 0.3, 1.5), uniform(random, 0.3, 1.5)};
    input.pieces.push_back(world::box(low, high, uniform(random, 0, 1) < 0.8 ? 0 : 0.9, uniform(random, 1, 2.3)));
  }
  input.pieces.push_back(world::disc(place(), uniform(random, 0.2, 0.7), 0, uniform(random, 0.5, 2)));
  const Point a = place();
  input.pieces.push_back(world::mirrorLine(a, a + Vec{uniform(random, -2, 2), uniform(random, 0.5, 2)},
                                           uniform(random, 0, 1), uniform(random, 1.2, 2.2), Side::left, 7));
  OpeningCut door;
  door.along = {0.5, 1.4};
  door.fill = Fill::solid;
  door.moves = LeafMotion{};
  door.keys = {{0, 0, false}, {uniform(random, 0, 0.1), uniform(random, 0, 0.05), false}};
  door.shares = {uniform(random, 0, 1) < 0.5 ? 0.0 : 1.0, 0.5};
  input.openings.push_back(door);
  PieceIn cart = world::box(place(), {9, 9}, 0, 1.9, 9);
  cart.shape = DiscShape{place(), 0.5};
  cart.keys = {{0, 0, false}, {uniform(random, 0, 0.1), 0.02, false}};
  cart.shifts = {{}, {{1, 0.5}, 30}};
  input.pieces.push_back(cart);
  return input;
}

/// Half metres, so that walls, boxes, the mirror and the eye's ways meet, repeat and stand in line.
SceneInput onLattice(SceneInput input) {
  const auto snap = [](Point& p) { p = {std::round(p.x * 2) / 2, std::round(p.y * 2) / 2}; };
  for (WallBand& wall : input.walls) {
    for (Point& p : wall.points) snap(p);
    if (wall.points.front() == wall.points.back()) wall.points.back().x += 1;
  }
  input.walls.push_back(input.walls.front());
  for (PieceIn& piece : input.pieces) {
    if (auto* outline = std::get_if<OutlineShape>(&piece.shape)) {
      Point &low = outline->points[0], &high = outline->points[2];
      snap(low);
      snap(high);
      if (high.x <= low.x) high.x = low.x + 0.5;
      if (high.y <= low.y) high.y = low.y + 0.5;
      outline->points[1] = {high.x, low.y};
      outline->points[3] = {low.x, high.y};
    } else if (auto* line = std::get_if<LineShape>(&piece.shape)) {
      for (Point& p : line->points) snap(p);
      if (line->points.front() == line->points.back()) line->points.back().y += 1;
    }
  }
  return input;
}

/// The mirror on wheels, on its way for all of a step or part of it; before it goes it may stand right before a wall.
SceneInput onWheels(SceneInput input, std::mt19937_64& random) {
  for (PieceIn& piece : input.pieces) {
    if (piece.surface != Surface::mirror) continue;
    const auto points = std::get<LineShape>(piece.shape).points;
    if (uniform(random, 0, 1) < 0.5) {
      const Vec back = geometry::left(geometry::unit(points[1] - points[0])) * -uniform(random, 0.051, 0.07);
      input.walls.push_back(world::wall({points[0] + back, points[1] + back}, 0.1));
    }
    const double start = uniform(random, -0.1, 0.05);
    piece.pivot = points[0] + Vec{uniform(random, -0.5, 0.5), uniform(random, -0.5, 0.5)};
    piece.keys = {{-1, 0, false}, {start, uniform(random, 0.02, 0.5), uniform(random, 0, 1) < 0.5}};
    piece.shifts = {{},
                    {{uniform(random, -0.5, 0.5), uniform(random, -0.5, 0.5)},
                     uniform(random, 0, 1) < 0.3 ? 0 : uniform(random, -60, 60)}};
  }
  return input;
}

/// An eye that walks, turns, rises and zooms, and swings a little. Where there is something to look at it does, more
/// or less.
EyeAt randomEye(std::mt19937_64& random, bool lattice, std::optional<Point> aim = std::nullopt) {
  const auto rounded = [&](double value, double step) { return lattice ? std::round(value / step) * step : value; };
  const Point from{rounded(uniform(random, 1, 7), 0.5), rounded(uniform(random, 1, 7), 0.5)};
  const Vec speed{rounded(uniform(random, -2, 2), 1), rounded(uniform(random, -2, 2), 1)};
  const double height = uniform(random, 0.4, 2.2), rise = uniform(random, -1, 1);
  const double any = rounded(uniform(random, 0, 360), 15);
  const double bearing = aim ? geometry::bearingOf(*aim - from) + (any - 180) / 10 : any;
  const double pan = uniform(random, -300, 300);
  const double swing = lattice ? 0 : uniform(random, 0, 0.05), tilt = uniform(random, -10, 10);
  const double wide = uniform(random, 15, 40);
  return [=](double t) -> std::optional<Eye> {
    const Point foot = from + speed * t + Vec{swing * std::sin(40 * t), swing * std::cos(30 * t)};
    Eye eye = world::eyeAt(geometry::at(foot, height + rise * t), bearing + pan * t, tilt, wide + 40 * t, 20);
    eye.marginDegrees = 3;
    return eye;
  };
}

bool maySee(const SetLook& look, const std::optional<int>& mirror, const Body& body) {
  for (const SetLayer& layer : look.layers)
    if (layer.mirror.has_value() == mirror.has_value() && (!mirror || layer.mirror->tag == *mirror) &&
        mayShow(look, layer, {body.centre, body.centre}, body.radius, {body.floor, body.top}))
      return true;
  return false;
}

/// Slender bodies a millimetre to either side of what bounds the ground and the shadows on it.
void addBeside(std::mt19937_64& random, const SetLook& look, std::vector<Body>& bodies) {
  const auto beside = [&](Point a, Point b, double top) {
    if (geometry::distance(a, b) < 1e-6) return;
    const Point on = geometry::lerp(a, b, uniform(random, 0, 1));
    const Vec off = geometry::left(geometry::unit(b - a)) * 1e-3;
    for (const Point p : {on + off, on - off})
      if (std::max(std::abs(p.x - 4), std::abs(p.y - 4)) < 6) bodies.push_back({p, 1e-4, 0, top});
  };
  for (const SetLayer& layer : look.layers) {
    for (const RegionEdge& edge : layer.region.ring)
      if (random() % 4 == 0) beside(edge.a, edge.b, 1.9);
    for (const RegionSlice& slice : layer.region.slices)
      if (random() % 4 == 0) beside(slice.corner[0], slice.corner[1], 1.9);
    const double top = uniform(random, 0.5, 1.9);
    std::vector<geometry::Convex> shadows;
    appendShadows(look, layer, {0, top}, 10, shadows);
    for (const geometry::Convex& shadow : shadows)
      for (std::size_t i = 0; i < shadow.size(); ++i) beside(shadow[i], shadow[(i + 1) % shadow.size()], top);
  }
}

SceneInput withMirrorsMoved(SceneInput input, Vec by) {
  for (PieceIn& piece : input.pieces)
    if (auto* line = std::get_if<LineShape>(&piece.shape); line && piece.surface == Surface::mirror) {
      for (Point& p : line->points) p = p + by;
      piece.pivot = piece.pivot + by;
    }
  return input;
}

/// Whether the body is seen in that way by more than the exclusions of set_view.h: not in the skin of a mirror, and also
/// when pupil, body or mirror are as far off as walls may be drawn from where they stand.
bool plainlySeen(const SceneInput& input, double t, const Eye& eye, const Body& body, const BodySight& sight) {
  const Scene scene(input);
  if (sight.mirror) {
    const SceneAt now = scene.at(t);
    for (const Mirror& mirror : now.mirrors()) {
      const Vec along = geometry::unit(mirror.face.b - mirror.face.a);
      const auto skin = [&](Point p) { return std::abs(cross(along, p - mirror.face.a)) <= kMirrorSkin; };
      if (mirror.tag == *sight.mirror && (skin(geometry::flat(eye.pupil.at)) || skin(body.centre))) return false;
    }
  }
  const auto alike = [&](const Scene& other, const Eye& from, const Body& who) {
    const BodySight found = bodySight(other.at(t), from, who);
    return found.seen && found.mirror == sight.mirror;
  };
  for (int i = 0; i < 4; ++i) {
    const Vec off = geometry::turned({2 * Triangulation::kJoin, 0}, i * std::numbers::pi / 2);
    Eye beside = eye;
    beside.pupil.at = beside.pupil.at + geometry::Vec3{off.x, off.y, 0};
    Body moved = body;
    moved.centre = moved.centre + off;
    if (!alike(scene, beside, body) || !alike(scene, eye, moved)) return false;
    if (!alike(Scene(withMirrorsMoved(input, off)), eye, body)) return false;
  }
  return true;
}

void judge(const SceneInput& input, const Scene& scene, const EyeAt& eye, Span time, const SetLook& look,
           const Body& body, Counts& counts) {
  bool seen = false, inMirror = false;
  for (int k = 0; k <= 100 && !seen; ++k) {
    const double t = geometry::lerp(time.from, time.until, k / 100.0);
    const BodySight sight = bodySight(scene.at(t), *eye(t), body);
    if (!sight.seen) continue;
    if (!maySee(look, sight.mirror, body)) {
      if (!plainlySeen(input, t, *eye(t), body, sight)) {
        ++counts.hardly;
        continue;
      }
      ++counts.falseClear;
    }
    seen = true, inMirror = sight.mirror.has_value();
  }
  ++counts.asked;
  counts.seen += seen, counts.inMirror += inMirror;
  counts.maySee += maySee(look, std::nullopt, body) || maySee(look, 7, body);
}

enum class Sets { random, inLine, mirrorOnWheels };

SceneInput setOf(std::mt19937_64& random, Sets sets) {
  SceneInput input = randomSet(random);
  if (sets == Sets::inLine) return onLattice(std::move(input));
  return sets == Sets::mirrorOnWheels ? onWheels(std::move(input), random) : input;
}

Point middleOfMirror(const SceneAt& now) {
  const Segment face = now.mirrors().front().face;
  return geometry::lerp(face.a, face.b, 0.5);
}

/// `edges` draws apart from `random`, so that how many edges there are changes nothing of the sets.
void tryStep(std::mt19937_64& random, std::mt19937_64& edges, Sets sets, Counts& people, Counts& beside) {
  const SceneInput input = setOf(random, sets);
  const Scene scene(input);
  std::optional<Point> aim;
  if (sets == Sets::mirrorOnWheels) aim = middleOfMirror(scene.at(0.04));
  const EyeAt eye = randomEye(random, sets == Sets::inLine, aim);
  const Span time{0.02, 0.02 + 1.0 / 24};
  const auto step = eyeStep(eye, time);
  ASSERT_TRUE(step);
  SetView view(scene, {0, 1.9}, kGround);
  SetLook look;
  view.look(time, *step, {}, look);
  for (int n = 0; n < 12; ++n) {
    const Body body{{uniform(random, 0, 8), uniform(random, 0, 8)}, 0.28, 0, uniform(random, 0.5, 1.9)};
    judge(input, scene, eye, time, look, body, people);
  }
  std::vector<Body> bodies;
  addBeside(edges, look, bodies);
  for (const Body& body : bodies) judge(input, scene, eye, time, look, body, beside);
}

/// 500, or as many as WEND_SETS says: fifteen thousand in all take some minutes.
int setsWanted() {
  const char* wanted = std::getenv("WEND_SETS");
  return wanted != nullptr ? std::max(1, std::atoi(wanted)) : 500;
}

void run(std::uint64_t seed, int sets, Sets kind) {
  std::mt19937_64 random(seed), edges(seed + 1000);
  Counts people, beside;
  for (int trial = 0; trial < sets; ++trial) tryStep(random, edges, kind, people, beside);
  std::printf("seed %llu, %d sets\n", static_cast<unsigned long long>(seed), sets);
  for (const auto& [who, of] : {std::pair{"people", people}, std::pair{"beside edges", beside}})
    std::printf("  %s: %d, %d seen (%d in a mirror), %d may be seen, %d false clear, %d instants hardly\n", who,
                of.asked, of.seen, of.inMirror, of.maySee, of.falseClear, of.hardly);
  EXPECT_EQ(people.falseClear, 0);
  EXPECT_EQ(beside.falseClear, 0);
  EXPECT_GT(people.seen, sets);
  EXPECT_GT(beside.seen, sets);
  // False seen is the price of soundness; in sets as crowded as these, mostly frame tops and bottoms that count for
  // all. Mirrors here go at up to twenty metres a second, and blur what they show.
  EXPECT_LT(people.maySee, people.seen * (kind == Sets::mirrorOnWheels ? 1.4 : 1.25));
}

TEST(SetView, NeverCallsClearWhomTheLensSeesAtSomeInstant) {
  run(31, setsWanted(), Sets::random);
}

TEST(SetView, NeverCallsClearInSetsWhoseThingsStandInLine) {
  run(32, setsWanted(), Sets::inLine);
}

TEST(SetView, NeverCallsClearWhomAMirrorOnItsWayShows) {
  run(33, setsWanted(), Sets::mirrorOnWheels);
}

}  // namespace
}  // namespace wend::sight
