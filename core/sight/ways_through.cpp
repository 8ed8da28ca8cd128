#include "core/sight/ways_through.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/geometry/disc.h"

namespace wend::sight {

namespace {

constexpr double kPi = std::numbers::pi;
/// Turns nearer to each other than this, radians, are one.
constexpr double kHair = 1e-9;

/// Visits the turns between two that lie less than half a circle apart, by the shorter way round.
template <class Visit>
void eachArc(double a, double b, Visit visit) {
  const auto [low, high] = std::minmax(a, b);
  if (high - low <= kPi) return visit(low, high);
  visit(-kPi, low);
  visit(high, kPi);
}

}  // namespace

WaysThrough::WaysThrough(const Scene& scene, const std::vector<RoomGround>& rooms, const GroundAsked& asked)
    : scene_(scene), rooms_(rooms), asked_(asked) {
  for (const RoomGround& room : rooms) extents_.push_back(geometry::extentOf(room.outline));
}

WaysSeen WaysThrough::at(const Eye& eye, double t) {
  seen_ = {};
  running_.clear();
  const Frame frame(eye);
  findArcs(frame);
  if (arcs_.empty()) return {};
  const SceneAt now = scene_.at(t);
  own_ = roomAt(frame.foot());
  addTurns(now, frame);
  layOut();
  fan_.spread(now, frame, rays_, asked_.range);
  for (std::size_t ray = 0; ray < rays_.size(); ++ray) lookAlong(frame, ray);
  const auto once = [](auto& list) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
  };
  once(seen_.ways), once(seen_.inSight);
  return std::move(seen_);
}

/// The last of the list where several hold p, kOutside where none does. Most are passed over by their boxes.
int WaysThrough::roomAt(Point p) const {
  constexpr double kNear = 1e-6;
  for (std::size_t i = rooms_.size(); i-- > 0;) {
    const geometry::Extent& box = extents_[i];
    if (p.x < box.low.x - kNear || p.y < box.low.y - kNear || p.x > box.high.x + kNear || p.y > box.high.y + kNear)
      continue;
    if (geometry::contains(rooms_[i].outline, p)) return rooms_[i].tag;
  }
  return kOutside;
}

