#include "core/file/plan_reader.h"

#include <gtest/gtest.h>

#include "core/file/limits.h"
#include "tests/core/file/plan_text.h"

namespace wend::file {
namespace {

TEST(PlanReader, NeedsFourKeysOnly) {
  const auto read = readPlan(R"({"format": "wend-plan", "version": 1, "clock": {}, "camera": {"marks": []}})");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read->plan, plan::Plan());
  EXPECT_TRUE(read->notes.empty());
  expectProblem(R"({"format": "wend-plan", "version": 1, "camera": {"marks": []}})", "missing-key /clock");
  expectProblem(R"({"format": "wend-plan", "version": 1, "clock": {}})", "missing-key /camera");
  expectProblem(R"({"format": "wend-plan", "version": 1, "clock": {}, "camera": {}})", "missing-key /camera/marks");
}

TEST(PlanReader, TakesEveryKeyOfTheFormat) {
  const auto read = readPlan(kEveryKey);
  ASSERT_TRUE(read.ok()) << base::toText(read.problems().front());
  EXPECT_TRUE(read->notes.empty());
}

TEST(PlanReader, PutsValuesWhereTheyBelong) {
  const plan::Plan plan = planOf(kEveryKey);
  EXPECT_EQ(plan.display, plan::LengthUnit::feet);
  EXPECT_EQ(plan.clock.timeOfDay, 22440.25);
  EXPECT_EQ(plan.clock.rateDenominator, 1001);
  EXPECT_EQ(plan.set.openings[0].along, (geometry::Span{2, 3.1}));
  EXPECT_EQ(plan.set.openings[0].open[1].time, (plan::KeyTime{{"b2", 0}, 1, plan::Pace::eased}));
  EXPECT_EQ(std::get<plan::Disc>(plan.set.pieces[0].shape).radius, 0.35);
  EXPECT_EQ(plan.set.pieces[2].reflects, plan::WallSide::right);
  EXPECT_EQ(plan.set.areas[0].states[1].time.at, (plan::Moment{"b2", -0.5}));
  EXPECT_EQ(plan.set.areas[1].byClock[0], (plan::ClockReading{21000, 3.14, 9500}));
  EXPECT_EQ(plan.set.areas[1].byClock[1], (plan::ClockReading{22470, 11}));
  EXPECT_EQ(plan.props[0].track[1].by, "ada");
  EXPECT_EQ(plan.performers[0].marks[0].leg.shape, plan::LegShape::smooth);
  EXPECT_EQ(plan.performers[0].marks[1].until, (plan::Moment{"end", 0}));
  EXPECT_EQ(plan.camera.marks[0].leg.sweep, -360);
  EXPECT_EQ(plan.camera.aims[1].on, plan::Target(plan::OnPoint{{4.5, 3.7}, 1.5}));
  EXPECT_EQ(plan.camera.aims[4].on, plan::Target(plan::OnTravel{180, 2}));
  EXPECT_EQ(plan.camera.aspect, 2.39);
  EXPECT_FALSE(plan.lens->focusMarks[0].distance);
  EXPECT_EQ(plan.focus.keys[1].on, plan::Target(plan::OnSplit{{"ada", "hands"}}));
  EXPECT_EQ(plan.zoom.keys[1].size, "medium");
  EXPECT_EQ(plan.iris.exposePerformer, "bo");
  EXPECT_EQ(std::get<plan::IesOutput>(plan.fixtures[1].output).file, "lamps/wide.ies");
  EXPECT_EQ(std::get<plan::Sees>(plan.crew[1].needs[1].what).who, "ada");
  EXPECT_EQ(plan.handovers[0].at, (plan::Moment{"b1", 1}));
  EXPECT_EQ(plan.thresholds.at("pan"), 1.1);
  EXPECT_EQ(plan.clock.mainsHz, 60);
  EXPECT_EQ(plan.clock.cycleMinutes, 25);
  EXPECT_EQ(plan.site, (plan::Site{54.09, -12.14, {2031, 6, 21}, 2, {}}));
  EXPECT_EQ(plan.set.walls[0].radioLoss, 12);
  EXPECT_EQ(plan.set.openings[0].radioLoss, 3);
  EXPECT_EQ(plan.set.pieces[1].moved[1].offset, (geometry::Vec{2, 1}));
  EXPECT_EQ(plan.set.pieces[1].moved[1].turn, -90);
  EXPECT_EQ(plan.set.areas[0].states[1].kelvin, 3200);
  EXPECT_EQ(plan.camera.nd[1].stops, 0.5);
  EXPECT_EQ(plan.camera.cable->anchor, (plan::Point{8, -1}));
  EXPECT_EQ(plan.lens->transmission.rows[2], (plan::FocalValue{70, 0.8}));
  EXPECT_EQ(plan.lens->breathing, plan::OverFocal(0.05));
  EXPECT_EQ(plan.lens->balance, plan::OverFocal({{24, 0}, {70, 0.006}}));
  EXPECT_EQ(plan.lens->focusMarks[1].witness, "A");
  EXPECT_EQ(plan.lens->limits.zoomPercentPerSecond, 40);
  EXPECT_EQ(plan.crew[1].marks[0].id, "k0");
  EXPECT_EQ(std::get<plan::Sees>(plan.crew[1].needs[3].what).who, plan::kFocusSubject);
  EXPECT_EQ(std::get<plan::Holds>(plan.crew[1].needs[4].what).link, "l1");
  EXPECT_EQ(std::get<plan::Reaches>(plan.crew[1].needs[5].what).pole, "boom");
  EXPECT_EQ(plan.cables[0].until, (plan::Moment{"end", 0}));
  EXPECT_EQ(plan.poles[0].gap, (std::array<double, 2>{0.3, 1}));
  EXPECT_EQ(plan.links[0].from, plan::kCameraEnd);
  EXPECT_EQ(plan.links[0].kind, plan::LinkKind::talk);
  EXPECT_EQ(plan.speech[0].pole, "boom");
  EXPECT_EQ(plan.sightRules.bodiesHide, plan::BodiesHide::everybody);
  EXPECT_EQ(plan.sizes.at("knees"), 0.75);
  EXPECT_EQ(plan.takes[0].beats[1], (std::pair<std::string, double>{"end", 171.2}));
}

TEST(PlanReader, TakesNullForTheWholeGateAndForInfinityOnly) {
  EXPECT_FALSE(planOf(planWith("", R"("marks": [], "aspect": null)")).camera.aspect);
  expectProblem(planWith("", R"("marks": [], "squeeze": null)"), "wrong-type /camera/squeeze");
  expectProblem(planWith(R"("lens": {"focusMarks": [{"deg": 3}]})"), "missing-key /lens/focusMarks/0/distance");
}

TEST(PlanReader, RefusesANewerVersionAlone) {
  const auto read = readPlan(R"({"format": "wend-plan", "version": 2, "clock": 7})");
  ASSERT_FALSE(read.ok());
  ASSERT_EQ(read.problems().size(), 1u);
  EXPECT_EQ(read.problems().front().code, "newer-version");
  EXPECT_NE(read.problems().front().remedy.find("newer Wend"), std::string::npos);
}

TEST(PlanReader, RefusesWhatIsNoPlan) {
  expectProblem("", "empty-file the whole file");
  expectProblem("  \n", "empty-file the whole file");
  expectProblem("[]", "wrong-type /");
  expectProblem("7", "wrong-type /");
  expectProblem("{}", "wrong-format /format");
  expectProblem(R"({"format": "wend-plan"})", "wrong-version /version");
  expectProblem(R"({"format": "wend-plan", "version": "1"})", "wrong-version /version");
  expectProblem(R"({"format": "wend-plan", "version": 0.5})", "wrong-version /version");
}

TEST(PlanReader, ListsAllProblemsAtOnce) {
  const auto problems = problemsIn(planWith(R"("title": 3, "iris": {"keys": [{"at": "b9", "stop": -1}]})",
                                            R"("marks": [{"at": 0, "pos": [1, 1e300]}], "gate": [1])"));
  EXPECT_EQ(problems, (std::vector<std::string>{"wrong-type /title", "out-of-range /camera/marks/0/pos/1",
                                                "wrong-type /camera/gate", "missing-reference /iris/keys/0/at",
                                                "out-of-range /iris/keys/0/stop"}));
}

TEST(PlanReader, TellsAHundredProblemsAndCountsTheRest) {
  std::string marks;
  for (int i = 0; i < 130; ++i) marks += std::string(i ? "," : "") + R"({"at": 1e9, "pos": [0, 0]})";
  const auto read = readPlan(planWith("", "\"marks\": [" + marks + "]"));
  ASSERT_FALSE(read.ok());
  ASSERT_EQ(read.problems().size(), kMostProblems + 1);
  EXPECT_EQ(read.problems().back().found, "and 30 more");
}

TEST(PlanReader, ChecksEveryReference) {
  expectProblem(planWith(R"("set": {"openings": [{"id": "d", "wall": "w", "along": [0, 1]}]})"),
                "missing-reference /set/openings/0/wall");
  expectProblem(planWith("", R"("marks": [], "aims": [{"at": 0, "on": {"performer": "x"}}])"),
                "missing-reference /camera/aims/0/on/performer");
  expectProblem(planWith("", R"("marks": [], "aims": [{"at": 0, "on": {"prop": "x"}}])"),
                "missing-reference /camera/aims/0/on/prop");
  expectProblem(
      planWith(R"("focus": {"keys": [{"at": 0, "on": {"split": ["hands", "y"]}}]}, "props": [{"id": "hands"}])"),
      "missing-reference /focus/keys/0/on/split/1");
}

TEST(PlanReader, KeepsKindsOfIdsApart) {
  const std::string beat = R"("beats": [{"id": "b1", "time": 1}], )";
  expectProblem(planWith(beat + R"("speech": [{"who": "b1", "from": 0, "until": 1}])"),
                "missing-reference /speech/0/who");
  expectProblem(
      planWith(beat + R"("handovers": [{"what": "focus", "from": "b1", "to": "op", "at": 0}], "crew": [{"id": "op"}])"),
      "missing-reference /handovers/0/from");
}

TEST(PlanReader, SuggestsTheNearestId) {
  const auto read = readPlan(
      planWith(R"("beats": [{"id": "door", "time": 1}], "speech": [{"who": "x", "from": "dor", "until": "end"}])"));
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems()[1].remedy, "did you mean \"door\"?");
}

