/// The first two keys of every document: what it is, and which version of that.
#pragma once

#include <optional>
#include <string_view>

#include "core/base/problem.h"
#include "core/file/json_document.h"

namespace wend::file {

struct FormatStamp {
  std::string_view format;
  int version = 1;
  std::string_view what;  ///< "plan"
};

/// What keeps the document from being looked at any further: another kind of document, or a newer version, which this
/// program must not touch.
std::optional<base::Problem> otherFormat(JsonValue root, const FormatStamp& stamp);

}  // namespace wend::file
