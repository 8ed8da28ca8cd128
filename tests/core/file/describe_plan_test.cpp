/// The keys of equipment, of what moves and of the place: what each takes, what it refuses and where it says so, and
/// that a default is left out when it is written.
#include <gtest/gtest.h>

#include "tests/core/file/plan_text.h"

namespace wend::file {
namespace {

/// A plan with somebody and something to refer to, and the keys under test.
std::string equipped(const std::string& keys, const std::string& camera = R"("marks": [])",
                     const std::string& clock = R"("length": 60)") {
  return planWith(R"("beats": [{"id": "b1", "time": 10}], "performers": [{"id": "ada"}],
                     "gear": [{"id": "cart", "pos": [1, 1]}])" +
                      (keys.empty() ? "" : ", " + keys),
                  camera, clock);
}

struct Wrong {
  std::string json;
  std::string codeAndPlace;
};

void expectEach(const std::vector<Wrong>& wrongs) {
  for (const Wrong& wrong : wrongs) expectProblem(wrong.json, wrong.codeAndPlace);
}

std::string piece(const std::string& moved) {
  return equipped(R"("set": {"pieces": [{"id": "van", "outline": [[0, 0], [4, 0], [4, 2]], "moved": )" + moved + "}]}");
}

TEST(Moved, IsRefusedWhereItCannotBeMeant) {
  expectEach({
      {piece(R"({})"), "wrong-type /set/pieces/0/moved"},
      {piece(R"([{"offset": [1, 1]}])"), "missing-key /set/pieces/0/moved/0/at"},
      {piece(R"([{"at": 3}])"), "first-key /set/pieces/0/moved/0/at"},
      {piece(R"([{"at": 0}, {"at": 5, "over": 3}, {"at": 7}])"), "key-overlap /set/pieces/0/moved/2/at"},
      {piece(R"([{"at": 0, "offset": 3}])"), "wrong-type /set/pieces/0/moved/0/offset"},
      {piece(R"([{"at": 0, "offset": [20000, 0]}])"), "out-of-range /set/pieces/0/moved/0/offset/0"},
      {piece(R"([{"at": 0, "turn": "90"}])"), "wrong-type /set/pieces/0/moved/0/turn"},
      {piece(R"([{"at": 0, "turn": 40000}])"), "out-of-range /set/pieces/0/moved/0/turn"},
      {piece(R"([{"at": "b9"}])"), "missing-reference /set/pieces/0/moved/0/at"},
      {piece(R"([{"at": 0, "name": 3}])"), "wrong-type /set/pieces/0/moved/0/name"},
  });
}

TEST(Cables, AreRefusedWhereTheyCannotBeMeant) {
  const auto cable = [](const std::string& keys) {
    return equipped(R"("cables": [{"id": "k", "points": [[0, 0], [1, 0]], )" + keys + "}]");
  };
  expectEach({
      {equipped(R"("cables": [{"id": "k"}])"), "missing-key /cables/0/points"},
      {equipped(R"("cables": [{"id": "k", "points": [[0, 0]]}])"), "out-of-range /cables/0/points"},
      {equipped(R"("cables": [{"id": "ada", "points": [[0, 0], [1, 0]]}])"), "duplicate-id /cables/0/id"},
      {cable(R"("height": -0.1)"), "out-of-range /cables/0/height"},
      {cable(R"("height": "thin")"), "wrong-type /cables/0/height"},
      {cable(R"("from": "b9")"), "missing-reference /cables/0/from"},
      {cable(R"("until": true)"), "wrong-type /cables/0/until"},
  });
  const auto trailing = [](const std::string& value) { return equipped("", R"("marks": [], "cable": )" + value); };
  expectEach({
      {trailing("[]"), "wrong-type /camera/cable"},
      {trailing(R"({"length": 20})"), "missing-key /camera/cable/anchor"},
      {trailing(R"({"anchor": [0, 0]})"), "missing-key /camera/cable/length"},
      {trailing(R"({"anchor": [0, 0], "length": 0})"), "out-of-range /camera/cable/length"},
  });
}

TEST(Poles, AreRefusedWhereTheyCannotBeMeant) {
  const auto pole = [](const std::string& keys) {
    return equipped(R"("crew": [{"id": "bo"}], "poles": [{"id": "p", )" + keys + "}]");
  };
  expectEach({
      {pole(R"("reach": 2)"), "missing-key /poles/0/crew"},
      {pole(R"("crew": "ada")"), "missing-reference /poles/0/crew"},
      {pole(R"("crew": "bo", "reach": 0)"), "out-of-range /poles/0/reach"},
      {pole(R"("crew": "bo", "shoulder": -1)"), "out-of-range /poles/0/shoulder"},
      {pole(R"("crew": "bo", "above": "a bit")"), "wrong-type /poles/0/above"},
      {pole(R"("crew": "bo", "gap": 0.5)"), "wrong-type /poles/0/gap"},
      {pole(R"("crew": "bo", "gap": [0.9, 0.4])"), "out-of-range /poles/0/gap/1"},
      {equipped(R"("speech": [{"who": "ada", "from": 1, "until": 2, "pole": "p"}])"),
       "missing-reference /speech/0/pole"},
  });
}

TEST(Links, EndAtSomebodySomethingOrTheCamera) {
  const auto link = [](const std::string& keys) {
    return equipped(R"("links": [{"id": "l", "from": "camera", )" + keys + "}]");
  };
  EXPECT_TRUE(problemsIn(link(R"("to": "cart")")).empty());
  EXPECT_TRUE(problemsIn(link(R"("to": "ada")")).empty());
  expectEach({
      {link(R"("kind": "sound")"), "missing-key /links/0/to"},
      {link(R"("to": "cam")"), "missing-reference /links/0/to"},
      {link(R"("to": "b1")"), "missing-reference /links/0/to"},
      {link(R"("to": "camera")"), "link-one-end /links/0/to"},
      {link(R"("to": 3)"), "wrong-type /links/0/to"},
      {link(R"("to": "ada", "kind": "radio")"), "unknown-word /links/0/kind"},
      {link(R"("to": "ada", "mhz": 0.5)"), "out-of-range /links/0/mhz"},
      {link(R"("to": "ada", "budget": -1)"), "out-of-range /links/0/budget"},
      {link(R"("to": "ada", "delay": "1 frame")"), "wrong-type /links/0/delay"},
  });
}

TEST(Links, SayThatTheCameraIsAnEndToo) {
  const auto read = readPlan(equipped(R"("links": [{"id": "l", "from": "ada", "to": "cam"}])"));
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems()[0].expected, "the id of a crew member, piece of gear or performer, or \"camera\"");
}

