/// The words after `wend VERB`: operands, options, and what is wrong with them.
///
/// Options may stand before or after operands, as `--name value` or `--name=value`; `--` ends them; `-` is an operand;
/// a minus followed by a digit or a point is a negative number and an operand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace wend::app {

struct Option {
  std::string name;         ///< "--from"
  std::string placeholder;  ///< "T", or empty for a switch
  std::string help;
};

class Arguments {
 public:
  /// Fails on an option that is not among `options` (nearest name suggested), on one without its value, and on one
  /// given twice. `-o` is short for `--output`, `-h` for `--help`.
  static base::Result<Arguments> parsed(const std::vector<std::string>& words, const std::vector<Option>& options);

  const std::vector<std::string>& operands() const { return operands_; }
  bool has(const std::string& option) const { return text(option).has_value(); }
  std::optional<std::string> text(const std::string& option) const;

  /// The option's value as a finite number in [least, most], `otherwise` when it is absent.
  base::Result<double> number(const std::string& option, double otherwise, double least, double most,
                              const std::string& unit = {}) const;
  /// The same for an operand. Requires index < operands().size().
  base::Result<double> operandNumber(std::size_t index, const std::string& name, double least, double most,
                                     const std::string& unit = {}) const;

 private:
  std::vector<std::string> operands_;
  std::vector<std::pair<std::string, std::string>> options_;
};

}  // namespace wend::app
