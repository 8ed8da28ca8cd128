// Ground with a use of its own: lanes that stay free, and what lies outside the set.
#include <algorithm>

#include "core/answers/closed_ground.h"
#include "core/answers/set_scene.h"
#include "core/answers/whole_take.h"
#include "core/crew/obstacles.h"
#include "core/geometry/polygon.h"
#include "core/geometry/runs.h"
#include "core/geometry/segment.h"
#include "core/plan/area_use.h"
#include "core/sight/ray.h"

namespace wend::answers {

using namespace snags;

namespace {

/// Under this height a thing is in somebody's way.
constexpr double kHead = 2;

/// Whoever walks gets on by so many metres in so many seconds, or paces to and fro; common practice, no source.
constexpr double kGetsOn = 1, kPaces = 4;

/// A shape of places joined by straight edges, the last to the first as well when closed.
bool ringMeets(const std::vector<Point>& ring, const std::vector<Point>& shape, bool closed) {
  if (std::any_of(shape.begin(), shape.end(), [&](Point p) { return geometry::contains(ring, p); })) return true;
  if (closed && geometry::contains(shape, ring.front())) return true;
  for (std::size_t i = 0; i + (closed ? 0 : 1) < shape.size(); ++i)
    for (std::size_t k = 0; k < ring.size(); ++k)
      if (geometry::whereMeet({shape[i], shape[(i + 1) % shape.size()]}, {ring[k], ring[(k + 1) % ring.size()]}))
        return true;
  return false;
}

/// Everything in one lane.
class Lane {
 public:
  Lane(const Take& take, const plan::Area& area, std::vector<LaneTaken>& taken)
      : take_(take), area_(area.id.text()), ring_(outlineOf(area.shape)), taken_(taken) {}

  void addStanding() {
    const plan::Plan& plan = take_.plan();
    for (const auto& shelter : plan.shelters) addDisc(shelter.id.text(), shelter.pos, shelter.radius);
    for (const auto& gear : plan.gear) addDisc(gear.id.text(), gear.pos, gear.radius);
    for (const auto& piece : plan.set.pieces) {
      if (!piece.moved.empty()) continue;
      const bool closed = !std::holds_alternative<plan::Line>(piece.shape);
      const auto shape = outlineOf(piece.shape);
      if (piece.bottom < kHead && ringMeets(ring_, shape, closed)) add(piece.id.text(), {0, take_.length()}, shape[0]);
    }
  }

  /// Who stands there, and who walks to and fro.
  void addCrew(const std::vector<Instant>& samples) {
    for (std::size_t i = 0; i < take_.plan().crew.size(); ++i) {
      const std::string id = take_.plan().crew[i].id.text();
      const auto in = [&](std::size_t k) {
        const CrewAt& at = samples[k].crew[i];
        return at.present && !at.carried && touches(ring_, at.pos, at.radius);
      };
      const std::vector<char> paces = pacing(samples, i, in);
      addWhile(id, samples, [&](std::size_t k) {
        const bool stays = paces[k] || (!samples[k].crew[i].walking && in(k));
        return stays ? std::optional<Point>(samples[k].crew[i].pos) : std::nullopt;
      });
    }
  }

  /// `moving` has what moves at each sample.
  void addMoved(const std::vector<Instant>& samples, const std::vector<std::vector<crew::Obstacle>>& moving) {
    for (const auto& piece : take_.plan().set.pieces) {
      if (piece.moved.empty() || piece.bottom >= kHead) continue;
      addWhile(piece.id.text(), samples, [&](std::size_t k) -> std::optional<Point> {
        for (const auto& obstacle : moving[k])
          if (obstacle.id == piece.id.text() && isMetBy(obstacle)) return obstacle.points.front();
        return std::nullopt;
      });
    }
  }

 private:
  /// Walking all along and in the lane all along, and no further on after some seconds than in one at a silent pace.
  template <class In>
  static std::vector<char> pacing(const std::vector<Instant>& samples, std::size_t member, In in) {
    std::vector<char> paces(samples.size(), 0);
    std::size_t first = 0;
    for (std::size_t k = 0; k < samples.size(); ++k) {
      if (!samples[k].crew[member].walking || !in(k)) first = k + 1;
      while (first < k && samples[k].time - samples[first + 1].time >= kPaces) ++first;
      if (first >= k || samples[k].time - samples[first].time < kPaces) continue;
      if (geometry::distance(samples[k].crew[member].pos, samples[first].crew[member].pos) >= kGetsOn) continue;
      std::fill(paces.begin() + static_cast<std::ptrdiff_t>(first), paces.begin() + static_cast<std::ptrdiff_t>(k) + 1,
                1);
    }
    return paces;
  }

  bool isMetBy(const crew::Obstacle& obstacle) const {
    if (obstacle.points.size() == 1) return touches(ring_, obstacle.points.front(), obstacle.radius);
    return ringMeets(ring_, obstacle.points, obstacle.closed);
  }
  /// `where` says where it stands at a sample while it is in the lane.
  template <class Where>
  void addWhile(const std::string& id, const std::vector<Instant>& samples, Where where) {
    for (const auto& run : geometry::runsWhere(samples.size(), [&](std::size_t k) { return where(k).has_value(); }))
      add(id, {samples[run.first].time, samples[run.last].time}, *where(run.first));
  }
  void addDisc(const std::string& id, Point pos, double radius) {
    if (touches(ring_, pos, radius)) add(id, {0, take_.length()}, pos);
  }
  void add(const std::string& id, Span span, Point pos) { taken_.push_back({span, area_, id, pos}); }

