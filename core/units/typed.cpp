#include "core/units/typed.h"

#include <algorithm>

#include "core/base/text.h"

namespace wend::units {

std::optional<double> typedNumber(std::string_view text) {
  std::string digits(base::trimmed(text));
  if (std::count(digits.begin(), digits.end(), ',') == 1 && digits.find('.') == std::string::npos)
    std::replace(digits.begin(), digits.end(), ',', '.');
  return base::readNumber(digits);
}

std::string asTyped(std::string_view text) {
  constexpr std::size_t kMost = 40;
  std::string shown;
  std::size_t length = 0;
  for (std::size_t i = 0; i < text.size() && length < kMost; ++length) {
    std::size_t end = i + 1;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
    const std::string_view letter = text.substr(i, end - i);
    shown += base::isUtf8(letter) ? std::string(letter) : "?";
    i = end;
  }
  return "\"" + shown + (base::columns(text) > kMost ? "\u2026" : "") + "\"";
}

}  // namespace wend::units
