/// A thing outside Wend that it cannot honour: a file, an argument, a typed value. Says where, what was found, what was
/// expected and what to do about it; `code` is stable and made for programs.
#pragma once

#include <string>
#include <vector>

namespace wend::base {

struct Problem {
  std::string code;      ///< kebab-case, stable: "missing-reference"
  std::string where;     ///< JSON pointer "/camera/marks/3/at", a line, an argument; may be empty
  std::string found;     ///< the value, cut to a readable length
  std::string expected;  ///< type and range
  std::string remedy;    ///< one sentence: what the reader can do
  bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

/// One line: "where: found X, expected Y; remedy (code)". Empty parts are left out.
std::string toText(const Problem& problem);

}  // namespace wend::base
