#include "core/sight/set_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/geometry/disc.h"
#include "core/geometry/polygon.h"
#include "core/sight/mirror_leg.h"
#include "core/sight/mirror_plan.h"
#include "core/sight/moving_mirror.h"
#include "core/sight/region_query.h"
#include "core/sight/swept_view.h"

namespace wend::sight {

using geometry::Convex;
using geometry::Extent;

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// A mirror on its way is told of from so many of its poses in a step.
constexpr int kPoses = 2;

/// What stands and how, for comparing two instants.
bool same(const Prism& a, const Prism& b) {
  return a.form == b.form && a.source == b.source && a.first == b.first && a.count == b.count && a.sheet == b.sheet &&
         a.centre == b.centre && a.radius == b.radius && a.bottom == b.bottom && a.top == b.top;
}

bool same(const Mirror& a, const Mirror& b) {
  return a.tag == b.tag && a.face == b.face && a.bottom == b.bottom && a.top == b.top;
}

template <class T>
bool allSame(const std::vector<T>& a, const std::vector<T>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const T& x, const T& y) { return same(x, y); });
}

template <class T>
void keepCommon(std::vector<T>& kept, std::span<const T> others) {
  std::erase_if(kept, [&](const T& it) {
    return std::none_of(others.begin(), others.end(), [&](const T& other) { return same(it, other); });
  });
}

template <class T>
void addNew(std::vector<T>& all, const std::vector<T>& others) {
  for (const T& other : others)
    if (std::none_of(all.begin(), all.end(), [&](const T& it) { return same(it, other); })) all.push_back(other);
}

/// A disc hides at least as the many-cornered ring within it.
constexpr int kDiscSides = 24;

std::vector<Segment> edgesOf(const SceneAt& now, const Prism& prism) {
  if (prism.form == Prism::Form::sheet) return {prism.sheet};
  std::vector<Segment> edges;
  const auto around = [&](std::span<const Point> corners) {
    for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++)
      edges.push_back({corners[j], corners[i]});
  };
  if (prism.form == Prism::Form::outline)
    around(now.corners(prism));
  else
    around(geometry::ringWithin(prism.centre, prism.radius, kDiscSides));
  return edges;
}

bool convex(std::span<const Point> ring) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[(i + 1) % ring.size()], c = ring[(i + 2) % ring.size()];
    if (geometry::cross(b - a, c - b) < 0) return false;
  }
  return true;
}

LowThing lowOf(const SceneAt& now, const Prism& prism) {
  LowThing low;
  low.heights = {prism.bottom, prism.top};
  if (prism.form == Prism::Form::disc) {
    low.ring = {prism.centre};
    low.discRadius = prism.radius;
    return low;
  }
  low.sheets = edgesOf(now, prism);
  if (prism.form == Prism::Form::outline) {
    const auto corners = now.corners(prism);
    if (convex(corners)) low.ring.assign(corners.begin(), corners.end());
  }
  return low;
}

NearlyWall nearlyOf(std::vector<Segment> edges) {
  std::vector<Point> ends;
  for (const Segment& edge : edges) ends.insert(ends.end(), {edge.a, edge.b});
  const Extent box = geometry::extentOf(ends);
  return {std::move(edges), geometry::lerp(box.low, box.high, 0.5), geometry::distance(box.low, box.high) / 2};
}

/// The part of a sheet in front of a mirror, more than its skin away.
std::optional<Segment> beforeSkin(Segment sheet, Segment mirror) {
  const Vec off = geometry::left(geometry::unit(mirror.b - mirror.a)) * kMirrorSkin;
  return inFront(sheet, {mirror.a + off, mirror.b + off});
}

