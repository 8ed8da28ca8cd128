/// Numbers in and out of text without a locale: the one door for numbers that people or files write.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wend::base {

/// The whole of `text` as a finite decimal number ("-1.5", "2e3"); nothing for anything else, spaces included.
std::optional<double> readNumber(std::string_view text);

/// `value` with exactly `decimals` digits after the point, halves away from zero in the last binary digit's sense;
/// never "-0.00". Infinity prints as the sign for it (U+221E). Requires 0 <= decimals <= 12 and value not NaN.
std::string fixed(double value, int decimals);

/// The least number of so many digits that is no less than `value`, and the largest that is no more: for what has to be
/// reached, or not passed. A value that rounding alone keeps off such a number is it. As `fixed` otherwise.
std::string fixedUp(double value, int decimals);
std::string fixedDown(double value, int decimals);

/// The shortest text that reads back as exactly `value`. Requires finite.
std::string shortest(double value);

/// `text` without blanks at its ends.
std::string_view trimmed(std::string_view text);

/// `text` cut at each `separator`; "a,,b" gives three parts.
std::vector<std::string> split(std::string_view text, char separator);

/// The number of code points of valid UTF-8 `text`: its width in a fixed grid, near enough for tables.
std::size_t columns(std::string_view text);

/// Filled with blanks to `width` columns, on the right or on the left; longer text is left as it is.
std::string padRight(std::string_view text, std::size_t width);
std::string padLeft(std::string_view text, std::size_t width);

/// True when `text` is well-formed UTF-8 (no surrogates, no overlong forms).
bool isUtf8(std::string_view text);

/// The word of `words` nearest to `word` by edit distance, if at most a third of its letters differ: "did you mean".
std::optional<std::string> nearestWord(std::string_view word, const std::vector<std::string>& words);

}  // namespace wend::base