TEST(PlanReader, WantsIdsUniqueInTheDocument) {
  expectProblem(planWith(R"("beats": [{"id": "x", "time": 1}], "gear": [{"id": "x", "pos": [0, 0]}])"),
                "duplicate-id /gear/0/id");
  expectProblem(planWith(R"("beats": [{"id": "x", "time": 1}])", R"("marks": [{"id": "x", "at": 0, "pos": [0, 0]}])"),
                "duplicate-id /camera/marks/0/id");
  expectProblem(planWith(R"("beats": [{"id": "end", "time": 1}])"), "bad-id /beats/0/id");
  expectProblem(planWith(R"("beats": [{"id": "a b", "time": 1}])"), "bad-id /beats/0/id");
  expectProblem(planWith(R"("beats": [{"id": 3, "time": 1}])"), "wrong-type /beats/0/id");
  expectProblem(planWith(R"("beats": [{"time": 1}, {"id": "b", "time": 2}])"), "missing-key /beats/0/id");
}

TEST(PlanReader, TakesTimesInThreeForms) {
  const std::string json = planWith(
      R"("beats": [{"id": "b", "time": 4}], "speech": [], "handovers": [])",
      R"("marks": [{"at": 0, "pos": [0, 0]}, {"at": "b", "pos": [1, 0]}, {"at": {"beat": "b", "plus": 2.5}, "pos": [2, 0]}, {"at": {"beat": "end"}, "pos": [3, 0]}])");
  const plan::Plan plan = planOf(json);
  EXPECT_EQ(plan.camera.marks[1].at, (plan::Moment{"b", 0}));
  EXPECT_EQ(plan.camera.marks[2].at, (plan::Moment{"b", 2.5}));
  EXPECT_EQ(plan.camera.marks[3].at, (plan::Moment{"end", 0}));
  for (const char* bad : {"true", "[1]", "null"})
    expectProblem(planWith("", std::string(R"("marks": [{"at": )") + bad + R"(, "pos": [0, 0]}])"),
                  "wrong-type /camera/marks/0/at");
  expectProblem(planWith("", R"("marks": [{"at": {"plus": 1}, "pos": [0, 0]}])"),
                "missing-key /camera/marks/0/at/beat");
  expectProblem(planWith("", R"("marks": [])", R"("length": "end")"), "wrong-type /clock/length");
}

