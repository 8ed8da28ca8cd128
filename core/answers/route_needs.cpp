#include "core/answers/route_needs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/base/text.h"
#include "core/motion/posture.h"
#include "core/sight/ray.h"

namespace wend::answers {

using base::fixed;
using geometry::Span;

namespace {

/// Rays of the fan in which somebody is looked for from: half a degree apart.
constexpr int kRays = 720;

Span spanOf(const Take& take, const plan::Need& need) {
  const auto at = [&](const std::optional<plan::Moment>& moment, double otherwise) {
    return moment ? std::clamp(plan::secondsOf(take.plan(), *moment), 0.0, take.length()) : otherwise;
  };
  return {at(need.from, 0), at(need.until, take.length())};
}

double eyesOf(const plan::Crew& member) {
  return motion::eyeHeight(motion::Posture::stand, member.height);
}

/// Where the one that has to be seen is. Nothing while there is nobody.
std::optional<Point3> targetAt(const Take& take, const std::string& who, double t) {
  const auto& performers = take.plan().performers;
  if (who != plan::kFocusSubject || performers.find(who)) return take.people().lookAt(who, t);
  if (!take.subjects().any()) return std::nullopt;
  const geometry::KeyBlend blend = take.subjects().blendAt(t);
  return take.subjects().placeOf(blend.share < 0.5 ? blend.before : blend.after, t);
}

/// Where somebody's eyes see a point of space, as distances along each ray from it.
class SeeingFan {
 public:
  SeeingFan(const Take& take, double t, Point3 target, double eyes, double reach) : foot_(geometry::flat(target)) {
    const sight::SceneAt now = take.scene().at(t);
    const double height = take.people().floorAt(foot_) + eyes;
    sight::SeenDistances seen;
    for (int ray = 0; ray < kRays; ++ray) {
      const double angle = 2 * std::numbers::pi * ray / kRays;
      std::vector<sight::Upright> blocks;
      for (const auto& crossing : sight::crossingsAlong(now, foot_, {std::cos(angle), std::sin(angle)}, reach))
        blocks.push_back(crossing.box);
      seen.append(target.z, blocks, height - kHalf, height + kHalf, {-1e6, 1e6}, {0, reach}, rays_[ray]);
    }
  }

  bool sees(Point eye) const {
    const geometry::Vec way = eye - foot_;
    const double metres = geometry::length(way);
    const double turn = std::atan2(way.y, way.x) * kRays / (2 * std::numbers::pi);
    const int ray = static_cast<int>(std::floor(turn));
    return sees(ray, metres) && sees(ray + 1, metres);
  }

 private:
  /// Half the height of the line that stands for a pair of eyes.
  static constexpr double kHalf = 0.005;

  bool sees(int ray, double metres) const {
    const auto& spans = rays_[static_cast<std::size_t>((ray + kRays) % kRays)];
    return std::any_of(spans.begin(), spans.end(), [&](Span span) { return span.contains(metres); });
  }

  Point foot_;
  std::array<std::vector<Span>, kRays> rays_;
};

/// Yes at the steps at both ends of which the member, in that cell, sees who they have to.
std::optional<crew::CellTimes> seeing(const Take& take, const plan::Crew& member, const std::string& who,
                                      crew::Steps steps, const geometry::Grid& grid, const crew::StepClock& clock,
                                      const base::Cancel& cancel) {
  crew::CellTimes met(grid.cells(), clock.steps, true);
  const geometry::Extent extent = grid.extent();
  const double reach = geometry::distance(extent.low, extent.high) + 1;
  for (std::size_t instant = steps.from; steps.count() > 0 && instant <= steps.until; ++instant) {
    if (cancel.fired()) return std::nullopt;
    const double t = std::min(clock.at(instant), take.length());
    const auto target = targetAt(take, who, t);
    if (!target) continue;
    const SeeingFan fan(take, t, *target, eyesOf(member), reach);
    const crew::Steps around{std::max(steps.from + 1, instant) - 1, std::min(steps.until, instant + 1)};
    for (std::size_t cell = 0; cell < grid.cells(); ++cell)
      if (!fan.sees(grid.centre(cell))) met.set(cell, around, false);
  }
  return met;
}

std::string spanWords(Span span) {
  return ", " + fixed(span.from, 1) + "\u2013" + fixed(span.until, 1) + " s";
}

/// A need as words; below as ground and as a check.
struct Words {
  const plan::Plan& plan;
  std::string operator()(const plan::NearCamera& near) const {
    return "within " + fixed(near.within, 1) + " m of the camera";
  }
  std::string operator()(const plan::Sees& sees) const {
    const plan::Performer* performer = plan.performers.find(sees.who);
    return "seeing " + (performer ? performer->name : sees.who == plan::kFocusSubject ? "the subject" : sees.who);
  }
  std::string operator()(const plan::Stays& stays) const { return "staying at " + stays.shelter; }
  std::string operator()(const plan::Holds& holds) const { return "holding the link " + holds.link; }
  std::string operator()(const plan::Reaches& reaches) const { return "reaching with the pole " + reaches.pole; }
};

bool isPlannedFor(const plan::Need::What& what) {
  return !std::holds_alternative<plan::Holds>(what) && !std::holds_alternative<plan::Reaches>(what);
}

struct GroundOfNeed {
  const Take& take;
  const plan::Crew& member;
  Span span;
  const geometry::Grid& grid;
  const crew::StepClock& clock;
  const base::Cancel& cancel;
  using Met = std::optional<crew::CellTimes>;

