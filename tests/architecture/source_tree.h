/// The project's sources as text, for tests that read them.
#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace wend::architecture {

struct Source {
  std::string path;  ///< from the project's root, "core/optics/frame.h"
  std::string text;

  std::vector<std::string> lines() const {
    std::vector<std::string> all;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) all.push_back(line);
    return all;
  }
  bool isHeader() const { return path.ends_with(".h"); }
  /// "core/optics", "ui/canvas", "app/verbs".
  std::string module() const {
    const std::size_t first = path.find('/'), second = path.find('/', first + 1);
    return second == std::string::npos ? path.substr(0, first) : path.substr(0, second);
  }
};

/// Every .h and .cpp below the folders.
inline std::vector<Source> sourcesOf(const std::vector<std::string>& folders) {
  std::vector<Source> all;
  const std::filesystem::path root = WEND_SOURCE_DIR;
  for (const auto& folder : folders) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
      const auto ending = entry.path().extension();
      if (ending != ".h" && ending != ".cpp") continue;
      std::ifstream in(entry.path());
      std::ostringstream text;
      text << in.rdbuf();
      all.push_back({std::filesystem::relative(entry.path(), root).string(), text.str()});
    }
  }
  return all;
}

/// The paths a source includes from the project, and the names in angle brackets.
struct Includes {
  std::vector<std::string> own, foreign;
};
inline Includes includesOf(const Source& source) {
  Includes includes;
  for (const auto& line : source.lines()) {
    if (!line.starts_with("#include ")) continue;
    const char open = line[9];
    const std::size_t end = line.find(open == '<' ? '>' : '"', 10);
    (open == '<' ? includes.foreign : includes.own).push_back(line.substr(10, end - 10));
  }
  return includes;
}

}  // namespace wend::architecture
