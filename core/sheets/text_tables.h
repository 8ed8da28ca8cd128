/// What the verbs print for people: aligned text in the plan's display units, one record a line, at most 100 columns.
#pragma once

#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/answers/clear_ground.h"
#include "core/answers/glass_ground.h"
#include "core/sheets/cell.h"
#include "core/sheets/crew_sheet.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

/// Columns of words, each as wide as its widest cell; columns marked right are set flush right.
class TextTable {
 public:
  /// Headers that start with '>' make a column of numbers, flush right and never cut; '~' one that is wrapped.
  explicit TextTable(std::vector<std::string> headers) : headers_(std::move(headers)) {}
  void add(std::vector<Cell> cells) { rows_.push_back(std::move(cells)); }
  bool empty() const { return rows_.empty(); }
  /// The cells whole: the header without its signs first, then the rows, each as long as the header.
  std::vector<std::vector<std::string>> cells() const;
  /// The figures behind each row's words, in the order of the columns.
  std::vector<std::vector<Figure>> figures() const;
  /// At most 100 columns: longer words are cut with an ellipsis or wrapped, numbers never.
  std::string text() const;
  /// Everything whole, by RFC 4180, with a header; cells that a spreadsheet would take for a formula are quoted with an
  /// apostrophe first.
  std::string csv() const;

 private:
  /// The header is row 0.
  std::string cell(std::size_t row, std::size_t column) const;
  std::vector<std::string> headers_;
  std::vector<std::vector<Cell>> rows_;
};

/// The text in lines of at most `width` columns, broken at blanks; a longer word keeps a line of its own.
std::vector<std::string> wrapped(const std::string& text, std::size_t width);

/// The same, each line after four blanks.
std::string indentedLines(const std::string& text);

using snags::lengthText;

std::string takeSummary(const answers::Answers& answers);
std::string problemsText(const base::Problems& problems);
std::string snagsText(const plan::Plan& plan, const snags::Snags& snags);
std::string instantText(const answers::Take& take, const answers::Instant& instant);
/// A line for each link, line of speech that runs and cable worth telling of; empty where there is none.
std::string trapsText(const plan::Plan& plan, const snags::TrapsNow& traps);
/// `few` columns fit a terminal, `all` are for a spreadsheet.
enum class Columns { few, all };
TextTable instantsTable(const answers::Take& take, const std::vector<answers::Instant>& instants, Columns columns);
std::string pullsText(const plan::Plan& plan, const snags::Evidence& evidence);
/// Hot stretches and pulls that arrive hot, with what would cool them; empty where there are none.
std::string hotText(const plan::Plan& plan, const snags::Evidence& evidence);
TextTable movesTable(const plan::Plan& plan, const snags::Evidence& evidence);
std::string spotText(const answers::Take& take, geometry::Point pos, double height, const snags::SightOf& sight,
                     const std::vector<snags::PaneMirror>& panes);
/// The same of one instant in a line: what is the case, until when, what shows the place next and in how many seconds.
/// `sight` is of somebody who stands there all take; times in seconds.
std::string spotNowText(const plan::Plan& plan, const snags::SightOf& sight, double t);
/// "inside van until 22.0; " of what stands there for a time and then, and how the ground is closed; each with its
/// semicolon, empty where there is neither.
std::string spotTakenText(const answers::Take& take, geometry::Point pos, double height, double t);
std::string windowsText(const plan::Plan& plan, const snags::Evidence& evidence);
std::string routesText(const std::vector<RouteOf>& routes);
/// The map as signs, one a cell or a block of cells, with the coordinates of its corners: any clear ground shows. `glass` is of the same span
/// and of the clear ground alone: what of it shows in which panes, when.
std::string clearText(const plan::Plan& plan, const answers::ClearGround& clear, const answers::GlassGround& glass,
                      geometry::Span span);
/// "inside oven", "outside of everything drawn": why nobody can stand there; empty where somebody can.
std::string noGroundText(const answers::Take& take, geometry::Point pos, double height);

/// What every sheet ends with.
extern const char* const kCaution;

}  // namespace wend::sheets