std::string cameraMarks(const std::string& marks) {
  return planWith(R"("beats": [{"id": "b", "time": 5}])", "\"marks\": [" + marks + "]");
}

TEST(PlanReader, WantsMarksInOrderOfTime) {
  expectProblem(cameraMarks(R"({"at": 5, "pos": [0, 0]}, {"at": 4, "pos": [1, 0]})"), "time-order /camera/marks/1/at");
  expectProblem(cameraMarks(R"({"at": 1, "until": 6, "pos": [0, 0]}, {"at": "b", "pos": [1, 0]})"),
                "time-order /camera/marks/1/at");
  expectProblem(cameraMarks(R"({"at": 5, "until": 4, "pos": [0, 0]})"), "time-order /camera/marks/0/until");
  expectProblem(cameraMarks(R"({"at": 5, "pos": [0, 0]}, {"at": 5, "pos": [1, 0]})"), "time-order /camera/marks/1/at");
}

TEST(PlanReader, LetsMarksOnOneSpotShareAnInstant) {
  EXPECT_TRUE(problemsIn(cameraMarks(R"({"at": 5, "pos": [0, 0]}, {"at": "b", "pos": [0, 0]})")).empty());
}

TEST(PlanReader, PlacesShelteredMarksAtTheirShelter) {
  const std::string shelters = R"("shelters": [{"id": "k", "pos": [4, 4]}], "crew": [{"id": "ac", "marks": [)";
  EXPECT_TRUE(problemsIn(planWith(shelters + R"({"at": 0, "shelter": "k"}, {"at": 0, "pos": [4, 4]}]}])")).empty());
  expectProblem(planWith(shelters + R"({"at": 0, "shelter": "k"}, {"at": 0, "pos": [4, 5]}]}])"),
                "time-order /crew/0/marks/1/at");
  expectProblem(planWith(shelters + R"({"at": 0, "shelter": "k", "pos": [4, 4]}]}])"), "choose-one /crew/0/marks/0");
  expectProblem(planWith(shelters + R"({"at": 0}]}])"), "choose-one /crew/0/marks/0");
}

