#include "core/sight/wedge.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/geometry/disc.h"
#include "core/sight/mirror_leg.h"
#include "core/sight/ray.h"

namespace wend::sight {

namespace {

constexpr double kPi = std::numbers::pi;

/// Rays pass a corner at this many radians: a micrometre at ten metres.
constexpr double kBeside = 1e-7;

/// Draws one wedge ray by ray; turns are radians counter-clockwise from the frame's axis.
class Drawer {
 public:
  Drawer(const SceneAt& now, const Frame& frame, const WedgeSpec& spec) : now_(now), frame_(frame), spec_(spec) {
    for (std::size_t i = 0; i < now.size(); ++i) addCorners(now.prism(i));
  }

  geometry::Ring straight() {
    geometry::Ring ring;
    for (const double turn : turns(frame_.turns(), corners_)) {
      const Vec u = geometry::turned(frame_.axis(), turn);
      if (const auto r = firstHidden(u)) ring.push_back(frame_.foot() + u * *r);
    }
    if (ring.size() < 2) return {};
    if (frame_.turns().length() < 2 * kPi - 1e-9) ring.push_back(frame_.foot());
    return ring;
  }

  geometry::Ring mirrored(const Mirror& mirror) {
    std::vector<double> corners = corners_;
    for (std::size_t i = 0; i < now_.size(); ++i) addReflected(now_.prism(i), mirror, corners);
    const Span own{turnTo(mirror.face.a), turnTo(mirror.face.b)}, all = frame_.turns();
    // A mirror across the line behind the axis is out of any frame that is not all round.
    if (own.from > own.until) return {};
    geometry::Ring ring, glass;
    for (const double turn : turns({std::max(own.from, all.from), std::min(own.until, all.until)}, corners)) {
      const Vec u = geometry::turned(frame_.axis(), turn);
      const auto at = geometry::whereRayMeets(frame_.foot(), u, mirror.face);
      const auto r = at ? firstHidden(mirror, u, *at) : std::nullopt;
      if (!r) continue;
      glass.push_back(frame_.foot() + u * *at);
      ring.push_back(geometry::reflected(frame_.foot() + u * *r, mirror.face));
    }
    ring.insert(ring.end(), glass.rbegin(), glass.rend());
    return ring.size() < 4 ? geometry::Ring{} : ring;
  }

 private:
  double turnTo(Point p) const { return geometry::angleBetween(frame_.axis(), p - frame_.foot()); }

  void addDisc(Point centre, double radius, std::vector<double>& corners) const {
    const auto half = geometry::tangentAngle(geometry::distance(centre, frame_.foot()), radius);
    if (!half) return;
    const double middle = turnTo(centre);
    for (int i = -8; i <= 8; ++i) corners.push_back(std::remainder(middle + *half * i / 8, 2 * kPi));
  }
  void addCorners(const Prism& prism) {
    if (prism.form == Prism::Form::disc) return addDisc(prism.centre, prism.radius, corners_);
    for (const Point& p : now_.corners(prism)) corners_.push_back(turnTo(p));
    if (prism.form == Prism::Form::sheet)
      for (const Point& p : {prism.sheet.a, prism.sheet.b}) corners_.push_back(turnTo(p));
  }
  void addReflected(const Prism& prism, const Mirror& mirror, std::vector<double>& corners) const {
    const auto add = [&](Point p) { corners.push_back(turnTo(geometry::reflected(p, mirror.face))); };
    if (prism.form == Prism::Form::disc)
      return addDisc(geometry::reflected(prism.centre, mirror.face), prism.radius, corners);
    for (const Point& p : now_.corners(prism)) add(p);
    if (prism.form == Prism::Form::sheet) add(prism.sheet.a), add(prism.sheet.b);
  }

  /// Both sides of every corner within the span, its ends, and a ray a degree.
  static std::vector<double> turns(Span span, const std::vector<double>& corners) {
    std::vector<double> all;
    if (!(span.length() > 4 * kBeside)) return all;
    const int degrees = static_cast<int>(std::ceil(geometry::degrees(span.length())));
    for (int i = 0; i <= degrees; ++i)
      all.push_back(geometry::lerp(span.from + kBeside, span.until - kBeside, static_cast<double>(i) / degrees));
    for (const double corner : corners)
      for (const double turn : {corner - kBeside, corner + kBeside})
        if (turn > span.from && turn < span.until) all.push_back(turn);
    std::sort(all.begin(), all.end());
    return all;
  }

  std::optional<double> firstHidden(Vec u) {
    boxes_.clear();
    for (const Crossing& c : crossingsAlong(now_, frame_.foot(), u, spec_.range)) boxes_.push_back(c.box);
    return endOfFirst(frame_.slopes(u), {0, spec_.range});
  }
  std::optional<double> firstHidden(const Mirror& mirror, Vec u, double mirrorAt) {
    hits_.clear(), boxes_.clear(), straight_.clear();
    for (std::size_t i = 0; i < now_.size(); ++i) appendCrossings(now_, now_.prism(i), frame_.foot(), u, straight_);
    for (const Crossing& c : straight_) appendFirstLeg({c.box, 0}, mirror, u, mirrorAt, hits_);
    appendSecondLeg(now_, mirror, frame_.foot(), u, mirrorAt, hits_);
    for (const MirrorHit& hit : hits_) boxes_.push_back(hit.box);
    const Slopes glass = slopesOf(frame_.height(), {mirrorAt, mirrorAt, mirror.bottom, mirror.top});
    return endOfFirst(meet(frame_.slopes(u), glass), {mirrorAt, std::max(spec_.range, mirrorAt)});
  }
  std::optional<double> endOfFirst(Slopes window, Span range) {
    spans_.clear();
    distances_.append(frame_.height(), boxes_, spec_.floor, spec_.top, window, range, spans_);
    if (spans_.empty()) return std::nullopt;
    return spans_.front().until;
  }

  const SceneAt& now_;
  const Frame& frame_;
  const WedgeSpec& spec_;
  std::vector<double> corners_;
  std::vector<Crossing> straight_;
  std::vector<MirrorHit> hits_;
  std::vector<Upright> boxes_;
  std::vector<Span> spans_;
  SeenDistances distances_;
};

}  // namespace

SeenWedge seenWedge(const SceneAt& now, const Eye& eye, const WedgeSpec& spec) {
  const Frame frame(eye);
  Drawer drawer(now, frame, spec);
  SeenWedge wedge;
  wedge.direct = drawer.straight();
  for (const Mirror& mirror : now.mirrors()) {
    if (!shows(mirror, frame.foot())) continue;
    geometry::Ring ring = drawer.mirrored(mirror);
    if (!ring.empty()) wedge.mirrors.push_back({mirror.tag, std::move(ring)});
  }
  return wedge;
}

double area(const geometry::Ring& ring) {
  return ring.size() < 3 ? 0 : std::abs(geometry::signedArea(ring));
}

}  // namespace wend::sight
