#include "core/sight/through.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "core/base/check.h"
#include "core/sight/fan.h"

namespace wend::sight {

namespace {

constexpr double kAlong = 0.25;  // metres between the places asked along a ray

struct Way {
  int from, room;
  std::vector<int> openings;
  bool operator<(const Way& o) const { return std::tie(from, room, openings) < std::tie(o.from, o.room, o.openings); }
};

/// Where a ray passes the gaps of the walls, in order.
using Passed = std::vector<std::pair<double, int>>;

Passed gapsPassed(const Scene& scene, Point foot, Vec u) {
  Passed passed;
  for (const Gap& gap : scene.gaps())
    for (std::size_t i = 0; i + 1 < gap.course.size(); ++i)
      if (const auto r = geometry::whereRayMeets(foot, u, {gap.course[i], gap.course[i + 1]})) {
        passed.push_back({*r, gap.tag});
        break;
      }
  std::sort(passed.begin(), passed.end());
  return passed;
}

std::vector<int> before(const Passed& passed, double r) {
  std::vector<int> tags;
  for (const auto& [at, tag] : passed)
    if (at < r) tags.push_back(tag);
  return tags;
}

/// The ways in which one instant's frame sees other rooms.
class Instant {
 public:
  Instant(const Scene& scene, const std::vector<RoomGround>& rooms, const ThroughSpec& spec)
      : scene_(scene), rooms_(rooms), spec_(spec) {
    for (const RoomGround& room : rooms) extents_.push_back(geometry::extentOf(room.outline));
  }

  std::vector<Way> ways(const Eye& eye, double t) {
    const SceneAt now = scene_.at(t);
    const Frame frame(eye);
    own_ = roomAt(frame.foot());
    fan_.spread(now, frame, geometry::radians(spec_.sectorDegrees), spec_.range);
    ways_.clear();
    for (std::size_t ray = 0; ray < fan_.size(); ++ray) addRay(frame, ray);
    std::sort(ways_.begin(), ways_.end());
    const auto same = [](const Way& a, const Way& b) { return !(a < b) && !(b < a); };
    ways_.erase(std::unique(ways_.begin(), ways_.end(), same), ways_.end());
    return ways_;
  }

 private:
  /// The last of the list where several hold p, kOutside where none does. Most are passed over by their boxes.
  int roomAt(Point p) const {
    constexpr double kHair = 1e-6;
    for (std::size_t i = rooms_.size(); i-- > 0;) {
      const geometry::Extent& box = extents_[i];
      if (p.x < box.low.x - kHair || p.y < box.low.y - kHair || p.x > box.high.x + kHair || p.y > box.high.y + kHair)
        continue;
      if (geometry::contains(rooms_[i].outline, p)) return rooms_[i].tag;
    }
    return kOutside;
  }
  void addRay(const Frame& frame, std::size_t ray) {
    const Vec u = fan_.direction(ray);
    const Passed passed = gapsPassed(scene_, frame.foot(), u);
    if (passed.empty()) return;
    boxes_.clear(), spans_.clear();
    for (const FanHit& hit : fan_.hits(ray)) boxes_.push_back(hit.box);
    distances_.append(frame.height(), boxes_, spec_.floor, spec_.top, frame.slopes(u), {0, spec_.range}, spans_);
    int room = own_;
    std::size_t behind = 0;
    for (const Span& span : spans_)
      for (double r = span.from + kAlong / 2; r < span.until; r += kAlong) {
        std::size_t count = 0;
        while (count < passed.size() && passed[count].first < r) ++count;
        if (count == 0) continue;
        const int here = roomAt(frame.foot() + u * r);
        if (here != own_ && (here != room || count != behind)) {
          ways_.push_back({own_, here, before(passed, r)});
        }
        room = here;
        behind = count;
      }
  }

  const Scene& scene_;
  const std::vector<RoomGround>& rooms_;
  const ThroughSpec& spec_;
  std::vector<geometry::Extent> extents_;
  int own_ = kOutside;
  Fan fan_;
  SeenDistances distances_;
  std::vector<Upright> boxes_;
  std::vector<Span> spans_;
  std::vector<Way> ways_;
};

/// Opens a span for every new way and closes those that ended.
void follow(std::map<Way, double>& open, const std::vector<Way>& ways, double t, std::vector<ThroughSight>& done) {
  for (auto it = open.begin(); it != open.end();) {
    if (std::binary_search(ways.begin(), ways.end(), it->first)) {
      ++it;
      continue;
    }
    done.push_back({{it->second, t}, it->first.from, it->first.room, it->first.openings});
    it = open.erase(it);
  }
  for (const Way& way : ways) open.emplace(way, t);
}

}  // namespace

std::optional<std::vector<ThroughSight>> throughSights(const Scene& scene, const std::vector<RoomGround>& rooms,
                                                       const EyeAt& eye, const ThroughSpec& spec,
                                                       const base::Cancel& cancel) {
  WEND_CHECK(spec.step > 0);
  Instant instant(scene, rooms, spec);
  std::map<Way, double> open;
  std::vector<ThroughSight> done;
  for (std::size_t k = 0; spec.take.from + static_cast<double>(k) * spec.step < spec.take.until; ++k) {
    if (cancel.fired()) return std::nullopt;
    const double t = spec.take.from + static_cast<double>(k) * spec.step;
    const auto lens = eye(t);
    follow(open, lens ? instant.ways(*lens, t) : std::vector<Way>{}, t, done);
  }
  follow(open, {}, spec.take.until, done);
  std::sort(done.begin(), done.end(), [](const ThroughSight& a, const ThroughSight& b) {
    return std::tie(a.time.from, a.room, a.openings) < std::tie(b.time.from, b.room, b.openings);
  });
  return done;
}

}  // namespace wend::sight
