#include "app/command_line.h"

#include <algorithm>
#include <cstdio>
#include <exception>

#include "app/help.h"
#include "app/interrupts.h"
#include "app/verbs/common.h"
#include "core/base/text.h"

namespace wend::app {

using base::Problem;

namespace {

/// Words before a lone `--`: what may be an option.
std::vector<std::string> beforeEndOfOptions(const std::vector<std::string>& words) {
  return {words.begin(), std::find(words.begin(), words.end(), "--")};
}

bool holds(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

const Verb* verbNamed(const std::string& name) {
  const auto verb = std::find_if(verbs().begin(), verbs().end(), [&](const Verb& v) { return v.name == name; });
  return verb == verbs().end() ? nullptr : &*verb;
}

/// Only what cannot be meant for a verb of today or tomorrow.
bool looksLikePlan(const std::string& word) {
  return word.ends_with(".wend") || word.find('/') != std::string::npos;
}

Exit printed(const std::string& text) {
  return handedOut(Arguments(), text);
}

Exit unknownVerb(const std::string& word) {
  if (word.starts_with("-"))
    return refused(
        Problem{"unknown-option", word, "an option before any verb", "a verb first", "see wend --help for the verbs"});
  std::vector<std::string> names = {"help"};
  for (const Verb& verb : verbs()) names.push_back(verb.name);
  const auto nearest = base::nearestWord(word, names);
  return refused(Problem{"unknown-verb", word, "a verb that Wend does not have", "",
                         nearest ? "did you mean " + *nearest + "?" : "see wend --help for the verbs"});
}

Exit helped(const std::vector<std::string>& words) {
  if (words.empty()) return printed(helpText());
  if (const Verb* verb = verbNamed(words.front())) return printed(helpText(*verb));
  return words.front().starts_with("-") || looksLikePlan(words.front()) ? printed(helpText())
                                                                        : unknownVerb(words.front());
}

Exit ran(const Verb& verb, const std::vector<std::string>& words) {
  if (!verb.run)
    return refused(Problem{"not-yet", verb.name, "a verb that this version does not do yet", "",
                           "see wend --help for those it does"});
  const auto arguments = Arguments::parsed(words, verb.options);
  if (!arguments) return refused(arguments.problems());
  const auto count = operandsCount(*arguments, verb);
  if (!count) return refused(count.problems());
  return verb.run(*arguments);
}

Exit understood(std::vector<std::string> words) {
  const auto options = beforeEndOfOptions(words);
  if (!words.empty() && words.front() == "help") return helped({words.begin() + 1, words.end()});
  if (holds(options, "--help") || holds(options, "-h")) return helped(words);
  if (!words.empty() && words.front() == "--version") return printed(versionText());
  if (words.empty()) return ran(*verbNamed("open"), {});
  if (looksLikePlan(words.front())) return ran(*verbNamed("open"), words);
  const Verb* verb = verbNamed(words.front());
  if (!verb) return unknownVerb(words.front());
  words.erase(words.begin());
  return ran(*verb, words);
}

}  // namespace

Exit answered(const std::vector<std::string>& words) {
  endQuietlyOnInterrupts();
  try {
    return understood(words);
  } catch (const std::bad_alloc&) {
    std::fputs("wend: not enough memory for this plan; close other programs or make it smaller\n", stderr);
  } catch (const std::exception&) {
    std::fputs("wend: an internal failure; please report it with the command and the plan\n", stderr);
  }
  return Exit::internal;
}

}  // namespace wend::app
