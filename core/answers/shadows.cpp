// Whose body, whose pole takes a lamp away from a face in frame.
#include <algorithm>
#include <map>
#include <tuple>

#include "core/answers/whole_take.h"
#include "core/light/shadow.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

using namespace snags;

namespace {

constexpr double kStep = 0.1;
/// A camera stands so much over and under its sensor, and so far around it; the rest of the rig is thin.
constexpr double kCameraHalf = 0.2;

/// Bodies with the names they are told by.
struct Blockers {
  std::vector<light::Blocker> bodies;
  std::vector<std::string> names;
  void add(const light::Blocker& body, const std::string& name) {
    bodies.push_back(body);
    names.push_back(name);
  }
};

void addPoles(const std::vector<BoomLine>& boom, double t, Blockers& blockers) {
  for (const auto& line : boom)
    for (const auto& at : line.at)
      if (at.time == t && at.held) blockers.add(light::Rod{at.held->shoulder, at.held->microphone}, line.pole);
}

Blockers blockersAt(const Instant& instant, const std::vector<BoomLine>& boom) {
  Blockers blockers;
  const Point3 sensor = instant.camera.sensor.at;
  blockers.add(light::UprightBody{flat(sensor), kCameraHalf, sensor.z - kCameraHalf, sensor.z + kCameraHalf}, "camera");
  for (const auto& crew : instant.crew)
    if (crew.present)
      blockers.add(light::UprightBody{crew.pos, crew.radius, crew.floor, crew.floor + crew.height}, crew.id);
  addPoles(boom, instant.time, blockers);
  return blockers;
}

using Way = std::tuple<std::string, std::string, std::string>;  ///< who, lamp, by

/// Cuts of the same lamp by the same body go on where they are no more than two steps apart.
class ShadowLog {
 public:
  void add(double t, const Way& way, double share, Point pos) {
    auto& list = ways_[way];
    if (list.empty() || t - list.back().span.until > 2.1 * kStep)
      list.push_back({{t, t}, std::get<0>(way), std::get<1>(way), std::get<2>(way), share, pos});
    list.back().span.until = t;
    list.back().share = std::max(list.back().share, share);
  }
  std::vector<ShadowOn> inOrder() const {
    std::vector<ShadowOn> all;
    for (const auto& [way, list] : ways_) all.insert(all.end(), list.begin(), list.end());
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
    return all;
  }

 private:
  std::map<Way, std::vector<ShadowOn>> ways_;
};

void addCuts(const Take& take, const Instant& instant, const Blockers& blockers, double least, ShadowLog& log) {
  for (const auto& at : instant.performers) {
    const bool shows = at.inFrame == optics::Showing::whole || at.inFrame == optics::Showing::part;
    if (!at.present || !shows || !at.needed) continue;
    const Point3 eyes = geometry::at(at.pos, at.eyes);
    const light::Face face{eyes, instant.camera.pupil.at - eyes};
    const light::FaceLight light = light::lightOnFace(take.lighting(), face, instant.time);
    for (const auto& cut : light::lampCuts(take.lighting(), face, light, blockers.bodies, least))
      log.add(instant.time, {at.id, take.plan().fixtures[cut.fixture].id.text(), blockers.names[cut.body]}, cut.share,
              at.pos);
  }
}

}  // namespace

std::vector<ShadowOn> shadowsOn(const Take& take, const std::vector<Instant>& samples,
                                const std::vector<BoomLine>& boom) {
  if (take.plan().fixtures.size() == 0) return {};
  const double least = threshold(take.plan(), "shadow").value;
  ShadowLog log;
  double next = 0;
  for (const auto& instant : samples) {
    if (instant.time < next - 1e-9) continue;
    next = instant.time + kStep;
    addCuts(take, instant, blockersAt(instant, boom), least, log);
  }
  return log.inOrder();
}

}  // namespace wend::answers
