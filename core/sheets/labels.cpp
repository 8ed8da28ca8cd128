#include "core/sheets/labels.h"

#include <algorithm>

#include "core/base/text.h"

namespace wend::sheets {

Reserved boxOf(const geometry::Text& text) {
  const double width = 0.56 * text.size * static_cast<double>(base::columns(text.text));
  const double left = text.align == geometry::Align::left     ? text.at.x
                      : text.align == geometry::Align::centre ? text.at.x - width / 2
                                                              : text.at.x - width;
  return {left - 2, text.at.y - text.size * 0.85, left + width + 2, text.at.y + text.size * 0.3};
}

namespace {

bool overlap(const Reserved& a, const Reserved& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

}  // namespace

void placeLabels(geometry::Drawing& drawing, std::vector<Label> labels, std::vector<Reserved> reserved) {
  std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.rank < b.rank; });
  for (auto& label : labels) {
    const Reserved box = boxOf(label.text);
    const bool inside = box.left >= 0 && box.top >= 0 && box.right <= drawing.width && box.bottom <= drawing.height;
    const bool free = std::none_of(reserved.begin(), reserved.end(), [&](const auto& r) { return overlap(r, box); });
    if (!inside || !free) continue;
    reserved.push_back(box);
    drawing.add(std::move(label.text));
  }
}

}  // namespace wend::sheets