/// The turns of the frame along which a ray passes an opening, and those at which it begins to.
void WaysThrough::findArcs(const Frame& frame) {
  arcs_.clear(), turns_.clear();
  const Span turns = frame.turns();
  for (const Gap& gap : scene_.gaps())
    for (std::size_t i = 0; i + 1 < gap.course.size(); ++i) {
      const Segment course{gap.course[i], gap.course[i + 1]};
      if (geometry::distance(frame.foot(), course) > asked_.range) continue;
      const double a = geometry::angleBetween(frame.axis(), course.a - frame.foot());
      const double b = geometry::angleBetween(frame.axis(), course.b - frame.foot());
      turns_.push_back(a), turns_.push_back(b);
      eachArc(a, b, [&](double low, double high) {
        const Span arc{std::max(low, turns.from), std::min(high, turns.until)};
        if (arc.until - arc.from > kHair) arcs_.push_back(arc);
      });
    }
  std::sort(arcs_.begin(), arcs_.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
  std::size_t kept = 0;
  for (const Span& arc : arcs_)
    if (kept > 0 && arc.from <= arcs_[kept - 1].until + kHair)
      arcs_[kept - 1].until = std::max(arcs_[kept - 1].until, arc.until);
    else
      arcs_[kept++] = arc;
  arcs_.resize(kept);
  sides_.clear();
  for (const Span& arc : arcs_)
    sides_.push_back({geometry::turned(frame.axis(), arc.from), geometry::turned(frame.axis(), arc.until)});
}

/// To know the turn of a corner costs more than to see that it lies beside all openings.
bool WaysThrough::besides(Vec towards) const {
  for (std::size_t i = 0; i < arcs_.size(); ++i) {
    const bool wide = arcs_[i].until - arcs_[i].from >= kPi;
    const auto& [from, until] = sides_[i];
    if (wide || (geometry::cross(from, towards) >= 0 && geometry::cross(towards, until) >= 0)) return false;
  }
  return true;
}

void WaysThrough::addTurn(const Frame& frame, Point p) {
  const Vec towards = p - frame.foot();
  if (!besides(towards)) turns_.push_back(geometry::angleBetween(frame.axis(), towards));
}

/// Every turn at which a ray through an opening begins or ceases to cross an edge.
void WaysThrough::addTurns(const SceneAt& now, const Frame& frame) {
  for (std::size_t i = 0; i < now.size(); ++i) {
    const Prism& prism = now.prism(i);
    const Vec towards = prism.centre - frame.foot();
    const double metres = geometry::length(towards);
    if (metres - prism.radius > asked_.range) continue;
    if (prism.form == Prism::Form::disc) {
      const auto half = geometry::tangentAngle(metres, prism.radius);
      if (!half) continue;
      const double middle = geometry::angleBetween(frame.axis(), towards);
      turns_.push_back(std::remainder(middle - *half, 2 * kPi));
      turns_.push_back(std::remainder(middle + *half, 2 * kPi));
    } else if (prism.form == Prism::Form::sheet) {
      addTurn(frame, prism.sheet.a), addTurn(frame, prism.sheet.b);
    } else {
      for (const Point& corner : now.corners(prism)) addTurn(frame, corner);
    }
  }
  for (const RoomGround& room : rooms_)
    for (const Point& corner : room.outline) addTurn(frame, corner);
}

/// One ray in the middle of each sector in which nothing begins or ends.
void WaysThrough::layOut() {
  sectors_.clear(), rays_.clear();
  std::sort(turns_.begin(), turns_.end());
  const double most = geometry::radians(asked_.sectorDegrees);
  for (const Span& arc : arcs_) {
    double from = arc.from;
    const auto close = [&](double until) {
      const double parts = std::max(1.0, std::ceil((until - from) / most - kHair));
      for (double i = 0; i < parts; ++i) {
        // Neighbours end and begin at the very same turn, so that a way can be followed from one to the next.
        sectors_.push_back({i > 0 ? sectors_.back().until : from,
                            i + 1 < parts ? geometry::lerp(from, until, (i + 1) / parts) : until});
        rays_.push_back((sectors_.back().from + sectors_.back().until) / 2);
      }
      from = until;
    };
    for (auto turn = std::upper_bound(turns_.begin(), turns_.end(), from);
         turn != turns_.end() && *turn < arc.until - kHair; ++turn)
      if (*turn > from + kHair) close(*turn);
    close(arc.until);
  }
}

/// How far a ray goes: to what hides everybody behind it from the floor to the top.
double WaysThrough::endOf(const Frame& frame, std::size_t ray) const {
  const double low = std::min(frame.height(), asked_.floor), high = std::max(frame.height(), asked_.top);
  double end = asked_.range;
  for (const FanHit& hit : fan_.hits(ray))
    if (hit.box.bottom <= low && hit.box.top >= high) end = std::min(end, hit.box.near);
  return end;
}

void WaysThrough::lookAlong(const Frame& frame, std::size_t ray) {
  const Vec along = fan_.direction(ray);
  passed_.clear();
  for (const Gap& gap : scene_.gaps())
    for (std::size_t i = 0; i + 1 < gap.course.size(); ++i)
      if (const auto at = geometry::whereRayMeets(frame.foot(), along, {gap.course[i], gap.course[i + 1]})) {
        passed_.push_back({*at, gap.tag});
        break;
      }
  if (passed_.empty()) return;
  std::sort(passed_.begin(), passed_.end(), [](const Met& a, const Met& b) { return a.at < b.at; });
  const Span range{passed_.front().at, endOf(frame, ray)};
  if (!(range.from < range.until)) return;
  boxes_.clear(), spans_.clear(), here_.clear();
  for (const FanHit& hit : fan_.hits(ray))
    if (hit.box.near < range.until) boxes_.push_back(hit.box);
  distances_.append(frame.height(), boxes_, asked_.floor, asked_.top, frame.slopes(along), range, spans_);
  for (const Span& span : spans_) {
    for (const Met& gap : passed_)
      if (gap.at >= span.from && gap.at <= span.until) seen_.inSight.push_back(gap.tag);
    lookIn(frame, along, span);
  }
  for (const RoomWay& way : here_) note(way, sectors_[ray]);
}

/// What of other rooms a stretch of a ray passes that is seen as a whole and lies behind an opening.
void WaysThrough::lookIn(const Frame& frame, Vec along, Span seen) {
  if (seen.length() < asked_.shallowest) return;
  cuts_.assign({seen.from, seen.until});
  const auto cut = [&](double at) {
    if (at > seen.from && at < seen.until) cuts_.push_back(at);
  };
  for (const Met& gap : passed_) cut(gap.at);
  for (const RoomGround& room : rooms_)
    for (std::size_t i = 0, j = room.outline.size() - 1; i < room.outline.size(); j = i++)
      if (const auto at = geometry::whereRayMeets(frame.foot(), along, {room.outline[j], room.outline[i]})) cut(*at);
  std::sort(cuts_.begin(), cuts_.end());
  double from = seen.from;
  int room = own_;
  std::size_t behind = 0;
  const auto close = [&](double until) {
    if (room != own_ && until - from >= asked_.shallowest) {
      RoomWay way{own_, room, {}};
      for (std::size_t i = 0; i < behind; ++i) way.openings.push_back(passed_[i].tag);
      if (std::find(here_.begin(), here_.end(), way) == here_.end()) here_.push_back(std::move(way));
    }
    from = until;
  };
  for (std::size_t i = 0; i + 1 < cuts_.size(); ++i) {
    const double middle = (cuts_[i] + cuts_[i + 1]) / 2;
    const int here = roomAt(frame.foot() + along * middle);
    std::size_t count = 0;
    while (count < passed_.size() && passed_[count].at < middle) ++count;
    if (here != room || count != behind) close(cuts_[i]);
    room = here, behind = count;
  }
  close(seen.until);
}

void WaysThrough::note(const RoomWay& way, Span sector) {
  auto running = std::find_if(running_.begin(), running_.end(), [&](const Running& other) { return other.way == way; });
  if (running == running_.end()) running = running_.insert(running_.end(), {way, sector});
  if (running->turns.until != sector.from) running->turns.from = sector.from;
  running->turns.until = sector.until;
  if (running->turns.length() >= geometry::radians(asked_.narrowest)) seen_.ways.push_back(way);
}

}  // namespace wend::sight
