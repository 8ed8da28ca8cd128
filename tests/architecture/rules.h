/// What the layout of the code must keep to, as functions from a source to the complaints about it.
#pragma once

#include <algorithm>
#include <map>
#include <regex>
#include <set>

#include "tests/architecture/source_tree.h"

namespace wend::architecture {

using Complaints = std::vector<std::string>;

/// What each module of core may include besides itself.
inline const std::map<std::string, std::set<std::string>>& allowedEdges() {
  static const std::set<std::string> low = {"core/base", "core/units", "core/geometry"};
  static const auto with = [](std::set<std::string> more) {
    more.insert(low.begin(), low.end());
    return more;
  };
  static const std::set<std::string> algorithms = {"core/motion", "core/optics", "core/light", "core/sight",
                                                   "core/pulls",  "core/crew",   "core/drift"};
  static const auto all = [](std::set<std::string> more) {
    more.insert(algorithms.begin(), algorithms.end());
    return with(more);
  };
  static const std::map<std::string, std::set<std::string>> edges = {
      {"core/base", {}},
      {"core/units", {"core/base"}},
      {"core/geometry", {"core/base", "core/units"}},
      {"core/motion", low},
      {"core/optics", low},
      {"core/light", low},
      {"core/sight", low},
      {"core/pulls", low},
      {"core/crew", with({"core/sight"})},
      {"core/drift", with({"core/crew"})},
      {"core/plan", low},
      {"core/file", with({"core/plan"})},
      {"core/snags", all({"core/plan"})},
      {"core/answers", all({"core/plan", "core/snags"})},
      {"core/sheets", all({"core/plan", "core/snags", "core/answers"})},
      {"core/exchange", all({"core/plan", "core/snags", "core/answers", "core/sheets", "core/file"})},
  };
  return edges;
}

inline bool isCore(const Source& source) {
  return source.path.starts_with("core/");
}

inline Complaints againstLayers(const Source& source) {
  Complaints complaints;
  const std::string from = source.module();
  for (const auto& path : includesOf(source).own) {
    const std::string to = Source{path, ""}.module();
    const bool core = to.starts_with("core/");
    if (isCore(source) && !core) complaints.push_back(source.path + " includes " + path + ": core includes core only");
    if (source.path.starts_with("ui/") && to.starts_with("app"))
      complaints.push_back(source.path + " includes " + path + ": ui never includes app");
    if (!isCore(source) || !core || to == from) continue;
    const auto edges = allowedEdges().find(from);
    if (edges == allowedEdges().end() || !edges->second.count(to))
      complaints.push_back(source.path + " includes " + path + ": " + from + " may not see " + to);
  }
  return complaints;
}

/// Core knows no Qt, and JSON only where files are read and written.
inline Complaints againstForeign(const Source& source) {
  Complaints complaints;
  if (!isCore(source)) return complaints;
  static const std::regex qt("^Q[A-Z].*");
  const bool mayJson = (source.module() == "core/file" || source.module() == "core/exchange") && !source.isHeader();
  for (const auto& name : includesOf(source).foreign) {
    if (std::regex_match(name, qt)) complaints.push_back(source.path + " includes " + name + ": no Qt in core");
    if (name.starts_with("nlohmann") && !mayJson && name != "nlohmann/json_fwd.hpp")
      complaints.push_back(source.path + " includes " + name + ": JSON stays in file and exchange");
  }
  return complaints;
}

/// Faces of the window meet in ui/document only; the painter and the plan's hits are shared tools.
inline Complaints againstViews(const Source& source) {
  static const std::set<std::string> faces = {"ui/canvas", "ui/score", "ui/frame", "ui/details"};
  Complaints complaints;
  if (!faces.count(source.module())) return complaints;
  for (const auto& path : includesOf(source).own) {
    const std::string to = Source{path, ""}.module();
    if (faces.count(to) && to != source.module() && path != "ui/canvas/drawing_painter.h")
      complaints.push_back(source.path + " includes " + path + ": faces do not know each other");
  }
  return complaints;
}

inline constexpr std::size_t kMostLines = 600, kMostFunctionLines = 60;

inline Complaints againstLength(const Source& source) {
  const std::size_t lines = source.lines().size();
  if (lines <= kMostLines) return {};
  return {source.path + " has " + std::to_string(lines) + " lines, at most " + std::to_string(kMostLines)};
}

/// How much deeper in braces a line leaves the code, strings and characters left out.
inline int depthChange(const std::string& line) {
  static const std::regex quoted(R"("(\\.|[^"\\])*"|'(\\.|[^'\\])*'|//.*)");
  const std::string bare = std::regex_replace(line, quoted, "");
  return static_cast<int>(std::count(bare.begin(), bare.end(), '{') - std::count(bare.begin(), bare.end(), '}'));
}

/// A line that ends in `) {`, with qualifiers between, and is no branch or loop opens a body; braces tell where it
/// ends.
inline Complaints againstLongFunctions(const Source& source) {
  Complaints complaints;
  static const std::regex opens(R"(.*\)( const| noexcept| override| mutable| &&?| -> [\w:<>]+)* \{$)");
  static const std::regex branches(R"(^[ }]*(if|else|for|while|switch|do)\b.*)");
  const auto lines = source.lines();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].size() > 160 || !std::regex_match(lines[i], opens) || std::regex_match(lines[i], branches)) continue;
    int depth = 1;
    std::size_t end = i + 1;
    while (end < lines.size() && (depth += depthChange(lines[end])) > 0) ++end;
    if (end - i + 1 > kMostFunctionLines)
      complaints.push_back(source.path + ":" + std::to_string(i + 1) + " is a function of " +
                           std::to_string(end - i + 1) + " lines");
  }
  return complaints;
}

