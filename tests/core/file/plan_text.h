/// Plans as text for the tests of this folder.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "core/file/plan_reader.h"
#include "core/file/plan_writer.h"

namespace wend::file {

/// The whole of a file under the source folder.
inline std::string fileText(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::filesystem::path sampleFolder() {
  return std::filesystem::path(WEND_SOURCE_DIR) / "samples";
}

/// The files of a folder with that ending, in order of name.
inline std::vector<std::filesystem::path> filesOf(const std::filesystem::path& folder, const std::string& ending) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ending) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

/// The least plan, with more keys of the plan in front of its own.
inline std::string planWith(const std::string& keys, const std::string& camera = R"("marks": [])",
                            const std::string& clock = R"("length": 60)") {
  return R"({"format": "wend-plan", "version": 1, )" + keys + (keys.empty() ? "" : ", ") + R"("clock": {)" + clock +
         R"(}, "camera": {)" + camera + "}}";
}

/// The problems' codes and places: "out-of-range /clock/length".
inline std::vector<std::string> codesAndPlaces(const base::Problems& problems) {
  std::vector<std::string> lines;
  for (const auto& problem : problems) lines.push_back(problem.code + " " + problem.where);
  return lines;
}

inline std::vector<std::string> problemsIn(const std::string& json) {
  const auto read = readPlan(json);
  return read.ok() ? std::vector<std::string>() : codesAndPlaces(read.problems());
}

/// Expects exactly one problem.
inline void expectProblem(const std::string& json, const std::string& codeAndPlace) {
  EXPECT_EQ(problemsIn(json), std::vector<std::string>{codeAndPlace}) << json;
}

inline plan::Plan planOf(const std::string& json) {
  auto read = readPlan(json);
  EXPECT_TRUE(read.ok()) << (read.ok() ? "" : base::toText(read.problems().front())) << "\n" << json;
  return read.ok() ? std::move(read).value().plan : plan::Plan();
}

/// Every key of the format once, none at its default.
inline const char* const kEveryKey = R"({
  "format": "wend-plan", "version": 1, "title": "All of it", "revision": "C", "notes": "tab\tand \"quotes\" \u00e9 \u0001",
  "display": {"length": "ft"},
  "clock": {"rate": [30000, 1001], "dropFrame": true, "startTimecode": "01:00:00;00", "length": 168, "timeOfDay": "06:14:00.250",
    "mainsHz": 60, "cycleMinutes": 25},
  "site": {"latitude": 54.09, "longitude": -12.14, "date": "2031-06-21", "utcOffset": 2},
  "beats": [{"id": "b1", "name": "In", "cue": "door", "time": 2.5}, {"id": "b2", "time": 40}],
  "set": {
    "underlay": {"file": "drawings/hall.png", "metresPerPixel": 0.02, "pos": [1, 2], "bearing": 3, "opacity": 0.5},
    "rooms": [{"id": "r1", "name": "hall", "outline": [[0, 0], [9, 0], [9, 8]], "floor": 0.1, "ceiling": 3.1}],
    "walls": [{"id": "w1", "name": "west", "points": [[-0.1, 0], [-0.1, 8]], "thickness": 0.2, "bottom": 0.05, "top": 3.2, "radioLoss": 12}],
    "openings": [{"id": "d1", "name": "D1", "wall": "w1", "along": [2, 3.1], "sill": 0.01, "head": 2.1, "threshold": 0.04,
      "fill": "solid", "barsWay": false, "moves": {"kind": "slide", "hinge": "end", "towards": "right", "full": 180},
      "open": [{"at": 0, "share": 0.2}, {"at": "b2", "over": 1, "pace": "eased", "share": 1, "name": "opens", "by": "ad"}],
      "radioLoss": 3}],
    "pieces": [
      {"id": "p1", "disc": {"centre": [1, 6.2], "radius": 0.35}, "top": 1.2, "hot": true, "glossy": true},
      {"id": "p2", "name": "oven", "outline": [[1.6, 7.2], [4.4, 7.2], [4.4, 8]], "bottom": 0.1, "surface": "glass",
       "moved": [{"at": 0, "offset": [0.5, -0.25]}, {"at": "b2", "over": 4, "pace": "eased", "offset": [2, 1], "turn": -90, "name": "oven away", "by": "props"}]},
      {"id": "p3", "points": [[3.2, 1], [4.6, 1]], "bottom": 1, "top": 2.1, "surface": "mirror", "reflects": "right"}],
    "areas": [
      {"id": "a1", "name": "pool", "disc": {"centre": [4.5, 3.7], "radius": 2.1}, "use": ["light", "noisy"],
       "states": [{"at": 0, "readings": []}, {"at": {"beat": "b2", "plus": -0.5}, "over": 2, "name": "up", "by": "gaffer",
                   "readings": [{"pos": [4.5, 3.7], "stop": 4.49}], "kelvin": 3200}]},
      {"id": "a2", "outline": [[18, -10], [28, -10], [28, 20]], "use": ["hazard", "keepOut", "exitLane", "outside"],
       "byClock": [["05:50", 3.14, {"kelvin": 9500}], ["06:14:30", 11]], "step": 0.12, "floor": -0.12}]
  },
  "props": [{"id": "hands", "name": "hands", "wobble": 0.06, "track": [{"at": 0, "pos": [-0.3, 2.5], "height": 1.05},
             {"at": "b1", "by": "ada", "height": 1.1}]}],
  "performers": [{"id": "ada", "name": "ADA", "letter": "A", "stature": 1.7, "radius": 0.26, "marks": [
      {"at": 1.5, "until": 2, "pos": [-1.9, 5], "facing": 180, "posture": "sit", "taped": true,
       "leg": {"shape": "smooth", "via": [[0, 1]], "pace": "eased"}},
      {"at": "b2", "until": "end", "pos": [3, 5], "posture": "kneel"}]},
    {"id": "bo", "marks": [{"at": 0, "pos": [1, 1], "posture": "lie"}]}],
  "camera": {
    "marks": [{"id": "c1", "at": 0, "until": 1, "pos": [4.5, 1.4], "height": 1.5, "leg": {"shape": "arc", "centre": [4.5, 3.7], "sweep": -360}},
              {"at": 20, "pos": [4.5, 1.4]}],
    "aims": [{"at": 0, "on": {"bearing": 2, "tilt": -1}}, {"at": 3, "over": 1, "on": {"point": [4.5, 3.7], "height": 1.5}},
             {"at": 5, "over": 1, "on": {"performer": "ada"}, "place": [0.2, 0.1], "turns": -1}, {"at": 7, "over": 1, "on": {"prop": "hands"}},
             {"at": 9, "over": 2, "on": {"travel": 180, "tilt": 2}}],
    "gate": [20, 12], "squeeze": 2, "aspect": 2.39, "blurCircle": 0.02, "exposureIndex": 1600, "shutterDeg": 172.8, "ndStops": 1,
    "nd": [{"at": 0, "stops": 2}, {"at": "b2", "over": 6, "stops": 0.5}],
    "meter": {"receptor": "flat", "constant": 250},
    "rig": {"kind": "dolly", "radius": 0.4, "payload": [4, 11], "items": [{"name": "lens", "kg": 1.9}]},
    "bodies": [{"crew": "op", "behind": 0.6, "right": 0.1}], "cable": {"anchor": [8, -1], "length": 25}
  },
  "lens": {"name": "zoom", "focal": [24, 70], "stop": [2.9, 21], "closeFocus": 0.75, "pupilAhead": 0.1, "transmission": [[24, 0.9], [50, 0.9], [70, 0.8]], "breathing": 0.05, "balance": [[24, 0], [70, 0.006]],
    "focusMarks": [{"distance": null, "deg": 0}, {"distance": 0.75, "deg": 290, "witness": "A"}], "irisMarks": [{"stop": 2.8, "deg": 0}],
    "zoomMarks": [{"focal": 24, "deg": 0}], "limits": {"focusDegPerSecond": 100, "irisStopsPerSecond": 2, "zoomPercentPerSecond": 40}},
  "wobble": {"taped": 0.11, "walking": 0.21, "untaped": 0.31, "operatorMoving": 0.22, "operatorStill": 0.08, "dolly": 0.04},
  "focus": {"distance": "slant", "blurShare": 0.8,
    "keys": [{"at": 0, "on": {"performer": "ada"}}, {"at": 15, "over": 3, "on": {"split": ["ada", "hands"]}}, {"at": 20, "on": {"distance": 2}}],
    "pulls": [{"at": 3, "over": 2, "distance": 1.4}]},
  "zoom": {"slackShare": 0.05, "keys": [{"at": 0, "focal": 32}, {"at": 13, "over": 2.5, "size": "medium", "of": {"performer": "ada"}}]},
  "iris": {"slackStops": 0.3, "expose": {"performer": "bo"}, "keys": [{"at": 0, "stop": 2.8}]},
  "fixtures": [{"id": "f1", "name": "pendant", "inReadings": true, "pos": [4.5, 3.7], "height": 2.2, "bearing": 5, "tilt": -80,
                "output": {"candela": 900, "beam": 30, "field": 50}, "level": [{"at": 0, "share": 0}, {"at": 5, "share": 0.5, "name": "up", "by": "gaffer"}]},
               {"id": "f2", "pos": [1, 1], "output": {"ies": "lamps/wide.ies", "scale": 0.5}}],
  "crew": [{"id": "op", "role": "operator"},
           {"id": "ac", "role": "first assistant", "radius": 0.3, "height": 1.7, "crouch": 1, "speed": 1, "glows": true,
            "marks": [{"id": "k0", "at": 0, "until": 10, "shelter": "k1"}, {"at": 20, "until": 32, "pos": [-3.3, -0.6], "posture": "crouch"}],
            "needs": [{"near": "camera", "within": 5}, {"sees": "ada", "from": "b1", "until": "b2"}, {"stays": "k1", "from": 0, "until": 10},
                      {"sees": "subject"}, {"holds": "l1"}, {"reaches": "boom", "until": "b2"}]}],
  "shelters": [{"id": "k1", "name": "alley", "pos": [-3, -4.8], "radius": 0.8, "holds": 4}],
  "gear": [{"id": "g1", "name": "cart", "pos": [-2.6, -5.5], "radius": 0.5, "height": 1.4, "glows": true}],
  "cables": [{"id": "mains", "name": "to the lamp", "points": [[0, 0], [3, 1]], "height": 0.05, "from": "b1", "until": "end"}],
  "poles": [{"id": "boom", "name": "boom", "crew": "ac", "reach": 2.5, "shoulder": 1.4, "above": 0.2, "gap": [0.3, 1]}],
  "links": [{"id": "l1", "name": "focus", "kind": "talk", "from": "camera", "to": "g1", "mhz": 5600, "budget": 90, "delay": 0.05},
            {"id": "l2", "from": "ac", "to": "ada"}],
  "speech": [{"who": "ada", "from": "b1", "until": {"beat": "b1", "plus": 6}, "words": "now", "pole": "boom"}],
  "handovers": [{"what": "focus", "from": "op", "to": "ac", "at": {"beat": "b1", "plus": 1}, "over": 2}],
  "sightRules": {"margin": 4, "early": 2.5, "late": 1.5, "radius": 0.3, "height": 1.7, "cell": 0.2, "bodiesHide": "everybody"},
  "sizes": {"knees": 0.75, "medium": 0.6},
  "thresholds": {"pan": {"share": 1.1}},
  "accepted": [{"key": "exposure/ada/1", "by": "DP", "note": "night"}],
  "takes": [{"number": 2, "revision": "B", "note": "good", "circled": true, "beats": {"b1": 2.4, "end": 171.2}, "notes": [{"at": 31, "text": "bump"}]}]
})";

}  // namespace wend::file
