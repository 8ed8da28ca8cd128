#include "app/help.h"

#include <QtGlobal>
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::app {

namespace {

constexpr const char* kIntroduction =
    "Wend plans a long single take: where the camera goes, whom it sees, who has to be out of\n"
    "the way, where the focus is and what the light does. For example:\n"
    "\n"
    "  wend open samples/first-batch.wend     the window\n"
    "  wend check samples/first-batch.wend    every problem of the file, then every snag\n"
    "\n";

constexpr const char* kTimes =
    "TIME   seconds from the start of the take (34.5), a timecode (00:00:34:12), or a beat and\n"
    "       an offset (b6, b6+5, b6-0.5)\n";

constexpr const char* kConventions =
    "\n"
    "`wend` alone opens the window; `wend PLAN` opens it on a plan whose name ends in .wend or holds\n"
    "a slash. PLAN is a file, or - for standard input.\n"
    "`wend help VERB` and `wend VERB --help` tell of one verb.\n"
    "\n"
    "Exit codes: 0 fine; 1 `check` found snags that stop the take; 2 the arguments or a file were not\n"
    "usable, with the reason on standard error; 3 an internal failure; 130 stopped by Ctrl-C.\n"
    "\n";

std::string shownName(const Option& option) {
  const std::string brief = option.name == "--output" ? "-o, " : option.name == "--help" ? "-h, " : "";
  return brief + option.name + (option.placeholder.empty() ? "" : " " + option.placeholder);
}

bool takesTime(const Verb& verb) {
  const auto words = base::split(verb.operands, ' ');
  const bool operand = std::find(words.begin(), words.end(), "TIME") != words.end();
  return operand || std::any_of(verb.options.begin(), verb.options.end(), [](const Option& option) {
           return option.placeholder == "TIME" || option.placeholder == "T";
         });
}

}  // namespace

std::string helpText() {
  std::string text = kIntroduction;
  std::size_t width = 0;
  for (const Verb& verb : verbs()) width = std::max(width, base::columns(verb.name + " " + verb.operands));
  for (const Verb& verb : verbs())
    text += "  wend " + base::padRight(verb.name + " " + verb.operands, width) + "   " + verb.does + "\n";
  return text + "\n" + kTimes + kConventions + sheets::kCaution + "\n";
}

std::string helpText(const Verb& verb) {
  std::string text = "wend " + verb.name + (verb.operands.empty() ? "" : " " + verb.operands) + "\n  " + verb.does +
                     "\n\nFor example:\n  " + verb.example + "\n";
  if (!verb.run) text += "\nThis version does not do it yet.\n";
  if (takesTime(verb)) text += std::string("\n") + kTimes;
  std::vector<Option> options = verb.options;
  options.push_back(kHelp);
  std::size_t width = 0;
  for (const Option& option : options) width = std::max(width, shownName(option).size());
  text += "\nOptions:\n";
  for (const Option& option : options)
    text += "  " + base::padRight(shownName(option), width) + "   " + option.help + "\n";
  return text;
}

std::string versionText() {
  return std::string("wend ") + WEND_VERSION + "\nQt " + qVersion() + "\nbuild " + WEND_BUILD_TYPE + "\n";
}

}  // namespace wend::app
