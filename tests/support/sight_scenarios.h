/// Takes through rooms and halls for measuring sight: walls, and a lens that walks, halts, pans and whips among them.
/// The same numbers on every machine but for the last bits of sine and cosine.
///
/// Rooms stand in a jittered lattice with doors between neighbours; a hall is one room. Columns (four walls) and flats
/// (one) are strewn where they leave the lens its clearance until the count of walls is met.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <queue>
#include <random>
#include <string>
#include <vector>

#include "core/geometry/polygon.h"
#include "core/geometry/segment.h"

namespace wend::scenarios {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

struct LensPose {
  Point pupil;
  double bearing = 0;    ///< degrees, unwrapped
  double halfAngle = 0;  ///< degrees
};

struct SightScenario {
  std::string name;
  geometry::Extent extent;
  double cell = 0.05;
  double framesPerSecond = 24;
  std::vector<Segment> walls;
  std::vector<LensPose> poses;  ///< one more than frames: frame k goes from pose k to pose k + 1
  std::size_t frames() const { return poses.size() - 1; }
};

struct ScenarioSpec {
  std::string name;
  double width, height, cell;
  int columns, rows;  ///< of rooms; 1 x 1 is a hall
  int walls, frames;
  std::uint64_t seed;
};

/// What the lens keeps from walls.
constexpr double kLensClearance = 0.34;

inline std::vector<ScenarioSpec> scenarioSpecs() {
  return {{"S1", 12, 8, 0.05, 3, 2, 40, 4320, 101},
          {"S2", 30, 20, 0.05, 8, 5, 300, 4320, 102},
          {"S2open", 30, 20, 0.05, 1, 1, 300, 4320, 103},
          {"S3", 100, 60, 0.1, 20, 13, 3000, 21600, 104},
          {"S3open", 100, 60, 0.1, 1, 1, 3000, 21600, 105}};
}

namespace detail {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11) * 0x1.0p-53;
  }
  int below(int count) { return static_cast<int>(random_() % static_cast<std::uint64_t>(count)); }

 private:
  std::mt19937_64 random_;
};

/// Rooms between lines x[i] and y[j]; `east[room]` and `north[room]` are the door's middle along the wall shared with
/// that neighbour, negative where there is none.
struct Rooms {
  std::vector<double> x, y, east, north;
  int columns = 0, rows = 0;

  std::size_t at(int column, int row) const { return static_cast<std::size_t>(row * columns + column); }
  double low(const std::vector<double>& lines, int i) const { return lines[static_cast<std::size_t>(i)]; }
};

constexpr double kDoorHalf = 0.55;

inline std::vector<double> linesBetween(Draw& draw, double length, int parts) {
  std::vector<double> lines;
  for (int i = 0; i <= parts; ++i) {
    const double jitter = i == 0 || i == parts ? 0 : draw.between(-0.12, 0.12) * length / parts;
    lines.push_back(length * i / parts + jitter);
  }
  return lines;
}

/// The root of a cell in a forest of joined rooms.
inline std::size_t rootOf(std::vector<std::size_t>& parent, std::size_t i) {
  while (parent[i] != i) i = parent[i] = parent[parent[i]];
  return i;
}

/// Doors that join all rooms, and three in five of the others.
inline Rooms roomsOf(Draw& draw, const ScenarioSpec& spec) {
  Rooms rooms;
  rooms.columns = spec.columns, rooms.rows = spec.rows;
  rooms.x = linesBetween(draw, spec.width, spec.columns), rooms.y = linesBetween(draw, spec.height, spec.rows);
  const std::size_t count = rooms.at(0, spec.rows);
  rooms.east.assign(count, -1), rooms.north.assign(count, -1);
  struct Wall {
    int column, row;
    bool east;
  };
  std::vector<Wall> walls;
  for (int row = 0; row < spec.rows; ++row)
    for (int column = 0; column < spec.columns; ++column) {
      if (column + 1 < spec.columns) walls.push_back({column, row, true});
      if (row + 1 < spec.rows) walls.push_back({column, row, false});
    }
  for (std::size_t i = walls.size(); i > 1; --i)
    std::swap(walls[i - 1], walls[static_cast<std::size_t>(draw.below(static_cast<int>(i)))]);
  std::vector<std::size_t> parent(count);
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  for (const Wall& w : walls) {
    const std::size_t here = rooms.at(w.column, w.row), there = rooms.at(w.column + w.east, w.row + !w.east);
    const bool joins = rootOf(parent, here) != rootOf(parent, there);
    if (!joins && draw.between(0, 1) > 0.6) continue;
    parent[rootOf(parent, here)] = rootOf(parent, there);
    const std::vector<double>& along = w.east ? rooms.y : rooms.x;
    const int i = w.east ? w.row : w.column;
    const double door = draw.between(rooms.low(along, i) + 1, rooms.low(along, i + 1) - 1);
    (w.east ? rooms.east : rooms.north)[here] = door;
  }
  return rooms;
}

