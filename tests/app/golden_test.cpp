// Outputs kept as files: tests/golden/<case>/args.txt holds the words after `wend` and, on a second line, the exit code
// when it is not 0; expected.txt or expected.json holds what is printed. WEND_ACCEPT=1 writes them anew.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/app/program.h"

namespace wend::app::test {

namespace fs = std::filesystem;

namespace {

std::vector<fs::path> goldenCases() {
  std::vector<fs::path> cases;
  for (const auto& entry : fs::directory_iterator(fs::path(WEND_SOURCE_DIR) / "tests/golden"))
    if (fs::exists(entry.path() / "args.txt")) cases.push_back(entry.path());
  std::sort(cases.begin(), cases.end());
  return cases;
}

std::string nameOf(const ::testing::TestParamInfo<fs::path>& info) {
  std::string name = info.param.filename().string();
  std::replace_if(
      name.begin(), name.end(), [](unsigned char c) { return !std::isalnum(c); }, '_');
  return name;
}

class Golden : public ::testing::TestWithParam<fs::path> {};

TEST_P(Golden, PrintsWhatIsKept) {
  std::istringstream args(contentOf(GetParam() / "args.txt"));
  std::string line, code = "0";
  std::getline(args, line);
  std::getline(args, code);
  const bool json = line.find("--json") != std::string::npos;
  const fs::path kept = GetParam() / (json ? "expected.json" : "expected.txt");
  const Ran got = ranInShell("wend " + line);
  EXPECT_EQ(got.code, code.empty() ? 0 : std::stoi(code)) << got.err;
  EXPECT_EQ(got.err, "");
  if (std::getenv("WEND_ACCEPT")) write(kept, got.out);
  EXPECT_EQ(got.out, contentOf(kept)) << "WEND_ACCEPT=1 keeps the new one";
}

TEST_P(Golden, FitsAHundredColumns) {
  if (fs::exists(GetParam() / "expected.json")) return;
  std::istringstream text(contentOf(GetParam() / "expected.txt"));
  for (std::string line; std::getline(text, line);) {
    const auto columns = std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; });
    EXPECT_LE(columns, 100) << line;
  }
}

INSTANTIATE_TEST_SUITE_P(Kept, Golden, ::testing::ValuesIn(goldenCases()), nameOf);

}  // namespace

}  // namespace wend::app::test
