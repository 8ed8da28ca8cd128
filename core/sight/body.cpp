#include "core/sight/body.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/geometry/disc.h"
#include "core/geometry/tolerance.h"
#include "core/sight/mirror_leg.h"
#include "core/sight/ray.h"

namespace wend::sight {

namespace {

constexpr double kPi = std::numbers::pi;

/// Looks from one pupil at one body, straight or in one mirror. Directions are turns, in radians counter-clockwise
/// from the one to the middle of the body (of its image).
class Look {
 public:
  Look(const SceneAt& now, const Frame& frame, const Body& body, const Mirror* mirror);
  bool finds();

 private:
  struct Target {
    Upright box;
    bool there = false;
  };
  Vec direction(double turn) const { return geometry::turned(middle_, turn); }
  double turnTo(Point p) const { return geometry::angleBetween(middle_, p - frame_.foot()); }

  bool facesMirror() const;
  Span spread() const;
  Slopes window(Vec direction, double& mirrorAt) const;
  Target target(Vec direction, double mirrorAt) const;
  double overlap(double turn) const;
  std::optional<Span> inFrame(Span turns) const;
  double edge(double in, double out) const;

  void gather(Span turns);
  bool mayStandIn(Point centre, double radius, Span turns) const;
  void addCorners(const Prism& prism, bool reflect, Span turns);
  void addCorner(Point p, bool reflect, Span turns);
  std::vector<double> asked(Span turns);

  bool seesAlong(double turn);
  void crossStraight(Vec direction, double far);
  void crossMirrored(Vec direction, double mirrorAt, double far);
  bool anyPartSeen(const Target& target, Point origin, Vec direction, double shift, Slopes window);

