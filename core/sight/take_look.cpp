#include "core/sight/take_look.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/check.h"

namespace wend::sight {

namespace {

Heights hull(Heights a, Heights b) {
  return {std::min(a.bottom, b.bottom), std::max(a.top, b.top)};
}

/// From one body to the next, by way of what it is at the quarters.
BodyStep stepOf(const Body& from, const Body& until, const std::array<std::optional<Body>, kQuarters.size()>& between) {
  BodyStep step{{from.centre, until.centre},
                std::max(from.radius, until.radius),
                hull({from.floor, from.top}, {until.floor, until.top})};
  double off = 0;
  for (std::size_t i = 0; i < kQuarters.size(); ++i) {
    if (!between[i]) continue;
    off =
        std::max(off, geometry::distance(between[i]->centre, geometry::lerp(from.centre, until.centre, kQuarters[i])));
    step.heights = hull(step.heights, {between[i]->floor, between[i]->top});
  }
  constexpr double kNoise = 1e-12;
  if (off > kNoise) step.radius += kAsMuchAgain * off;
  return step;
}

}  // namespace

std::optional<BodyStep> bodyStep(const BodyAt& body, Span time) {
  return bodyStep(body, time, body(time.from), body(time.until));
}

std::optional<BodyStep> bodyStep(const BodyAt& body, Span time, const std::optional<Body>& from,
                                 const std::optional<Body>& until) {
  if (!from && !until) return std::nullopt;
  std::array<std::optional<Body>, kQuarters.size()> between;
  for (std::size_t i = 0; i < kQuarters.size(); ++i)
    between[i] = body(geometry::lerp(time.from, time.until, kQuarters[i]));
  return stepOf(from ? *from : *until, until ? *until : *from, between);
}

TakeLook::TakeLook(const Scene& scene, EyeAt eye, TakeSpec spec, HidersAt hiders)
    : scene_(scene), eye_(std::move(eye)), spec_(spec), hiders_(std::move(hiders)), changes_(scene.changes()) {}

Span TakeLook::timeOf(std::size_t step) const {
  const auto at = [this](std::size_t k) { return spec_.take.from + static_cast<double>(k) / spec_.rate; };
  return {at(step), step + 1 == looks_.size() ? spec_.take.until : at(step + 1)};
}

std::unique_ptr<TakeLook> TakeLook::over(const Scene& scene, EyeAt eye, const TakeSpec& spec, HidersAt hiders,
                                         const base::Cancel& cancel) {
  WEND_CHECK(spec.rate > 0);
  std::unique_ptr<TakeLook> take(new TakeLook(scene, std::move(eye), spec, std::move(hiders)));
  take->looks_.resize(
      std::max<std::size_t>(1, static_cast<std::size_t>(std::ceil(spec.take.length() * spec.rate - 1e-6))));
  take->ends_.push_back(take->eye_(spec.take.from));
  for (std::size_t k = 0; k < take->steps(); ++k) {
    if (cancel.fired()) return nullptr;
    const Span time = take->timeOf(k);
    take->ends_.push_back(take->eye_(time.until));
    take->eyes_.push_back(time.length() > 0 ? eyeStep(take->eye_, time, take->ends_[k], take->ends_[k + 1])
                                            : std::nullopt);
  }
  take->view_ = std::make_unique<SetView>(scene, spec.bodies, withEyes(spec.ground, take->eyes_), spec.walls);
  return take;
}

namespace {

std::optional<Body> bodyOf(const std::vector<Hider>& hiders, int tag) {
  for (const Hider& hider : hiders)
    if (hider.tag == tag) return hider.body;
  return std::nullopt;
}

}  // namespace

void TakeLook::find(Span time, const EyeStep& eye, SetLook& look) {
  std::vector<Hiding> hiding;
  if (hiders_) {
    // Who comes or goes during the step hides nobody.
    const std::vector<Hider> from = hiders_(time.from), until = hiders_(time.until);
    std::array<std::vector<Hider>, kQuarters.size()> between;
    for (std::size_t i = 0; i < kQuarters.size(); ++i)
      between[i] = hiders_(geometry::lerp(time.from, time.until, kQuarters[i]));
    for (const Hider& hider : from) {
      const auto there = bodyOf(until, hider.tag);
      if (!there) continue;
      std::array<std::optional<Body>, kQuarters.size()> way;
      for (std::size_t i = 0; i < kQuarters.size(); ++i) way[i] = bodyOf(between[i], hider.tag);
      const BodyStep step = stepOf(hider.body, *there, way);
      const double radius = std::min(hider.body.radius, there->radius);
      const Heights heights{std::max(hider.body.floor, there->floor), std::min(hider.body.top, there->top)};
      hiding.push_back(
          {step.way, radius, step.radius - std::max(hider.body.radius, there->radius), heights, hider.tag});
    }
  }
  view_->look(time, eye, hiding, look);
}

SceneAt TakeLook::sceneAt(double t, int self) const {
  SceneAt now = scene_.at(t);
  if (!hiders_) return now;
  for (const Hider& hider : hiders_(t)) {
    if (hider.tag == self) continue;
    Prism guest;
    guest.form = Prism::Form::disc;
    guest.centre = hider.body.centre;
    guest.radius = hider.body.radius;
    guest.bottom = guest.base = hider.body.floor;
    guest.top = hider.body.top;
    now.add(guest);
  }
  return now;
}

namespace {

bool alike(const std::optional<Body>& a, const std::optional<Body>& b) {
  return a && b && a->centre == b->centre && a->radius == b->radius && a->floor == b->floor && a->top == b->top;
}

}  // namespace

bool TakeLook::rests(Span time, const BodyAt& body) const {
  if (hiders_ || scene_.mirrorsMove()) return false;
  const auto change = std::lower_bound(changes_.begin(), changes_.end(), time.from);
  if (change != changes_.end() && *change <= time.until) return false;
  const std::optional<Eye> eye = eye_(time.from);
  const std::optional<Body> there = body(time.from);
  const auto still = [&](double t) { return eye_(t) == eye && alike(body(t), there); };
  return eye && still(time.until) && std::all_of(kQuarters.begin(), kQuarters.end(), [&](double share) {
           return still(geometry::lerp(time.from, time.until, share));
         });
}

bool TakeLook::outOfFrame(Span time, const BodyStep& body) const {
  const Body hull{geometry::lerp(body.way.a, body.way.b, 0.5),
                  body.radius + geometry::distance(body.way.a, body.way.b) / 2, body.heights.bottom, body.heights.top};
  const auto eyeAt = [&](double share) { return eye_(geometry::lerp(time.from, time.until, share)); };
  const auto outBy = [&](const Eye& eye) { return degreesToFrame(eye, hull) - eye.marginDegrees; };
  // Most who are asked about are in frame, and one look tells so.
  const auto middle = eyeAt(0.5);
  if (!middle || outBy(*middle) <= 0) return false;
  const std::array<std::optional<Eye>, 5> eyes{eyeAt(0), eyeAt(kQuarters[0]), middle, eyeAt(kQuarters[2]), eyeAt(1)};
  double least = outBy(*middle), change = 0;
  for (std::size_t i = 0; i < eyes.size(); ++i) {
    if (!eyes[i]) return false;
    least = std::min(least, outBy(*eyes[i]));
    if (i == 0) continue;
    if (whirls(eyes[i - 1]->pupil, eyes[i]->pupil)) return false;
    change = std::max(change, std::abs(outBy(*eyes[i]) - outBy(*eyes[i - 1])));
  }
  return least - kAsMuchAgain * change > 0;
}

bool TakeLook::maySee(const SetLook& look, Span time, const BodyStep& body, int self) const {
  if (look.layers.empty()) return false;
  const geometry::Extent& box = spec_.ground;
  const auto outside = [&](Point p) {
    return p.x < box.low.x || p.y < box.low.y || p.x > box.high.x || p.y > box.high.y;
  };
  if (outside(body.way.a) || outside(body.way.b)) return true;
  if (body.heights.bottom < spec_.bodies.bottom || body.heights.top > spec_.bodies.top) return true;
  return std::any_of(look.layers.begin(), look.layers.end(), [&](const SetLayer& layer) {
    return mayShow(look, layer, body.way, body.radius, body.heights, self) && (layer.mirror || !outOfFrame(time, body));
  });
}

bool TakeLook::maySee(std::size_t step, const BodyStep& body, int self) {
  if (!eyes_[step]) return false;
  if (!looks_[step]) find(timeOf(step), *eyes_[step], looks_[step].emplace());
  return maySee(*looks_[step], timeOf(step), body, self);
}

bool TakeLook::maySee(Span time, const BodyStep& body, int self) {
  const auto eye = eyeStep(eye_, time);
  if (!eye) return false;
  find(time, *eye, fresh_);
  return maySee(fresh_, time, body, self);
}

}  // namespace wend::sight
