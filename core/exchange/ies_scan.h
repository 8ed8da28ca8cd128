/// Walks photometric data text line by line or number by number, knowing at which line it is.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace wend::exchange {

class IesScan {
 public:
  struct Piece {
    std::string_view text;
    int line = 1;  ///< counted from 1, whatever ends lines here: CR LF, LF or CR
  };

  /// A mark of UTF-8 at the start is passed over. The bytes must outlive the scan.
  explicit IesScan(std::string_view bytes);

  /// The rest of this line, without its end. Nothing at the end of the text.
  std::optional<Piece> line();
  /// The next run of anything but blanks, commas and line ends (and the end-of-text sign of old systems).
  std::optional<Piece> word();
  int lineNumber() const { return line_; }

 private:
  void passLineEnd();
  std::string_view bytes_;
  std::size_t at_ = 0;
  int line_ = 1;
};

/// Bytes of any origin as UTF-8 that can be shown: kept where they are UTF-8, else read as Latin-1; signs that cannot
/// be shown become question marks, and what is longer than `most` bytes ends in three points.
std::string shownText(std::string_view bytes, std::size_t most = 60);

}  // namespace wend::exchange