TEST(RadioLoss, IsDecibels) {
  const auto wall = [](const std::string& loss) {
    return equipped(R"("set": {"walls": [{"id": "w", "points": [[0, 0], [9, 0]], "radioLoss": )" + loss + "}]}");
  };
  EXPECT_EQ(planOf(wall("0")).set.walls[0].radioLoss, 0);
  expectEach(
      {{wall("-1"), "out-of-range /set/walls/0/radioLoss"}, {wall("\"12\""), "wrong-type /set/walls/0/radioLoss"}});
  expectProblem(equipped(R"("set": {"walls": [{"id": "w", "points": [[0, 0], [9, 0]]}],
                                    "openings": [{"id": "o", "wall": "w", "along": [1, 2], "radioLoss": 301}]})"),
                "out-of-range /set/openings/0/radioLoss");
}

TEST(Needs, NameLinksPolesAndTheSubject) {
  const auto need = [](const std::string& keys) {
    return equipped(R"("crew": [{"id": "bo", "needs": [{)" + keys + "}]}]");
  };
  EXPECT_TRUE(problemsIn(need(R"("sees": "subject")")).empty());
  expectEach({
      {need(R"("sees": "subjects")"), "missing-reference /crew/0/needs/0/sees"},
      {need(R"("holds": "ada")"), "missing-reference /crew/0/needs/0/holds"},
      {need(R"("holds": 1)"), "wrong-type /crew/0/needs/0/holds"},
      {need(R"("reaches": "ada")"), "missing-reference /crew/0/needs/0/reaches"},
      {need(R"("sees": "ada", "reaches": "p")"), "choose-one /crew/0/needs/0"},
  });
}

TEST(CrewMarks, HaveIdsOfTheirOwn) {
  const auto mark = [](const std::string& id) {
    return equipped(R"("crew": [{"id": "bo", "marks": [{"id": ")" + id + R"(", "at": 0, "pos": [0, 0]}]}])");
  };
  EXPECT_EQ(planOf(mark("k1")).crew[0].marks[0].id, "k1");
  expectEach({{mark("bo"), "duplicate-id /crew/0/marks/0/id"}, {mark("k 1"), "bad-id /crew/0/marks/0/id"}});
}

