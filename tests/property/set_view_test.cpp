// No false clear in continuous time, with heights, leaves, mirrors and bodies: the look of a step against the sight of
// one body at a hundred instants of it.
#include "core/sight/set_view.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <numbers>

#include "core/sight/triangulation.h"
#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

using world::uniform;

const geometry::Extent kGround{{-2, -2}, {10, 10}};

struct Counts {
  int seen = 0, maySee = 0, asked = 0, falseClear = 0;
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

/// An eye that walks, turns, rises and zooms, and swings a little.
EyeAt randomEye(std::mt19937_64& random, bool lattice) {
  const auto rounded = [&](double value, double step) { return lattice ? std::round(value / step) * step : value; };
  const Point from{rounded(uniform(random, 1, 7), 0.5), rounded(uniform(random, 1, 7), 0.5)};
  const Vec speed{rounded(uniform(random, -2, 2), 1), rounded(uniform(random, -2, 2), 1)};
  const double height = uniform(random, 0.4, 2.2), rise = uniform(random, -1, 1);
  const double bearing = rounded(uniform(random, 0, 360), 15), pan = uniform(random, -300, 300);
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

/// How the body is seen, from pupils to every side too, as far off as walls and mirrors may be drawn from where they
/// stand: what shows by less than that is not told.
BodySight plainSight(const SceneAt& now, const Eye& eye, const Body& body) {
  const BodySight sight = bodySight(now, eye, body);
  for (int i = 0; i < 4 && sight.seen; ++i) {
    Eye beside = eye;
    const Vec off = geometry::turned({2 * Triangulation::kJoin, 0}, i * std::numbers::pi / 2);
    beside.pupil.at = beside.pupil.at + geometry::Vec3{off.x, off.y, 0};
    const BodySight other = bodySight(now, beside, body);
    if (!other.seen || other.mirror != sight.mirror) return {};
  }
  return sight;
}

template <class Sight>
void judge(const Scene& scene, const EyeAt& eye, Span time, const SetLook& look, const Body& body, Sight sightOf,
           Counts& counts) {
  bool seen = false;
  for (int k = 0; k <= 100 && !seen; ++k) {
    const double t = geometry::lerp(time.from, time.until, k / 100.0);
    const BodySight sight = sightOf(scene.at(t), *eye(t), body);
    if (!sight.seen) continue;
    seen = true;
    counts.falseClear += !maySee(look, sight.mirror, body);
  }
  ++counts.asked;
  counts.seen += seen;
  counts.maySee += maySee(look, std::nullopt, body) || maySee(look, 7, body);
}

/// `edges` draws apart from `random`, so that how many edges there are changes nothing of the sets.
void tryStep(std::mt19937_64& random, std::mt19937_64& edges, bool lattice, Counts& people, Counts& beside) {
  const Scene scene(lattice ? onLattice(randomSet(random)) : randomSet(random));
  const EyeAt eye = randomEye(random, lattice);
  const Span time{0.02, 0.02 + 1.0 / 24};
  const auto step = eyeStep(eye, time);
  ASSERT_TRUE(step);
  SetView view(scene, {0, 1.9}, kGround);
  SetLook look;
  view.look(time, *step, {}, look);
  for (int n = 0; n < 12; ++n) {
    const Body body{{uniform(random, 0, 8), uniform(random, 0, 8)}, 0.28, 0, uniform(random, 0.5, 1.9)};
    judge(
        scene, eye, time, look, body,
        [](const SceneAt& now, const Eye& at, const Body& who) { return bodySight(now, at, who); }, people);
  }
  std::vector<Body> bodies;
  addBeside(edges, look, bodies);
  for (const Body& body : bodies) judge(scene, eye, time, look, body, plainSight, beside);
}

/// 500, or as many as WEND_SETS says: ten thousand in all take a few minutes.
int setsWanted() {
  const char* wanted = std::getenv("WEND_SETS");
  return wanted != nullptr ? std::max(1, std::atoi(wanted)) : 500;
}

void run(std::uint64_t seed, int sets, bool lattice) {
  std::mt19937_64 random(seed), edges(seed + 1000);
  Counts people, beside;
  for (int trial = 0; trial < sets; ++trial) tryStep(random, edges, lattice, people, beside);
  std::printf("seed %llu, %d sets: %d people, %d seen, %d may be seen, %d false clear; beside edges %d, %d, %d, %d\n",
              static_cast<unsigned long long>(seed), sets, people.asked, people.seen, people.maySee, people.falseClear,
              beside.asked, beside.seen, beside.maySee, beside.falseClear);
  EXPECT_EQ(people.falseClear, 0);
  EXPECT_EQ(beside.falseClear, 0);
  EXPECT_GT(people.seen, sets);
  EXPECT_GT(beside.seen, sets);
  // False seen is the price of soundness; in sets as crowded as these, mostly frame tops and bottoms that count for
  // all.
  EXPECT_LT(people.maySee, people.seen * 5 / 4);
}

TEST(SetView, NeverCallsClearWhomTheLensSeesAtSomeInstant) {
  run(31, setsWanted(), false);
}

TEST(SetView, NeverCallsClearInSetsWhoseThingsStandInLine) {
  run(32, setsWanted(), true);
}

}  // namespace
}  // namespace wend::sight
