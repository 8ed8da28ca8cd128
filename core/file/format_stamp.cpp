#include "core/file/format_stamp.h"

#include "core/base/text.h"

namespace wend::file {

std::optional<base::Problem> otherFormat(JsonValue root, const FormatStamp& stamp) {
  using base::Problem;
  const std::string what(stamp.what), version = "version " + std::to_string(stamp.version);
  if (!root.isObject())
    return Problem{"wrong-type", "/", root.shown(), "an object with the " + what + "'s parts",
                   "check that this is a " + what};
  const auto format = root.member("format");
  if (!format || format->kind() != JsonKind::text || format->text() != stamp.format)
    return Problem{"wrong-format", "/format", format ? format->shown() : "nothing",
                   "\"" + std::string(stamp.format) + "\"", "check that this is a " + what};
  const auto found = root.member("version");
  const auto number = found ? base::readNumber(found->raw()) : std::nullopt;
  if (number && *number > stamp.version)
    return Problem{"newer-version", "/version", found->shown(), version,
                   "this " + what + " was saved by a newer Wend: open it with that one; the file was left as it is"};
  if (!number || *number != stamp.version)
    return Problem{"wrong-version", "/version", found ? found->shown() : "nothing", version,
                   "restore the version the file was saved with"};
  return std::nullopt;
}

}  // namespace wend::file
