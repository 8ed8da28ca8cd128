#include "ui/shelf/chart_shelf.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include "core/file/chart_file.h"
#include "ui/document/open.h"
#include "ui/document/save.h"

namespace wend::ui {
namespace {

plan::LensChart chartOf(const std::string& name, double focal = 40, double stop = 2) {
  plan::LensChart chart;
  chart.lens.name = name;
  chart.lens.focal = {focal, focal};
  chart.lens.stop = {stop, 22};
  return chart;
}

class Shelf : public ::testing::Test {
 protected:
  QString at(const QString& name) const { return QDir(home.path()).filePath(name); }
  QString folder() const { return at(QStringLiteral("charts")); }
  std::vector<std::string> own(const ChartShelf& shelf) const {
    std::vector<std::string> names;
    for (const auto& chart : shelf.charts())
      if (!chart.starter) names.push_back(nameOf(chart).toStdString());
    return names;
  }
  std::vector<std::string> found(const ChartShelf& shelf, const char* typed) const {
    std::vector<std::string> names;
    for (const std::size_t i : fitting(shelf.charts(), QString::fromUtf8(typed)))
      names.push_back(nameOf(shelf.charts()[i]).toStdString());
    return names;
  }
  std::string bytes(const QString& path) const { return readFile(path, 1 << 20).value().bytes; }
  using Names = std::vector<std::string>;

  QTemporaryDir home;
};

TEST_F(Shelf, HasTheChartsThatComeWithWendBeforeAnyFolderIs) {
  const ChartShelf shelf(folder());
  EXPECT_GE(shelf.charts().size(), 10u);
  for (const auto& chart : shelf.charts())
    EXPECT_TRUE(chart.starter && chart.readable()) << nameOf(chart).toStdString();
  EXPECT_FALSE(QFileInfo::exists(folder()));
}

TEST_F(Shelf, KeepsLensesOfOneNameBesideEachOther) {
  ChartShelf shelf(folder());
  const auto first = shelf.keep(chartOf("prime A/2", 40)), second = shelf.keep(chartOf("prime A/2", 41));
  ASSERT_TRUE(first.ok() && second.ok());
  EXPECT_NE(*first, *second);
  EXPECT_EQ(QFileInfo(*first).fileName(), QStringLiteral("prime A-2.wendchart"));
  EXPECT_EQ(own(shelf), (Names{"prime A/2", "prime A/2"}));
  EXPECT_EQ(file::readChart(bytes(*first))->chart.lens.focal[0], 40);
}

TEST_F(Shelf, NamesThatNoFileMayHaveStayInsideTheFolder) {
  ChartShelf shelf(folder());
  for (const char* name : {"../../up", "", ".hidden", "a\nb", "\"|*?"}) {
    const auto path = shelf.keep(chartOf(name));
    ASSERT_TRUE(path.ok()) << name;
    EXPECT_EQ(QFileInfo(*path).canonicalPath(), QFileInfo(folder()).canonicalFilePath()) << name;
    EXPECT_FALSE(QFileInfo(*path).fileName().startsWith(QLatin1Char('.'))) << name;
  }
}

TEST_F(Shelf, ListsABrokenFileWithItsProblemAndLeavesItAlone) {
  ASSERT_TRUE(QDir().mkpath(folder()));
  const QString path = QDir(folder()).filePath(QStringLiteral("torn.wendchart"));
  const QByteArray torn = R"({"format": "wend-chart", "version": 1, "lens": {"focusMarks": [
    {"distance": null, "deg": 0}, {"distance": 2, "deg": 50}, {"distance": 1, "deg": 40}]}})";
  ASSERT_TRUE(writeFile(path, torn).ok());
  ChartShelf shelf(folder());
  ASSERT_EQ(own(shelf), Names{"torn"});
  const auto& chart = shelf.charts().front();
  EXPECT_FALSE(chart.readable());
  const std::string facts = factsOf(chart, false).toStdString();
  EXPECT_NE(facts.find("look at row 3"), std::string::npos) << facts;
  EXPECT_FALSE(shelf.rename(chart, QStringLiteral("whole")).ok());
  EXPECT_EQ(bytes(path), torn.toStdString());
}

