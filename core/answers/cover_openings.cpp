// Doorways that are passed and leaves in motion, as far as they fill the frame.
#include <algorithm>

#include "core/answers/covers.h"
#include "core/geometry/band.h"
#include "core/pulls/cover_frame.h"
#include "core/sight/ray.h"

namespace wend::answers::covers {

using namespace snags;
using pulls::CoverKind;
using pulls::CoverSpan;

namespace {

/// An opening as an upright rectangle in the middle of its wall.
struct Doorway {
  std::vector<geometry::Point3> corners;
  geometry::Point3 middle;
};

std::optional<Doorway> doorwayOf(const plan::Plan& plan, const plan::Opening& opening) {
  const plan::Wall* wall = plan.set.walls.find(opening.wall);
  if (!wall) return std::nullopt;
  const geometry::Course course(wall->points);
  const geometry::Point a = course.at(opening.along.from), b = course.at(opening.along.until);
  return Doorway{{geometry::at(a, opening.sill), geometry::at(b, opening.sill), geometry::at(b, opening.head),
                  geometry::at(a, opening.head)},
                 geometry::at(geometry::lerp(a, b, 0.5), (opening.sill + opening.head) / 2)};
}

/// Of the frame, 0 where something of the set stands before the opening, its own shut leaf too.
double shareSeen(const Take& take, const Instant& instant, const Doorway& doorway) {
  if (!instant.lens) return 0;
  const geometry::Pose& pupil = instant.camera.pupil;
  const double share = pulls::shareOfFrame(doorway.corners, pupil, instant.lens->half.h, instant.lens->half.v);
  if (share <= 0) return 0;
  // A way past the wall: leaves hang on its faces.
  constexpr double kPast = 0.3;
  const geometry::Vec3 way = doorway.middle - pupil.at;
  const double metres = geometry::length(way);
  const geometry::Point3 beyond = pupil.at + way * ((metres + kPast) / metres);
  return sight::openBetween(take.scene().at(instant.time), pupil.at, beyond) ? share : 0;
}

/// When somebody on that way passes the opening of that tag.
std::vector<double> passings(const Take& take, const motion::Track& way, std::size_t tag) {
  std::vector<double> times;
  const double step = 0.25;
  for (double t = 0; t < take.length(); t += step) {
    const geometry::Point a = way.place(t), b = way.place(std::min(t + step, take.length()));
    if (a == b || !way.present(t)) continue;
    for (const int passed : sight::openingsCrossed(take.scene(), a, b))
      if (passed == static_cast<int>(tag)) times.push_back(std::min(t + step, take.length()));
  }
  return times;
}

/// Times at which the camera, or the one who is in focus then, passes.
std::vector<double> passingsThatCount(const Take& take, std::size_t tag) {
  std::vector<double> times = passings(take, take.people().camera(), tag);
  const Subjects& subjects = take.subjects();
  for (std::size_t who = 0; subjects.any() && who < take.plan().performers.size(); ++who) {
    const motion::Track* way = take.people().performer(who);
    if (!way) continue;
    for (const double t : passings(take, *way, tag))
      if (subjects.firstOf(subjects.blendAt(t).after) == take.plan().performers[who].id.text()) times.push_back(t);
  }
  return times;
}

void addDoorway(const Take& take, const std::vector<Instant>& samples, std::size_t tag, const Doorway& doorway,
                std::vector<CoverSpan>& covers) {
  geometry::Spans around;
  for (const double t : passingsThatCount(take, tag)) around.push_back({t - kDoorwayLead, t + kDoorwayLinger});
  around = geometry::tidy(around);
  if (around.empty()) return;
  std::vector<double> shares;
  for (const Instant& instant : samples) {
    const bool near = std::any_of(around.begin(), around.end(), [&](Span s) { return s.contains(instant.time); });
    shares.push_back(near ? shareSeen(take, instant, doorway) : 0);
  }
  const auto found =
      coverOver(CoverKind::doorway, take.plan().set.openings[tag].name, samples, shares, pulls::kDoorwayShare);
  covers.insert(covers.end(), found.begin(), found.end());
}

void addLeaf(const Take& take, const std::vector<Instant>& samples, const plan::Opening& opening,
             const Doorway& doorway, std::vector<CoverSpan>& covers) {
  geometry::Spans moving;
  for (const auto& key : opening.open)
    if (const double at = plan::secondsOf(take.plan(), key.time.at); key.time.over > 0)
      moving.push_back({at, at + key.time.over});
  if (moving.empty()) return;
  std::vector<double> shares;
  for (const Instant& instant : samples) {
    const bool now = std::any_of(moving.begin(), moving.end(), [&](Span s) { return s.contains(instant.time); });
    shares.push_back(now ? shareSeen(take, instant, doorway) : 0);
  }
  const auto found = coverOver(CoverKind::leaf, opening.name, samples, shares, pulls::kDoorwayShare);
  covers.insert(covers.end(), found.begin(), found.end());
}

}  // namespace

void addOpenings(const Take& take, const std::vector<Instant>& samples, std::vector<CoverSpan>& covers) {
  const plan::Plan& plan = take.plan();
  for (std::size_t i = 0; i < plan.set.openings.size(); ++i) {
    const auto doorway = doorwayOf(plan, plan.set.openings[i]);
    if (!doorway) continue;
    addDoorway(take, samples, i, *doorway, covers);
    addLeaf(take, samples, plan.set.openings[i], *doorway, covers);
  }
}

}  // namespace wend::answers::covers