  const SceneAt& now_;
  const Frame& frame_;
  const Body& body_;
  const Mirror* mirror_;
  Point image_;
  Vec middle_;
  double away_ = 0;
  std::vector<std::uint32_t> before_, behind_, walls_;  ///< prisms on the way (its two halves), walls at the body
  std::vector<double> corners_;
  std::vector<Crossing> crossings_;
  std::vector<MirrorHit> hits_;
  std::vector<Upright> boxes_;
};

Look::Look(const SceneAt& now, const Frame& frame, const Body& body, const Mirror* mirror)
    : now_(now), frame_(frame), body_(body), mirror_(mirror) {
  image_ = mirror ? geometry::reflected(body.centre, mirror->face) : body.centre;
  const Vec way = image_ - frame.foot();
  away_ = geometry::length(way);
  middle_ = away_ > 0 ? geometry::unit(way) : frame.axis();
}

/// The pupil stands on the side the mirror shows, and so does some of the body.
bool Look::facesMirror() const {
  const Vec along = geometry::unit(mirror_->face.b - mirror_->face.a);
  return shows(*mirror_, frame_.foot()) && geometry::cross(along, body_.centre - mirror_->face.a) > -body_.radius;
}

/// The turns over which the body's disc spreads, and the mirror with it.
Span Look::spread() const {
  const double half = geometry::tangentAngle(away_, body_.radius).value_or(kPi);
  if (!mirror_) return {-half, half};
  // Seen from its own side the way from a to b of a mirror turns counter-clockwise.
  return {std::max(-half, turnTo(mirror_->face.a)), std::min(half, turnTo(mirror_->face.b))};
}

/// The slopes that are in frame in this direction, and through the mirror; `mirrorAt` gets its distance.
Slopes Look::window(Vec direction, double& mirrorAt) const {
  const Slopes inFrame = frame_.slopes(direction);
  mirrorAt = 0;
  if (!mirror_) return inFrame;
  const auto r = geometry::whereRayMeets(frame_.foot(), direction, mirror_->face);
  if (!r) return {};
  mirrorAt = *r;
  return meet(inFrame, slopesOf(frame_.height(), {*r, *r, mirror_->bottom, mirror_->top}));
}

Look::Target Look::target(Vec direction, double mirrorAt) const {
  const auto part = geometry::chord(frame_.foot(), direction, image_, body_.radius);
  if (!part || part->until <= mirrorAt) return {};
  return {{std::max(part->from, mirrorAt), part->until, body_.floor, body_.top}, true};
}

/// Slopes that the body and the window share in a direction; negative: how much they lack.
double Look::overlap(double turn) const {
  const Vec u = direction(turn);
  double mirrorAt = 0;
  const Slopes open = window(u, mirrorAt);
  const Target goal = target(u, mirrorAt);
  if (!goal.there) return -1e9;
  const Slopes both = meet(open, slopesOf(frame_.height(), goal.box));
  return std::clamp(both.high - both.low, -1e9, 1e9);
}

/// The last turn with overlap on the way from `in` to `out`.
double Look::edge(double in, double out) const {
  for (int i = 0; i < 60 && std::abs(in - out) > 1e-12; ++i) {
    const double half = (in + out) / 2;
    (overlap(half) >= 0 ? in : out) = half;
  }
  return in;
}

/// The turns in which some of the body is in frame (and in the mirror): convex meets convex, so they are one stretch.
std::optional<Span> Look::inFrame(Span turns) const {
  if (!(turns.length() > geometry::kSliver)) return std::nullopt;
  constexpr int kParts = 16;
  const double inset = std::min(1e-9, turns.length() / 4);
  const auto turnAt = [&](double i) { return geometry::lerp(turns.from + inset, turns.until - inset, i / kParts); };
  double best = 0, most = overlap(turnAt(0));
  for (int i = 1; i <= kParts; ++i)
    if (const double o = overlap(turnAt(i)); o > most) best = i, most = o;
  double low = std::max(0.0, best - 1), high = std::min<double>(kParts, best + 1);
  for (int i = 0; i < 50 && most < 0; ++i) {
    const double a = low + (high - low) * 0.382, b = low + (high - low) * 0.618;
    const double atA = overlap(turnAt(a)), atB = overlap(turnAt(b));
    if (atA > most) best = a, most = atA;
    if (atB > most) best = b, most = atB;
    (atA > atB ? high : low) = atA > atB ? b : a;
  }
  if (most < 0) return std::nullopt;
  const Span ends{turnAt(0), turnAt(kParts)};
  return Span{overlap(ends.from) >= 0 ? ends.from : edge(turnAt(best), ends.from),
              overlap(ends.until) >= 0 ? ends.until : edge(turnAt(best), ends.until)};
}

/// A circle that may reach into the sector between the pupil and the far side of the body.
bool Look::mayStandIn(Point centre, double radius, Span turns) const {
  const Vec d = centre - frame_.foot();
  const double metres = geometry::length(d);
  if (metres - radius > away_ + body_.radius) return false;
  const auto half = geometry::tangentAngle(metres, radius);
  if (!half) return true;
  const double off = std::remainder(geometry::angleBetween(middle_, d) - (turns.from + turns.until) / 2, 2 * kPi);
  return std::abs(off) <= *half + turns.length() / 2;
}

void Look::addCorner(Point p, bool reflect, Span turns) {
  const double turn = turnTo(reflect ? geometry::reflected(p, mirror_->face) : p);
  if (turn > turns.from && turn < turns.until) corners_.push_back(turn);
}

void Look::addCorners(const Prism& prism, bool reflect, Span turns) {
  if (prism.form == Prism::Form::outline) {
    for (const Point& p : now_.corners(prism)) addCorner(p, reflect, turns);
  } else if (prism.form == Prism::Form::sheet) {
    addCorner(prism.sheet.a, reflect, turns);
    addCorner(prism.sheet.b, reflect, turns);
  } else {
    const Point centre = reflect ? geometry::reflected(prism.centre, mirror_->face) : prism.centre;
    const auto half = geometry::tangentAngle(geometry::distance(centre, frame_.foot()), prism.radius);
    if (!half) return;
    const double middle = turnTo(centre);
    for (const double turn : {middle - *half, middle + *half})
      if (turn > turns.from && turn < turns.until) corners_.push_back(turn);
  }
}

void Look::gather(Span turns) {
  before_.clear(), behind_.clear(), walls_.clear(), corners_.clear();
  for (std::size_t i = 0; i < now_.size(); ++i) {
    const Prism& prism = now_.prism(i);
    const auto index = static_cast<std::uint32_t>(i);
    if (mayStandIn(prism.centre, prism.radius, turns)) {
      before_.push_back(index);
      addCorners(prism, false, turns);
    }
    if (mirror_ && mayStandIn(geometry::reflected(prism.centre, mirror_->face), prism.radius, turns)) {
      behind_.push_back(index);
      addCorners(prism, true, turns);
    }
    if (prism.jamb && geometry::distance(prism.centre, body_.centre) < prism.radius + body_.radius)
      walls_.push_back(index);
  }
}

/// Turns to ask in, the likeliest first: the middle of every stretch between corners, then just inside its ends and
/// a fan across it.
std::vector<double> Look::asked(Span turns) {
  corners_.push_back(turns.from);
  corners_.push_back(turns.until);
  std::sort(corners_.begin(), corners_.end());
  std::vector<double> turnsAsked, later;
  for (std::size_t i = 0; i + 1 < corners_.size(); ++i) {
    const double from = corners_[i], wide = corners_[i + 1] - from;
    if (wide <= geometry::kSliver) continue;
    turnsAsked.push_back(from + wide / 2);
    const double inset = std::min(1e-6, wide / 4);
    later.push_back(from + inset);
    later.push_back(from + wide - inset);
    const int parts = static_cast<int>(std::ceil(wide / geometry::radians(kFanStep)));
    for (int k = 1; k < parts; ++k) later.push_back(from + wide * k / parts);
  }
  turnsAsked.insert(turnsAsked.end(), later.begin(), later.end());
  return turnsAsked;
}

void Look::crossStraight(Vec direction, double far) {
  crossings_.clear();
  for (const std::uint32_t i : before_) appendCrossings(now_, now_.prism(i), frame_.foot(), direction, crossings_);
  for (const Crossing& c : crossings_)
    if (c.box.near < far) boxes_.push_back(c.box);
}

void Look::crossMirrored(Vec direction, double mirrorAt, double far) {
  hits_.clear();
  for (const std::uint32_t i : before_) {
    crossings_.clear();
    appendCrossings(now_, now_.prism(i), frame_.foot(), direction, crossings_);
    for (const Crossing& c : crossings_) appendFirstLeg({c.box, i}, *mirror_, direction, mirrorAt, hits_);
  }
  appendSecondLeg(now_, behind_, *mirror_, frame_.foot(), direction, mirrorAt, hits_);
  for (const MirrorHit& hit : hits_)
    if (hit.box.near < far) boxes_.push_back(hit.box);
}

/// Asks the parts of the target that no wall cuts off from the body's centre.
bool Look::anyPartSeen(const Target& target, Point origin, Vec direction, double shift, Slopes window) {
  std::vector<Span> cuts;
  for (const std::uint32_t i : walls_) {
    const auto shadow = geometry::shadowOn(now_.corners(now_.prism(i)), body_.centre, origin, direction);
    if (shadow) cuts.push_back({shadow->from + shift, shadow->until + shift});
  }
  std::sort(cuts.begin(), cuts.end(), [](Span a, Span b) { return a.from < b.from; });
  cuts.push_back({target.box.far, target.box.far});
  double reached = target.box.near;
  for (const Span& cut : cuts) {
    const double until = std::min(cut.from, target.box.far);
    if (until > reached && anyFree(frame_.height(), boxes_, {reached, until, body_.floor, body_.top}, window))
      return true;
    reached = std::max(reached, cut.until);
  }
  return false;
}

bool Look::seesAlong(double turn) {
  const Vec u = direction(turn);
  double mirrorAt = 0;
  const Slopes open = window(u, mirrorAt);
  const Target goal = target(u, mirrorAt);
  if (!goal.there || open.empty()) return false;
  boxes_.clear();
  if (!mirror_) {
    crossStraight(u, goal.box.far);
    return anyPartSeen(goal, frame_.foot(), u, 0, open);
  }
  crossMirrored(u, mirrorAt, goal.box.far);
  return anyPartSeen(goal, frame_.foot() + u * mirrorAt, geometry::reflected(u, mirror_->face), mirrorAt, open);
}

bool Look::finds() {
  if (mirror_ && !facesMirror()) return false;
  const auto turns = inFrame(spread());
  if (!turns) return false;
  gather(*turns);
  const std::vector<double> all = asked(*turns);
  return std::any_of(all.begin(), all.end(), [this](double turn) { return seesAlong(turn); });
}

}  // namespace

BodySight bodySight(const SceneAt& now, const Eye& eye, const Body& body) {
  const Frame frame(eye);
  BodySight sight;
  sight.marginDegrees = degreesToFrame(eye, body);
  if (sight.marginDegrees <= eye.marginDegrees) sight.seen = Look(now, frame, body, nullptr).finds();
  if (sight.seen) return sight;
  for (const Mirror& mirror : now.mirrors()) {
    if (!Look(now, frame, body, &mirror).finds()) continue;
    sight.seen = true;
    sight.mirror = mirror.tag;
    break;
  }
  return sight;
}

}  // namespace wend::sight
