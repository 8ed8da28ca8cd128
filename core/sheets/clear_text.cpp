// The ground that is clear, as signs.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using answers::ClearGround;
using answers::GlassGround;
using base::fixed;

namespace {

/// A letter for a block of cells: '#' where all of it is clear ground, '+' where some of it is, so that a pocket for one
/// person shows however large the block, 'g' where some of its clear ground shows in glass; '.' where it has ground and
/// none of that is clear, a blank where none is ground.
char signOf(const ClearGround& clear, const std::vector<std::uint8_t>& glass, int column, int row, int wide, int high) {
  bool ground = false, some = false, all = true, shows = false;
  for (int r = row; r < std::min(row + high, clear.grid.ny); ++r)
    for (int c = column; c < std::min(column + wide, clear.grid.nx); ++c) {
      const auto cell =
          static_cast<std::size_t>(r) * static_cast<std::size_t>(clear.grid.nx) + static_cast<std::size_t>(c);
      const bool free = clear.ground[cell] && clear.cells[cell];
      ground = ground || clear.ground[cell];
      some = some || free;
      all = all && free;
      shows = shows || (free && glass[cell]);
    }
  if (!ground) return ' ';
  return shows ? 'g' : all ? '#' : some ? '+' : '.';
}

std::string areaText(const geometry::Grid& grid, std::size_t cells) {
  return fixed(static_cast<double>(cells) * grid.cell * grid.cell, 1) + " m\u00b2";
}

std::size_t countOf(const std::vector<std::uint8_t>& cells) {
  return static_cast<std::size_t>(std::count_if(cells.begin(), cells.end(), [](auto cell) { return cell != 0; }));
}

std::string glassLines(const plan::Plan& plan, const GlassGround& glass, std::size_t cells) {
  std::string text = "of it " + areaText(glass.grid, cells) +
                     " shows in glass that the light turns into a mirror, asked every tenth of a second\n";
  for (const auto& of : glass.byPane()) {
    std::string spans;
    for (const auto& span : of.spans) spans += (spans.empty() ? "" : ", ") + spanText(span);
    text += indentedLines(snags::nameOf(plan, of.pane) + ": " + areaText(glass.grid, of.cells) + ", " + spans);
  }
  return text;
}

}  // namespace

std::string clearText(const plan::Plan& plan, const ClearGround& clear, const GlassGround& glass, geometry::Span span) {
  constexpr int kWidest = 98;
  const geometry::Grid& grid = clear.grid;
  const std::vector<std::uint8_t> floor = clear.clearFloor(), shows = glass.cellsDuring({0, plan.clock.length});
  const int wide = std::max(1, (grid.nx + kWidest - 1) / kWidest), high = 2 * wide;
  std::string text = "ground clear over " + spanText(span) + " (between frames too)\none sign is " +
                     fixed(wide * grid.cell, 2) + " m wide and " + fixed(high * grid.cell, 2) + " m high: # clear, " +
                     "+ some of it clear, " + (glass.empty() ? "" : "g clear but shows in glass, ") +
                     ". not, blank no ground\n";
  text += "north-west corner " + fixed(grid.origin.x, 2) + ", " + fixed(grid.extent().high.y, 2) + "\n";
  for (int row = ((grid.ny - 1) / high) * high; row >= 0; row -= high) {
    std::string line;
    for (int column = 0; column < grid.nx; column += wide) line += signOf(clear, shows, column, row, wide, high);
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  text += "clear ground: " + areaText(grid, countOf(floor)) + " of " + areaText(grid, countOf(clear.ground)) + "\n";
  return glass.empty() ? text : text + glassLines(plan, glass, countOf(shows));
}

}  // namespace wend::sheets