TEST(Glows, IsAFlag) {
  expectEach({{equipped(R"("crew": [{"id": "bo", "glows": 1}])"), "wrong-type /crew/0/glows"},
              {planWith(R"("gear": [{"id": "g", "pos": [0, 0], "glows": "yes"}])"), "wrong-type /gear/0/glows"}});
}

TEST(Rooms, AreShutAboveUnlessTheySayOtherwise) {
  const auto room = [](const std::string& keys) {
    return planWith(R"("set": {"rooms": [{"id": "yard", "outline": [[0, 0], [4, 0], [4, 4]])" + keys + "}]}");
  };
  EXPECT_FALSE(planOf(room("")).set.rooms[0].openAbove);
  EXPECT_TRUE(planOf(room(R"(, "openAbove": true)")).set.rooms[0].openAbove);
  expectEach({{room(R"(, "openAbove": "sky")"), "wrong-type /set/rooms/0/openAbove"}});
}

TEST(SiteOfAPlan, IsAPlaceAndADay) {
  const auto site = [](const std::string& keys) { return equipped(R"("site": {)" + keys + "}"); };
  const std::string place = R"("latitude": -90, "longitude": 180)";
  EXPECT_EQ(planOf(site(place + R"(, "date": "2032-02-29")")).site->date, (plan::Date{2032, 2, 29}));
  EXPECT_EQ(planOf(site(place + R"(, "date": "2032-02-29", "north": -30.5)")).site->north, -30.5);
  expectEach({
      {site(place + R"(, "date": "2031-06-21", "north": "up")"), "wrong-type /site/north"},
      {site(R"("longitude": 3, "date": "2031-06-21")"), "missing-key /site/latitude"},
      {site(R"("latitude": 91, "longitude": 3, "date": "2031-06-21")"), "out-of-range /site/latitude"},
      {site(R"("latitude": 9, "longitude": "E3", "date": "2031-06-21")"), "wrong-type /site/longitude"},
      {site(place), "missing-key /site/date"},
      {site(place + R"(, "date": "2031-02-29")"), "bad-date /site/date"},
      {site(place + R"(, "date": "21.06.2031")"), "bad-date /site/date"},
      {site(place + R"(, "date": 20310621)"), "wrong-type /site/date"},
      {site(place + R"(, "date": "2031-06-21", "utcOffset": 15)"), "out-of-range /site/utcOffset"},
      {equipped(R"("site": [])"), "wrong-type /site"},
  });
}

TEST(AlongTheZoom, IsANumberOrRowsThatRise) {
  const auto lens = [](const std::string& keys) { return equipped(R"("lens": {)" + keys + "}"); };
  EXPECT_EQ(planOf(lens(R"("transmission": 0.8)")).lens->transmission, plan::OverFocal(0.8));
  EXPECT_EQ(planOf(lens(R"("breathing": [[35, -0.02]])")).lens->breathing.rows.size(), 1u);
  expectEach({
      {lens(R"("transmission": "0.8")"), "wrong-type /lens/transmission"},
      {lens(R"("transmission": 1.2)"), "out-of-range /lens/transmission"},
      {lens(R"("transmission": [])"), "wrong-type /lens/transmission"},
      {lens(R"("transmission": [[24]])"), "wrong-type /lens/transmission/0"},
      {lens(R"("transmission": [[24, 0.9], [70, 2]])"), "out-of-range /lens/transmission/1/1"},
      {lens(R"("transmission": [[24, 0.9], [24, 0.8]])"), "not-rising /lens/transmission/1"},
      {lens(R"("breathing": [[0, 0.1]])"), "out-of-range /lens/breathing/0/0"},
      {lens(R"("breathing": {})"), "wrong-type /lens/breathing"},
      {lens(R"("balance": [[24, 0], [70, 6]])"), "out-of-range /lens/balance/1/1"},
  });
}