/// What hides by its shadow on the way back from a mirror.
std::vector<LowThing> lowBefore(const std::vector<LowThing>& low, Segment mirror) {
  std::vector<LowThing> before;
  const Vec along = geometry::unit(mirror.b - mirror.a);
  for (const LowThing& thing : low) {
    LowThing kept{{}, {}, thing.discRadius, thing.heights, kNobody};
    for (const Segment& sheet : thing.sheets)
      if (const auto part = beforeSkin(sheet, mirror)) kept.sheets.push_back(*part);
    const bool whole = std::all_of(thing.ring.begin(), thing.ring.end(), [&](Point p) {
      return geometry::cross(along, p - mirror.a) > thing.discRadius + kMirrorSkin;
    });
    if (whole) kept.ring = thing.ring;
    if (!kept.sheets.empty() || !kept.ring.empty()) before.push_back(std::move(kept));
  }
  return before;
}

/// The wall below the glass and the wall above it.
void addEdges(std::vector<LowThing>& low, const Mirror& mirror, Segment below, Segment above) {
  low.push_back({{below}, {}, 0, {-kInfinity, mirror.bottom}, kNobody});
  low.push_back({{above}, {}, 0, {mirror.top, kInfinity}, kNobody});
}

Extent grown(Extent box, double by) {
  return {box.low - Vec{by, by}, box.high + Vec{by, by}};
}

}  // namespace

namespace {

enum class Hides : char {
  some,    ///< by its shadow
  beyond,  ///< everybody from `kNearly` times its distance on
  whole    ///< everybody behind it: both are walls of the floor plan
};

Hides hidesAs(Span ratios, Walls walls) {
  if (ratios.until < kInfinity) return Hides::some;
  if (ratios.from <= 1) return Hides::whole;
  return walls == Walls::nearly && ratios.from <= kNearly ? Hides::beyond : Hides::some;
}

}  // namespace

/// Looks past the glass of a mirror that is moved, or that the lens is beside.
struct SetView::PastGlass {
  Triangulation triangles;
  SweptView view;
  PastGlass(const MovedGlass& glass, const std::vector<Segment>& walls, const Extent& box)
      : triangles(wallsPast(glass, walls, box), box), view(triangles) {}
};

/// The walls for one state of the leaves and one range of the eye's height.
struct SetView::Setting {
  Standing standing;
  std::vector<Hides> hides;  ///< of the fixed prisms, then of those standing
  std::vector<Segment> walls;
  std::vector<LowThing> low, nothing;
  std::vector<NearlyWall> nearly;
  Triangulation triangles;
  SweptView view;

  struct ByMirror {
    Triangulation triangles;
    SweptView view;
    std::vector<LowThing> low;
    ByMirror(const Setting& setting, const Mirror& mirror, const Extent& box)
        : triangles(wallsByMirror(setting.walls, mirror.face, box), boxByMirror(box, mirror.face)),
          view(triangles),
          low(lowBefore(setting.low, mirror.face)) {
      addEdges(low, mirror, mirror.face, mirror.face);
    }
  };
  std::vector<std::unique_ptr<ByMirror>> byMirror;

  std::vector<std::unique_ptr<PastGlass>> beside;  ///< of those that stand

  Setting(const Standing& stands, std::vector<Hides> each, std::vector<Segment> edges, std::vector<LowThing> things,
          std::vector<NearlyWall> nearWalls, const Extent& box)
      : standing(stands),
        hides(std::move(each)),
        walls(std::move(edges)),
        low(std::move(things)),
        nearly(std::move(nearWalls)),
        triangles(walls, box),
        view(triangles),
        byMirror(standing.mirrors.size()),
        beside(standing.mirrors.size()) {}
};

SetView::SetView(const Scene& scene, Heights bodies, Extent ground, Walls walls)
    : scene_(scene),
      bodies_(bodies),
      ground_(grown(ground, 1)),
      walls_(walls),
      changes_(scene.changes()),
      between_(changes_.size() + 1) {}

SetView::~SetView() = default;