TEST(PlanReader, WantsKeysOneAfterTheOther) {
  const auto iris = [](const std::string& keys) {
    return planWith(R"("beats": [{"id": "b", "time": 5}], "iris": {"keys": [)" + keys + "]}");
  };
  EXPECT_TRUE(
      problemsIn(iris(R"({"at": 0, "stop": 4}, {"at": "b", "over": 2, "stop": 8}, {"at": 7, "stop": 8})")).empty());
  EXPECT_TRUE(
      problemsIn(iris(R"({"at": 0, "stop": 4}, {"at": "b", "stop": 4}, {"at": 5, "over": 1, "stop": 8})")).empty());
  expectProblem(iris(R"({"at": 0, "stop": 4}, {"at": "b", "over": 2, "stop": 8}, {"at": 6.9, "stop": 8})"),
                "key-overlap /iris/keys/2/at");
  expectProblem(iris(R"({"at": 1, "stop": 4})"), "first-key /iris/keys/0/at");
  expectProblem(planWith(R"("focus": {"pulls": [{"at": 3, "over": 2, "distance": 1}, {"at": 4, "distance": 2}]})"),
                "key-overlap /focus/pulls/1/at");
  expectProblem(planWith(R"("props": [{"id": "p", "track": [{"at": 3, "pos": [0, 0]}, {"at": 2, "pos": [0, 0]}]}])"),
                "key-overlap /props/0/track/1/at");
}

std::string arc(const std::string& leg) {
  return cameraMarks(R"({"at": 0, "pos": [0, 0], "leg": {"shape": "arc", )" + leg + R"(}}, {"at": 5, "pos": [2, 0]})");
}

