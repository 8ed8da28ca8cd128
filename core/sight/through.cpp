#include "core/sight/through.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/base/check.h"
#include "core/sight/region_query.h"
#include "core/sight/set_view.h"

namespace wend::sight {

namespace {

/// The set with all rooms, and room for whoever walks a little off it.
geometry::Extent groundOf(const Scene& scene, const std::vector<RoomGround>& rooms) {
  constexpr double kAround = 30;
  geometry::Extent all = scene.extent();
  for (const RoomGround& room : rooms)
    for (const Point& p : room.outline) {
      all.low = {std::min(all.low.x, p.x), std::min(all.low.y, p.y)};
      all.high = {std::max(all.high.x, p.x), std::max(all.high.y, p.y)};
    }
  const Vec around{kAround, kAround};
  return {all.low - around, all.high + around};
}

bool has(const std::vector<int>& tags, int tag) {
  return std::binary_search(tags.begin(), tags.end(), tag);
}

/// Looks at one step after the other.
class Looker {
 public:
  Looker(const Scene& scene, const std::vector<RoomGround>& rooms, const EyeAt& eye, const ThroughSpec& spec)
      : scene_(scene),
        eye_([this, &eye](double t) {
          asked_.push_back(t);
          return eye(t);
        }),
        spec_(spec),
        ways_(scene, rooms, spec.ground),
        view_(scene, {spec.ground.floor, spec.ground.top}, groundOf(scene, rooms)),
        changes_(scene.changes()) {}

  WaysAt at(double t) {
    const auto eye = eye_(t);
    if (lastEye_ != eye || !steady({std::min(lastTime_, t), std::max(lastTime_, t)}))
      lastSeen_ = eye ? ways_.at(*eye, t) : WaysSeen{};
    lastEye_ = eye, lastTime_ = t;
    return {t, lastSeen_};
  }

  /// From an instant that is known to another.
  ThroughStep step(const WaysAt& from, double until) {
    asked_.assign({from.time});
    ThroughStep step;
    const WaysAt last = at(until);
    between(from, last, step.found);
    step.found.push_back(last);
    step.asked = asked_;
    return step;
  }

 private:
  /// Whether nothing starts to hide or ceases to.
  bool steady(Span time) const {
    const auto next = std::lower_bound(changes_.begin(), changes_.end(), time.from);
    return next == changes_.end() || *next > time.until;
  }

  /// Whether nothing changes at all: looked at as `eyeStep` looks.
  bool still(Span time) const {
    const auto eye = eye_(time.from);
    const auto same = [&](double t) { return eye_(t) == eye; };
    return steady(time) && same(time.until) && std::all_of(kQuarters.begin(), kQuarters.end(), [&](double share) {
             return same(geometry::lerp(time.from, time.until, share));
           });
  }

  void between(const WaysAt& from, const WaysAt& until, std::vector<WaysAt>& found) {
    constexpr double kHair = 1e-9;
    const Span time{from.time, until.time};
    if (time.length() <= spec_.refine + kHair) return;
    if (from.seen.ways == until.seen.ways && !mayShowMore(time, from.seen, until.seen)) return;
    const WaysAt middle = at((time.from + time.until) / 2);
    between(from, middle, found);
    found.push_back(middle);
    between(middle, until, found);
  }

  /// Whether ground may be seen, at some instant, by an opening that is not in sight at both ends.
  bool mayShowMore(Span time, const WaysSeen& from, const WaysSeen& until) {
    const auto inSight = [&](const Gap& gap) { return has(from.inSight, gap.tag) && has(until.inSight, gap.tag); };
    if (std::all_of(scene_.gaps().begin(), scene_.gaps().end(), inSight) || still(time)) return false;
    const auto eye = eyeStep(eye_, time);
    if (!eye) return false;
    view_.look(time, *eye, {}, look_);
    const SweptRegion& region = look_.layers.front().region;
    return std::any_of(scene_.gaps().begin(), scene_.gaps().end(), [&](const Gap& gap) {
      if (inSight(gap)) return false;
      for (std::size_t i = 0; i + 1 < gap.course.size(); ++i)
        if (meets(region, {gap.course[i], gap.course[i + 1]}, 0)) return true;
      return false;
    });
  }

  const Scene& scene_;
  EyeAt eye_;
  const ThroughSpec& spec_;
  WaysThrough ways_;
  SetView view_;
  SetLook look_;
  std::vector<double> changes_, asked_;
  std::optional<Eye> lastEye_;
  double lastTime_ = 0;
  WaysSeen lastSeen_;
};

/// Opens a span for every new way and closes those that ended.
void follow(std::map<RoomWay, double>& open, const std::vector<RoomWay>& ways, double t,
            std::vector<ThroughSight>& done) {
  for (auto it = open.begin(); it != open.end();) {
    if (std::binary_search(ways.begin(), ways.end(), it->first)) {
      ++it;
      continue;
    }
    done.push_back({{it->second, t}, it->first.from, it->first.room, it->first.openings});
    it = open.erase(it);
  }
  for (const RoomWay& way : ways) open.emplace(way, t);
}

std::vector<ThroughSight> sightsOf(const WaysAt& first, const std::vector<ThroughStep>& steps, double until) {
  std::map<RoomWay, double> open;
  std::vector<ThroughSight> done;
  follow(open, first.seen.ways, first.time, done);
  for (const ThroughStep& step : steps)
    for (const WaysAt& found : step.found)
      if (found.time < until) follow(open, found.seen.ways, found.time, done);
  follow(open, {}, until, done);
  std::sort(done.begin(), done.end(), [](const ThroughSight& a, const ThroughSight& b) {
    return std::tie(a.time.from, a.room, a.openings) < std::tie(b.time.from, b.room, b.openings);
  });
  return done;
}

/// The step of an earlier take, where it is the same.
const ThroughStep* knownStep(const KnownThroughs* known, std::size_t k) {
  if (known == nullptr || k >= known->steps.size()) return nullptr;
  const ThroughStep& step = known->steps[k];
  return std::all_of(step.asked.begin(), step.asked.end(), known->sameEye) ? &step : nullptr;
}

}  // namespace

std::optional<Throughs> throughSights(const Scene& scene, const std::vector<RoomGround>& rooms, const EyeAt& eye,
                                      const ThroughSpec& spec, const base::Cancel& cancel, const KnownThroughs* known) {
  WEND_CHECK(spec.step > 0 && spec.refine > 0);
  Looker looker(scene, rooms, eye, spec);
  Throughs throughs;
  const WaysAt first = looker.at(spec.take.from);
  const auto start = [&](std::size_t k) { return spec.take.from + static_cast<double>(k) * spec.step; };
  WaysAt last = first;
  for (std::size_t k = 0; start(k) < spec.take.until; ++k) {
    if (cancel.fired()) return std::nullopt;
    const ThroughStep* before = knownStep(known, k);
    throughs.steps.push_back(before != nullptr ? *before : looker.step(last, std::min(start(k + 1), spec.take.until)));
    last = throughs.steps.back().found.back();
  }
  throughs.sights = sightsOf(first, throughs.steps, spec.take.until);
  return throughs;
}

}  // namespace wend::sight
