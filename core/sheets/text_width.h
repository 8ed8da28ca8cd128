/// How wide a text is in the typeface of Wend, for drawings that must fit without asking a window.
///
/// Source    advance widths of B612 Regular, read from its font file; Bold has the same. B612 has no kerning, so widths
///           add up.
/// Stops     being exact where B612 is not installed, and for letters outside the table, which count as 0.6 em.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace wend::sheets {

/// Requires  valid UTF-8
double typeWidth(std::string_view text, double size);

/// The text, or as much of it as fits into `width` with an ellipsis behind. Empty when not even that fits.
/// Ensures   (1) never wider than `width`; (2) cut between code points
std::string cutToWidth(const std::string& text, double size, double width);

/// The text in lines of at most `width`, broken at blanks; what does not fit into `lines` is cut with an ellipsis, and
/// so is a word wider than a line.
/// Ensures   (1) no line wider than `width`; (2) at most `lines` of them
/// Requires  lines >= 1
std::vector<std::string> wrappedToWidth(const std::string& text, double size, double width, std::size_t lines);

}  // namespace wend::sheets
