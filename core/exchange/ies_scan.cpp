#include "core/exchange/ies_scan.h"

#include "core/base/text.h"

namespace wend::exchange {
namespace {

constexpr std::string_view kLineEnds = "\r\n";
constexpr std::string_view kBetweenWords = " \t\v\f,\r\n\x1a";

std::string fromLatin1(std::string_view bytes) {
  std::string text;
  for (const char c : bytes) {
    const auto code = static_cast<unsigned char>(c);
    if (code < 0x80) {
      text += c;
    } else {
      text += static_cast<char>(0xC0 | (code >> 6));
      text += static_cast<char>(0x80 | (code & 0x3F));
    }
  }
  return text;
}

}  // namespace

IesScan::IesScan(std::string_view bytes) : bytes_(bytes) {
  if (bytes_.starts_with("\xEF\xBB\xBF")) at_ = 3;
}

void IesScan::passLineEnd() {
  if (at_ >= bytes_.size()) return;
  at_ += bytes_.substr(at_, 2) == "\r\n" ? 2 : 1;
  ++line_;
}

std::optional<IesScan::Piece> IesScan::line() {
  if (at_ >= bytes_.size()) return std::nullopt;
  const std::size_t end = std::min(bytes_.find_first_of(kLineEnds, at_), bytes_.size());
  const Piece piece{bytes_.substr(at_, end - at_), line_};
  at_ = end;
  passLineEnd();
  return piece;
}

std::optional<IesScan::Piece> IesScan::word() {
  while (at_ < bytes_.size() && kBetweenWords.find(bytes_[at_]) != std::string_view::npos) {
    if (kLineEnds.find(bytes_[at_]) != std::string_view::npos)
      passLineEnd();
    else
      ++at_;
  }
  if (at_ >= bytes_.size()) return std::nullopt;
  const std::size_t end = std::min(bytes_.find_first_of(kBetweenWords, at_), bytes_.size());
  const Piece piece{bytes_.substr(at_, end - at_), line_};
  at_ = end;
  return piece;
}

std::string shownText(std::string_view bytes, std::size_t most) {
  const bool cut = bytes.size() > most;
  std::string_view kept = bytes.substr(0, most);
  // A cut must not fall into a sign of several bytes, or text that was UTF-8 would be taken for Latin-1.
  while (cut && !kept.empty() && (static_cast<unsigned char>(bytes[kept.size()]) & 0xC0) == 0x80) kept.remove_suffix(1);
  std::string text = base::isUtf8(kept) ? std::string(kept) : fromLatin1(kept);
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = '?';
  return cut ? text + "..." : text;
}

}  // namespace wend::exchange