  const Take& take_;
  std::string area_;
  std::vector<Point> ring_;
  std::vector<LaneTaken>& taken_;
};

/// Pieces that move, where they stand or are on their way at each sample; nothing where no piece does.
std::vector<std::vector<crew::Obstacle>> movingOver(const Take& take, const std::vector<Instant>& samples) {
  std::vector<std::vector<crew::Obstacle>> moving;
  bool any = false;
  for (const auto& piece : take.plan().set.pieces) any = any || !piece.moved.empty();
  if (!any) return moving;
  const crew::NameOf names = namesOf(take.plan());
  for (const auto& instant : samples) moving.push_back(crew::leavesOf(take.scene().at(instant.time), names));
  return moving;
}

constexpr int kLines = 5;

/// The stretches of a line that lie in the area, as shares of it, in order.
std::vector<Span> stretchesIn(const std::vector<Point>& ring, geometry::Segment line) {
  std::vector<double> cuts;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    if (const auto share = geometry::whereMeet(line, {ring[j], ring[i]})) cuts.push_back(*share);
  std::sort(cuts.begin(), cuts.end());
  std::vector<Span> stretches;
  for (std::size_t i = 1; i < cuts.size(); ++i)
    if (cuts[i] > cuts[i - 1] && geometry::contains(ring, geometry::lerp(line.a, line.b, (cuts[i - 1] + cuts[i]) / 2)))
      stretches.push_back({cuts[i - 1], cuts[i]});
  return stretches;
}

/// Places spread over an area of any form: along five lines across it and five up it, five on each line and no stretch
/// of a line without one.
std::vector<Point> placesIn(const plan::Area& area) {
  const auto ring = outlineOf(area.shape);
  const geometry::Extent box = geometry::extentOf(ring);
  std::vector<Point> places;
  const auto addAlong = [&](geometry::Segment line) {
    const auto stretches = stretchesIn(ring, line);
    const auto each = stretches.empty() ? 0 : (kLines + stretches.size() - 1) / stretches.size();
    for (const Span& stretch : stretches)
      for (std::size_t k = 0; k < each; ++k) {
        const double share = (static_cast<double>(k) + 0.5) / static_cast<double>(each);
        places.push_back(geometry::lerp(line.a, line.b, geometry::lerp(stretch.from, stretch.until, share)));
      }
  };
  for (int i = 0; i < kLines; ++i) {
    const double x = geometry::lerp(box.low.x, box.high.x, (i + 0.5) / kLines);
    const double y = geometry::lerp(box.low.y, box.high.y, (i + 0.5) / kLines);
    addAlong({{box.low.x, y}, {box.high.x, y}});
    addAlong({{x, box.low.y}, {x, box.high.y}});
  }
  return places;
}

constexpr double kFar = 40;
/// Of somebody who walks by, metres over the ground.
constexpr double kChest = 1.3;

geometry::Spans seenSpans(const Take& take, const plan::Area& area, const base::Cancel& cancel) {
  std::vector<Point3> places;
  for (const Point p : placesIn(area)) places.push_back(geometry::at(p, take.people().floorAt(p) + kChest));
  const auto shows = [&](double t) {
    const auto eye = cancel.fired() ? std::nullopt : take.eyeAt(t, 0);
    if (!eye) return false;
    const sight::SceneAt now = take.scene().at(t);
    return std::any_of(places.begin(), places.end(), [&](Point3 p) {
      return geometry::distance(eye->pupil.at, p) <= kFar && sight::pointSight(now, *eye, p).seen();
    });
  };
  // What is interrupted for less than a second goes on.
  const auto spans = geometry::grown(geometry::spansWhere({0, take.length()}, 0.25, shows, 0.05), 0.5, 0.5);
  return geometry::grown(spans, -0.5, -0.5);
}

}  // namespace

std::vector<LaneTaken> lanesTaken(const Take& take, const std::vector<Instant>& samples) {
  std::vector<LaneTaken> taken;
  std::optional<std::vector<std::vector<crew::Obstacle>>> moving;
  for (const auto& area : take.plan().set.areas) {
    if (!isLane(area)) continue;
    if (!moving) moving = movingOver(take, samples);
    Lane lane(take, area, taken);
    lane.addStanding();
    if (!moving->empty()) lane.addMoved(samples, *moving);
    lane.addCrew(samples);
  }
  return taken;
}

std::optional<std::vector<OutsideSeen>> outsideSeen(const Take& take, const base::Cancel& cancel) {
  std::vector<OutsideSeen> seen;
  for (const auto& area : take.plan().set.areas) {
    if (!plan::usedAs(area, plan::AreaUse::outside)) continue;
    for (const auto& span : seenSpans(take, area, cancel)) seen.push_back({span, area.id.text()});
    if (cancel.fired()) return std::nullopt;
  }
  std::stable_sort(seen.begin(), seen.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return seen;
}

}  // namespace wend::answers