SetView::Setting& SetView::settingLike(const Standing& standing, Span heights) {
  const std::vector<Prism>& fixed = scene_.prisms();
  const auto prism = [&](std::size_t i) -> const Prism& {
    return i < fixed.size() ? fixed[i] : standing.prisms[i - fixed.size()];
  };
  std::vector<Hides> hides(fixed.size() + standing.prisms.size());
  for (std::size_t i = 0; i < hides.size(); ++i)
    hides[i] = hidesAs(hidingRatios(heights, {prism(i).bottom, prism(i).top}, bodies_), walls_);
  // The last one used is the likeliest: it is kept at the end.
  for (std::size_t i = settings_.size(); i-- > 0;) {
    Setting& setting = *settings_[i];
    if (setting.hides != hides || !allSame(setting.standing.prisms, standing.prisms) ||
        !allSame(setting.standing.mirrors, standing.mirrors))
      continue;
    std::swap(settings_[i], settings_.back());
    return *settings_.back();
  }
  const SceneAt now = scene_.at(0);
  std::vector<Segment> walls;
  std::vector<LowThing> low;
  std::vector<NearlyWall> nearly;
  for (std::size_t i = 0; i < hides.size(); ++i) {
    if (hides[i] == Hides::beyond) nearly.push_back(nearlyOf(edgesOf(now, prism(i))));
    if (hides[i] == Hides::some) {
      low.push_back(lowOf(now, prism(i)));
      continue;
    }
    const std::vector<Segment> edges = edgesOf(now, prism(i));
    walls.insert(walls.end(), edges.begin(), edges.end());
  }
  settings_.push_back(std::make_unique<Setting>(standing, std::move(hides), std::move(walls), std::move(low),
                                                std::move(nearly), ground_));
  return *settings_.back();
}

/// The stretches of a step within which everything on its way goes on without a change.
std::vector<Span> SetView::stretchesOf(Span time) const {
  std::vector<Span> stretches;
  double reached = time.from;
  for (auto change = std::upper_bound(changes_.begin(), changes_.end(), time.from);
       change != changes_.end() && *change < time.until; reached = *change++)
    stretches.push_back({reached, *change});
  stretches.push_back({reached, time.until});
  return stretches;
}

/// What stands from the step's start to its end. A leaf that changes is seen to move, or to have gone, at the ends of
/// the step, or between its changes within it. Between two changes all instants are alike.
const SetView::Standing& SetView::standingOver(Span time) {
  const auto standingAt = [&](double t) {
    const SceneAt now = scene_.at(t);
    Standing standing{{now.passing().begin(), now.passing().end()}, now.mirrors()};
    std::erase_if(standing.mirrors, [](const Mirror& mirror) { return mirror.moving; });
    return standing;
  };
  const auto next = std::upper_bound(changes_.begin(), changes_.end(), time.from);
  const bool begins = next != changes_.begin() && *std::prev(next) == time.from;
  if (!begins && (next == changes_.end() || time.until < *next)) {
    std::optional<Standing>& between = between_[static_cast<std::size_t>(next - changes_.begin())];
    if (!between) between = standingAt(time.from);
    return *between;
  }
  std::vector<double> instants;
  for (const Span& stretch : stretchesOf(time))
    instants.insert(instants.end(), {(stretch.from + stretch.until) / 2, stretch.until});
  across_ = standingAt(time.from);
  for (const double t : instants) {
    const Standing there = standingAt(t);
    keepCommon(across_.prisms, std::span<const Prism>(there.prisms));
    addNew(across_.mirrors, there.mirrors);
  }
  return across_;
}

namespace {

/// What the layers of all mirrors have in common; `image` is the lens'.
SetLayer& addLayer(SetLook& out, const Mirror& mirror, const SweptStep& image, const EyeStep& eye) {
  SetLayer& layer = out.layers.emplace_back();
  layer.mirror = mirror;
  layer.from = image.from.pupil, layer.until = image.until.pupil;
  layer.sway = image.sway, layer.heights = eye.heights;
  return layer;
}

/// Metres in front of a mirror: where the lens is nearest to its line or furthest behind, and where it is furthest.
Span frontsOf(const SweptStep& lens, Segment mirror) {
  const Vec along = geometry::unit(mirror.b - mirror.a);
  const double a = geometry::cross(along, lens.from.pupil - mirror.a);
  const double b = geometry::cross(along, lens.until.pupil - mirror.a);
  return {std::min(a, b) - lens.sway, std::max(a, b) + lens.sway};
}

}  // namespace

