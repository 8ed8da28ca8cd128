#include "app/arguments.h"

#include <algorithm>

#include "core/base/text.h"

namespace wend::app {

using base::Problem;
using base::Result;

namespace {

bool isOption(const std::string& word) {
  if (word.size() < 2 || word[0] != '-') return false;
  const char next = word[1];
  return !(next == '.' || (next >= '0' && next <= '9'));
}

std::string longName(const std::string& name) {
  if (name == "-o") return "--output";
  if (name == "-h") return "--help";
  return name;
}

Problem unknownOption(const std::string& name, const std::vector<Option>& options) {
  std::vector<std::string> names;
  for (const auto& option : options) names.push_back(option.name);
  const auto nearest = base::nearestWord(name, names);
  return {"unknown-option", name, "an option this verb does not have", "",
          nearest ? "did you mean " + *nearest + "?" : "see --help for its options"};
}

Result<double> numberIn(const std::string& text, const std::string& name, double least, double most,
                        const std::string& unit) {
  const auto value = base::readNumber(text);
  if (value && *value >= least && *value <= most) return *value;
  const std::string expected =
      "a number from " + base::shortest(least) + " to " + base::shortest(most) + (unit.empty() ? "" : " " + unit);
  if (value) return Problem{"out-of-range", name, text, expected, "check the number and its unit"};
  return Problem{"not-a-number", name, "\"" + text + "\"", expected, "write it like 12.5"};
}

}  // namespace

Result<Arguments> Arguments::parsed(const std::vector<std::string>& words, const std::vector<Option>& options) {
  Arguments arguments;
  bool optionsOver = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (optionsOver || !isOption(word)) {
      arguments.operands_.push_back(word);
      continue;
    }
    if (word == "--") {
      optionsOver = true;
      continue;
    }
    const std::size_t equals = word.find('=');
    const std::string name = longName(word.substr(0, equals));
    const auto option = std::find_if(options.begin(), options.end(), [&](const Option& o) { return o.name == name; });
    if (option == options.end()) return unknownOption(name, options);
    if (arguments.has(name)) return Problem{"option-twice", name, "it twice", "it once", "leave one of them out"};
    const bool takesValue = !option->placeholder.empty();
    if (!takesValue && equals != std::string::npos)
      return Problem{"option-value", name, "a value", "none", "write " + name + " alone"};
    if (takesValue && equals == std::string::npos && i + 1 == words.size())
      return Problem{"option-value", name, "nothing after it", option->placeholder, option->help};
    std::string value;
    if (takesValue) value = equals != std::string::npos ? word.substr(equals + 1) : words[++i];
    arguments.options_.emplace_back(name, value);
  }
  return arguments;
}

std::optional<std::string> Arguments::text(const std::string& option) const {
  for (const auto& [name, value] : options_)
    if (name == option) return value;
  return std::nullopt;
}

Result<double> Arguments::number(const std::string& option, double otherwise, double least, double most,
                                 const std::string& unit) const {
  const auto given = text(option);
  if (!given) return otherwise;
  return numberIn(*given, option, least, most, unit);
}

Result<double> Arguments::operandNumber(std::size_t index, const std::string& name, double least, double most,
                                        const std::string& unit) const {
  return numberIn(operands_.at(index), name, least, most, unit);
}

}  // namespace wend::app