TEST_F(Shelf, RemovedChartsLieInAFolderAndComeBack) {
  ChartShelf shelf(folder());
  const QString kept = *shelf.keep(chartOf("mine"));
  const std::string before = bytes(kept);
  const auto gone = shelf.remove(shelf.charts().front());
  ASSERT_TRUE(gone.ok());
  EXPECT_EQ(own(shelf), Names{});
  EXPECT_EQ(bytes(*gone), before);
  // Another lens takes the name meanwhile: neither is lost.
  ASSERT_TRUE(shelf.keep(chartOf("mine", 75)).ok());
  const auto back = shelf.putBack(*gone);
  ASSERT_TRUE(back.ok());
  EXPECT_EQ(bytes(*back), before);
  EXPECT_EQ(own(shelf), (Names{"mine", "mine"}));
}

TEST_F(Shelf, RenamingChangesTheNameAndNothingElse) {
  ChartShelf shelf(folder());
  const QString path = at(QStringLiteral("from.wendchart"));
  const QByteArray text = R"({"format": "wend-chart", "version": 1, "lens": {"name": "old", "serial": 7.50}})";
  ASSERT_TRUE(writeFile(path, text).ok());
  ASSERT_TRUE(shelf.import(path).ok());
  const auto renamed = shelf.rename(shelf.charts().front(), QStringLiteral("  new   name "));
  ASSERT_TRUE(renamed.ok());
  EXPECT_EQ(own(shelf), Names{"new name"});
  EXPECT_NE(bytes(*renamed).find("\"serial\": 7.50"), std::string::npos) << "what Wend does not know is kept";
  EXPECT_FALSE(shelf.rename(shelf.charts().front(), QStringLiteral("  ")).ok());
}

TEST_F(Shelf, StartersAreNeitherRenamedNorRemoved) {
  ChartShelf shelf(folder());
  const std::size_t count = shelf.charts().size();
  EXPECT_EQ(shelf.remove(shelf.charts()[0]).problems()[0].code, "starter-chart");
  EXPECT_EQ(shelf.rename(shelf.charts()[0], QStringLiteral("x")).problems()[0].code, "starter-chart");
  EXPECT_EQ(shelf.charts().size(), count);
}

TEST_F(Shelf, TakesTheLensOfAPlanAndRefusesOtherFiles) {
  ChartShelf shelf(folder());
  ASSERT_TRUE(shelf.import(QString::fromUtf8(WEND_SOURCE_DIR "/samples/first-batch.wend")).ok());
  EXPECT_EQ(own(shelf).size(), 1u);
  EXPECT_FALSE(shelf.import(QString::fromUtf8(WEND_SOURCE_DIR "/README.md")).ok());
  EXPECT_EQ(shelf.import(at(QStringLiteral("none.wendchart"))).problems()[0].code, "no-file");
  EXPECT_EQ(own(shelf).size(), 1u);
}

TEST_F(Shelf, IsSearchedByNameFocalLengthAndStop) {
  ChartShelf shelf(folder());
  for (const auto& chart : {chartOf("red hoop", 41, 1.5), chartOf("blue hoop", 77, 2.8)})
    ASSERT_TRUE(shelf.keep(chart).ok());
  EXPECT_EQ(found(shelf, "hoop"), (Names{"blue hoop", "red hoop"}));
  EXPECT_EQ(found(shelf, "HOOP t2"), Names{"red hoop"});
  EXPECT_EQ(found(shelf, "hoop 77"), Names{"blue hoop"});
  EXPECT_EQ(found(shelf, "hoop 77mm"), Names{"blue hoop"});
  EXPECT_EQ(found(shelf, "zoom 60"), (Names{"generic 24-70 mm zoom, T2.8", "generic 45-135 mm zoom, T2.8"}));
  EXPECT_EQ(found(shelf, "35 prime"), Names{"generic 35 mm prime, T1.5"}) << "135 is another lens";
  EXPECT_EQ(found(shelf, "generic t1.4"), Names{});
  EXPECT_EQ(found(shelf, "nosuch"), Names{});
}

TEST_F(Shelf, FiveHundredChartsAreSearchedAtOnce) {
  ASSERT_TRUE(QDir().mkpath(folder()));
  for (int i = 0; i < 500; ++i) {
    QFile file(QDir(folder()).filePath(QStringLiteral("lens %1.wendchart").arg(i)));
    const std::string text = file::writeChart(chartOf("lens " + std::to_string(i), 20 + i % 80));
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_EQ(file.write(text.data(), qint64(text.size())), qint64(text.size()));
  }
  QElapsedTimer timer;
  timer.start();
  const ChartShelf shelf(folder());
  const auto read = timer.restart();
  EXPECT_EQ(found(shelf, "lens 499"), Names{"lens 499"});
  std::cout << "500 charts: read in " << read << " ms, searched in " << timer.elapsed() << " ms\n";
}

}  // namespace
}  // namespace wend::ui
