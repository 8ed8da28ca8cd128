#include "ui/details/over_focal_words.h"

#include <algorithm>

#include "core/base/text.h"

namespace wend::ui {

namespace {

base::Problem notRead(std::string_view part) {
  return {"bad-over-zoom", "/lens", "\"" + std::string(part) + "\"", "a number, or rows of value and focal length",
          "type it like 80, or like 80 at 24, 65 at 70"};
}

/// Scaled back through its text, so that what was shown reads as the same value.
double shown(double value, double scale) {
  return *base::readNumber(base::fixed(value * scale, 6));
}

std::optional<plan::FocalValue> rowFrom(std::string_view part, double scale) {
  const std::size_t at = part.find("at");
  if (at == std::string_view::npos) return std::nullopt;
  const auto value = base::readNumber(base::trimmed(part.substr(0, at))),
             focal = base::readNumber(base::trimmed(part.substr(at + 2)));
  if (!value || !focal) return std::nullopt;
  return plan::FocalValue{*focal, *value / scale};
}

}  // namespace

std::string overFocalText(const plan::OverFocal& over, double scale) {
  if (over.rows.empty()) return base::shortest(shown(over.everywhere, scale));
  std::string text;
  for (const plan::FocalValue& row : over.rows)
    text += (text.empty() ? "" : ", ") + base::shortest(shown(row.value, scale)) + " at " + base::shortest(row.focal);
  return text;
}

base::Result<plan::OverFocal> overFocalFrom(const std::string& text, double scale) {
  if (const auto everywhere = base::readNumber(base::trimmed(text))) return plan::OverFocal(*everywhere / scale);
  std::vector<plan::FocalValue> rows;
  for (const auto& part : base::split(text, ',')) {
    const auto row = rowFrom(base::trimmed(part), scale);
    if (!row) return notRead(base::trimmed(part));
    rows.push_back(*row);
  }
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.focal < b.focal; });
  return plan::OverFocal(std::move(rows));
}

}  // namespace wend::ui
