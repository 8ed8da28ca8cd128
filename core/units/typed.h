/// What every reader of typed text needs: numbers with either decimal mark, and text quoted back to whoever typed it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace wend::units {

/// A finite number whose one decimal mark may be a point or a comma, blanks at its ends ignored: "3,2", "-90".
std::optional<double> typedNumber(std::string_view text);

/// `text` in quotation marks, cut after 40 characters, never inside one. Requires nothing: bytes that are no UTF-8 come
/// out as "?".
std::string asTyped(std::string_view text);

}  // namespace wend::units