void SetView::addMirrors(Setting& setting, const EyeStep& eye, SetLook& out) {
  constexpr double kDrawn = 2 * Triangulation::kJoin;
  for (std::size_t i = 0; i < setting.standing.mirrors.size(); ++i) {
    const Mirror& mirror = setting.standing.mirrors[i];
    const Span fronts = frontsOf(eye.flat, mirror.face);
    if (fronts.until <= 0) continue;
    if (fronts.from < kDrawn) {
      // What walls are past it does not hang on where the lens is beside it.
      const auto glass = lookInto(mirror.face, {kDrawn, 0}, eye.flat, out.layers.front().region);
      if (glass) addGlass(setting, setting.beside[i], mirror, *glass, eye, out);
      continue;
    }
    if (!meets(out.layers.front().region, mirror.face, kAtGlass)) continue;
    auto& by = setting.byMirror[i];
    if (!by) by = std::make_unique<Setting::ByMirror>(setting, mirror, ground_);
    const SweptStep image = imageOf(eye.flat, mirror.face);
    SetLayer& layer = addLayer(out, mirror, image, eye);
    by->view.of(image, layer.region);
    keepFront(layer.region, mirror.face);
    layer.sides = imageOf(eye.sides, mirror.face);
    layer.low = &by->low;
    layer.nearly = &setting.nearly;
  }
}

void SetView::addMovingMirrors(Setting& setting, Span time, const EyeStep& eye, SetLook& out) {
  for (const Span& stretch : stretchesOf(time)) {
    for (int part = 0; part < kPoses; ++part) {
      const double from = geometry::lerp(stretch.from, stretch.until, part / double(kPoses));
      // A cut acts at its instant, which belongs to what follows.
      const double until =
          std::nextafter(geometry::lerp(stretch.from, stretch.until, (part + 1) / double(kPoses)), -kInfinity);
      const double middle = (from + until) / 2;
      const SceneAt now = scene_.at(middle);
      for (const Mirror& pose : now.mirrors()) {
        if (!pose.moving) continue;
        Drift drift = scene_.driftOf(pose.tag, middle, from);
        drift.take(scene_.driftOf(pose.tag, middle, until));
        std::unique_ptr<PastGlass> past;
        if (const auto glass = lookInto(pose.face, drift, eye.flat, out.layers.front().region))
          addGlass(setting, past, pose, *glass, eye, out);
      }
    }
  }
}

/// What a mirror shows that is somewhere near that pose. `past` is made where there is none.
void SetView::addGlass(Setting& setting, std::unique_ptr<PastGlass>& past, const Mirror& pose, const MovedGlass& glass,
                       const EyeStep& eye, SetLook& out) {
  if (!past) past = std::make_unique<PastGlass>(glass, setting.walls, boxAround(glass, ground_));
  SetLayer& layer = addLayer(out, pose, glass.image, eye);
  past->view.of(glass.seer, layer.region);
  keepFront(layer.region, glass.back);
  layer.low = &setting.nothing;
  layer.nearly = &setting.nearly;
  if (glass.beside) return;
  auto low = std::make_unique<std::vector<LowThing>>(lowBefore(setting.low, glass.front));
  addEdges(*low, pose, edgeBelow(glass, pose.bottom, eye.heights), edgeAbove(glass, pose.top, eye.heights));
  layer.low = low.get();
  lowByMoved_.push_back(std::move(low));
}

namespace {

/// Somebody on their way hides at least what the disc hides that they cover all the while.
LowThing lowOf(const Hiding& hiding) {
  const double covered = hiding.radius - geometry::distance(hiding.way.a, hiding.way.b) / 2 - hiding.sway;
  LowThing low;
  low.ring = {geometry::lerp(hiding.way.a, hiding.way.b, 0.5)};
  low.discRadius = std::max(0.0, covered);
  low.heights = hiding.heights;
  low.tag = hiding.tag;
  return low;
}

}  // namespace