  Met operator()(const plan::NearCamera& near) const {
    const auto camera = [this](double t) { return take.people().camera().place(std::min(t, take.length())); };
    return crew::nearTo(camera, near.within, clock.meeting(span), grid, clock);
  }
  Met operator()(const plan::Sees& sees) const {
    return seeing(take, member, sees.who, clock.meeting(span), grid, clock, cancel);
  }
  Met operator()(const plan::Stays& stays) const {
    std::vector<std::size_t> cells;
    const plan::Shelter* shelter = take.plan().shelters.find(stays.shelter);
    for (std::size_t cell = 0; shelter && cell < grid.cells(); ++cell)
      if (geometry::distance(grid.centre(cell), shelter->pos) <= shelter->radius) cells.push_back(cell);
    return crew::onlyAt(cells, clock.meeting(span), grid, clock);
  }
  Met operator()(const plan::Holds&) const { return std::nullopt; }
  Met operator()(const plan::Reaches&) const { return std::nullopt; }
};

/// Rounding in a drawn mark must not break a need.
constexpr double kClose = 1e-6;

struct FailsAt {
  const Take& take;
  const plan::Crew& member;
  Point pos;
  double t;

  bool operator()(const plan::NearCamera& near) const {
    return geometry::distance(pos, take.people().camera().place(t)) > near.within + kClose;
  }
  bool operator()(const plan::Sees& sees) const {
    const auto target = targetAt(take, sees.who, t);
    const double eyes = take.people().floorAt(pos) + eyesOf(member);
    return target && !sight::openBetween(take.scene().at(t), geometry::at(pos, eyes), *target);
  }
  bool operator()(const plan::Stays& stays) const {
    const plan::Shelter* shelter = take.plan().shelters.find(stays.shelter);
    return shelter && geometry::distance(pos, shelter->pos) > shelter->radius + kClose;
  }
  bool operator()(const plan::Holds&) const { return false; }
  bool operator()(const plan::Reaches&) const { return false; }
};

struct WhyFails {
  const char* operator()(const plan::NearCamera&) const { return "far"; }
  const char* operator()(const plan::Stays&) const { return "away"; }
  const char* operator()(const plan::Sees&) const { return "blind"; }
  const char* operator()(const plan::Holds&) const { return "link"; }
  const char* operator()(const plan::Reaches&) const { return "reach"; }
};

}  // namespace

std::optional<std::vector<NeedGround>> needGrounds(const Take& take, std::size_t member, const geometry::Grid& grid,
                                                   const crew::StepClock& clock, const base::Cancel& cancel) {
  std::vector<NeedGround> grounds;
  const plan::Crew& crew = take.plan().crew[member];
  for (const auto& need : crew.needs) {
    if (!isPlannedFor(need.what)) continue;
    const Span span = spanOf(take, need);
    auto met = std::visit(GroundOfNeed{take, crew, span, grid, clock, cancel}, need.what);
    if (!met) return std::nullopt;
    grounds.push_back({std::visit(Words{take.plan()}, need.what) + spanWords(span), std::move(*met)});
  }
  return grounds;
}

std::vector<std::string> needsLeftOut(const plan::Plan& plan, std::size_t member) {
  std::vector<std::string> notes;
  for (const auto& need : plan.crew[member].needs)
    if (!isPlannedFor(need.what)) notes.push_back("not planned for: " + std::visit(Words{plan}, need.what));
  return notes;
}

std::vector<RouteBreak> needBreaks(const Take& take, std::size_t member, const std::function<Point(double t)>& at) {
  std::vector<RouteBreak> breaks;
  const plan::Crew& crew = take.plan().crew[member];
  for (const auto& need : crew.needs) {
    const auto fails = [&](double t) { return std::visit(FailsAt{take, crew, at(t), t}, need.what); };
    const Span span = spanOf(take, need);
    if (span.until < span.from) continue;
    for (const Span& broken : geometry::spansWhere(span, 1 / take.rate(), fails))
      breaks.push_back({broken, at(broken.from), std::visit(WhyFails{}, need.what)});
  }
  std::stable_sort(breaks.begin(), breaks.end(),
                   [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return breaks;
}

}  // namespace wend::answers
