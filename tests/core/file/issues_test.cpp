/// Every file in samples/issues is a fault that somebody met: each must be told, with a place and a way out.
#include <gtest/gtest.h>

#include "core/base/text.h"
#include "tests/core/file/plan_text.h"

namespace wend::file {
namespace {

base::Problems toldFor(const std::filesystem::path& file) {
  const auto read = readPlan(fileText(file));
  return read.ok() ? read->notes : read.problems();
}

/// "name: code place, code place ..."; of long lists the first three and the count.
std::string summary(const std::filesystem::path& file) {
  const auto lines = codesAndPlaces(toldFor(file));
  std::string text = file.stem().string() + ":";
  for (std::size_t i = 0; i < lines.size() && i < 8; ++i) text += (i ? ", " : " ") + lines[i];
  return text + (lines.size() > 8 ? ", " + std::to_string(lines.size()) + " in all" : "") + "\n";
}

TEST(Issues, AreAllToldWithAPlaceAndARemedy) {
  const auto files = filesOf(sampleFolder() / "issues", ".wend");
  ASSERT_GE(files.size(), 30u);
  for (const auto& file : files) {
    const auto told = toldFor(file);
    EXPECT_FALSE(told.empty()) << file;
    for (const auto& problem : told) {
      EXPECT_FALSE(problem.where.empty()) << file;
      EXPECT_FALSE(problem.remedy.empty()) << file;
      EXPECT_TRUE(base::isUtf8(base::toText(problem))) << file;
    }
  }
}

TEST(Issues, GetTheCodesThatProgramsRelyOn) {
  std::string all;
  for (const auto& file : filesOf(sampleFolder() / "issues", ".wend")) all += summary(file);
  EXPECT_EQ(all, fileText(std::filesystem::path(WEND_SOURCE_DIR) / "tests/core/file/issues.txt"));
}

TEST(Issues, ThatOnlyNoteUnknownKeysLoseNothing) {
  const auto file = sampleFolder() / "issues" / "unknown-keys.wend";
  const std::string written = writePlan(planOf(fileText(file)));
  for (const char* part : {"\"titel\": \"Issue\"", "\"facng\": 180.0", "123456789012345678901234567890"})
    EXPECT_NE(written.find(part), std::string::npos) << part;
}

}  // namespace
}  // namespace wend::file