void SetView::look(Span time, const EyeStep& eye, std::span<const Hiding> hiding, SetLook& out) {
  out.layers.clear(), out.bodies.clear();
  Setting& setting = settingLike(standingOver(time), eye.heights);
  SetLayer& direct = out.layers.emplace_back();
  setting.view.of(eye.flat, direct.region);
  direct.from = eye.flat.from.pupil, direct.until = eye.flat.until.pupil;
  direct.sway = eye.flat.sway, direct.heights = eye.heights, direct.sides = eye.sides;
  direct.low = &setting.low;
  direct.nearly = &setting.nearly;
  addMirrors(setting, eye, out);
  if (scene_.mirrorsMove()) addMovingMirrors(setting, time, eye, out);
  for (const Hiding& body : hiding) out.bodies.push_back(lowOf(body));
}

namespace {

/// The sheet across a convex ring, or a disc, between its outermost corners as the eye sees them.
std::optional<Segment> sheetAcross(const LowThing& thing, Point eye) {
  if (thing.ring.empty()) return std::nullopt;
  if (thing.ring.size() == 1) {
    const Vec way = thing.ring.front() - eye;
    if (!(geometry::length(way) > thing.discRadius) || !(thing.discRadius > 0)) return std::nullopt;
    const Vec across = geometry::left(geometry::unit(way)) * thing.discRadius;
    return Segment{thing.ring.front() - across, thing.ring.front() + across};
  }
  Point right = thing.ring.front(), left = right;
  for (const Point& p : thing.ring) {
    if (geometry::cross(right - eye, p - eye) < 0) right = p;
    if (geometry::cross(left - eye, p - eye) > 0) left = p;
  }
  return Segment{right, left};
}

/// At most six corners: leaving some out leaves some shadow unsaid, never more.
void thin(Convex& area) {
  constexpr std::size_t kMost = 6;
  while (area.size() > kMost) {
    std::size_t least = 0;
    double leastArea = kInfinity;
    for (std::size_t i = 0; i < area.size(); ++i) {
      const Point a = area[(i + area.size() - 1) % area.size()], b = area[i], c = area[(i + 1) % area.size()];
      const double lost = std::abs(geometry::cross(b - a, c - b));
      if (lost < leastArea) leastArea = lost, least = i;
    }
    area.erase(area.begin() + static_cast<std::ptrdiff_t>(least));
  }
}

/// The ground plan of a thing, where it is a convex one.
Convex footprintOf(const LowThing& thing) {
  return thing.ring.size() == 1 ? geometry::ringWithin(thing.ring.front(), thing.discRadius, kDiscSides) : thing.ring;
}

/// The part of a thing whose end at height `end` is beyond that side of the frame all through the step: in frame it
/// hides as if it went on that way for ever. `endless` are its heights then.
LowThing beyond(const SetLayer& layer, const StepSide& side, const LowThing& thing, double end, Heights endless) {
  LowThing part{{}, {}, 0, endless, thing.tag};
  double reach = 0;
  for (const Point& p : thing.ring) reach = std::max(reach, geometry::distance(layer.sides.foot, p) + thing.discRadius);
  for (const Segment& sheet : thing.sheets)
    for (const Point& p : {sheet.a, sheet.b}) reach = std::max(reach, geometry::distance(layer.sides.foot, p));
  // The ground is told of within a square whose corners are so far off.
  const Convex ground = groundBeyond(layer.sides, side, {end, end}, std::sqrt(2.0) * reach + 1e-6);
  if (ground.empty()) return part;
  part.ring = geometry::common(footprintOf(thing), ground);
  for (const Segment& sheet : thing.sheets)
    if (const auto inside = geometry::partInside(ground, sheet)) part.sheets.push_back(*inside);
  return part;
}

/// The shadows of a thing at those ratios. Calls visit(area), which returns whether to go on.
template <class Visit>
bool eachShadowAt(const SetLayer& layer, const LowThing& thing, Span ratios, double reach, Visit visit) {
  const auto cast = [&](Segment sheet) {
    Convex area = steadyShadow(layer.from, layer.until, sheet, ratios, reach, layer.sway);
    thin(area);
    return area.empty() || visit(std::move(area));
  };
  if (const auto across = sheetAcross(thing, geometry::lerp(layer.from, layer.until, 0.5)); across && !cast(*across))
    return false;
  return std::all_of(thing.sheets.begin(), thing.sheets.end(), cast);
}

/// The same for a body: first those of the thing as it is, then those of its parts that reach out of the frame.
template <class Visit>
bool eachShadow(const SetLayer& layer, const LowThing& thing, Heights body, double reach, Visit visit) {
  const Span ratios = hidingRatios(layer.heights, thing.heights, body);
  const bool some = ratios.until >= ratios.from;
  if (some && !eachShadowAt(layer, thing, ratios, reach, visit)) return false;
  const auto castPart = [&](const StepSide& side, double end, Heights endless) {
    const Span more = hidingRatios(layer.heights, endless, body);
    const bool wider = more.until >= more.from && !(some && more.from >= ratios.from && more.until <= ratios.until);
    return !wider || eachShadowAt(layer, beyond(layer, side, thing, end, endless), more, reach, visit);
  };
  const auto [bottom, top] = thing.heights;
  return castPart(layer.sides.lower, bottom, {-kInfinity, top}) &&
         castPart(layer.sides.upper, top, {bottom, kInfinity});
}

template <class Visit>
bool eachUnseen(const SetLook& look, const SetLayer& layer, Heights body, int self, double reach, Visit visit) {
  const auto cast = [&](const LowThing& thing) {
    return (thing.tag != kNobody && thing.tag == self) || eachShadow(layer, thing, body, reach, visit);
  };
  for (const StepSide* side : {&layer.sides.lower, &layer.sides.upper})
    if (Convex area = groundBeyond(layer.sides, *side, body, reach); !area.empty() && !visit(std::move(area)))
      return false;
  if (!std::all_of(layer.low->begin(), layer.low->end(), cast)) return false;
  // Whoever hides is asked about on the direct way only: on the way back from a mirror they stand elsewhere.
  return layer.mirror || std::all_of(look.bodies.begin(), look.bodies.end(), cast);
}

}  // namespace

