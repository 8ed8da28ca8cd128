#include "core/base/text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numeric>

#include "core/base/check.h"

namespace wend::base {

std::optional<double> readNumber(std::string_view text) {
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  if (text.empty() || (text.front() != '-' && text.front() != '.' && (text.front() < '0' || text.front() > '9')))
    return std::nullopt;
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::string fixed(double value, int decimals) {
  WEND_CHECK(!std::isnan(value) && decimals >= 0 && decimals <= 12);
  if (std::isinf(value)) return value > 0 ? "\u221e" : "-\u221e";
  char buffer[400];
  const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
  WEND_CHECK(error == std::errc());
  std::string text(buffer, end);
  if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string fixedUp(double value, int decimals) {
  const double unit = std::pow(10, decimals), rounding = 1e-9 * std::max(1.0, std::abs(value * unit));
  return fixed(std::isinf(value) ? value : std::ceil(value * unit - rounding) / unit, decimals);
}

std::string fixedDown(double value, int decimals) {
  const double unit = std::pow(10, decimals), rounding = 1e-9 * std::max(1.0, std::abs(value * unit));
  return fixed(std::isinf(value) ? value : std::floor(value * unit + rounding) / unit, decimals);
}

std::string shortest(double value) {
  WEND_CHECK(std::isfinite(value));
  char buffer[64];
  const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
  WEND_CHECK(error == std::errc());
  return std::string(buffer, end);
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  for (std::size_t from = 0;;) {
    const std::size_t to = text.find(separator, from);
    parts.emplace_back(text.substr(from, to == std::string_view::npos ? to : to - from));
    if (to == std::string_view::npos) return parts;
    from = to + 1;
  }
}

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string padRight(std::string_view text, std::size_t width) {
  const std::size_t have = columns(text);
  return std::string(text) + std::string(width > have ? width - have : 0, ' ');
}

std::string padLeft(std::string_view text, std::size_t width) {
  const std::size_t have = columns(text);
  return std::string(width > have ? width - have : 0, ' ') + std::string(text);
}

namespace {

/// Length of the well-formed sequence at the start of `text`, or 0. Table 3-7 of the Unicode Standard, chapter 3.
std::size_t sequenceLength(std::string_view text) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned>(static_cast<unsigned char>(text[i])) : 0u;
  };
  const auto tail = [&](std::size_t i) { return byte(i) >= 0x80 && byte(i) <= 0xBF; };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return tail(1) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;
    const unsigned high = lead == 0xED ? 0x9F : 0xBF;
    return byte(1) >= low && byte(1) <= high && tail(2) ? 3 : 0;
  }
  if (lead >= 0xF0 && lead <= 0xF4) {
    const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
    const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;
    return byte(1) >= low && byte(1) <= high && tail(2) && tail(3) ? 4 : 0;
  }
  return 0;
}

std::size_t editDistance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, change});
    }
  }
  return row[b.size()];
}

}  // namespace

bool isUtf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = sequenceLength(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

std::optional<std::string> nearestWord(std::string_view word, const std::vector<std::string>& words) {
  std::optional<std::string> best;
  std::size_t bestDistance = std::max<std::size_t>(1, (word.size() + 1) / 3) + 1;
  if (word.size() > 64) return best;
  for (const auto& candidate : words) {
    const std::size_t distance = editDistance(word, candidate);
    if (distance < bestDistance) {
      bestDistance = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace wend::base
