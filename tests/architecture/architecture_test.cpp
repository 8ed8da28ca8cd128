// Reads the sources and holds them against the layout DEVELOPERS.md describes. Each rule is shown to fail as well.
#include <gtest/gtest.h>

#include <functional>

#include "tests/architecture/rules.h"

namespace wend::architecture {
namespace {

using Rule = std::function<Complaints(const Source&)>;

std::string joined(const Complaints& complaints) {
  std::string text;
  for (const auto& complaint : complaints) text += complaint + "\n";
  return text;
}

Complaints inAll(const Rule& rule, const std::vector<std::string>& folders) {
  Complaints all;
  for (const auto& source : sourcesOf(folders))
    for (const auto& complaint : rule(source)) all.push_back(complaint);
  return all;
}

const std::vector<std::string> kCode = {"core", "ui", "app"};

TEST(Architecture, LayersIncludeDownwardOnly) {
  EXPECT_EQ(joined(inAll(againstLayers, kCode)), "");
  EXPECT_EQ(againstLayers({"core/optics/x.h", "#include \"core/light/exposure.h\"\n"}).size(), 1u);
  EXPECT_EQ(againstLayers({"core/base/x.h", "#include \"ui/document/save.h\"\n"}).size(), 1u);
  EXPECT_EQ(againstLayers({"ui/shell/x.h", "#include \"app/arguments.h\"\n"}).size(), 1u);
  EXPECT_TRUE(againstLayers({"core/crew/x.h", "#include \"core/sight/scene.h\"\n"}).empty());
}

TEST(Architecture, CoreKnowsNoQtAndJsonStaysInFiles) {
  EXPECT_EQ(joined(inAll(againstForeign, {"core"})), "");
  EXPECT_EQ(againstForeign({"core/plan/x.h", "#include <QString>\n"}).size(), 1u);
  EXPECT_EQ(againstForeign({"core/answers/x.cpp", "#include <nlohmann/json.hpp>\n"}).size(), 1u);
  EXPECT_TRUE(againstForeign({"core/file/x.cpp", "#include <nlohmann/json.hpp>\n"}).empty());
}

TEST(Architecture, FacesOfTheWindowMeetInTheDocumentOnly) {
  EXPECT_EQ(joined(inAll(againstViews, {"ui"})), "");
  EXPECT_EQ(againstViews({"ui/score/x.h", "#include \"ui/frame/frame_view.h\"\n"}).size(), 1u);
  EXPECT_TRUE(againstViews({"ui/score/x.h", "#include \"ui/canvas/drawing_painter.h\"\n"}).empty());
}

TEST(Architecture, NoFileIsTooLong) {
  EXPECT_EQ(joined(inAll(againstLength, {"core", "ui", "app", "tests"})), "");
  EXPECT_EQ(againstLength({"x.cpp", std::string(601, '\n')}).size(), 1u);
  const auto sources = sourcesOf(kCode);
  const auto longer =
      std::count_if(sources.begin(), sources.end(), [](const Source& s) { return s.lines().size() > 400; });
  EXPECT_LE(longer * 10, static_cast<long>(sources.size())) << "nine files of ten stay under 400 lines";
}

TEST(Architecture, NoFunctionIsTooLong) {
  EXPECT_EQ(joined(inAll(againstLongFunctions, kCode)), "");
  std::string text = "void f(int a) {\n";
  for (int i = 0; i < 60; ++i) text += "  g();\n";
  EXPECT_EQ(againstLongFunctions({"x.cpp", text + "}\n"}).size(), 1u);
  EXPECT_TRUE(againstLongFunctions({"x.cpp", "void f(int a) {\n  g();\n}\n"}).empty());
}

TEST(Architecture, NumbersColoursAndFilesHaveOneDoorEach) {
  EXPECT_EQ(joined(inAll(againstWords, kCode)), "");
  EXPECT_EQ(againstWords({"core/x.cpp", "double d = std::stod(text);\n"}).size(), 1u);
  EXPECT_EQ(againstWords({"ui/x.cpp", "QString::number(metres, 'g', 3)\n"}).size(), 1u);
  EXPECT_EQ(againstWords({"ui/x.cpp", "QColor(12, 3, 4)\n"}).size(), 1u);
  EXPECT_EQ(againstWords({"ui/x.cpp", "file.open(QIODevice::WriteOnly)\n"}).size(), 1u);
}

TEST(Architecture, EveryHeaderSaysWhatItIsAbout) {
  EXPECT_EQ(joined(inAll(againstMuteHeaders, kCode)), "");
  EXPECT_EQ(againstMuteHeaders({"x.h", "#pragma once\n"}).size(), 1u);
}

TEST(Architecture, EveryLawOfTheComputationNamesItsTest) {
  const auto onDisk = [](const std::string& path) { return std::filesystem::exists(WEND_SOURCE_DIR "/" + path); };
  const auto complaints = [&](const Source& source) { return againstUntestedLaws(source, onDisk); };
  EXPECT_EQ(joined(inAll(complaints, {"core"})), "");
  const auto nowhere = [](const std::string&) { return false; };
  EXPECT_EQ(againstUntestedLaws({"core/sight/x.h", "/// Ensures a law\n"}, nowhere).size(), 1u);
  EXPECT_EQ(againstUntestedLaws({"core/sight/x.h", "/// Ensures a law\n/// Tests     tests/x.cpp\n"}, nowhere).size(),
            1u);
}

TEST(Architecture, CoreKnowsNothingOfWhereItRuns) {
  EXPECT_EQ(joined(inAll(againstSurroundings, {"core"})), "");
  EXPECT_EQ(againstSurroundings({"core/x/x.cpp", "const char* home = getenv(\"HOME\");\n"}).size(), 1u);
  EXPECT_EQ(againstSurroundings({"core/x/x.cpp", "std::chrono::steady_clock::now();\n"}).size(), 1u);
  EXPECT_TRUE(againstSurroundings({"app/x.cpp", "std::chrono::steady_clock::now();\n"}).empty());
}

TEST(Architecture, TheTopLevelHoldsNothingElse) {
  for (const auto& entry : std::filesystem::directory_iterator(WEND_SOURCE_DIR)) {
    const std::string name = entry.path().filename().string();
    EXPECT_TRUE(belongsAtTop(name)) << name;
  }
  EXPECT_FALSE(belongsAtTop("docs"));
  EXPECT_TRUE(belongsAtTop(".ci"));
}

TEST(Architecture, TestsOfCoreLieBesideTheirModules) {
  const auto stray = [](const Source& source) {
    Complaints complaints;
    const std::string module = source.path.substr(0, source.path.rfind('/')).substr(std::string("tests/").size());
    if (!std::filesystem::is_directory(std::filesystem::path(WEND_SOURCE_DIR) / module))
      complaints.push_back(source.path + " tests no module");
    return complaints;
  };
  EXPECT_EQ(joined(inAll(stray, {"tests/core"})), "");
  EXPECT_EQ(stray({"tests/core/nowhere/x_test.cpp", ""}).size(), 1u);
}

}  // namespace
}  // namespace wend::architecture
