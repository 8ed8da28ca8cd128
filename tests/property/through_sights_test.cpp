// Sight from room to room against straight lines of space, a hundredth of a step apart, on random plans with narrow
// openings and fast pans.
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "core/sight/through.h"
#include "tests/core/sight/world.h"

namespace wend::sight {
namespace {

using Random = std::mt19937_64;
using world::uniform;

constexpr double kWide = 12, kDeep = 8, kHalfWall = 0.1, kEye = 1.5;

struct World {
  Scene scene;
  std::vector<RoomGround> rooms;
  ThroughSpec spec;
  EyeAt eye;
};

OpeningCut cutIn(std::size_t wall, double length, int tag, Random& random) {
  OpeningCut cut;
  cut.wall = wall;
  const double width = random() % 3 == 0 ? uniform(random, 0.03, 0.1) : uniform(random, 0.5, 1.4);
  const double at = uniform(random, 0.3, length - width - 0.3);
  cut.along = {at, at + width};
  cut.tag = tag;
  return cut;
}

/// A house of three rooms in open ground, the eye in the first. `low`: pieces that are looked over, too.
World worldOf(Random& random, bool low) {
  SceneInput input;
  const double x = uniform(random, 4.5, 6.5), y = uniform(random, 3, 5);
  input.walls = {world::wall({{0, 0}, {kWide, 0}, {kWide, kDeep}, {0, kDeep}, {0, 0}}),
                 world::wall({{x, kHalfWall}, {x, kDeep - kHalfWall}}),
                 world::wall({{x + kHalfWall, y}, {kWide - kHalfWall, y}})};
  int tag = 10;
  const double lengths[] = {2 * (kWide + kDeep), kDeep - 2 * kHalfWall, kWide - x - 2 * kHalfWall};
  for (const std::size_t wall : {1u, 1u, 1u, 1u, 1u, 2u, 2u, 0u, 0u, 0u, 0u}) {
    OpeningCut cut = cutIn(wall, lengths[wall], tag++, random);
    const auto overlaps = [&](const OpeningCut& other) {
      return other.wall == wall && cut.along.from < other.along.until + 0.2 && other.along.from < cut.along.until + 0.2;
    };
    const bool round = wall == 0 && std::any_of(std::begin(input.openings), std::end(input.openings), overlaps);
    if (round || std::any_of(input.openings.begin(), input.openings.end(), overlaps)) continue;
    for (const double corner : {kWide, kWide + kDeep, 2 * kWide + kDeep})
      if (wall == 0 && cut.along.from < corner + 0.3 && cut.along.until > corner - 0.3) cut.along = {0.5, 0.6};
    if (std::any_of(input.openings.begin(), input.openings.end(), overlaps)) continue;
    input.openings.push_back(cut);
  }
  OpeningCut& door = input.openings.front();
  door.fill = Fill::solid;
  door.moves = LeafMotion{};
  const double opens = uniform(random, 0.3, 1.5);
  door.keys = {{0, 0, false}, {opens, 0.3, false}};
  door.shares = {0, 1};
  for (int i = 0; i < 4; ++i) {
    const Point at{uniform(random, 1, kWide - 2), uniform(random, 1, kDeep - 2)};
    const double top = low && i % 2 == 0 ? uniform(random, 0.8, 1.7) : 2.2;
    input.pieces.push_back(world::box(at, at + Vec{uniform(random, 0.1, 0.8), uniform(random, 0.1, 0.8)}, 0, top));
  }
  World made{Scene(input), {}, {}, {}};
  const double h = kHalfWall;
  made.rooms = {{{{h, h}, {x - h, h}, {x - h, kDeep - h}, {h, kDeep - h}}, 1},
                {{{x + h, h}, {kWide - h, h}, {kWide - h, y - h}, {x + h, y - h}}, 2},
                {{{x + h, y + h}, {kWide - h, y + h}, {kWide - h, kDeep - h}, {x + h, kDeep - h}}, 3}};
  made.spec.take = {0, 2};
  made.spec.step = 0.2;
  made.spec.ground.range = 20;
  made.spec.ground.sectorDegrees = 1;
  const Point from{uniform(random, 0.6, x - 0.6), uniform(random, 0.6, kDeep - 0.6)};
  const Point until{uniform(random, 0.6, x - 0.6), uniform(random, 0.6, kDeep - 0.6)};
  const double rate = uniform(random, -150, 150), half = uniform(random, 4, 25);
  const double bearing = uniform(random, 45, 135) - rate * uniform(random, 0, 2);  // over the inner walls
  made.eye = [=](double t) {
    const Point at = geometry::lerp(from, until, t / 2);
    return world::eyeAt(geometry::at(at, kEye), bearing + rate * t + 10 * std::sin(3 * t), 0, half);
  };
  return made;
}

int roomAt(const World& world, Point p) {
  int tag = kOutside;
  for (const RoomGround& room : world.rooms)
    if (geometry::contains(room.outline, p)) tag = room.tag;
  return tag;
}

/// How closely the frame is looked at, and how much has to be seen to count.
struct Dense {
  double degrees = 0.1, metres = 0.1;  ///< between rays, and between places along them
  int rays = 3, places = 4;            ///< next to each other
  int heights = 0;                     ///< above the floor, evenly to the top; none: at the height of the eye
};

bool placeSeen(const SceneAt& now, const Frame& frame, const Eye& eye, Point p, int heights) {
  const auto seen = [&](double z) {
    const Point3 at = geometry::at(p, z);
    return frame.holds(at) && world::segmentOpen(now, eye.pupil.at, at);
  };
  if (heights == 0) return seen(kEye);
  for (int i = 0; i <= heights; ++i)
    if (seen(1.8 * i / heights)) return true;
  return false;
}

std::set<RoomWay> waysAlong(const World& world, const SceneAt& now, const Frame& frame, const Eye& eye, Vec along,
                            const Dense& dense) {
  std::set<RoomWay> ways;
  const int own = roomAt(world, frame.foot());
  const double range = world.spec.ground.range;
  if (openingsCrossed(world.scene, frame.foot(), frame.foot() + along * range).empty()) return ways;
  RoomWay run;
  int count = 0;
  for (double r = dense.metres; r < range; r += dense.metres) {
    const Point p = frame.foot() + along * r;
    RoomWay here{own, kOutside, openingsCrossed(world.scene, frame.foot(), p)};
    if (here.openings.empty()) continue;
    if (!placeSeen(now, frame, eye, p, dense.heights)) {
      count = 0;
      if (dense.heights == 0) break;  // what hides the level line hides it for good
      continue;
    }
    here.room = roomAt(world, p);
    count = here == run ? count + 1 : 1;
    run = std::move(here);
    if (count >= dense.places && run.room != own) ways.insert(run);
  }
  return ways;
}

std::set<RoomWay> waysByLines(const World& world, double t, const Dense& dense) {
  const Eye eye = *world.eye(t);
  const SceneAt now = world.scene.at(t);
  const Frame frame(eye);
  std::set<RoomWay> ways;
  std::map<RoomWay, int> runs;
  const double step = geometry::radians(dense.degrees);
  for (double turn = frame.turns().from + step / 3; turn < frame.turns().until; turn += step) {
    std::map<RoomWay, int> next;
    for (const RoomWay& way : waysAlong(world, now, frame, eye, geometry::turned(frame.axis(), turn), dense)) {
      next[way] = runs.count(way) ? runs[way] + 1 : 1;
      if (next[way] >= dense.rays) ways.insert(way);
    }
    runs = std::move(next);
  }
  return ways;
}

bool told(const Throughs& throughs, const RoomWay& way, double t) {
  return std::any_of(throughs.sights.begin(), throughs.sights.end(), [&](const ThroughSight& sight) {
    return RoomWay{sight.from, sight.room, sight.openings} == way && sight.time.from <= t && t < sight.time.until;
  });
}

std::vector<WaysAt> lookedAt(const World& world, const Throughs& throughs) {
  WaysThrough ways(world.scene, world.rooms, world.spec.ground);
  std::vector<WaysAt> all{{world.spec.take.from, ways.at(*world.eye(0), 0)}};
  for (const ThroughStep& step : throughs.steps) all.insert(all.end(), step.found.begin(), step.found.end());
  return all;
}

/// Whether all its openings stay in sight around a time in which a way is not told, as the header has it.
bool openingsStay(const std::vector<WaysAt>& looked, const RoomWay& way, Span untold, double step) {
  const auto without = [&](const WaysAt& at) {
    return !std::binary_search(at.seen.ways.begin(), at.seen.ways.end(), way) &&
           std::all_of(way.openings.begin(), way.openings.end(), [&](int tag) {
             return std::binary_search(at.seen.inSight.begin(), at.seen.inSight.end(), tag);
           });
  };
  for (std::size_t i = 0; i + 1 < looked.size(); ++i)
    if (looked[i].time <= untold.from + 1e-9 && looked[i + 1].time >= untold.until - 1e-9)
      return without(looked[i]) && without(looked[i + 1]) && looked[i + 1].time - looked[i].time < step + 1e-9;
  return false;
}

struct Counts {
  std::size_t runs = 0, brief = 0, untold = 0, stayed = 0;
};

/// Every stretch longer than `refine` in which the lines see a way that is not told.
void compare(const World& world, const Throughs& throughs, const Dense& dense, Counts& counts) {
  const std::vector<WaysAt> looked = lookedAt(world, throughs);
  const double every = world.spec.step / 100;
  std::map<RoomWay, Span> running, untold;
  const auto close = [&](const RoomWay& way) {
    const Span run = running[way];
    running.erase(way);
    ++counts.runs;
    if (run.length() < world.spec.step) ++counts.brief;
  };
  const auto closeUntold = [&](const RoomWay& way) {
    const Span span = untold[way];
    untold.erase(way);
    if (span.length() <= world.spec.refine + 1e-9) return;
    ++counts.untold;
    const bool stayed = openingsStay(looked, way, span, world.spec.step);
    counts.stayed += stayed;
    EXPECT_TRUE(stayed) << "room " << way.room << " by " << way.openings.size() << " openings, first "
                        << way.openings.front() << ", from " << span.from << " to " << span.until;
  };
  const auto keys = [](const std::map<RoomWay, Span>& spans) {
    std::vector<RoomWay> list;
    for (const auto& [way, span] : spans) list.push_back(way);
    return list;
  };
  for (int i = 0; i * every < world.spec.take.until; ++i) {
    const double t = i * every;
    const std::set<RoomWay> ways = waysByLines(world, t, dense);
    for (const RoomWay& way : keys(running))
      if (!ways.count(way)) close(way);
    for (const RoomWay& way : keys(untold))
      if (!ways.count(way) || told(throughs, way, t)) closeUntold(way);
    for (const RoomWay& way : ways) {
      running.try_emplace(way, Span{t, t}).first->second.until = t;
      if (!told(throughs, way, t)) untold.try_emplace(way, Span{t, t}).first->second.until = t;
    }
  }
  for (const RoomWay& way : keys(running)) close(way);
  for (const RoomWay& way : keys(untold)) closeUntold(way);
}

/// What is told at an instant, a line sees there: somewhere at least.
std::size_t expectSeen(const World& world, const Throughs& throughs, const Dense& dense, std::size_t every) {
  std::size_t asked = 0, found = 0;
  const auto looked = lookedAt(world, throughs);
  for (std::size_t i = 0; i < looked.size(); ++i)
    for (const RoomWay& way : looked[i].seen.ways) {
      if (asked++ % every != 0) continue;
      ++found;
      EXPECT_TRUE(waysByLines(world, looked[i].time, dense).count(way))
          << "room " << way.room << " by " << way.openings.size() << " openings at " << looked[i].time;
    }
  return found;
}

TEST(ThroughSights, OfRandomHousesMissNothingThatStraightLinesSee) {
  Counts counts;
  std::size_t seen = 0;
  for (std::uint64_t seed = 7200; seed < 7210; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const World world = worldOf(random, false);
    const auto throughs = throughSights(world.scene, world.rooms, world.eye, world.spec);
    ASSERT_TRUE(throughs);
    compare(world, *throughs, {}, counts);
    seen += expectSeen(world, *throughs, {.degrees = 0.01, .metres = 0.1, .rays = 1, .places = 1}, 20);
  }
  std::printf("runs %zu, shorter than a step %zu; untold %zu, of these with openings in sight %zu; told and seen %zu\n",
              counts.runs, counts.brief, counts.untold, counts.stayed, seen);
  EXPECT_GT(counts.brief, 20u);
  EXPECT_GT(seen, 20u);
}

TEST(ThroughSights, OverLowThingsMissNothingWiderThanASector) {
  Counts counts;
  for (std::uint64_t seed = 7300; seed < 7306; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    World world = worldOf(random, true);
    const auto throughs = throughSights(world.scene, world.rooms, world.eye, world.spec);
    ASSERT_TRUE(throughs);
    compare(world, *throughs, {.degrees = 0.5, .metres = 0.1, .rays = 4, .places = 4, .heights = 6}, counts);
  }
  std::printf("runs %zu, shorter than a step %zu; untold %zu\n", counts.runs, counts.brief, counts.untold);
  EXPECT_GT(counts.runs, 5u);
}

TEST(ThroughSights, AreTheSameWithStepsKnownBefore) {
  for (std::uint64_t seed = 7400; seed < 7406; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const World before = worldOf(random, true);
    World now = before;
    const double from = uniform(random, 0, 1.5), until = from + 0.3;
    now.eye = [&](double t) {
      auto eye = before.eye(t);
      if (t > from && t < until) eye->pupil.bearing += 20 * (t - from) * (until - t);
      return eye;
    };
    const auto earlier = throughSights(before.scene, before.rooms, before.eye, before.spec);
    std::size_t asked = 0;
    const KnownThroughs known{earlier->steps, [&](double t) { return ++asked, now.eye(t) == before.eye(t); }};
    const auto with = throughSights(now.scene, now.rooms, now.eye, now.spec, {}, &known);
    const auto without = throughSights(now.scene, now.rooms, now.eye, now.spec);
    EXPECT_GT(asked, 0u);
    EXPECT_EQ(with->sights, without->sights);
    ASSERT_EQ(with->steps.size(), without->steps.size());
    for (std::size_t k = 0; k < with->steps.size(); ++k) {
      EXPECT_EQ(with->steps[k].asked, without->steps[k].asked);
      ASSERT_EQ(with->steps[k].found.size(), without->steps[k].found.size());
      for (std::size_t i = 0; i < with->steps[k].found.size(); ++i)
        EXPECT_EQ(with->steps[k].found[i].seen, without->steps[k].found[i].seen);
    }
  }
}

}  // namespace
}  // namespace wend::sight
