/// The optional keys one by one: each is read, written again as it was, and left out where it says the usual.
#include <gtest/gtest.h>

#include "tests/core/file/plan_text.h"

namespace wend::file {
namespace {

const std::string kEquipped = planWith(
    R"("site": {"latitude": 47.5, "longitude": -3.25, "date": "2031-06-21", "utcOffset": 2},
  "set": {
    "walls": [{"id": "w", "points": [[0, 0], [8, 0]], "radioLoss": 12}],
    "openings": [{"id": "d", "wall": "w", "along": [1, 2], "radioLoss": 3}],
    "pieces": [{"id": "t", "disc": {"centre": [4, 3], "radius": 0.5},
      "moved": [{"at": 0, "offset": [0, 0]}, {"at": 5, "over": 2, "offset": [1, -2], "turn": 90, "by": "grip"}]}],
    "areas": [{"id": "l", "outline": [[0, 0], [8, 0], [8, 6]], "use": ["light"],
      "states": [{"at": 0, "readings": [{"pos": [1, 1], "stop": 4}], "kelvin": 3200}]}]
  },
  "performers": [{"id": "ada", "marks": [{"at": 0, "pos": [2, 4]}]}],
  "lens": {"focal": [24, 70], "transmission": [[24, 0.9], [70, 0.8]], "breathing": 0.05,
    "focusMarks": [{"distance": null, "deg": 0, "witness": "far"}, {"distance": 1, "deg": 90}],
    "limits": {"irisStopsPerSecond": 2, "zoomPercentPerSecond": 40}},
  "crew": [{"id": "ann", "glows": true, "marks": [{"at": 0, "pos": [0, 3]}],
    "needs": [{"holds": "p"}, {"reaches": "b"}, {"sees": "subject"}]}],
  "gear": [{"id": "m", "pos": [1, 5], "glows": true}],
  "cables": [{"id": "c", "points": [[0, 1], [4, 1]], "height": 0.05, "from": 1, "until": 9}],
  "poles": [{"id": "b", "crew": "ann", "reach": 2.5, "shoulder": 1.5, "above": 0.2, "gap": [0.5, 1]}],
  "links": [{"id": "p", "kind": "picture", "from": "camera", "to": "m", "mhz": 5600, "budget": 90, "delay": 0.1}],
  "speech": [{"who": "ada", "from": 1, "until": 2, "pole": "b"}],
  "sightRules": {"bodiesHide": "performers"}, "sizes": {"tight": 0.3})",
    R"("marks": [], "nd": [{"at": 0, "stops": 1}, {"at": 4, "over": 2, "stops": 3}],
  "cable": {"anchor": [1, 2], "length": 30})",
    R"("length": 60, "mainsHz": 50, "cycleMinutes": 12.5)");

TEST(DescribedKeys, PutEquipmentWhereItBelongs) {
  const plan::Plan plan = planOf(kEquipped);
  EXPECT_EQ(plan.site->date, (plan::Date{2031, 6, 21}));
  EXPECT_EQ(plan.site->longitude, -3.25);
  EXPECT_EQ(plan.clock.mainsHz, 50);
  EXPECT_EQ(plan.clock.cycleMinutes, 12.5);
  EXPECT_EQ(plan.set.walls[0].radioLoss, 12);
  EXPECT_EQ(plan.set.openings[0].radioLoss, 3);
  EXPECT_EQ(plan.set.pieces[0].moved[1].offset, (geometry::Vec{1, -2}));
  EXPECT_EQ(plan.set.pieces[0].moved[1].turn, 90);
  EXPECT_EQ(plan.set.areas[0].states[0].kelvin, 3200);
  EXPECT_EQ(plan.lens->transmission.rows[1], (plan::FocalValue{70, 0.8}));
  EXPECT_EQ(plan.lens->breathing, plan::OverFocal(0.05));
  EXPECT_EQ(plan.lens->focusMarks[0].witness, "far");
  EXPECT_EQ(plan.lens->limits.zoomPercentPerSecond, 40);
  EXPECT_EQ(plan.camera.nd[1].stops, 3);
  EXPECT_EQ(plan.camera.cable->length, 30);
  EXPECT_TRUE(plan.crew[0].glows && plan.gear[0].glows);
  EXPECT_EQ(std::get<plan::Holds>(plan.crew[0].needs[0].what).link, "p");
  EXPECT_EQ(std::get<plan::Reaches>(plan.crew[0].needs[1].what).pole, "b");
  EXPECT_EQ(std::get<plan::Sees>(plan.crew[0].needs[2].what).who, plan::kFocusSubject);
  EXPECT_EQ(plan.cables[0].until, (plan::Moment{"", 9}));
  EXPECT_EQ(plan.poles[0].gap[1], 1);
  EXPECT_EQ(plan.links[0].kind, plan::LinkKind::picture);
  EXPECT_EQ(plan.links[0].from, "camera");
  EXPECT_EQ(plan.speech[0].pole, "b");
  EXPECT_EQ(plan.sightRules.bodiesHide, plan::BodiesHide::performers);
  EXPECT_EQ(plan.sizes.at("tight"), 0.3);
}

