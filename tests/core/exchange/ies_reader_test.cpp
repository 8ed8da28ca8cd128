#include "core/exchange/ies_reader.h"

#include <gtest/gtest.h>

#include <numbers>

#include "core/base/text.h"
#include "tests/core/exchange/ies_text.h"

namespace wend::exchange {
namespace {

light::Photometry tableOf(const std::string& text) {
  const auto file = readIes(text);
  EXPECT_TRUE(file.ok()) << base::toText(file.problems().front());
  return file->luminaire.photometry;
}

base::Problem problemOf(const std::string& text) {
  const auto file = readIes(text);
  return file.ok() ? base::Problem{} : file.problems().front();
}

/// All round alike: `lamp` are the ten numbers, `more` the three.
std::string plain(const std::string& head, const std::string& lamp, const std::string& more, const std::string& table) {
  return head + "TILT=NONE\n" + lamp + "\n" + more + "\n" + table + "\n";
}

TEST(IesReader, ReadsAFileThatKeepsToTheStandard) {
  const auto file = readIes(kQuarters);
  ASSERT_TRUE(file.ok());
  EXPECT_TRUE(file->notes.empty());
  EXPECT_EQ(file->edition, IesEdition::of2002);
  EXPECT_EQ(file->lamps, 1);
  EXPECT_EQ(file->lumensPerLamp, -1);
  EXPECT_EQ(file->watts, 100);
  EXPECT_EQ(file->luminaire.largestSide, 0.4);
  EXPECT_TRUE(file->luminaire.tilt.empty());
  ASSERT_EQ(file->labels.size(), 5u);
  EXPECT_EQ(file->labels[0].keyword, "TEST");
  EXPECT_EQ(file->labels[0].text, "REF-0001");
  EXPECT_EQ(file->labels[4].text, "Numbers chosen for\nchecking by hand");
}

// Worked out by hand from the table: 1.8 times the entries, linear in both angles, the quarter mirrored.
TEST(IesReader, GivesTheCandelaOfTheTableTimesItsFactors) {
  const light::Photometry lamp = tableOf(kQuarters);
  struct Row {
    double vertical, horizontal, candela;
  };
  for (const Row& row : {Row{0, 77, 1800}, Row{45, 0, 1080}, Row{45, 45, 900}, Row{45, 90, 720}, Row{33.75, 0, 1350},
                         Row{45, 22.5, 990}, Row{33.75, 22.5, 1282.5}, Row{45, 200, 1000}, Row{45, 300, 840},
                         Row{45, 330, 960}, Row{90, 12, 0}, Row{100, 12, 0}})
    EXPECT_NEAR(lamp.candelaAt(row.vertical, row.horizontal), row.candela, 1e-9) << row.vertical;
  EXPECT_NEAR(lamp.totalFlux(), 3872.444, 0.001);
}

TEST(IesReader, DoesNotMindHowTheNumbersAreBroken) {
  const light::Photometry whole = tableOf(kQuarters);
  const std::size_t numbers = kQuarters.find("TILT=NONE\r\n") + 11;
  const std::string head = kQuarters.substr(0, numbers), tail = kQuarters.substr(numbers);
  const std::string lf = withAll(kQuarters, "\r\n", "\n"), cr = withAll(kQuarters, "\r\n", "\r");
  const std::string oneEach = head + withAll(tail, " ", "\r\n"), oneLine = head + withAll(tail, "\r\n", "  ");
  const std::string commas = head + withAll(tail, " ", ","), blank = head + withAll(tail, "\r\n", "\r\n \t\r\n");
  for (const std::string& text : {lf, cr, oneEach, oneLine, commas, blank, kQuarters + "\x1a", "\xEF\xBB\xBF" + lf}) {
    const light::Photometry same = tableOf(text);
    EXPECT_EQ(same.candelaAt(33.75, 22.5), whole.candelaAt(33.75, 22.5)) << text.substr(0, 400);
    EXPECT_EQ(same.totalFlux(), whole.totalFlux());
  }
}

TEST(IesReader, TakesCountsWrittenWithAPointAndNumbersWithASign) {
  const std::string text = with(with(kQuarters, "5 3 1 2", "5.0 3.000 1.0 2."), "1000 900", "+1.0e3 9E+2");
  EXPECT_EQ(tableOf(text).totalFlux(), tableOf(kQuarters).totalFlux());
}

TEST(IesReader, TellsTheEditionByTheFirstLine) {
  const std::vector<std::pair<std::string, IesEdition>> lines{{"IESNA91", IesEdition::of1991},
                                                              {"IESNA:LM-63-1995", IesEdition::of1995},
                                                              {"IESNA:LM-63-2002 ", IesEdition::of2002},
                                                              {"IES:LM-63-2019", IesEdition::of2019},
                                                              {"Made by hand", IesEdition::of1986}};
  for (const auto& [line, edition] : lines) {
    const auto file = readIes(with(kQuarters, "IESNA:LM-63-2002", line));
    ASSERT_TRUE(file.ok()) << line;
    EXPECT_EQ(file->edition, edition) << line;
    EXPECT_EQ(file->labels.size(), edition == IesEdition::of1986 ? 6u : 5u);
  }
  const auto unknown = readIes(with(kQuarters, "IESNA:LM-63-2002", "IES:LM-63-2047"));
  ASSERT_TRUE(unknown.ok());
  EXPECT_EQ(unknown->edition, IesEdition::of2002);
  ASSERT_EQ(unknown->notes.size(), 1u);
  EXPECT_EQ(unknown->notes[0].code, "ies-edition");
}

TEST(IesReader, CountsTheBallastLampFactorOnlyWhereItIsOne) {
  const auto candela = [](const std::string& first, const std::string& second) {
    return tableOf(plain(first + "\n", "1 1000 2 2 1 1 2 0 0 0", "0.5 " + second + " 60", "0 90 0 100 100"))
        .candelaAt(10, 0);
  };
  EXPECT_NEAR(candela("Made by hand", "0.8"), 80, 1e-12);
  EXPECT_NEAR(candela("IESNA91", "0.8"), 80, 1e-12);
  EXPECT_NEAR(candela("IESNA:LM-63-1995", "0.8"), 100, 1e-12);
  EXPECT_NEAR(candela("IESNA:LM-63-2002", "0"), 100, 1e-12);
  EXPECT_NEAR(candela("IES:LM-63-2019", "1.1"), 100, 1e-12) << "there it says how the file was made";
}

TEST(IesReader, DoesNotMultiplyByTheLampsLumens) {
  EXPECT_EQ(tableOf(with(kQuarters, "1 -1 2.0", "2 3000 2.0")).totalFlux(), tableOf(kQuarters).totalFlux());
}

TEST(IesReader, TurnsFeetIntoMetres) {
  const auto file = readIes(with(kQuarters, "1 2 0.2 0.4 0", "1 1 0.2 -2 0"));
  ASSERT_TRUE(file.ok());
  EXPECT_DOUBLE_EQ(file->luminaire.largestSide, 0.6096) << "and a round opening's sign is no length";
}

TEST(IesReader, ReadsEverySymmetryOfTypeC) {
  const auto flux = [](const std::string& angles, int count) {
    std::string rows;
    for (int i = 0; i < count; ++i) rows += " 100 100";
    return tableOf(plain("", "1 1 1 2 " + std::to_string(count) + " 1 2 0 0 0", "1 1 1", "0 180 " + angles + rows))
        .totalFlux();
  };
  const double allRound = 400 * std::numbers::pi;
  EXPECT_NEAR(flux("0", 1), allRound, 1e-9);
  EXPECT_NEAR(flux("0 45 90", 3), allRound, 1e-9);
  EXPECT_NEAR(flux("0 90 180", 3), allRound, 1e-9);
  EXPECT_NEAR(flux("90 180 270", 3), allRound, 1e-9);
  EXPECT_NEAR(flux("0 90 180 270 360", 5), allRound, 1e-9);
}

TEST(IesReader, ClosesACircleThatStopsOneStepShort) {
  const auto file = readIes(plain("", "1 1 1 2 4 1 2 0 0 0", "1 1 1", "0 90  0 90 180 270  8 8 20 20 30 30 40 40"));
  ASSERT_TRUE(file.ok());
  EXPECT_NEAR(file->luminaire.photometry.candelaAt(45, 315), 24, 1e-12);
  ASSERT_EQ(file->notes.size(), 1u);
  EXPECT_EQ(file->notes[0].code, "ies-open-circle");
  EXPECT_EQ(problemOf(plain("", "1 1 1 2 3 1 2 0 0 0", "1 1 1", "0 90  0 95 190  8 8 20 20 30 30")).code,
            "photometry-angles");
}

TEST(IesReader, ReadsTheTiltFactorsThatStandInTheFile) {
  const std::string tilt = "TILT = include\r\n1\r\n3\r\n0 90 180\r\n1.0 0.8 1.0";
  const auto file = readIes(with(kQuarters, "TILT=NONE", tilt));
  ASSERT_TRUE(file.ok());
  ASSERT_EQ(file->luminaire.tilt.size(), 3u);
  EXPECT_NEAR(light::tiltFactor(file->luminaire.tilt, 45), 0.9, 1e-12);
  EXPECT_EQ(file->luminaire.photometry.totalFlux(), tableOf(kQuarters).totalFlux());
}

TEST(IesReader, TakesLabelsInLatin1) {
  const auto file = readIes(with(kQuarters, "[MANUFAC] None", "[MANUFAC] Gr\xFCn"));
  ASSERT_TRUE(file.ok());
  EXPECT_EQ(file->labels[3].text, "Gr\xC3\xBCn");
}

TEST(IesReader, PassesOverTextBehindTheTableAndSaysSo) {
  const auto file = readIes(kQuarters + "end of file\r\n");
  ASSERT_TRUE(file.ok());
  ASSERT_EQ(file->notes.size(), 1u);
  EXPECT_EQ(file->notes[0].code, "ies-text-after");
  EXPECT_EQ(file->notes[0].where, "line 16");
}

TEST(IesReader, RefusesWithTheLineAndWhatToDo) {
  struct Row {
    const char *from, *to, *code, *where;
  };
  for (const Row& row : {Row{"TILT=NONE", "TELT=NONE", "ies-no-tilt", "line 16"},
                         {"TILT=NONE", "TILT=hung.tlt", "ies-tilt-file", "line 8"},
                         {"TILT=NONE", "TILT=", "ies-tilt", "line 8"},
                         {"TILT=NONE", "TILT=INCLUDE 4", "ies-tilt-file", "line 8"},
                         {"TILT=NONE", "TILT=INCLUDE\n4 1 0 1", "ies-count", "line 9"},
                         {"TILT=NONE", "TILT=INCLUDE\n1 2 0 0 1 1", "ies-tilt", "line 9"},
                         {"TILT=NONE", "TILT=INCLUDE\n1 2 0 200\n1 1", "ies-tilt", "line 9"},
                         {"TILT=NONE", "TILT=INCLUDE\n1 2 0 90\n1 -1", "ies-tilt", "line 10"},
                         {"5 3 1 2", "5.5 3 1 2", "ies-count", "line 9"},
                         {"5 3 1 2", "1 3 1 2", "ies-count", "line 9"},
                         {"5 3 1 2", "5 0 1 2", "ies-count", "line 9"},
                         {"5 3 1 2", "5 -3 1 2", "ies-count", "line 9"},
                         {"5 3 1 2", "5 99999 1 2", "ies-count", "line 9"},
                         {"5 3 1 2", "1e300 3 1 2", "ies-count", "line 9"},
                         {"5 3 1 2", "5 3 0 2", "ies-type", "line 9"},
                         {"5 3 1 2", "5 3 4 2", "ies-type", "line 9"},
                         {"5 3 1 2", "5 3 2.5 2", "ies-type", "line 9"},
                         {"5 3 1 2", "5 3 1 0", "ies-units", "line 9"},
                         {"1 -1 2.0", "1 -1 0", "ies-factor", "line 9"},
                         {"0.9 1 100", "-0.9 1 100", "ies-factor", "line 10"},
                         {"850", "8S0", "ies-number", "line 14"},
                         {"850", "nan", "ies-number", "line 14"},
                         {"850", "-850", "ies-candela", "line 14"},
                         {"850", "1e308", "photometry-table", "line 13, candela values"},
                         {"22.5", "50", "photometry-angles", "line 11, vertical angles"},
                         {"0 45 90", "0 45 80", "photometry-angles", "line 12, horizontal angles"},
                         {"50 0\r\n", "50\r\n", "ies-short", "line 16"},
                         {"50 0\r\n", "50 0 0\r\n", "ies-surplus", "line 15"}}) {
    const base::Problem problem = problemOf(with(kQuarters, row.from, row.to));
    EXPECT_EQ(problem.code, row.code) << row.to;
    EXPECT_EQ(problem.where, row.where) << row.to;
    EXPECT_FALSE(problem.found.empty() || problem.expected.empty() || problem.remedy.empty()) << row.to;
  }
}

TEST(IesReader, TellsAllThatIsWrongWithTheHeadAtOnce) {
  const auto file = readIes(with(kQuarters, "1 -1 2.0 5 3 1 2", "1 -1 0 5.5 3 4 7"));
  ASSERT_FALSE(file.ok());
  std::vector<std::string> codes;
  for (const auto& problem : file.problems()) codes.push_back(problem.code);
  EXPECT_EQ(codes, (std::vector<std::string>{"ies-factor", "ies-type", "ies-units", "ies-count"}));
}

/// Three by three, with type, vertical and horizontal angles as they come.
std::string flood(const std::string& type, const std::string& vertical, const std::string& horizontal) {
  return "IESNA:LM-63-2002\nTILT=NONE\n1 -1 1 3 3 " + type + " 2 0 0 0\n1 1 60\n" + vertical + "\n" + horizontal +
         "\n1 2 3\n4 5 6\n7 8 9\n";
}

// Type B: 30 degrees up on the middle plane is V = 30, H = 0; 30 to the right is V = 0, H = 30. Type A has the same on
// its two middle planes.
TEST(IesReader, ReadsTypesAAndBWithRightAndUpWhereTheyBelong) {
  for (const char* type : {"2", "3"}) {
    const auto file = readIes(flood(type, "-90 0 90", "-90 0 90"));
    ASSERT_TRUE(file.ok());
    EXPECT_TRUE(file->notes.empty());
    const light::Photometry& lamp = file->luminaire.photometry;
    EXPECT_NEAR(lamp.candelaAt(0, 0), 5, 1e-9);
    EXPECT_NEAR(lamp.candelaAt(30, 0), 5 + 1.0 / 3, 1e-9) << "up";
    EXPECT_NEAR(lamp.candelaAt(30, 180), 5 - 1.0 / 3, 1e-9) << "down";
    EXPECT_NEAR(lamp.candelaAt(30, 270), 5 + 1.0, 1e-9) << "right: counter-clockwise from behind comes last";
    EXPECT_NEAR(lamp.candelaAt(30, 90), 5 - 1.0, 1e-9) << "left";
    EXPECT_EQ(lamp.candelaAt(91, 0), 0) << "behind the lamp";
  }
}

TEST(IesReader, MirrorsTypesAAndBThatStartAtTheMiddle) {
  const auto file = readIes(flood("2", "-90 0 90", "0 30 90"));
  ASSERT_TRUE(file.ok());
  EXPECT_NEAR(file->luminaire.photometry.candelaAt(30, 90), 5, 1e-9);
  EXPECT_NEAR(file->luminaire.photometry.candelaAt(30, 270), 5, 1e-9);
}

TEST(IesReader, TakesNothingToShineBelowWhereTypesAAndBHoldTheUpperHalfAndSaysSo) {
  const auto file = readIes(flood("3", "0 45 90", "-90 0 90"));
  ASSERT_TRUE(file.ok());
  EXPECT_EQ(file->luminaire.photometry.candelaAt(10, 180), 0);
  ASSERT_EQ(file->notes.size(), 1u);
  EXPECT_EQ(file->notes[0].code, "ies-upper-half");
  EXPECT_EQ(file->notes[0].where, "line 5");
}

TEST(IesReader, RefusesAnglesThatTypesAAndBCannotHave) {
  struct Row {
    const char *vertical, *horizontal, *where;
  };
  for (const char* type : {"2", "3"})
    for (const Row& row : {Row{"0 90 180", "-90 0 90", "line 5, vertical angles"},
                           {"-91 0 90", "-90 0 90", "line 5, vertical angles"},
                           {"-90 0 90", "0 90 180", "line 6, horizontal angles"},
                           {"-90 0 90", "10 20 30", "line 6, horizontal angles"},
                           {"-90 0 90", "-90 90 0", "line 6, horizontal angles"}}) {
      const base::Problem problem = problemOf(flood(type, row.vertical, row.horizontal));
      EXPECT_EQ(problem.code, "photometry-angles") << type;
      EXPECT_EQ(problem.where, row.where) << type;
    }
}

TEST(IesReader, IsNotMovedByWhatTheCountsClaim) {
  // Thirteen million candela are promised and none are there: it ends where the bytes end.
  const std::string claim = plain("", "1 1 1 3601 3601 1 2 0 0 0", "1 1 1", "0 1 2");
  EXPECT_EQ(problemOf(claim).code, "ies-short");
  EXPECT_EQ(problemOf(std::string(kMostIesBytes + 1, ' ')).code, "ies-too-large");
  EXPECT_EQ(problemOf(std::string(100000, '\n')).code, "ies-no-tilt");
  EXPECT_EQ(problemOf("").code, "ies-no-tilt");
}

// LM-63: type C starts at 0 or 90 and ends at 90 or 180.
TEST(IesReader, SaysSoWhereATableLeavesOutAPartOfTheSphere) {
  const auto part = readIes(with(kQuarters, "0 22.5 45 67.5 90", "10 22.5 45 67.5 90"));
  ASSERT_TRUE(part.ok());
  ASSERT_EQ(part->notes.size(), 1u);
  EXPECT_EQ(part->notes[0].code, "ies-part");
  EXPECT_EQ(part->notes[0].found, "vertical angles from 10 to 90");
  EXPECT_EQ(readIes(with(kQuarters, "0 22.5 45 67.5 90", "0 22.5 45 67.5 170"))->notes.size(), 1u);
  EXPECT_TRUE(readIes(with(kQuarters, "0 22.5 45 67.5 90", "90 100 120 150 180"))->notes.empty());
}

}  // namespace
}  // namespace wend::exchange
