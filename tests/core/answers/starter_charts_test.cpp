// The charts that come with the program: readable, written as the writer writes, and true to the law they state.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/answers/lens_charts.h"
#include "core/file/chart_file.h"

namespace wend::answers {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> starterFiles() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(fs::path(WEND_SOURCE_DIR) / "resources/charts"))
    if (entry.path().extension() == ".wendchart") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::string contentOf(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

class StarterChart : public ::testing::TestWithParam<fs::path> {
 protected:
  StarterChart() : text(contentOf(GetParam())), read(file::readChart(text)) {}

  const plan::Lens& lens() const { return read->chart.lens; }
  /// Millimetres of the thin lens: the lens' own, of a zoom the middle of its range in proportion, to 0.1 mm.
  double lawFocal() const { return std::round(std::sqrt(lens().focal[0] * lens().focal[1]) * 10) / 10; }
  /// Extension of a thin lens that is sharp at that distance from the sensor.
  /// Source: E. Hecht, Optics, section 5.2.3, the thin-lens (Gaussian) equation.
  double extension(double distance) const {
    const double f = lawFocal() / 1000, u = (distance + std::sqrt(distance * distance - 4 * distance * f)) / 2;
    return f * f / (u - f);
  }
  double lawDegrees(double distance) const {
    const double barrel = lens().focusMarks.back().deg;
    return std::isinf(distance) ? 0 : barrel * extension(distance) / extension(lens().closeFocus);
  }

  std::string text;
  base::Result<file::ChartRead> read;
};

TEST_P(StarterChart, IsReadWithoutARemarkAndWrittenBackAsItIs) {
  ASSERT_TRUE(read.ok()) << base::toText(read.problems().front());
  EXPECT_TRUE(read->notes.empty());
  EXPECT_EQ(file::writeChart(read->chart), text);
  EXPECT_EQ(lens().name.rfind("generic ", 0), 0u);
}

TEST_P(StarterChart, MarksAreThoseOfAThinLensOnAnEvenHelicoid) {
  ASSERT_TRUE(read.ok());
  ASSERT_GE(lens().focusMarks.size(), 8u);
  EXPECT_EQ(lens().focusMarks.back().distance, lens().closeFocus);
  for (const auto& mark : scaleMarks(lens().focusMarks))
    EXPECT_NEAR(mark.degrees, lawDegrees(mark.value), 0.0051) << mark.value;
  for (const auto& mark : lens().irisMarks)
    EXPECT_NEAR(mark.deg, 24 * std::log2(mark.stop / lens().stop[0]), 0.0051) << mark.stop;
}

TEST_P(StarterChart, BetweenItsMarksTheLawIsMetWithinADegree) {
  ASSERT_TRUE(read.ok());
  const auto scales = chartScales(lens());
  ASSERT_GE(scales.size(), 2u);
  const auto scale = optics::LensScale::through(optics::ScaleOf::distance, scales[0].marks).value();
  double worst = 0;
  for (int i = 1; i <= 2000; ++i) {
    const double distance = lens().closeFocus * 2000 / i;
    worst = std::max(worst, std::abs(scale.degreesAt(distance) - lawDegrees(distance)));
  }
  EXPECT_LT(worst, 1.0);
  EXPECT_GE(scales[0].trust.worstDegrees, worst) << "leaving marks out guesses no less than there is";
}

TEST(StarterCharts, AreTenOrMore) {
  EXPECT_GE(starterFiles().size(), 10u);
}

std::string nameOf(const ::testing::TestParamInfo<fs::path>& chart) {
  std::string name = chart.param.stem().string();
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Each, StarterChart, ::testing::ValuesIn(starterFiles()), nameOf);

}  // namespace
}  // namespace wend::answers