TEST(PlanReader, WantsArcsThatClose) {
  EXPECT_TRUE(problemsIn(arc(R"("centre": [1, 0], "sweep": 180)")).empty());
  EXPECT_TRUE(problemsIn(arc(R"("centre": [1, 0], "sweep": -180)")).empty());
  EXPECT_TRUE(problemsIn(arc(R"("centre": [1, 0], "sweep": 540.4)")).empty());
  EXPECT_TRUE(problemsIn(arc(R"("centre": [1.0024, 0], "sweep": 180)")).empty());
  EXPECT_EQ(problemsIn(arc(R"("centre": [1.0026, 0], "sweep": 180)")).size(), 1u);
  EXPECT_EQ(problemsIn(arc(R"("centre": [1, 0], "sweep": 179)")).size(), 1u);
  EXPECT_EQ(problemsIn(arc(R"("centre": [0, 0], "sweep": 180)")).size(), 1u);
  const auto read = readPlan(arc(R"("centre": [1, 0], "sweep": 90)"));
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems().front().where, "/camera/marks/0/leg/sweep");
}

TEST(PlanReader, KeepsFileReferencesBelowThePlan) {
  const auto underlay = [](const std::string& file) {
    return planWith(R"("set": {"underlay": {"file": ")" + file + "\"}}");
  };
  for (const char* good : {"hall.png", "a/b c/hall.png", "..hall.png", "a/...png"})
    EXPECT_TRUE(problemsIn(underlay(good)).empty()) << good;
  for (const char* bad : {"", "/etc/passwd", "../hall.png", "a/../../hall.png", "a/./b.png", "a//b.png", "C:/hall.png",
                          "a\\\\b.png", "file:hall.png", "hall.png/", "a\\u0000b", "..", "~/../x"})
    expectProblem(underlay(bad), "outside-folder /set/underlay/file");
  expectProblem(planWith(R"("fixtures": [{"id": "f", "pos": [0, 0], "output": {"ies": "../f.ies"}}])"),
                "outside-folder /fixtures/0/output/ies");
}

TEST(PlanReader, RefusesShapesItCannotHonour) {
  const auto piece = [](const std::string& rest) {
    return planWith(R"("set": {"pieces": [{"id": "p", )" + rest + "}]}");
  };
  expectProblem(piece(R"("disc": {"centre": [0, 0], "radius": 1}, "surface": "mirror")"),
                "mirror-disc /set/pieces/0/disc");
  expectProblem(piece(R"("name": "x")"), "choose-one /set/pieces/0");
  expectProblem(piece(R"("outline": [[0, 0], [1, 0]])"), "out-of-range /set/pieces/0/outline");
  expectProblem(piece(R"("points": [[0, 0]])"), "out-of-range /set/pieces/0/points");
  expectProblem(piece(R"("disc": {"centre": [0, 0], "radius": 0})"), "out-of-range /set/pieces/0/disc/radius");
  expectProblem(piece(R"("points": [[0, 0], [1, 0]], "bottom": 1, "top": 1)"), "out-of-range /set/pieces/0/top");
  expectProblem(planWith(R"("set": {"areas": [{"id": "a", "points": [[0, 0], [1, 0]]}]})"), "choose-one /set/areas/0");
}

TEST(PlanReader, HasOneDoorForNumbers) {
  const auto cell = [](const std::string& number) { return planWith(R"("sightRules": {"cell": )" + number + "}"); };
  for (const char* good : {"0.1", "1e-1", "10", "0.01", "1.0E0"}) EXPECT_TRUE(problemsIn(cell(good)).empty()) << good;
  for (const char* bad : {"0", "-0", "-1", "10.01", "1e300", "123456789012345678901234567890", "1e-999"})
    expectProblem(cell(bad), "out-of-range /sightRules/cell");
  for (const char* bad : {"\"0.1\"", "true", "[0.1]", "{}"}) expectProblem(cell(bad), "wrong-type /sightRules/cell");
}

TEST(PlanReader, NeverNarrowsWholeNumbers) {
  const auto turns = [](const std::string& number) {
    return planWith("", R"("marks": [], "aims": [{"at": 0, "on": {"bearing": 0}, "turns": )" + number + "}]");
  };
  EXPECT_EQ(planOf(turns("-1")).camera.aims[0].turns, -1);
  EXPECT_EQ(planOf(turns("2.0")).camera.aims[0].turns, 2);
  for (const char* bad : {"1.9", "3000000000", "4294967297", "-101"})
    expectProblem(turns(bad), "out-of-range /camera/aims/0/turns");
}

