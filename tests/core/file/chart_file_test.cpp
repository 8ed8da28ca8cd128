#include "core/file/chart_file.h"

#include <gtest/gtest.h>

#include "tests/core/file/plan_text.h"
#include "tests/fuzz/chart_file_fuzz.h"

namespace wend::file {
namespace {

constexpr const char* kZoom = R"({
  "format": "wend-chart", "version": 1, "notes": "collimated, spring",
  "lens": {"name": "zoom of the house", "focal": [24, 70], "stop": [2.8, 22], "closeFocus": 0.75, "pupilAhead": 0.12,
           "transmission": [[24, 0.9], [70, 0.8]], "breathing": 0.04,
           "focusMarks": [{"distance": null, "deg": 0}, {"distance": 10, "deg": 20, "witness": "A"},
                          {"distance": 0.75, "deg": 290}],
           "irisMarks": [{"stop": 2.8, "deg": 0}, {"stop": 22, "deg": 84}],
           "zoomMarks": [{"focal": 24, "deg": 0}, {"focal": 70, "deg": 120}],
           "limits": {"focusDegPerSecond": 90}, "serial": "0012"},
  "house": 7.50
})";

base::Problem refusal(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  const auto read = readChart(text.replace(at, from.size(), to));
  EXPECT_FALSE(read.ok()) << to;
  return read.ok() ? base::Problem{} : read.problems().front();
}

TEST(ChartFile, HoldsALensAndWhatItDoesNotKnow) {
  const auto read = readChart(kZoom);
  ASSERT_TRUE(read.ok()) << base::toText(read.problems().front());
  EXPECT_EQ(read->chart.notes, "collimated, spring");
  EXPECT_EQ(read->chart.lens.focusMarks.at(1).witness, "A");
  EXPECT_FALSE(read->chart.lens.focusMarks.at(0).distance);
  EXPECT_EQ(read->chart.lens.limits.focusDegPerSecond, 90);
  EXPECT_EQ(read->notes.size(), 2u);
  const std::string text = writeChart(read->chart);
  EXPECT_NE(text.find("\"serial\": \"0012\""), std::string::npos);
  EXPECT_NE(text.find("\"house\": 7.50"), std::string::npos);
  const auto back = readChart(text);
  ASSERT_TRUE(back.ok());
  EXPECT_TRUE(back->chart == read->chart);
  EXPECT_EQ(writeChart(back->chart), text);
}

TEST(ChartFile, IsTheLensOfAPlan) {
  const plan::Plan plan = planOf(kEveryKey);
  ASSERT_TRUE(plan.lens);
  const auto read = readChart(writeChart({*plan.lens, "", {}}));
  ASSERT_TRUE(read.ok());
  EXPECT_TRUE(read->chart.lens == *plan.lens);
}

TEST(ChartFile, NamesTheRowThatTurnsBack) {
  const base::Problem problem = refusal(kZoom, "\"deg\": 290", "\"deg\": 10");
  EXPECT_EQ(problem.code, "marks-turn-back");
  EXPECT_EQ(problem.where, "/lens/focusMarks/2");
  EXPECT_NE(problem.remedy.find("row 3"), std::string::npos);
  EXPECT_EQ(
      refusal(kZoom, "{\"stop\": 22, \"deg\": 84}", "{\"stop\": 2, \"deg\": -1}, {\"stop\": 4, \"deg\": -2}").where,
      "/lens/irisMarks/2");
}

TEST(ChartFile, NotesMarksNearerThanTheLensFocuses) {
  std::string text = kZoom;
  const std::string mark = "\"distance\": 0.75", nearer = "\"distance\": 0.5";
  text.replace(text.find(mark), mark.size(), nearer);
  const auto read = readChart(text);
  ASSERT_TRUE(read.ok());
  ASSERT_EQ(read->notes.size(), 3u);
  EXPECT_EQ(read->notes[2].code, "mark-nearer-than-closest");
  EXPECT_EQ(read->notes[2].where, "/lens/focusMarks/2/distance");
  EXPECT_EQ(readChart(kZoom)->notes.size(), 2u) << "at the closest focus itself";
}

TEST(ChartFile, TellsAPlanFromAChart) {
  EXPECT_EQ(refusal(kZoom, "wend-chart", "wend-plan").code, "wrong-format");
  EXPECT_EQ(refusal(kZoom, "\"version\": 1", "\"version\": 2").code, "newer-version");
  EXPECT_EQ(refusal(kZoom, "\"lens\"", "\"lense\"").where, "/lens");
  EXPECT_FALSE(readPlan(kZoom).ok());
}

TEST(ChartFile, ReadsAnythingOrSaysWhyNot) {
  EXPECT_TRUE(chartReadsAndWritesBack(kZoom));
  const std::string text = kZoom;
  for (std::size_t i = 0; i < text.size(); ++i) {
    chartReadsAndWritesBack(std::string_view(text).substr(0, i));
    for (const char replaced : {'0', '"', '-', '}', '\\', '\xff'}) {
      std::string spoiled = text;
      spoiled[i] = replaced;
      chartReadsAndWritesBack(spoiled);
    }
  }
}

}  // namespace
}  // namespace wend::file
