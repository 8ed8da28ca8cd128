#include "core/units/angle.h"

#include <cmath>

#include "core/base/text.h"
#include "core/units/typed.h"

namespace wend::units {

namespace {

constexpr double kMostDegrees = 36000;

}  // namespace

base::Result<double> angleFrom(std::string_view typed) {
  std::string_view text = base::trimmed(typed);
  for (const std::string_view unit : {"\u00b0", "degrees", "deg"})
    if (text.ends_with(unit)) {
      text = base::trimmed(text.substr(0, text.size() - unit.size()));
      break;
    }
  const auto value = typedNumber(text);
  const std::string found = asTyped(typed);
  if (!value) return base::Problem{"bad-angle", "", found, "degrees such as 12.5 or -90", "type a plain number"};
  if (std::abs(*value) > kMostDegrees)
    return base::Problem{"out-of-range", "", found, "an angle within 100 full turns", "check the decimal mark"};
  return *value;
}

}  // namespace wend::units