void appendShadows(const SetLook& look, const SetLayer& layer, Heights body, double reach,
                   std::vector<Convex>& shadows) {
  eachUnseen(look, layer, body, kNobody, reach, [&](Convex area) {
    shadows.push_back(std::move(area));
    return true;
  });
}

namespace {

/// A line of sight that ends d metres behind a wall which it meets at most m metres from the eye has a ratio of
/// 1 + d / m at least.
bool rightBehind(const SetLayer& layer, const NearlyWall& wall, Segment way, double radius) {
  const double walked = geometry::distance(way.a, way.b);
  const auto least = [&](double furthest) { return radius + (kNearly - 1) * (furthest + layer.sway) + walked; };
  // Most walls are far off as a whole. The hair holds what rounding takes.
  constexpr double kHair = 1e-9;
  const double around =
      std::max(geometry::distance(layer.from, wall.middle), geometry::distance(layer.until, wall.middle));
  if (geometry::distance(way.a, wall.middle) - wall.radius > least(around + wall.radius) + kHair) return false;
  return std::any_of(wall.edges.begin(), wall.edges.end(), [&](const Segment& edge) {
    double furthest = 0;
    for (const Point& eye : {layer.from, layer.until})
      furthest = std::max({furthest, geometry::distance(eye, edge.a), geometry::distance(eye, edge.b)});
    return geometry::distance(way.a, edge) < least(furthest);
  });
}

}  // namespace

bool mayShow(const SetLook& look, const SetLayer& layer, Segment way, double radius, Heights body, int self) {
  const bool close = std::any_of(layer.nearly->begin(), layer.nearly->end(),
                                 [&](const NearlyWall& wall) { return rightBehind(layer, wall, way, radius); });
  if (close) return true;
  if (!meets(layer.region, way, radius)) return false;
  const double reach = radius + std::max(geometry::distance(layer.from, way.a), geometry::distance(layer.from, way.b)) +
                       geometry::distance(layer.from, layer.until);
  return eachUnseen(look, layer, body, self, 2 * reach, [&](const Convex& area) { return !holds(area, way, radius); });
}

}  // namespace wend::sight