/// One wall from a to b along an axis, parted where the door is.
inline void addWall(Point a, Point b, double door, std::vector<Segment>& walls) {
  if (door < 0) {
    walls.push_back({a, b});
  } else if (a.x == b.x) {
    walls.push_back({a, {a.x, door - kDoorHalf}});
    walls.push_back({{a.x, door + kDoorHalf}, b});
  } else {
    walls.push_back({a, {door - kDoorHalf, a.y}});
    walls.push_back({{door + kDoorHalf, a.y}, b});
  }
}

inline std::vector<Segment> wallsOf(const Rooms& rooms) {
  const double w = rooms.x.back(), h = rooms.y.back();
  std::vector<Segment> walls = {{{0, 0}, {w, 0}}, {{w, 0}, {w, h}}, {{w, h}, {0, h}}, {{0, h}, {0, 0}}};
  for (int row = 0; row < rooms.rows; ++row)
    for (int column = 0; column < rooms.columns; ++column) {
      const double x0 = rooms.low(rooms.x, column), x1 = rooms.low(rooms.x, column + 1);
      const double y0 = rooms.low(rooms.y, row), y1 = rooms.low(rooms.y, row + 1);
      if (column + 1 < rooms.columns) addWall({x1, y0}, {x1, y1}, rooms.east[rooms.at(column, row)], walls);
      if (row + 1 < rooms.rows) addWall({x0, y1}, {x1, y1}, rooms.north[rooms.at(column, row)], walls);
    }
  return walls;
}

/// The door between neighbours as a place and the way through it from `from`; false where there is none.
inline bool doorBetween(const Rooms& rooms, int c, int r, int dc, int dr, Point& door) {
  const int column = std::min(c, c + dc), row = std::min(r, r + dr);
  const double at = (dc != 0 ? rooms.east : rooms.north)[rooms.at(column, row)];
  if (at < 0) return false;
  door = dc != 0 ? Point{rooms.low(rooms.x, column + 1), at} : Point{at, rooms.low(rooms.y, row + 1)};
  return true;
}

