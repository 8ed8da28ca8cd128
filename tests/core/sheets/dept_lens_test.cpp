// Tables of the focus and light sheets that not every plan has: distances that are not one, colours, shutters, feet.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/text.h"
#include "core/sheets/dept_sheets.h"
#include "core/snags/distances_apart.h"
#include "tests/core/answers/small_plan.h"

namespace wend::sheets {
namespace {

using namespace answers;

/// The table of a plan's sheet whose heading begins so; without rows where there is none.
TextTable tableOf(const plan::Plan& plan, const std::string& whom, const std::string& heading) {
  const auto answers = answersOf(takeOf(plan));
  for (const auto& part : deptSheet(**answers, whom).parts)
    if (part.heading.rfind(heading, 0) == 0) return part.table;
  return TextTable({});
}

std::optional<double> figureOf(const TextTable& table, std::size_t row, const std::string& key) {
  const auto figures = table.figures();
  for (const auto& figure : figures.at(row))
    if (figure.key == key) return figure.value;
  ADD_FAILURE() << "no " << key;
  return std::nullopt;
}

/// NORA comes from 5 m to 1 m in front of a lens as high as her eyes that looks so many degrees past her.
plan::Plan comingNear(double offAxis) {
  plan::Plan plan = smallPlan();
  plan.camera.marks[0].height = 0.935 * 1.7;
  plan.camera.aims[0].on = plan::OnBearing{offAxis, 0};
  plan::Performer nora = plan.performers[0];
  nora.stature = 1.7;
  nora.marks = {markAt("n1", {0, 5}), markAt("n2", {0, 1}, 6)};
  nora.marks[0].until = plan::Moment{"", 2};
  plan.performers.replace(0, nora);
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.iris.keys.push_back({{}, 2.8, {}});
  return plan;
}

/// As she comes near an assistant pulls, who stands to the right of the camera, with a wall beside it or none.
plan::Plan pulledFromTheRight(bool wall) {
  plan::Plan plan = comingNear(0);
  plan::Crew ac = standing("ac", {3, 0});
  ac.role = "first assistant camera";
  ac.marks[0].until = plan::Moment{"", 10};
  plan.crew.add(ac);
  plan::Wall beside;
  beside.id = base::Id<plan::Wall>("w");
  beside.points = {{1.5, -2}, {1.5, 8}};
  if (wall) plan.set.walls.add(beside);
  return plan;
}

TEST(PullsWithoutSight, AreOnTheFocusSheetOfWhoStandsBehindAWall) {
  const TextTable table = tableOf(pulledFromTheRight(true), "focus", "Out of the puller's sight");
  ASSERT_FALSE(table.empty());
  EXPECT_EQ(table.cells()[1][1], "ac");
  EXPECT_EQ(table.cells()[1][3], "NORA");
  EXPECT_NEAR(*figureOf(table, 0, "blindSeconds"), *figureOf(table, 0, "overSeconds"), 1e-6);
  EXPECT_TRUE(tableOf(pulledFromTheRight(false), "focus", "Out of the puller's sight").empty());
}

TEST(DistancesOfTheFocusSheet, StandByEachPullAndMarkWhereTheyAreNotOne) {
  const TextTable table = tableOf(comingNear(17), "focus", "Distances that are not one");
  ASSERT_FALSE(table.empty());
  const auto cells = table.cells();
  bool mark = false;
  for (std::size_t row = 0; row + 1 < cells.size(); ++row) {
    const double flat = *figureOf(table, row, "flatMetres"), slant = *figureOf(table, row, "slantMetres");
    EXPECT_NEAR(flat, slant * std::cos(17 * std::numbers::pi / 180), 1e-6);
    EXPECT_GT(*figureOf(table, row, "apartOverNearerHalf"), 0.5);
    mark = mark ||
           (cells[row + 1][1] == "mark 2" && cells[row + 1][3] == "0.96 m flat" && cells[row + 1][4] == "1.00 m slant");
  }
  EXPECT_TRUE(mark) << table.text();
  EXPECT_TRUE(tableOf(comingNear(0), "focus", "Distances that are not one").empty()) << "on the axis they are one";
}

TEST(ColoursOfTheLightSheet, TellWhatTheClockDoesAlone) {
  plan::Plan plan = smallPlan();
  plan.clock.timeOfDay = 70000;
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan::Area street;
  street.id = base::Id<plan::Area>("street");
  street.name = "street";
  street.shape = plan::Disc{{0, 0}, 20};
  street.byClock = {{70000, 4, 5000}, {70010, 4, 10000}};
  plan.set.areas.add(street);
  const TextTable table = tableOf(plan, "light", "Colour of the light");
  ASSERT_EQ(table.cells().size(), 2u) << table.text();
  EXPECT_EQ(table.cells()[1][1], "by the clock");
  EXPECT_EQ(table.cells()[1][2], "street (5000 K) to street (10000 K)");
  EXPECT_NEAR(*figureOf(table, 0, "warmerMired"), -100, 0.5);
  street.byClock[1].kelvin = 5200;
  plan.set.areas.replace(0, street);
  EXPECT_TRUE(tableOf(plan, "light", "Colour of the light").empty()) << "8 mired nobody sees";
}

TEST(ColoursOfTheLightSheet, FollowASplitToo) {
  plan::Plan plan = smallPlan();
  plan::Performer tom = plan.performers[0];
  tom.id = base::Id<plan::Performer>("tom");
  tom.name = "TOM";
  tom.marks = {markAt("t1", {0.4, 3.2})};
  plan.performers.add(tom);
  plan.focus.keys.push_back({{}, plan::OnSplit{{"nora", "tom"}}, {}});
  plan::Area floor;
  floor.id = base::Id<plan::Area>("floor");
  floor.name = "floor";
  floor.shape = plan::Disc{{0, 0}, 20};
  floor.states.resize(2);
  for (auto& state : floor.states) state.readings.push_back({{0, 3}, 4, {}});
  floor.states[0].kelvin = 3200;
  floor.states[1].kelvin = 5600;
  floor.states[1].time.at = {"", 5};
  plan.set.areas.add(floor);
  const TextTable table = tableOf(plan, "light", "Colour of the light");
  ASSERT_EQ(table.cells().size(), 2u) << table.text();
  EXPECT_EQ(table.cells()[1][1], "NORA") << "one of the two, not both in turn";
  EXPECT_EQ(table.cells()[1][2], "floor (3200 K) to floor (5600 K)");
}

TEST(StartOfTheLightSheet, TellsTheColourThatTheClockGives) {
  plan::Plan plan = smallPlan();
  plan.clock.timeOfDay = 70000;
  plan::Area street;
  street.id = base::Id<plan::Area>("street");
  street.shape = plan::Disc{{0, 0}, 20};
  street.byClock = {{70000, 4, 5000}, {70010, 4, 10000}};
  plan.set.areas.add(street);
  const TextTable table = tableOf(plan, "light", "As the take starts");
  EXPECT_EQ(table.cells()[1][1], "by the clock, 5000 K");
  EXPECT_EQ(*figureOf(table, 0, "toKelvin"), 5000);
}

TEST(HoursOfTheLightSheet, HaveTheirFiguresAndSayWhatTheyKeep) {
  plan::Plan plan = smallPlan();
  plan.clock.timeOfDay = 64800;
  plan.clock.cycleMinutes = 6;
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan::Area street;
  street.id = base::Id<plan::Area>("street");
  street.shape = plan::Disc{{0, 0}, 20};
  // A stop in an hour: a third of one either way is twenty minutes.
  street.byClock = {{61200, 4, {}}, {64800, 4 / std::sqrt(2.0), {}}, {68400, 2, {}}};
  plan.set.areas.add(street);
  const TextTable table =
      tableOf(plan, "light", "Hours and mains; the hours keep every face in daylight within a third");
  ASSERT_FALSE(table.empty());
  EXPECT_NEAR(*figureOf(table, 0, "startFromClockSeconds"), 63600, 30);
  EXPECT_NEAR(*figureOf(table, 0, "startUntilClockSeconds"), 66000, 30);
  EXPECT_EQ(*figureOf(table, 0, "takes"), 7) << "one every six minutes in forty, the first at once";
}

TEST(ShuttersOfTheLightSheet, AreAllThatHoldWholePulses) {
  plan::Plan plan = smallPlan();
  plan.clock.mainsHz = 50;
  const auto rows = tableOf(plan, "light", "Hours and mains").cells();
  const auto row = std::find_if(rows.begin(), rows.end(), [](const auto& r) { return r[0] == "Steady shutters"; });
  ASSERT_NE(row, rows.end());
  // 24 frames a second under 50 Hz: 1/100 s is 86.4 degrees, and every multiple of it.
  EXPECT_EQ((*row)[1], "86.4\u00b0 (1/100 s), 172.8\u00b0 (1/50 s), 259.2\u00b0 (3/100 s), 345.6\u00b0 (1/25 s)");
  plan.clock.rateNumerator = 25;
  for (const auto& other : tableOf(plan, "light", "Hours and mains").cells())
    EXPECT_NE(other[0], "Steady shutters") << "in step, any shutter is steady";
}

TEST(TableAlongTheTake, ShowsLengthsInThePlansUnit) {
  plan::Plan plan = comingNear(0);
  const auto headerAndSet = [&](Columns wanted = Columns::few) {
    const auto take = takeOf(plan);
    const auto cells = instantsTable(*take, {sampleAt(*take, 0)}, wanted).cells();
    const auto at =
        std::find_if(cells[0].begin(), cells[0].end(), [](const auto& h) { return h.rfind("wanted", 0) == 0; });
    return std::pair(*at, cells[1][static_cast<std::size_t>(at - cells[0].begin())]);
  };
  EXPECT_EQ(headerAndSet(), (std::pair<std::string, std::string>("wanted m", "5.00")));
  plan.display = plan::LengthUnit::feet;
  EXPECT_EQ(headerAndSet(), (std::pair<std::string, std::string>("wanted", "16'-5\"")));
  EXPECT_EQ(headerAndSet(Columns::all), (std::pair<std::string, std::string>("wanted m", "5.00")))
      << "a spreadsheet computes with numbers";
}

}  // namespace
}  // namespace wend::sheets
