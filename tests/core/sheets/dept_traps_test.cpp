// Tables of booms, links and ground to lock up.
#include "core/answers/traps.h"
#include "core/answers/whole_take.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_tables.h"
#include "tests/core/answers/small_plan.h"

namespace wend::sheets {
namespace {

using namespace answers;

/// NORA speaks under a pole, and a radio goes from the camera to whoever holds it.
plan::Plan soundPlan() {
  plan::Plan plan = smallPlan();
  plan.crew.add(standing("boom", {2, 3}));
  plan::Pole pole;
  pole.id = base::Id<plan::Pole>("p1");
  pole.name = "BOOM";
  pole.crew = "boom";
  plan.poles.add(pole);
  plan.speech.push_back({"nora", {"", 2}, {"", 4}, "Snow.", "", {}});
  plan::Link link;
  link.id = base::Id<plan::Link>("l1");
  link.from = plan::kCameraEnd;
  link.to = "boom";
  plan.links.add(link);
  return plan;
}

DeptSheet sheetOf(const plan::Plan& plan, const std::string& whom) {
  const auto answers = answersOf(takeOf(plan));
  EXPECT_TRUE(answers.ok());
  return deptSheet(**answers, whom);
}

std::vector<std::string> lastRow(const SheetPart& part) {
  return part.table.cells().back();
}

TEST(SoundSheet, TellsTheMostALineAsksOfItsPole) {
  const DeptSheet sheet = sheetOf(soundPlan(), "sound");
  ASSERT_EQ(sheet.parts.size(), 3u);
  const auto row = lastRow(sheet.parts[1]);
  EXPECT_EQ(row[0], "2.0\u20134.0");
  EXPECT_EQ(row[1], "NORA");
  EXPECT_EQ(row[2], "BOOM");
  EXPECT_EQ(row[4], "2.00 m");
  EXPECT_EQ(row[5], "\u2013");
  EXPECT_EQ(row[6], "holds");
}

TEST(SoundSheet, SaysWhatDoesNotHoldAndWhatIsUnknown) {
  plan::Plan far = soundPlan();
  far.crew.replace(0, standing("boom", {4, 3}));
  EXPECT_EQ(lastRow(sheetOf(far, "sound").parts[1])[6], "out of reach");
  plan::Plan blind = soundPlan();
  blind.lens.reset();
  const auto row = lastRow(sheetOf(blind, "sound").parts[1]);
  EXPECT_EQ(row[3], "unknown");
  EXPECT_EQ(row[6], "unknown");
}

TEST(SoundSheet, TellsWhereALinkIsWeakest) {
  const auto row = lastRow(sheetOf(soundPlan(), "sound").parts[2]);
  EXPECT_EQ(row[0], "l1");
  EXPECT_EQ(row[2], "boom");
  EXPECT_EQ(row[3], "44") << "95 dB of budget less 51 over 3.62 m at 2400 MHz";
  EXPECT_EQ(row[5], "3.62 m");
}

TEST(SoundSheet, HasNoTablesOfWhatThePlanHasNoneOf) {
  EXPECT_EQ(sheetOf(smallPlan(), "sound").parts.size(), 1u);
}

TEST(LockUp, IsOnTheSheetsOfCrewAndDirectorWhereTheLensSeesTheGround) {
  plan::Plan plan = smallPlan();
  plan::Area street;
  street.id = base::Id<plan::Area>("a1");
  street.name = "street";
  street.shape = plan::Outline{{{-5, 4}, {5, 4}, {5, 9}, {-5, 9}}};
  street.use = {plan::AreaUse::outside};
  for (const char* whom : {"crew", "director"}) {
    const std::size_t before = sheetOf(plan, whom).parts.size();
    plan::Plan seen = plan;
    seen.set.areas.add(street);
    const DeptSheet sheet = sheetOf(seen, whom);
    ASSERT_EQ(sheet.parts.size(), before + 1) << whom;
    EXPECT_EQ(lastRow(sheet.parts.back()), (std::vector<std::string>{"0.0\u201310.0", "street"})) << whom;
  }
}

TEST(TrapsText, TellsLinksLinesAndCablesOfTheInstant) {
  plan::Plan plan = soundPlan();
  plan.camera.cable = plan::TrailingCable{{3, 0}, 20, {}};
  const auto answers = *answers::answersOf(takeOf(plan));
  const auto textAt = [&](double t) {
    const auto instant = answers::instantAt(*answers->take, t);
    return trapsText(plan, answers::Traps(*answers->take, answers->evidence.get()).at(instant));
  };
  const std::string speaks = textAt(3), quiet = textAt(7);
  EXPECT_NE(speaks.find("link     l1: 44 dB to spare over 3.62 m; walls 0, doors 0, bodies 0\n"), std::string::npos)
      << speaks;
  EXPECT_NE(speaks.find("BOOM over NORA: to mouth"), std::string::npos) << speaks;
  EXPECT_NE(speaks.find("reach 2.00 m"), std::string::npos) << speaks;
  EXPECT_NE(speaks.find("the camera's, 3.00 m out of 20.00 m"), std::string::npos) << speaks;
  EXPECT_EQ(quiet.find("boom"), std::string::npos) << quiet;
}

}  // namespace
}  // namespace wend::sheets