constexpr std::array<std::array<int, 2>, 4> kWays = {{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};

/// The rooms on the shortest way from one to another, neither the first nor a detour: breadth first.
inline std::vector<std::size_t> wayBetween(const Rooms& rooms, std::size_t from, std::size_t to) {
  std::vector<std::size_t> next(rooms.east.size(), rooms.east.size());
  std::queue<std::size_t> open;
  open.push(to), next[to] = to;
  while (!open.empty()) {
    const std::size_t room = open.front();
    open.pop();
    const int c = static_cast<int>(room) % rooms.columns, r = static_cast<int>(room) / rooms.columns;
    for (const auto& [dc, dr] : kWays) {
      Point door;
      if (c + dc < 0 || c + dc >= rooms.columns || r + dr < 0 || r + dr >= rooms.rows) continue;
      const std::size_t other = rooms.at(c + dc, r + dr);
      if (next[other] != rooms.east.size() || !doorBetween(rooms, c, r, dc, dr, door)) continue;
      next[other] = room, open.push(other);
    }
  }
  std::vector<std::size_t> way;
  for (std::size_t room = from; room != to;) way.push_back(room = next[room]);
  return way;
}

inline Point placeIn(Draw& draw, const Rooms& rooms, std::size_t room) {
  const int c = static_cast<int>(room) % rooms.columns, r = static_cast<int>(room) / rooms.columns;
  return {draw.between(rooms.low(rooms.x, c) + 0.9, rooms.low(rooms.x, c + 1) - 0.9),
          draw.between(rooms.low(rooms.y, r) + 0.9, rooms.low(rooms.y, r + 1) - 0.9)};
}

/// Places to pass, straight through the middle of every door.
inline std::vector<Point> walkOver(Draw& draw, const Rooms& rooms, double metres) {
  const int count = static_cast<int>(rooms.east.size());
  auto room = static_cast<std::size_t>(draw.below(count));
  std::vector<Point> walk{placeIn(draw, rooms, room)};
  double length = 0;
  while (length < metres) {
    const std::size_t before = walk.size();
    for (const std::size_t next : wayBetween(rooms, room, static_cast<std::size_t>(draw.below(count)))) {
      const int c = static_cast<int>(room) % rooms.columns, r = static_cast<int>(room) / rooms.columns;
      const int dc = static_cast<int>(next) % rooms.columns - c, dr = static_cast<int>(next) / rooms.columns - r;
      Point door;
      doorBetween(rooms, c, r, dc, dr, door);
      for (const double off : {-0.8, -0.4, 0.4, 0.8}) walk.push_back(door + Vec{off * dc, off * dr});
      room = next;
    }
    walk.push_back(placeIn(draw, rooms, room));
    for (std::size_t i = before; i < walk.size(); ++i) length += geometry::distance(walk[i - 1], walk[i]);
  }
  return walk;
}

/// Corners cut four times over.
inline std::vector<Point> smoothed(std::vector<Point> walk) {
  for (int round = 0; round < 4; ++round) {
    std::vector<Point> cut{walk.front()};
    for (std::size_t i = 0; i + 1 < walk.size(); ++i) {
      cut.push_back(geometry::lerp(walk[i], walk[i + 1], 0.25));
      cut.push_back(geometry::lerp(walk[i], walk[i + 1], 0.75));
    }
    cut.push_back(walk.back());
    walk = std::move(cut);
  }
  return walk;
}

/// A walk by the metres along it.
class Path {
 public:
  explicit Path(std::vector<Point> points) : points_(std::move(points)), metres_{0} {
    for (std::size_t i = 1; i < points_.size(); ++i)
      metres_.push_back(metres_.back() + geometry::distance(points_[i - 1], points_[i]));
  }
  Point at(double metres) const {
    const double s = std::clamp(metres, 0.0, metres_.back());
    const auto next = std::upper_bound(metres_.begin() + 1, metres_.end() - 1, s);
    const auto i = static_cast<std::size_t>(next - metres_.begin());
    return geometry::lerp(points_[i - 1], points_[i], (s - metres_[i - 1]) / (metres_[i] - metres_[i - 1]));
  }

 private:
  std::vector<Point> points_;
  std::vector<double> metres_;
};

/// Metres a second: every 20 s a halt of 3 s, a walk, and a dash of up to 1.8.
inline double speedAt(double t) {
  const double s = std::fmod(t, 20.0);
  if (s < 3) return 0;
  const double walk = 0.7 * std::min({1.0, s - 3, 20 - s});
  return walk + (s > 15 && s < 19 ? 1.1 * std::pow(std::sin((s - 15) * 0.785398), 2) : 0);
}

/// Degrees beside the way ahead: a pan of 60 to one side and back, and once around in 1.5 s every 25.
inline double turnAt(double t) {
  const double pan = std::fmod(t, 14.0);
  const double side = std::fmod(t, 28.0) < 14 ? 60 : -60;
  const double whip = std::floor(t / 25) + geometry::smoothstep((std::fmod(t, 25.0) - 23.5) / 1.5);
  return 360 * whip + side * (geometry::smoothstep(pan / 3) - geometry::smoothstep((pan - 6) / 4));
}

inline std::vector<LensPose> posesOf(const Path& path, int frames, double framesPerSecond) {
  std::vector<LensPose> poses;
  double metres = 1, ahead = 0;
  for (int frame = 0; frame <= frames; ++frame) {
    const double t = frame / framesPerSecond;
    // Where the walk turns on its heel the lens comes round at 120 degrees a second.
    const double along = geometry::bearingOf(path.at(metres + 0.5) - path.at(metres - 0.5));
    const double most = 120 / framesPerSecond;
    ahead += std::clamp(geometry::turn(ahead, along), -most, most);
    const double angle = 47.5 + 27.5 * std::sin(t / 6);
    poses.push_back({path.at(metres), ahead + turnAt(t), angle / 2});
    metres += speedAt(t) / framesPerSecond;
  }
  return poses;
}

/// Places of the lens sorted into squares, to ask how near it comes.
class NearLens {
 public:
  NearLens(const std::vector<LensPose>& poses, double width, double height)
      : wide_(static_cast<int>(width) + 2), places_(static_cast<std::size_t>(wide_ * (static_cast<int>(height) + 2))) {
    for (const LensPose& pose : poses) places_[squareOf(pose.pupil.x, pose.pupil.y)].push_back(pose.pupil);
  }
  bool comesNearer(Segment wall, double metres) const {
    for (double x = std::min(wall.a.x, wall.b.x) - 1; x <= std::max(wall.a.x, wall.b.x) + 1; x += 1)
      for (double y = std::min(wall.a.y, wall.b.y) - 1; y <= std::max(wall.a.y, wall.b.y) + 1; y += 1)
        for (const Point p : places_[squareOf(x, y)])
          if (geometry::distance(p, wall) < metres) return true;
    return false;
  }

 private:
  std::size_t squareOf(double x, double y) const {
    const int column = std::clamp(static_cast<int>(x), 0, wide_ - 1);
    const int rows = static_cast<int>(places_.size()) / wide_;
    return static_cast<std::size_t>(std::clamp(static_cast<int>(y), 0, rows - 1) * wide_ + column);
  }
  int wide_;
  std::vector<std::vector<Point>> places_;
};

/// Whether a thing of this size stands clear of the lattice of rooms.
inline bool standsFree(const Rooms& rooms, Point p, double reach) {
  const auto near = [&](const std::vector<double>& lines, double at) {
    return std::any_of(lines.begin(), lines.end(), [&](double line) { return std::abs(line - at) < reach + 0.05; });
  };
  return !near(rooms.x, p.x) && !near(rooms.y, p.y);
}

inline std::vector<Segment> thingAt(Draw& draw, Point centre, double& reach, int most) {
  const Vec along = geometry::direction(draw.between(0, 360));
  if (most < 4 || draw.between(0, 1) < 0.5) {
    reach = draw.between(0.3, 0.9);
    return {{centre - along * reach, centre + along * reach}};
  }
  const double half = draw.between(0.12, 0.3);
  reach = half * 1.4143;
  const Vec u = along * half, v = geometry::left(u);
  const std::array<Point, 4> corner{centre - u - v, centre + u - v, centre + u + v, centre - u + v};
  std::vector<Segment> walls;
  for (std::size_t i = 0; i < 4; ++i) walls.push_back({corner[i], corner[(i + 1) % 4]});
  return walls;
}

/// Columns and flats, apart from each other and clear of the lens, until there are so many walls.
inline void strew(Draw& draw, const Rooms& rooms, const NearLens& lens, int count, std::vector<Segment>& walls) {
  struct Thing {
    Point at;
    double reach;
  };
  std::vector<Thing> things;
  for (int tries = 0; static_cast<int>(walls.size()) < count && tries < 400 * count; ++tries) {
    const Point p{draw.between(0, rooms.x.back()), draw.between(0, rooms.y.back())};
    double reach = 0;
    const auto thing = thingAt(draw, p, reach, count - static_cast<int>(walls.size()));
    if (!standsFree(rooms, p, reach)) continue;
    if (std::any_of(things.begin(), things.end(),
                    [&](const Thing& t) { return geometry::distance(t.at, p) < t.reach + reach + 0.05; }))
      continue;
    if (std::any_of(thing.begin(), thing.end(), [&](Segment s) { return lens.comesNearer(s, kLensClearance); }))
      continue;
    things.push_back({p, reach});
    walls.insert(walls.end(), thing.begin(), thing.end());
  }
}

}  // namespace detail

inline SightScenario sightScenario(const ScenarioSpec& spec) {
  detail::Draw draw(spec.seed);
  SightScenario scenario{spec.name, {{0, 0}, {spec.width, spec.height}}, spec.cell, 24, {}, {}};
  const detail::Rooms rooms = detail::roomsOf(draw, spec);
  const double seconds = spec.frames / scenario.framesPerSecond;
  const detail::Path path(detail::smoothed(detail::walkOver(draw, rooms, seconds * 0.8 + 20)));
  scenario.poses = detail::posesOf(path, spec.frames, scenario.framesPerSecond);
  scenario.walls = detail::wallsOf(rooms);
  const detail::NearLens lens(scenario.poses, spec.width, spec.height);
  detail::strew(draw, rooms, lens, spec.walls, scenario.walls);
  return scenario;
}

/// Metres from the lens to the nearest wall, over all poses.
inline double clearanceOf(const SightScenario& scenario) {
  double least = 1e300;
  for (const LensPose& pose : scenario.poses)
    for (const Segment& wall : scenario.walls) least = std::min(least, geometry::distance(pose.pupil, wall));
  return least;
}

}  // namespace wend::scenarios
