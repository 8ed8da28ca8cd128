#include "core/motion/aim.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/motion/pointer.h"

namespace wend::motion {
namespace {

using base::fixed;
using geometry::unwrapped;

constexpr double kLook = 0.05;     ///< seconds between two looks
constexpr double kInstant = 1e-6;  ///< seconds: what turns within this jumps
constexpr std::size_t kMostLooks = 4'000'000;
constexpr double kRateReach = 1e-3;  ///< seconds to either side that rates are taken over

bool isFinite(const AimKey& key) {
  bool finite = std::isfinite(key.time.at) && std::isfinite(key.time.over) && key.time.over >= 0;
  const auto both = [&finite](double a, double b) { finite = finite && std::isfinite(a) && std::isfinite(b); };
  if (const auto* fixedWay = std::get_if<AimBearing>(&key.on)) both(fixedWay->bearing, fixedWay->tilt);
  if (const auto* travel = std::get_if<AimTravel>(&key.on)) both(travel->offset, travel->tilt);
  if (const auto* target = std::get_if<AimTarget>(&key.on)) both(target->place.x, target->place.y);
  return finite;
}

base::Problems problemsOf(const std::vector<AimKey>& keys, const AimRig& rig) {
  base::Problems problems;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    const AimKey& key = keys[i];
    if (!isFinite(key))
      problems.push_back({"not-finite", pointer(i, ""), "a number that is not finite or a duration below 0",
                          "finite numbers", "Type this aim again."});
    const double free = i == 0 ? key.time.at : keys[i - 1].time.at + keys[i - 1].time.over;
    if (key.time.at < free)
      problems.push_back({"aims-overlap", pointer(i, "/at"), fixed(key.time.at, 3) + " s",
                          "no earlier than " + fixed(free, 3) + " s, when the aim before is done",
                          "Start it later, or shorten the one before."});
    if (std::holds_alternative<AimBearing>(key.on) && key.turns != 0)
      problems.push_back({"turns-on-bearing", pointer(i, "/turns"), std::to_string(key.turns), "0",
                          "Add the turns to the bearing: it is unwrapped."});
    if (std::holds_alternative<AimTravel>(key.on) && (!rig.travelDirection || !rig.travelDirection(key.time.at)))
      problems.push_back({"travel-without-moves", pointer(i, "/on/travel"), "a camera that never moves",
                          "a leg that travels", "Give the camera somewhere to go, or the aim a bearing."});
  }
  return problems;
}

base::Problem restless(std::size_t key, double t) {
  return {"aim-too-restless", pointer(key, "/on"),
          "a target that turns the lens round and round by " + fixed(t, 2) + " s", "a turn that somebody could follow",
          "Slow the camera or the target, or aim elsewhere."};
}

base::Problem problemOf(std::size_t key, Framed::Outcome outcome, double t) {
  const std::string when = " at " + fixed(t, 2) + " s";
  if (outcome == Framed::Outcome::tooNear)
    return {"target-too-near", pointer(key, "/on"), "the target inside the lens" + when, "a target ahead of the lens",
            "Move the camera or the target, or aim elsewhere."};
  return {"place-out-of-reach", pointer(key, "/place"), "a target too steeply above or below the camera" + when,
          "a place that some tilt can give it", "Bring the place nearer to the middle, or the camera further away."};
}

}  // namespace

/// Follows one key over the time it is shown.
class AimTrack::Tracing {
 public:
  Tracing(const AimTrack& track, std::size_t key) : track_(track), key_(key) {}

  void start(double t, double before) {
    wish_ = look(t);
    samples.push_back({t, wish_.bearing ? unwrapped(*wish_.bearing, before) : before});
    samples.back().bearing += 360.0 * track_.keys_[key_].turns;
  }

  void follow(double until) {
    const double from = samples.front().t;
    const auto looks = static_cast<long>(std::ceil((until - from) / kLook));
    for (long k = 1; k <= looks; ++k) reach(std::min(until, from + static_cast<double>(k) * kLook));
  }

  std::vector<Sample> samples;
  std::vector<double> jumps;
  std::optional<base::Problem> problem;

 private:
  /// Goes on to t, by halves where the view turns too far at once.
  void reach(double t) {
    const Sample last = samples.back();
    if (!(t > last.t) || samples.size() > kMostLooks) return;
    const Wish next = look(t);
    const double bearing = next.bearing ? unwrapped(*next.bearing, last.bearing) : last.bearing;
    const bool far = std::abs(bearing - last.bearing) > kAimCut || std::abs(next.tilt - wish_.tilt) > kAimCut;
    if (far && t - last.t > kInstant) {
      reach((last.t + t) / 2);
      return reach(t);
    }
    if (far) jumps.push_back(t);
    samples.push_back({t, bearing});
    wish_ = next;
  }

  Wish look(double t) {
    const Wish wish = track_.wish(key_, t);
    const bool shows = wish.outcome == Framed::Outcome::found || wish.outcome == Framed::Outcome::straightOver;
    if (!shows && !problem) problem = problemOf(key_, wish.outcome, t);
    return wish;
  }

  const AimTrack& track_;
  std::size_t key_;
  Wish wish_;
};