TEST(DescribedKeys, ComeBackFromTheWrittenFile) {
  const plan::Plan plan = planOf(kEquipped);
  const std::string written = writePlan(plan);
  EXPECT_EQ(planOf(written), plan);
  EXPECT_EQ(writePlan(planOf(written)), written);
}

TEST(DescribedKeys, AreLeftOutWhereTheySayTheUsual) {
  const std::string written = writePlan(planOf(planWith(
      R"("gear": [{"id": "m", "pos": [1, 5], "glows": false}], "lens": {"transmission": 1, "breathing": 0},
         "speech": [], "cables": [], "sightRules": {"bodiesHide": "nobody"}, "sizes": {})")));
  for (const char* key : {"glows", "transmission", "breathing", "cables", "poles", "links", "bodiesHide", "sizes",
                          "site", "mainsHz", "cycleMinutes", "\"nd\"", "\"cable\""})
    EXPECT_EQ(written.find(key), std::string::npos) << key;
}

TEST(DescribedKeys, TellWhatIsWrongAndWhere) {
  const auto told = [](const std::string& keys, const std::string& problem) { expectProblem(planWith(keys), problem); };
  told(R"("site": {"latitude": 91, "longitude": 0, "date": "2031-06-21"})", "out-of-range /site/latitude");
  told(R"("sightRules": {"bodiesHide": "some"})", "unknown-word /sightRules/bodiesHide");
  told(R"("sizes": {"tight": 0})", "out-of-range /sizes/tight");
  told(R"("gear": [{"id": "m", "pos": [1, 5], "glows": 1}])", "wrong-type /gear/0/glows");
  told(R"("poles": [{"id": "b", "crew": "nobody"}])", "missing-reference /poles/0/crew");
  told(R"("links": [{"id": "p", "from": "camera", "to": "gone"}])", "missing-reference /links/0/to");
  told(R"("links": [{"id": "p", "from": "camera", "to": "camera"}])", "link-one-end /links/0/to");
  told(R"("crew": [{"id": "a", "needs": [{"holds": "gone"}]}])", "missing-reference /crew/0/needs/0/holds");
  told(R"("crew": [{"id": "a", "needs": [{"reaches": "gone"}]}])", "missing-reference /crew/0/needs/0/reaches");
  told(R"("lens": {"transmission": "clear"})", "wrong-type /lens/transmission");
  told(R"("lens": {"irisMarks": [{"stop": 2, "deg": 0}, {"stop": 4, "deg": 40}, {"stop": 8, "deg": 30}]})",
       "marks-turn-back /lens/irisMarks/2");
  expectProblem(planWith("", R"("marks": [])", R"("mainsHz": 55)"), "out-of-range /clock/mainsHz");
  expectProblem(planWith("", R"("marks": [], "cable": {"anchor": [0, 0], "length": 0})"),
                "out-of-range /camera/cable/length");
}

}  // namespace
}  // namespace wend::file
