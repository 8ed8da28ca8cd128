#include "core/units/length.h"

#include <array>
#include <cmath>
#include <optional>

#include "core/base/text.h"
#include "core/units/typed.h"

namespace wend::units {

namespace {

using base::Problem;

struct Spelling {
  std::string_view text;
  char sign;
};

/// Marks that keyboards and word processors put for feet, inches and fractions, in the one spelling read below.
constexpr std::array<Spelling, 4> kFootMarks{{{"\u2032", '\''}, {"\u2019", '\''}, {"\u2033", '"'}, {"\u201d", '"'}}};

void replaceAll(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

std::string plainSpelling(std::string_view typed) {
  std::string text(base::trimmed(typed));
  for (const auto& mark : kFootMarks) replaceAll(text, mark.text, std::string_view(&mark.sign, 1));
  replaceAll(text, "''", "\"");
  replaceAll(text, "\u00bd", " 1/2");
  replaceAll(text, "\u00bc", " 1/4");
  replaceAll(text, "\u00be", " 3/4");
  return text;
}

std::string lowerCase(std::string_view text) {
  std::string lower(text);
  for (char& c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

/// Unsigned decimal digits with at most one mark, point or comma.
std::optional<double> decimal(std::string_view text) {
  return text.find_first_not_of("0123456789.,") == std::string_view::npos ? typedNumber(text) : std::nullopt;
}

std::optional<double> wholeNumber(std::string_view text) {
  return text.find_first_not_of("0123456789") == std::string_view::npos ? base::readNumber(text) : std::nullopt;
}

/// "1/2": a proper fraction.
std::optional<double> fraction(std::string_view text) {
  const auto parts = base::split(text, '/');
  if (parts.size() != 2) return std::nullopt;
  const auto over = wholeNumber(parts[0]);
  const auto under = wholeNumber(parts[1]);
  if (!over || !under || *under <= 0 || *over >= *under) return std::nullopt;
  return *over / *under;
}

/// "6", "6.5", "1/2" or "6 1/2".
std::optional<double> mixedNumber(std::string_view text) {
  const std::string_view all = base::trimmed(text);
  if (const auto value = decimal(all)) return value;
  if (const auto value = fraction(all)) return value;
  const std::size_t gap = all.find(' ');
  if (gap == std::string_view::npos) return std::nullopt;
  const auto whole = wholeNumber(all.substr(0, gap));
  const auto part = fraction(base::trimmed(all.substr(gap)));
  if (!whole || !part) return std::nullopt;
  return *whole + *part;
}

struct Suffix {
  std::string_view text;
  double metres;
};
constexpr std::array<Suffix, 12> kSuffixes{{{"mm", 0.001},
                                            {"cm", 0.01},
                                            {"metres", 1},
                                            {"metre", 1},
                                            {"m", 1},
                                            {"feet", kMetresPerFoot},
                                            {"foot", kMetresPerFoot},
                                            {"ft", kMetresPerFoot},
                                            {"inches", kMetresPerInch},
                                            {"inch", kMetresPerInch},
                                            {"in", kMetresPerInch},
                                            {"\"", kMetresPerInch}}};

/// "3.2 m", "320cm", "10.5ft", "6 1/2\"".
std::optional<double> withSuffix(std::string_view text) {
  const std::string lower = lowerCase(text);
  for (const auto& suffix : kSuffixes) {
    if (!lower.ends_with(suffix.text)) continue;
    const auto number = mixedNumber(std::string_view(lower).substr(0, lower.size() - suffix.text.size()));
    if (number) return *number * suffix.metres;
  }
  return std::nullopt;
}

/// "10'", "10'6\"", "10'-6 1/2\"", "10'6".
std::optional<double> feetAndInches(std::string_view text) {
  const std::size_t mark = text.find('\'');
  if (mark == std::string_view::npos) return std::nullopt;
  const std::string_view feetText = base::trimmed(text.substr(0, mark));
  std::string_view rest = base::trimmed(text.substr(mark + 1));
  if (rest.empty()) {
    const auto feet = decimal(feetText);
    return feet ? std::optional(*feet * kMetresPerFoot) : std::nullopt;
  }
  if (rest.front() == '-') rest.remove_prefix(1);
  if (!rest.empty() && rest.back() == '"') rest.remove_suffix(1);
  const auto feet = wholeNumber(feetText);
  const auto inches = mixedNumber(rest);
  if (!feet || !inches || *inches >= 12) return std::nullopt;
  return (*feet * 12 + *inches) * kMetresPerInch;
}

std::string unitWord(LengthUnit unit) {
  return unit == LengthUnit::metres ? "m" : "ft";
}

Problem ambiguous(std::string_view text, const std::string& one, const std::string& other) {
  return {"ambiguous-length", "", asTyped(text), one + " or " + other, "type the one that is meant"};
}

/// The two readings of a number with both decimal marks: "1,234.5" is 1234.5 or 1.2345 ("1,234,567" likewise).
std::optional<Problem> twoMarks(std::string_view text, std::string_view typed, LengthUnit assumed) {
  const std::size_t first = text.find_first_of(".,");
  const std::size_t last = text.find_last_of(".,");
  if (first == last) return std::nullopt;
  std::string grouped, joined;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool mark = text[i] == '.' || text[i] == ',';
    if (!mark || i == last) grouped += mark ? '.' : text[i];
    if (!mark || i == first) joined += mark ? '.' : text[i];
  }
  if (!decimal(grouped) || !decimal(joined)) return std::nullopt;
  return ambiguous(typed, grouped + " " + unitWord(assumed), joined + " " + unitWord(assumed));
}

/// The two readings of two bare numbers: "10 6" is 10'6" or 10.6; "12 1/2" is feet or inches.
std::optional<Problem> twoNumbers(std::string_view text, std::string_view typed, LengthUnit assumed) {
  const std::size_t gap = text.find(' ');
  if (gap == std::string_view::npos) return std::nullopt;
  const std::string whole(text.substr(0, gap));
  const std::string part(base::trimmed(text.substr(gap)));
  if (!wholeNumber(whole)) return std::nullopt;
  if (fraction(part)) return ambiguous(typed, whole + " " + part + " " + unitWord(assumed), whole + " " + part + "\"");
  if (!wholeNumber(part)) return std::nullopt;
  return ambiguous(typed, whole + "'" + part + "\"", whole + "." + part + " " + unitWord(assumed));
}

std::optional<double> metresFrom(std::string_view text, LengthUnit assumed) {
  if (const auto bare = decimal(text)) return *bare * (assumed == LengthUnit::metres ? 1 : kMetresPerFoot);
  if (const auto feet = feetAndInches(text)) return feet;
  return withSuffix(text);
}

std::string metresText(double metres, double step) {
  return base::fixed(std::round(metres / step) * step, 2) + " m";
}

std::string feetText(double metres, double stepInches) {
  const auto halves = std::llround(std::round(std::abs(metres) / kMetresPerInch / stepInches) * stepInches * 2);
  const std::string sign = metres < 0 && halves > 0 ? "-" : "";
  const auto feet = halves / 24;
  const auto inches = halves % 24 / 2;
  return sign + std::to_string(feet) + "'-" + std::to_string(inches) + (halves % 2 != 0 ? "\u00bd" : "") + "\"";
}

struct TapeStep {
  double below, metres, inches;
};
constexpr std::array<TapeStep, 4> kTapeSteps{{{1, 0.01, 0.5}, {3, 0.02, 1}, {8, 0.05, 2}, {15, 0.25, 12}}};

TapeStep stepAt(double metres, LengthStep step) {
  if (step == LengthStep::fine) return kTapeSteps.front();
  for (const auto& row : kTapeSteps)
    if (std::abs(metres) < row.below) return row;
  return {kLongestMetres, 0.5, 12};
}

}  // namespace

base::Result<double> lengthFrom(std::string_view typed, LengthUnit assumed) {
  const std::string plain = plainSpelling(typed);
  const bool minus = plain.starts_with('-');
  const std::string_view text = base::trimmed(std::string_view(plain).substr(minus ? 1 : 0));
  if (const auto problem = twoMarks(text, typed, assumed)) return *problem;
  if (const auto problem = twoNumbers(text, typed, assumed)) return *problem;
  const auto metres = metresFrom(text, assumed);
  const std::string found = asTyped(typed);
  if (!metres)
    return Problem{"bad-length", "", found, "a length such as 3.2, 320 cm or 10'6\"", "type a number with a unit"};
  if (*metres > kLongestMetres)
    return Problem{"out-of-range", "", found, "a length within 10 km", "check the unit and the decimal mark"};
  return minus ? -*metres : *metres;
}

double tapeStep(double metres, LengthUnit unit) {
  const TapeStep row = stepAt(metres, LengthStep::tape);
  return unit == LengthUnit::metres ? row.metres : row.inches * kMetresPerInch;
}

std::string lengthText(double metres, LengthUnit unit, LengthStep step) {
  if (std::isinf(metres)) return base::fixed(metres, 0);
  const TapeStep row = stepAt(metres, step);
  return unit == LengthUnit::metres ? metresText(metres, row.metres) : feetText(metres, row.inches);
}

}  // namespace wend::units
