// The map of clear ground in signs, of grids written by hand.
#include <gtest/gtest.h>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {
namespace {

/// 200 by 12 cells of ten centimetres, all of it ground and none of it clear: three by six a sign, two rows of signs.
answers::ClearGround dark() {
  const geometry::Grid grid{{0, 0}, 0.1, 200, 12};
  return {grid, std::vector<std::uint8_t>(grid.cells(), 0), std::vector<std::uint8_t>(grid.cells(), 1)};
}

/// The rows of signs, north first.
std::vector<std::string> signsOf(const answers::ClearGround& clear) {
  const auto lines = base::split(clearText(clear, {0, 10}), '\n');
  return {lines.at(3), lines.at(4)};
}

TEST(ClearText, ShowsAPocketSmallerThanASign) {
  answers::ClearGround clear = dark();
  clear.cells[clear.grid.cellAt({7.05, 0.25}).value()] = 1;
  const auto signs = signsOf(clear);
  EXPECT_EQ(signs[0], std::string(67, '.'));
  EXPECT_EQ(signs[1], std::string(23, '.') + "+" + std::string(43, '.'));
  EXPECT_NE(clearText(clear, {0, 10}).find("+ some of it clear"), std::string::npos);
}

TEST(ClearText, CallsClearOnlyWhatIsClearAllOver) {
  answers::ClearGround clear = dark();
  for (auto& cell : clear.cells) cell = 1;
  EXPECT_EQ(signsOf(clear)[1], std::string(67, '#'));
  clear.cells[clear.grid.cellAt({0.05, 0.05}).value()] = 0;
  EXPECT_EQ(signsOf(clear)[1][0], '+');
  clear.ground[clear.grid.cellAt({0.35, 0.05}).value()] = 0;
  EXPECT_EQ(signsOf(clear)[1][1], '+') << "a sign that a wall cuts through";
}

TEST(ClearText, LeavesWhereNobodyCanStandBlankHoweverClear) {
  answers::ClearGround clear = dark();
  for (auto& cell : clear.cells) cell = 1;
  for (auto& cell : clear.ground) cell = 0;
  EXPECT_EQ(signsOf(clear)[0], "");
  clear.ground[clear.grid.cellAt({0.05, 1.15}).value()] = 1;
  clear.cells[clear.grid.cellAt({0.05, 1.15}).value()] = 0;
  EXPECT_EQ(signsOf(clear)[0], ".") << "what is clear beside it is no ground";
}

}  // namespace
}  // namespace wend::sheets
