#include "core/sheets/text_width.h"

#include <algorithm>
#include <cstdint>

namespace wend::sheets {
namespace {

/// Thousandths of an em, from the blank to the tilde.
constexpr int kAscii[] = {
    350,  350, 400, 850, 550, 900, 700, 200, 450, 450, 550, 600, 250, 450, 300, 550,  // blank to /
    650,  650, 650, 650, 650, 650, 650, 650, 650, 650, 300, 250, 650, 500, 650, 550,  // 0 to ?
    1000, 650, 650, 600, 650, 600, 550, 650, 700, 300, 450, 600, 550, 900, 750, 800,  // @ to O
    600,  800, 650, 550, 600, 700, 650, 950, 650, 600, 600, 450, 550, 500, 750, 550,  // P to _
    550,  525, 600, 500, 600, 550, 400, 600, 600, 300, 300, 550, 350, 900, 600, 600,  // ` to o
    600,  600, 400, 450, 400, 600, 550, 750, 550, 550, 500, 649, 200, 600, 750,       // p to ~
};

struct Sign {
  std::uint32_t code;
  int width;
};
constexpr Sign kSigns[] = {
    {0x00B0, 300},  // degree
    {0x00B7, 250},  // middle dot
    {0x00BD, 750},  // a half
    {0x00D7, 800},  // times
    {0x2026, 750},  // ellipsis
    {0x2032, 250},  // prime
    {0x2033, 400},  // double prime
    {0x2153, 750},  // a third
    {0x2154, 750},  // two thirds
    {0x2192, 750},  // arrow
    {0x2212, 550},  // minus
    {0x221E, 850},  // infinity
};

int advanceOf(std::uint32_t code) {
  if (code >= 32 && code < 127) return kAscii[code - 32];
  for (const Sign& sign : kSigns)
    if (sign.code == code) return sign.width;
  return 600;
}

/// The code point that starts at `at`, which moves behind it.
std::uint32_t nextCode(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const std::uint32_t lead = byte(at);
  const std::size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
  std::uint32_t code = length == 1 ? lead : lead & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) code = (code << 6) | (byte(at + i) & 0x3FU);
  at += length;
  return code;
}

}  // namespace

double typeWidth(std::string_view text, double size) {
  int sum = 0;
  for (std::size_t at = 0; at < text.size();) sum += advanceOf(nextCode(text, at));
  return sum * size / 1000;
}

std::string cutToWidth(const std::string& text, double size, double width) {
  if (typeWidth(text, size) <= width) return text;
  const std::string dots = "\u2026";
  const double room = width - typeWidth(dots, size);
  if (room < 0) return {};
  std::size_t end = 0;
  for (std::size_t at = 0; at < text.size();) {
    nextCode(text, at);
    if (typeWidth(std::string_view(text).substr(0, at), size) > room) break;
    end = at;
  }
  while (end > 0 && text[end - 1] == ' ') --end;
  return text.substr(0, end) + dots;
}

std::vector<std::string> wrappedToWidth(const std::string& text, double size, double width, std::size_t lines) {
  std::vector<std::string> out;
  std::string rest = text;
  while (!rest.empty() && out.size() + 1 < lines && typeWidth(rest, size) > width) {
    std::size_t end = 0;
    for (std::size_t blank = rest.find(' '); blank != std::string::npos; blank = rest.find(' ', blank + 1)) {
      if (typeWidth(std::string_view(rest).substr(0, blank), size) > width) break;
      end = blank;
    }
    if (end == 0) end = std::min(rest.find(' '), rest.size());
    out.push_back(cutToWidth(rest.substr(0, end), size, width));
    rest = end < rest.size() ? rest.substr(end + 1) : std::string();
  }
  if (!rest.empty()) out.push_back(cutToWidth(rest, size, width));
  return out;
}

}  // namespace wend::sheets
