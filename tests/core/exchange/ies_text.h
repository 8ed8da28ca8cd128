/// A small photometric file with everything in it by hand, and the ways in which others write the same.
#pragma once

#include <string>
#include <string_view>

namespace wend::exchange {

/// Four equal quarters; every candela counts 2 x 0.9.
inline const std::string kQuarters =
    "IESNA:LM-63-2002\r\n"
    "[TEST] REF-0001\r\n"
    "[TESTLAB] None, made by hand\r\n"
    "[ISSUEDATE] 01-JAN-2025\r\n"
    "[MANUFAC] None\r\n"
    "[OTHER] Numbers chosen for\r\n"
    "[MORE] checking by hand\r\n"
    "TILT=NONE\r\n"
    "1 -1 2.0 5 3 1 2 0.2 0.4 0\r\n"
    "0.9 1 100\r\n"
    "0 22.5 45 67.5 90\r\n"
    "0 45 90\r\n"
    "1000 900 600 250 0\r\n"
    "1000 850 500 150 0\r\n"
    "1000 800 400 50 0\r\n";

/// `text` with the first `from` as `to`. The text must hold it, or the test would test nothing.
inline std::string with(std::string text, std::string_view from, std::string_view to) {
  return text.replace(text.find(from), from.size(), to);
}

/// `text` with every `from` as `to`.
inline std::string withAll(std::string text, std::string_view from, std::string_view to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
    text.replace(at, from.size(), to);
  return text;
}

}  // namespace wend::exchange
