#include "core/sheets/labels.h"

#include <algorithm>
#include <cmath>

#include "core/sheets/text_width.h"

namespace wend::sheets {

using geometry::Align;
using geometry::Point;
using geometry::Text;
using geometry::Vec;

void Writing::add(Writing more) {
  for (auto& label : more.labels) labels.push_back(std::move(label));
  reserved.insert(reserved.end(), more.reserved.begin(), more.reserved.end());
}

void Writing::keepFree(Point middle, double half) {
  reserved.push_back({middle.x - half, middle.y - half, middle.x + half, middle.y + half});
}

namespace {

/// Above and below the baseline, in heights of the type.
constexpr double kAscent = 0.85, kDescent = 0.3, kBeside = 2;

Reserved boxAt(const Text& text, double width) {
  const double left = text.align == Align::left     ? text.at.x
                      : text.align == Align::centre ? text.at.x - width / 2
                                                    : text.at.x - width;
  return {left - kBeside, text.at.y - text.size * kAscent, left + width + kBeside, text.at.y + text.size * kDescent};
}

/// A line from an anchor to its label.
struct Leader {
  Point from, to;
};

/// Whether the line passes through the box: cut by its four sides one after the other.
bool crosses(const Leader& line, const Reserved& box) {
  double enter = 0, leave = 1;
  const auto cut = [&](double start, double way, double low, double high) {
    if (std::abs(way) < 1e-9) return start > low && start < high;
    const double a = (low - start) / way, b = (high - start) / way;
    enter = std::max(enter, std::min(a, b)), leave = std::min(leave, std::max(a, b));
    return enter < leave;
  };
  const Vec way = line.to - line.from;
  return cut(line.from.x, way.x, box.left, box.right) && cut(line.from.y, way.y, box.top, box.bottom);
}

/// Right, left, above and below before the corners, those before what lies between.
constexpr double kBearings[] = {0, 180, 270, 90, 315, 225, 45, 135, 338, 202, 22, 158, 292, 248, 68, 112};
constexpr std::size_t kBeside8 = 8;
constexpr double kStep = 12, kLeadsFrom = 10;

class Placer {
 public:
  Placer(geometry::Drawing& drawing, std::vector<Reserved> reserved)
      : drawing_(drawing), taken_(std::move(reserved)), reserved_(taken_.size()) {}

  void place(Label label) {
    const double width = typeWidth(label.text.text, label.text.size);
    if (tryAt(label, width, label.text.at)) return;
    for (const Point other : label.others)
      if (tryAt(label, width, other)) return;
    if (label.anchor) tryAround(label, width);
  }

  void draw() {
    for (const auto& leader : leaders_) {
      geometry::Path path;
      path.rings = {{leader.from, leader.to}};
      path.stroke = {.tone = geometry::Tone::ink2, .width = 1, .dash = {}};
      drawing_.add(path);
    }
    for (auto& text : texts_) drawing_.add(std::move(text));
  }

 private:
  bool free(const Reserved& box) const {
    return box.left >= 0 && box.top >= 0 && box.right <= drawing_.width && box.bottom <= drawing_.height &&
           std::none_of(taken_.begin(), taken_.end(), [&](const auto& other) { return overlap(other, box); }) &&
           std::none_of(leaders_.begin(), leaders_.end(), [&](const auto& line) { return crosses(line, box); });
  }

  void take(Text text, const Reserved& box) {
    taken_.push_back(box);
    texts_.push_back(std::move(text));
  }

  bool tryAt(const Label& label, double width, Point at) {
    Text text = label.text;
    text.at = at;
    const Reserved box = boxAt(text, width);
    if (!free(box)) return false;
    take(std::move(text), box);
    return true;
  }

  void tryAround(const Label& label, double width) {
    const LabelAnchor& anchor = *label.anchor;
    for (double out = 0; out <= anchor.reach; out += kStep)
      for (std::size_t i = 0; i < (out > 0 ? std::size(kBearings) : kBeside8); ++i)
        if (tryBeside(label, width, kBearings[i], anchor.clear + kBeside + out, out >= kLeadsFrom)) return;
  }

  bool tryBeside(const Label& label, double width, double bearing, double out, bool leads) {
    const LabelAnchor& anchor = *label.anchor;
    Text text = label.text;
    const Vec towards{std::cos(geometry::radians(bearing)), std::sin(geometry::radians(bearing))};
    const double high = text.size * (kAscent + kDescent);
    const Point middle = anchor.at + Vec{towards.x * (out + width / 2 + kBeside), towards.y * (out + high / 2)};
    text.align = Align::left;
    text.at = {middle.x - width / 2, middle.y - high / 2 + text.size * kAscent};
    const Reserved box = boxAt(text, width);
    if (!free(box)) return false;
    if (leads) {
      const Leader leader = leaderTo(anchor, box);
      // Lines pass over signs, which are larger than they are, but not through words.
      if (std::any_of(taken_.begin() + static_cast<std::ptrdiff_t>(reserved_), taken_.end(),
                      [&](const auto& other) { return crosses(leader, other); }))
        return false;
      leaders_.push_back(leader);
    }
    take(std::move(text), box);
    return true;
  }

  /// From the rim of the sign to the nearest point of the box.
  static Leader leaderTo(const LabelAnchor& anchor, const Reserved& box) {
    const Point to{std::clamp(anchor.at.x, box.left, box.right), std::clamp(anchor.at.y, box.top, box.bottom)};
    const double far = geometry::distance(anchor.at, to);
    return {anchor.at + (to - anchor.at) * (std::min(anchor.clear, far) / std::max(far, 1e-9)), to};
  }

  geometry::Drawing& drawing_;
  std::vector<Reserved> taken_;
  std::size_t reserved_;  ///< of the taken, what is signs and not words
  std::vector<Leader> leaders_;
  std::vector<Text> texts_;
};

}  // namespace

Reserved boxOf(const Text& text) {
  return boxAt(text, typeWidth(text.text, text.size));
}

bool overlap(const Reserved& a, const Reserved& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

void placeLabels(geometry::Drawing& drawing, std::vector<Label> labels, std::vector<Reserved> reserved) {
  std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.rank < b.rank; });
  Placer placer(drawing, std::move(reserved));
  for (auto& label : labels) placer.place(std::move(label));
  placer.draw();
}

}  // namespace wend::sheets
