/// A street that a van drives along, a flat across half of it, and somebody who has to get past both in good time.
#pragma once

#include "tests/core/answers/two_rooms.h"

namespace wend::answers {

/// The van goes west by 12 m from 4 to 10 s; the flat leaves 3 m of the street at its south. Who is in `west` until 2 s
/// has to be in `east` from 14 s on, and the lens turns to the flat's east side from 9 to 12 s.
inline const char* const kVanStreet = R"({
  "format": "wend-plan", "version": 1, "title": "Van street", "clock": {"rate": [24, 1], "length": 20},
  "beats": [{"id": "b1", "name": "start", "time": 0}],
  "set": {
    "rooms": [{"id": "r", "name": "street", "outline": [[0, 0], [20, 0], [20, 6], [0, 6]], "floor": 0, "ceiling": 9}],
    "walls": [
      {"id": "n", "name": "north", "points": [[0, 6.1], [20, 6.1]], "thickness": 0.2, "top": 5},
      {"id": "s", "name": "south", "points": [[0, -0.1], [20, -0.1]], "thickness": 0.2, "top": 5},
      {"id": "w", "name": "west", "points": [[-0.1, 0], [-0.1, 6]], "thickness": 0.2, "top": 5},
      {"id": "e", "name": "east", "points": [[20.1, 0], [20.1, 6]], "thickness": 0.2, "top": 5}],
    "pieces": [
      {"id": "van", "name": "the van", "outline": [[14, 0.5], [18, 0.5], [18, 2.5], [14, 2.5]], "bottom": 0, "top": 2.4,
       "surface": "solid", "moved": [{"at": 0, "offset": [0, 0]}, {"at": 4, "over": 6, "offset": [-12, 0]}]},
      {"id": "flat", "name": "flat", "outline": [[9.9, 3.0], [10.1, 3.0], [10.1, 6], [9.9, 6]], "bottom": 0, "top": 3,
       "surface": "solid"}]},
  "camera": {
    "marks": [{"id": "c", "at": 0, "until": "end", "pos": [1, 5], "height": 1.5}],
    "aims": [{"at": 0, "on": {"bearing": 180, "tilt": 0}}, {"at": 9, "over": 3, "on": {"bearing": 95, "tilt": 0}}],
    "gate": [24.9, 14], "rig": {"kind": "handheld", "radius": 0.3}},
  "lens": {"name": "28", "focal": [28, 28], "stop": [2.8, 22], "closeFocus": 0.5},
  "iris": {"keys": [{"at": 0, "stop": 4}]},
  "crew": [{"id": "a", "role": "alpha", "speed": 1.75, "needs": [
    {"stays": "KW", "from": 0, "until": 2}, {"stays": "KE", "from": 14, "until": 20}]}],
  "shelters": [{"id": "KW", "name": "west", "pos": [4, 4.5], "radius": 0.8, "holds": 2},
               {"id": "KE", "name": "east", "pos": [11.5, 4.8], "radius": 0.8, "holds": 2}],
  "sightRules": {"margin": 3, "early": 2, "late": 1, "radius": 0.28, "height": 1.8, "cell": 0.1}
})";

inline plan::Plan vanStreet(double speed) {
  auto read = file::readPlan(kVanStreet);
  if (!read) throw std::runtime_error(read.problems()[0].where + " " + read.problems()[0].code);
  plan::Plan plan = read->plan;
  plan::Crew crew = plan.crew[0];
  crew.speed = speed;
  plan.crew.replace(0, crew);
  return plan;
}

}  // namespace wend::answers