base::Result<AimTrack> aimTrack(std::vector<AimKey> keys, AimRig rig, double length) {
  if (keys.empty()) return base::Problem{"no-aims", "", "no aim", "one aim or more", "Give the camera a bearing."};
  base::Problems problems = problemsOf(keys, rig);
  if (!problems.empty()) return problems;
  AimTrack track;
  track.keys_ = std::move(keys);
  track.rig_ = std::move(rig);
  for (const AimKey& key : track.keys_) track.times_.push_back(key.time);
  problems = track.trace(length);
  if (!problems.empty()) return problems;
  return track;
}

base::Problems AimTrack::trace(double length) {
  base::Problems problems;
  std::vector<double> jumps;
  samples_.resize(keys_.size());
  for (std::size_t i = 0; i < keys_.size(); ++i) {
    if (i > 0) jumps.push_back(times_[i].at);
    breaks_.push_back(times_[i].at);
    breaks_.push_back(times_[i].at + times_[i].over);
    if (std::holds_alternative<AimBearing>(keys_[i].on)) continue;
    const base::Problems found = follow(i, length, jumps);
    problems.insert(problems.end(), found.begin(), found.end());
  }
  if (problems.empty()) findCuts(std::move(jumps));
  return problems;
}

base::Problems AimTrack::follow(std::size_t key, double length, std::vector<double>& jumps) {
  Tracing tracing(*this, key);
  if (key == 0)
    tracing.start(std::min(0.0, times_[0].at), 0);
  else
    tracing.start(times_[key].at, shownBy(key - 1, times_[key].at).bearing);
  tracing.follow(lastShown(key, length));
  samples_[key] = std::move(tracing.samples);
  jumps.insert(jumps.end(), tracing.jumps.begin(), tracing.jumps.end());
  if (samples_[key].size() > kMostLooks) return {restless(key, samples_[key].back().t)};
  return tracing.problem ? base::Problems{*tracing.problem} : base::Problems{};
}

double AimTrack::lastShown(std::size_t key, double length) const {
  if (key + 1 < times_.size()) return times_[key + 1].at + times_[key + 1].over;
  return std::max(length, times_[key].at + times_[key].over);
}

void AimTrack::findCuts(std::vector<double> instants) {
  std::sort(instants.begin(), instants.end());
  for (const double t : instants) {
    const Orientation before = orientationAt(t - kInstant), after = orientationAt(t);
    const AimCut cut{t, after.bearing - before.bearing, after.tilt - before.tilt};
    const bool far = std::abs(cut.bearing) > kAimCut || std::abs(cut.tilt) > kAimCut;
    if (!far || (!cuts_.empty() && t - cuts_.back().at < 2 * kInstant)) continue;
    cuts_.push_back(cut);
    breaks_.push_back(t);
  }
  std::sort(breaks_.begin(), breaks_.end());
}

AimTrack::Wish AimTrack::wish(std::size_t key, double t) const {
  if (const auto* way = std::get_if<AimBearing>(&keys_[key].on)) return {way->bearing, way->tilt};
  if (const auto* travel = std::get_if<AimTravel>(&keys_[key].on)) {
    const std::optional<geometry::Vec> direction = rig_.travelDirection(t);
    if (!direction) return {std::nullopt, travel->tilt};
    return {geometry::bearingOf(*direction) + travel->offset, travel->tilt};
  }
  const auto& target = std::get<AimTarget>(keys_[key].on);
  const Framed found = framed(rig_.sensor(t), target.at(t), target.place, rig_.view(t));
  if (found.outcome != Framed::Outcome::found) return {std::nullopt, found.way.tilt, found.outcome};
  return {found.way.bearing, found.way.tilt};
}

Orientation AimTrack::shownBy(std::size_t key, double t) const {
  const Wish wished = wish(key, t);
  const std::vector<Sample>& samples = samples_[key];
  if (samples.empty()) return {wished.bearing.value_or(0), wished.tilt};
  const auto after =
      std::upper_bound(samples.begin(), samples.end(), t, [](double v, const Sample& s) { return v < s.t; });
  if (after == samples.begin() || after == samples.end()) {
    const double known = after == samples.begin() ? samples.front().bearing : samples.back().bearing;
    return {wished.bearing ? unwrapped(*wished.bearing, known) : known, wished.tilt};
  }
  const Sample &left = *std::prev(after), &right = *after;
  if (!wished.bearing) return {left.bearing, wished.tilt};
  const double expected = geometry::lerp(left.bearing, right.bearing, (t - left.t) / (right.t - left.t));
  return {unwrapped(*wished.bearing, expected), wished.tilt};
}

Orientation AimTrack::orientationAt(double t) const {
  const geometry::KeyBlend blend = geometry::blendAt(times_, t);
  const Orientation to = shownBy(blend.after, t);
  if (blend.before == blend.after) return to;
  const Orientation from = shownBy(blend.before, t);
  return {geometry::lerp(from.bearing, to.bearing, blend.share), geometry::lerp(from.tilt, to.tilt, blend.share)};
}

Orientation AimTrack::ratesAt(double t) const {
  const auto after = std::upper_bound(breaks_.begin(), breaks_.end(), t);
  double from = t - kRateReach, until = t + kRateReach;
  if (after != breaks_.begin()) from = std::max(from, *std::prev(after));
  if (after != breaks_.end()) until = std::min(until, *after - 2 * kInstant);
  if (!(until > from)) return {};
  const Orientation a = orientationAt(from), b = orientationAt(until);
  return {(b.bearing - a.bearing) / (until - from), (b.tilt - a.tilt) / (until - from)};
}

}  // namespace wend::motion
