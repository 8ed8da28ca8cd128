/// A verb of the command line: what it takes, what it says of itself, what it does.
#pragma once

#include <string>
#include <vector>

#include "app/arguments.h"

namespace wend::app {

/// What the program answers to the shell.
enum class Exit { fine = 0, snags = 1, unusable = 2, internal = 3 };

struct Verb {
  std::string name;
  std::string operands;  ///< "PLAN TIME"
  std::string does;      ///< one line
  std::string example;   ///< a command that runs on the samples
  std::vector<Option> options;
  Exit (*run)(const Arguments&);  ///< null: not yet
};

/// Every verb, in the order help lists them. One file each in this folder; a new one gets a line here.
const std::vector<Verb>& verbs();

extern const Verb kOpen, kCheck, kAt, kTable, kPulls, kClear, kSpot, kRoutes, kDrift, kSheet, kDraw, kChart, kExport,
    kNew;

/// Options that several verbs share.
inline const Option kJson{"--json", "", "one JSON object with SI values instead of text"};
inline const Option kOutput{"--output", "FILE", "write there instead of printing; - is standard output (also -o)"};
inline const Option kQuiet{"--quiet", "", "no progress on standard error"};
inline const Option kHelp{"--help", "", "this page (also -h)"};

}  // namespace wend::app
