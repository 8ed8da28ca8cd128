/// Two rooms side by side, a camera that looks round in one of them, and helpers to find routes past it.
#pragma once

#include <stdexcept>

#include "core/answers/routes.h"
#include "tests/samples.h"

namespace wend::answers {

inline TakePtr takeOf(plan::Plan plan) {
  auto take = Take::of(std::make_shared<const plan::Plan>(std::move(plan)));
  if (!take) throw std::runtime_error(take.problems()[0].where + " " + take.problems()[0].code);
  return *take;
}

/// Two rooms side by side, a door in the wall between, a camera that turns once round in the western one from 8 s to
/// 20 s and looks at the western wall else. One shelter in each room.
inline const char* const kTwoRooms = R"({
  "format": "wend-plan", "version": 1, "title": "Two rooms",
  "clock": {"rate": [24, 1], "length": 30},
  "beats": [{"id": "b1", "name": "start", "time": 0}, {"id": "b2", "name": "round", "time": 8}],
  "set": {
    "rooms": [{"id": "west", "name": "west", "outline": [[0, 0], [5, 0], [5, 4], [0, 4]], "floor": 0, "ceiling": 2.7},
              {"id": "east", "name": "east", "outline": [[5, 0], [9, 0], [9, 4], [5, 4]], "floor": 0, "ceiling": 2.7}],
    "walls": [
      {"id": "round", "name": "round", "points": [[0, 0], [9, 0], [9, 4], [0, 4], [0, 0]], "thickness": 0.1, "top": 2.7},
      {"id": "between", "name": "between", "points": [[5, 0], [5, 4]], "thickness": 0.1, "top": 2.7}],
    "openings": [
      {"id": "door", "name": "door", "wall": "between", "along": [2.6, 3.6], "head": 2.1, "fill": "open", "barsWay": false}]
  },
  "camera": {
    "marks": [{"id": "c1", "at": 0, "until": "end", "pos": [2, 1.2], "height": 1.5}],
    "aims": [{"at": 0, "on": {"bearing": 270}}, {"at": 8, "over": 12, "on": {"bearing": 630}}],
    "gate": [24.9, 14], "blurCircle": 0.025, "exposureIndex": 800, "shutterDeg": 180,
    "rig": {"kind": "dolly", "radius": 0.4}
  },
  "lens": {"name": "28 mm", "focal": [28, 28], "stop": [2.8, 22], "closeFocus": 0.4},
  "crew": [{"id": "ac", "role": "first assistant camera", "needs": [
    {"stays": "ka", "from": 0, "until": 4}]}],
  "shelters": [{"id": "ka", "name": "beside the camera", "pos": [4, 3], "radius": 0.5, "holds": 1},
               {"id": "kb", "name": "behind the wall", "pos": [7.5, 0.8], "radius": 0.5, "holds": 1}],
  "sightRules": {"margin": 3, "early": 2, "late": 1, "radius": 0.28, "height": 1.8, "cell": 0.1}
})";

inline plan::Plan twoRooms() {
  auto read = file::readPlan(kTwoRooms);
  if (!read) throw std::runtime_error(read.problems()[0].where + " " + read.problems()[0].code);
  return read->plan;
}

inline plan::Plan withNeeds(plan::Plan plan, std::vector<plan::Need> needs) {
  plan::Crew crew = plan.crew[0];
  crew.needs = std::move(needs);
  plan.crew.replace(0, crew);
  return plan;
}

inline FoundRoutes found(const Take& take) {
  const auto ground = routeGroundOf(take);
  return **foundRoutes(take, *ground);
}

inline plan::Need need(plan::Need::What what, double from, double until) {
  plan::Need need;
  need.what = std::move(what);
  need.from = plan::Moment{"", from};
  need.until = plan::Moment{"", until};
  return need;
}

}  // namespace wend::answers