TEST(LensMarks, NameTheRowThatTurnsBack) {
  const auto lens = [](const std::string& keys) { return equipped(R"("lens": {)" + keys + "}"); };
  const std::string infinity = R"("focusMarks": [{"distance": null, "deg": 0}, )";
  EXPECT_TRUE(
      problemsIn(
          lens(
              R"("focusMarks": [{"distance": 1, "deg": 0}, {"distance": 4, "deg": -9}, {"distance": null, "deg": -20}])"))
          .empty());
  expectEach({
      {lens(infinity + R"({"distance": 10, "deg": 20}, {"distance": 12, "deg": 30}])"),
       "marks-turn-back /lens/focusMarks/2"},
      {lens(infinity + R"({"distance": 10, "deg": 20}, {"distance": 8, "deg": 15}, {"distance": 1, "deg": 90}])"),
       "marks-turn-back /lens/focusMarks/2"},
      {lens(infinity + R"({"distance": null, "deg": 20}])"), "marks-turn-back /lens/focusMarks/1"},
      {lens(infinity + R"({"distance": 1, "deg": 20, "witness": 3}])"), "wrong-type /lens/focusMarks/1/witness"},
      {lens(R"("irisMarks": [{"stop": 4, "deg": 0}, {"stop": 2.8, "deg": 0}])"), "marks-turn-back /lens/irisMarks/1"},
      {lens(R"("zoomMarks": [{"focal": 24, "deg": 0}, {"focal": 70, "deg": 9}, {"focal": 50, "deg": 12}])"),
       "marks-turn-back /lens/zoomMarks/2"},
      {lens(R"("limits": {"irisStopsPerSecond": 0})"), "out-of-range /lens/limits/irisStopsPerSecond"},
      {lens(R"("limits": {"zoomPercentPerSecond": "slow"})"), "wrong-type /lens/limits/zoomPercentPerSecond"},
  });
}

TEST(VariableDensity, IsKeysOfStops) {
  const auto nd = [](const std::string& keys) { return equipped("", R"("marks": [], "nd": [)" + keys + "]"); };
  expectEach({
      {nd(R"({"at": 0})"), "missing-key /camera/nd/0/stops"},
      {nd(R"({"at": 0, "stops": "2"})"), "wrong-type /camera/nd/0/stops"},
      {nd(R"({"at": 0, "stops": 51})"), "out-of-range /camera/nd/0/stops"},
      {nd(R"({"at": 1, "stops": 2})"), "first-key /camera/nd/0/at"},
      {nd(R"({"at": "b2", "stops": 2})"), "missing-reference /camera/nd/0/at"},
  });
}

// What another unit makes of a number: micrometres, inches, stops of light instead of density.
TEST(SlippedUnits, AreRefused) {
  const auto camera = [](const std::string& keys) { return equipped("", R"("marks": [], )" + keys); };
  expectEach({
      {camera(R"("blurCircle": 25)"), "out-of-range /camera/blurCircle"},
      {camera(R"("gate": [0.98, 18.7])"), "out-of-range /camera/gate/0"},
      {camera(R"("gate": [24.9, 0.735])"), "out-of-range /camera/gate/1"},
      {camera(R"("ndStops": -3)"), "out-of-range /camera/ndStops"},
      {camera(R"("nd": [{"at": 0, "stops": -3}])"), "out-of-range /camera/nd/0/stops"},
  });
}

TEST(FrameRate, IsOfferedAsTheFractionItIs) {
  const auto remedyFor = [](const std::string& rate) {
    const auto read = readPlan(equipped("", R"("marks": [])", R"("length": 60, "rate": )" + rate));
    return read.ok() ? std::string() : read.problems().front().remedy;
  };
  EXPECT_EQ(remedyFor("23.976"), "write [24000, 1001]");
  EXPECT_EQ(remedyFor("23.98"), "write [24000, 1001]");
  EXPECT_EQ(remedyFor("29.97"), "write [30000, 1001]");
  EXPECT_EQ(remedyFor("[23.976, 1]"), "write [24000, 1001]");
  EXPECT_EQ(remedyFor("25"), "write [25, 1]");
  EXPECT_EQ(remedyFor("12.5"), "write it as a fraction of two whole numbers");
  EXPECT_EQ(remedyFor("[24, 1]"), "");
}

TEST(Split, NamesNobodyTwice) {
  expectEach({{equipped(R"("focus": {"keys": [{"at": 0, "on": {"split": ["ada", "ada"]}}]})"),
               "out-of-range /focus/keys/0/on/split/1"}});
}