/// The doors for numbers, colours and files are one each.
inline Complaints againstWords(const Source& source) {
  struct Ban {
    std::regex word;
    const char* why;
    std::set<std::string> except;
  };
  static const std::vector<Ban> bans = {
      {std::regex(R"(\b(strtod|strtof|atof|sscanf|stod|stof)\s*\()"), "numbers are read through core/base/text.h", {}},
      {std::regex(R"(std::ofstream|\bfopen\s*\(|QSaveFile \w|[Ff]ile\w*\.open\(.*WriteOnly)"),
       "files are written by ui/document/save only",
       {"ui/document/save.cpp", "ui/document/save.h"}},
      {std::regex(R"(QColor\(\s*[0-9"]|Qt::(red|green|blue|white|black|gray|yellow)\b)"),
       "colours stand in core/sheets/theme.cpp",
       {}},
      {std::regex(R"(QString::number\([^;]*'[gGeE]')"), "numbers are written through core/base/text.h", {}},
  };
  Complaints complaints;
  const auto lines = source.lines();
  for (const auto& ban : bans) {
    if (ban.except.count(source.path)) continue;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (!lines[i].starts_with("//") && std::regex_search(lines[i], ban.word))
        complaints.push_back(source.path + ":" + std::to_string(i + 1) + ": " + ban.why);
  }
  return complaints;
}

/// Core answers the same for the same plan: it knows no clock, locale, environment, chance of its own or console.
inline Complaints againstSurroundings(const Source& source) {
  static const std::regex word(
      R"(std::chrono|std::locale|setlocale|\bgetenv\s*\(|random_device|std::(cout|cerr|cin)\b|stringstream|\bthread_local\b)");
  Complaints complaints;
  if (!isCore(source)) return complaints;
  const auto lines = source.lines();
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (std::regex_search(lines[i], word))
      complaints.push_back(source.path + ":" + std::to_string(i + 1) + ": core knows nothing of where it runs");
  return complaints;
}

/// What the top level may hold besides dot files and build folders.
inline bool belongsAtTop(const std::string& name) {
  static const std::set<std::string> expected = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "app", "core", "ui",
                                                 "resources",      "samples",   "tests"};
  return expected.count(name) || name.starts_with(".") || name.starts_with("build");
}

/// Of what computes: a header that promises something names the tests of its promises, unless the one of its own name
/// lies beside it. `isThere` tells whether a path is one of the project's.
template <class IsThere>
Complaints againstUntestedLaws(const Source& source, IsThere isThere) {
  static const std::set<std::string> computing = {"core/base",   "core/units",  "core/geometry",
                                                  "core/motion", "core/optics", "core/light",
                                                  "core/sight",  "core/pulls",  "core/crew"};
  if (!source.isHeader() || !computing.contains(source.module()) || source.text.find("Ensures") == std::string::npos)
    return {};
  if (isThere("tests/" + source.path.substr(0, source.path.size() - 2) + "_test.cpp")) return {};
  Complaints complaints;
  bool named = false;
  for (const std::string& line : source.lines()) {
    if (!line.starts_with("/// Tests ")) continue;
    std::istringstream words(line.substr(10));
    for (std::string path; words >> path; named = true) {
      if (path.ends_with(',')) path.pop_back();
      if (!isThere(path)) complaints.push_back(source.path + ": there is no " + path);
    }
  }
  if (!named) complaints.push_back(source.path + ": says what it ensures and not where that is tested");
  return complaints;
}

/// A header says in its first line what it is about.
inline Complaints againstMuteHeaders(const Source& source) {
  if (!source.isHeader() || source.text.starts_with("///")) return {};
  return {source.path + " does not say what it is about in its first line"};
}

}  // namespace wend::architecture