TEST(PlanReader, ChecksTheClockAsAWhole) {
  const auto clock = [](const std::string& keys) { return planWith("", R"("marks": [])", keys); };
  EXPECT_TRUE(problemsIn(clock(R"("rate": [60000, 1001], "dropFrame": true, "startTimecode": "01:00:00:00")")).empty());
  expectProblem(clock(R"("rate": [24000, 1001], "dropFrame": true)"), "drop-frame /clock/dropFrame");
  expectProblem(clock(R"("rate": [1, 2])"), "out-of-range /clock/rate");
  expectProblem(clock(R"("rate": [24, 0])"), "out-of-range /clock/rate/1");
  expectProblem(clock(R"("rate": [24])"), "wrong-type /clock/rate");
  expectProblem(clock(R"("startTimecode": "00:00:00:24")"), "bad-timecode /clock/startTimecode");
  expectProblem(clock(R"("timeOfDay": "24:00:00")"), "bad-time-of-day /clock/timeOfDay");
  expectProblem(clock(R"("length": 0)"), "out-of-range /clock/length");
  expectProblem(clock(R"("length": 86400.5)"), "out-of-range /clock/length");
}

TEST(PlanReader, WantsReadingsInTheOrderOfTheDay) {
  expectProblem(planWith(R"("set": {"areas": [{"id": "a", "disc": {"centre": [0, 0], "radius": 1},
                             "byClock": [["06:00", 4], ["05:59", 8]]}]})"),
                "time-order /set/areas/0/byClock/1/0");
}

TEST(PlanReader, WantsABeamInsideItsField) {
  expectProblem(
      planWith(R"("fixtures": [{"id": "f", "pos": [0, 0], "output": {"candela": 1, "beam": 40, "field": 40}}])"),
      "out-of-range /fixtures/0/output");
}

TEST(PlanReader, TakesTargetsOnlyWhereTheyMakeSense) {
  expectProblem(planWith("", R"("marks": [], "aims": [{"at": 0, "on": {"split": ["a", "b"]}}])"),
                "choose-one /camera/aims/0/on");
  expectProblem(planWith(R"("focus": {"keys": [{"at": 0, "on": {"travel": 0}}]})"), "choose-one /focus/keys/0/on");
  expectProblem(planWith(R"("focus": {"keys": [{"at": 0, "on": {"split": ["a"]}}]})"),
                "out-of-range /focus/keys/0/on/split");
  expectProblem(planWith(R"("zoom": {"keys": [{"at": 0, "size": "medium"}]})"), "missing-key /zoom/keys/0/of");
  expectProblem(planWith(R"("zoom": {"keys": [{"at": 0}]})"), "choose-one /zoom/keys/0");
}

TEST(PlanReader, NotesUnknownKeysWithTheNearestKnownOne) {
  const auto read = readPlan(planWith(R"("titel": "x", "zzz": 1)"));
  ASSERT_TRUE(read.ok());
  ASSERT_EQ(read->notes.size(), 2u);
  EXPECT_EQ(read->notes[0].where, "/titel");
  EXPECT_EQ(read->notes[0].remedy, "did you mean \"title\"?");
  EXPECT_EQ(read->notes[1].where, "/zzz");
}

TEST(PlanReader, TreatsKeysOfOtherKindsOfMarksAsUnknown) {
  const auto read = readPlan(planWith("", R"("marks": [{"at": 0, "pos": [0, 0], "facing": 3}])"));
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(codesAndPlaces(read->notes), std::vector<std::string>{"unknown-key /camera/marks/0/facing"});
}

TEST(PlanReader, LimitsThresholdsAndPoints) {
  std::string rules;
  for (std::size_t i = 0; i <= kMostThresholds; ++i)
    rules += (i ? ", \"r" : "\"r") + std::to_string(i) + R"(": {"share": 1})";
  expectProblem(planWith("\"thresholds\": {" + rules + "}"), "too-many /thresholds");
}

TEST(PlanReader, StaysQuickOnLongListsOfFaults) {
  std::string beats;
  for (int i = 0; i < 100000; ++i) beats += std::string(i ? "," : "") + R"({"id": "x", "time": 1, "time": 2, "a": 1})";
  const auto read = readPlan(planWith("\"beats\": [" + beats + "]"));
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems().size(), kMostProblems + 1);
}

}  // namespace
}  // namespace wend::file
