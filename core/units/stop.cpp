#include "core/units/stop.h"

#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/units/typed.h"

namespace wend::units {

namespace {

/// Engraved full stops from k = -2 (two stops open of T1) on.
constexpr std::array<std::string_view, 17> kEngraved{"0.5", "0.7", "1",  "1.4", "2",  "2.8", "4",  "5.6", "8",
                                                     "11",  "16",  "22", "32",  "45", "64",  "90", "128"};
constexpr int kFirstEngraved = -2;

constexpr std::array<std::string_view, 3> kThirdSigns{"", "\u2153", "\u2154"};
constexpr std::array<std::string_view, 3> kThirdWords{"", "1/3", "2/3"};

/// Takes "⅓" or "1/3" off the end of `text` and returns how many thirds that was. A fraction needs a blank before it:
/// "41/3" is no stop.
int takeThirds(std::string_view& text) {
  for (int thirds = 1; thirds <= 2; ++thirds) {
    const auto i = static_cast<std::size_t>(thirds);
    if (text.ends_with(kThirdSigns[i])) {
      text = base::trimmed(text.substr(0, text.size() - kThirdSigns[i].size()));
      return thirds;
    }
    const std::string word = " " + std::string(kThirdWords[i]);
    if (text.ends_with(word)) {
      text = base::trimmed(text.substr(0, text.size() - word.size()));
      return thirds;
    }
  }
  return 0;
}

/// The full mark k stops from T1. Beyond the engraved ones it is the exact T-number, shortened.
std::string engraved(int k) {
  const int row = k - kFirstEngraved;
  if (row >= 0 && row < static_cast<int>(kEngraved.size()))
    return std::string(kEngraved[static_cast<std::size_t>(row)]);
  const double exact = std::exp2(k / 2.0);
  return base::fixed(exact, exact >= 10 ? 0 : 2);
}

}  // namespace

double exactStop(int thirds) {
  return std::exp2(thirds / 6.0);
}

int nearestThirds(double stop) {
  return static_cast<int>(std::lround(6 * std::log2(stop)));
}

double stopsOf(double tNumber) {
  return stopsBetween(1, tNumber);
}

double tNumberOf(double stops) {
  return closedBy(1, stops);
}

double stopsBetween(double from, double to) {
  return 2 * std::log2(to / from);
}

namespace {

bool hasFewFigures(double number) {
  return std::abs(10 * number - std::round(10 * number)) <= 1e-9;
}

/// A number as rings carry it, of one figure behind the point at most, with a third or two typed on it, or an exact
/// third; 3.0218 was worked out by somebody.
bool isMark(double stop) {
  constexpr double kRounding = 0.09, kExact = 1e-3;
  const double off = std::abs(stopsBetween(exactStop(nearestThirds(stop)), stop));
  const bool engraved = hasFewFigures(stop) || hasFewFigures(stop / exactStop(1)) || hasFewFigures(stop / exactStop(2));
  return off <= (engraved ? kRounding : kExact);
}

}  // namespace

double stopsBetweenMarks(double from, double to) {
  const int a = nearestThirds(from), b = nearestThirds(to);
  const bool marks = isMark(from) && isMark(to);
  return marks ? (b - a) / 3.0 : stopsBetween(from, to);
}

double closedBy(double stop, double stops) {
  return stop * std::exp2(stops / 2);
}

std::string stopText(double stop) {
  const int thirds = nearestThirds(stop);
  const int rest = (thirds % 3 + 3) % 3;
  return "T" + engraved((thirds - rest) / 3) + std::string(kThirdSigns[static_cast<std::size_t>(rest)]);
}

std::string stopsText(double stops) {
  const auto thirds = std::llround(3 * std::abs(stops));
  if (thirds == 0) return "0";
  const std::string whole = thirds < 3 ? "" : std::to_string(thirds / 3);
  return (stops < 0 ? "-" : "+") + whole + std::string(kThirdSigns[static_cast<std::size_t>(thirds % 3)]);
}

base::Result<double> stopFrom(std::string_view typed) {
  std::string_view text = base::trimmed(typed);
  const std::string found = asTyped(typed);
  if (text.starts_with('T') || text.starts_with('t')) text = base::trimmed(text.substr(1));
  const int thirds = takeThirds(text);
  const auto number = typedNumber(text);
  if (!number) return base::Problem{"bad-stop", "", found, "a stop such as T5.6 or 5.6 1/3", "type a T-number"};
  const double stop = *number * exactStop(thirds);
  if (!(stop >= kWidestStop && stop <= kClosedStop))
    return base::Problem{"out-of-range", "", found, "a stop from 0.5 to 128", "check the decimal mark"};
  return stop;
}

}  // namespace wend::units