TEST(SmallerKeys, AreRefusedWhereTheyCannotBeMeant) {
  const auto clock = [](const std::string& keys) { return equipped("", R"("marks": [])", keys); };
  const auto area = [](const std::string& kelvin) {
    return equipped(R"("set": {"areas": [{"id": "a", "disc": {"centre": [0, 0], "radius": 1},
                                          "states": [{"at": 0, "kelvin": )" +
                    kelvin + "}]}]}");
  };
  const auto byClock = [](const std::string& rest) {
    return equipped(R"("set": {"areas": [{"id": "a", "disc": {"centre": [0, 0], "radius": 1},
                                          "byClock": [["06:00", 4)" +
                    rest + "]]}]}");
  };
  expectEach({
      {byClock(R"(, {"kelvin": 20001})"), "out-of-range /set/areas/0/byClock/0/2/kelvin"},
      {byClock(R"(, {"kelvin": "warm"})"), "wrong-type /set/areas/0/byClock/0/2/kelvin"},
      {byClock(R"(, {"colour": 5600})"), "missing-key /set/areas/0/byClock/0/2/kelvin"},
      {byClock(R"(, {"kelvin": 5600, "tint": 3})"), "wrong-type /set/areas/0/byClock/0/2"},
      {byClock(", 5600"), "wrong-type /set/areas/0/byClock/0/2"},
      {byClock(R"(, {"kelvin": 5600}, 1)"), "wrong-type /set/areas/0/byClock/0"},
      {equipped(R"("sightRules": {"bodiesHide": "actors"})"), "unknown-word /sightRules/bodiesHide"},
      {equipped(R"("sizes": [])"), "wrong-type /sizes"},
      {equipped(R"("sizes": {"knees": 0})"), "out-of-range /sizes/knees"},
      {equipped(R"("sizes": {"knees": "0.7"})"), "wrong-type /sizes/knees"},
      {clock(R"("mainsHz": 55)"), "out-of-range /clock/mainsHz"},
      {clock(R"("mainsHz": "50")"), "wrong-type /clock/mainsHz"},
      {clock(R"("cycleMinutes": 0)"), "out-of-range /clock/cycleMinutes"},
      {area("900"), "out-of-range /set/areas/0/states/0/kelvin"},
      {area("\"warm\""), "wrong-type /set/areas/0/states/0/kelvin"},
  });
}

/// Each key at its default, in a plan of its own: read, and not written.
TEST(Defaults, AreLeftOutOfWhatIsWritten) {
  const auto pole = [](const std::string& keys) {
    return equipped(R"("crew": [{"id": "bo"}], "poles": [{"id": "p", "crew": "bo", )" + keys + "}]");
  };
  const auto link = [](const std::string& keys) {
    return equipped(R"("links": [{"id": "l", "from": "camera", "to": "ada", )" + keys + "}]");
  };
  const auto lens = [](const std::string& keys) { return equipped(R"("lens": {)" + keys + "}"); };
  const std::vector<std::pair<std::string, std::string>> defaults{
      {"moved", piece("[]")},
      {"offset", piece(R"([{"at": 0, "offset": [0, 0]}])")},
      {"turn", piece(R"([{"at": 0, "turn": 0}])")},
      {"bodiesHide", equipped(R"("sightRules": {"bodiesHide": "nobody"})")},
      {"cables", equipped(R"("cables": [])")},
      {"height", equipped(R"("cables": [{"id": "k", "points": [[0, 0], [1, 0]], "height": 0.02}])")},
      {"reach", pole(R"("reach": 3)")},
      {"shoulder", pole(R"("shoulder": 1.45)")},
      {"above", pole(R"("above": 0.15)")},
      {"gap", pole(R"("gap": [0.4, 0.9])")},
      {"kind", link(R"("kind": "control")")},
      {"mhz", link(R"("mhz": 2400)")},
      {"budget", link(R"("budget": 95)")},
      {"delay", link(R"("delay": 0)")},
      {"glows", equipped(R"("crew": [{"id": "bo", "glows": false}])")},
      {"utcOffset", equipped(R"("site": {"latitude": 1, "longitude": 2, "date": "2031-06-21", "utcOffset": 0})")},
      {"transmission", lens(R"("transmission": 1)")},
      {"breathing", lens(R"("breathing": 0)")},
      {"balance", lens(R"("balance": 0)")},
      {"witness", lens(R"("focusMarks": [{"distance": 1, "deg": 0, "witness": ""}])")},
      {"limits", lens(R"("limits": {"irisStopsPerSecond": 1, "zoomPercentPerSecond": 100})")},
      {"nd", equipped("", R"("marks": [], "nd": [])")},
      {"sizes", equipped(R"("sizes": {})")},
  };
  for (const auto& [key, json] : defaults) {
    const std::string text = writePlan(planOf(json));
    EXPECT_EQ(text.find("\"" + key + "\""), std::string::npos) << key << "\n" << text;
  }
}

TEST(Defaults, ThatAreNoValueComeBackAsNone) {
  const plan::Plan plan = planOf(equipped(""));
  EXPECT_FALSE(plan.site || plan.camera.cable || plan.clock.mainsHz || plan.clock.cycleMinutes);
  EXPECT_TRUE(plan.cables.empty() && plan.poles.empty() && plan.links.empty() && plan.sizes.empty());
}

}  // namespace
}  // namespace wend::file
