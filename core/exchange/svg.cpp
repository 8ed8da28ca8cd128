#include "core/exchange/svg.h"

#include <array>
#include <cmath>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/check.h"
#include "core/base/text.h"

namespace wend::exchange {
namespace {

using geometry::Pattern;
using geometry::Point;
using geometry::Tone;
using sheets::Rgb;

std::string number(double value) {
  const double rounded = std::round(value * 1000) / 1000;
  return base::shortest(rounded == 0 ? 0 : rounded);
}

/// Rounded down to a thousandth, also in single precision, which some readers use: one that rounds a picture's size up
/// to whole pixels must not find one more.
std::string millimetres(double value) {
  double thousandths = std::floor(value * 1000 + 1e-6);
  if (double(float(thousandths / 1000)) > value) thousandths -= 1;
  return base::shortest(thousandths / 1000) + "mm";
}

std::string hex(Rgb colour) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text = "#";
  for (const int part : {int(colour.red), int(colour.green), int(colour.blue)}) {
    text += digits[std::size_t(part / 16)];
    text += digits[std::size_t(part % 16)];
  }
  return text;
}

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + std::string(value) + "\"";
}

std::string attribute(std::string_view name, double value) {
  return attribute(name, number(value));
}

/// XML 1.0 has no way to write control characters, so they become the replacement character.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (static_cast<unsigned char>(c) < 0x20 && c != '\t')
      out += "\xEF\xBF\xBD";
    else
      out += c;
  }
  return out;
}

std::string pathData(const std::vector<std::vector<Point>>& rings, bool closed) {
  std::string data;
  for (const auto& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      data += (i == 0 ? "M" : "L") + number(ring[i].x) + " " + number(ring[i].y);
    if (closed && !ring.empty()) data += "Z";
  }
  return data;
}

constexpr std::array kPatternNames{"plain",      "dots",        "quincunx", "sparse", "wave",   "hatch-wall",
                                   "hatch-tall", "hatch-cover", "seen",     "ticks",  "rising", "falling"};

/// One drawing on its way to text: definitions and body grow side by side.
class Writer {
 public:
  Writer(const geometry::Drawing& drawing, const SvgStyle& style)
      : drawing_(drawing), style_(style), inks_(style.theme) {
    for (const auto& shape : drawing.shapes) std::visit([this](const auto& s) { add(s); }, shape);
    WEND_CHECK(openClips_ == 0);
  }

  std::string text() const {
    const double mmPerUnit = style_.unit == sheets::Unit::mm ? 1 : sheets::kMmPerPx;
    const std::string width = number(drawing_.width), height = number(drawing_.height);
    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"" +
                      attribute("width", millimetres(drawing_.width * mmPerUnit)) +
                      attribute("height", millimetres(drawing_.height * mmPerUnit)) +
                      attribute("viewBox", "0 0 " + width + " " + height) + ">\n";
    if (!style_.title.empty()) out += "<title>" + escaped(style_.title) + "</title>\n";
    if (!definitions_.empty()) out += "<defs>\n" + definitions_ + "</defs>\n";
    if (style_.ground != Tone::none)
      out += "<rect" + attribute("width", width) + attribute("height", height) +
             attribute("fill", hex(sheets::rgbOf(style_.ground, style_.theme))) + "/>\n";
    return out + body_ + "</svg>\n";
  }

 private:
  void add(const geometry::Path& path) {
    const std::string data = pathData(path.rings, path.closed);
    if (data.empty()) return;
    const std::string rule = path.fill.tone == Tone::none ? "" : attribute("fill-rule", "evenodd");
    body_ += "<path" + attribute("d", data) + rule + looks(path.fill, path.stroke) + "/>\n";
  }

  void add(const geometry::Circle& circle) {
    body_ += "<circle" + attribute("cx", circle.centre.x) + attribute("cy", circle.centre.y) +
             attribute("r", circle.radius) + looks(circle.fill, circle.stroke) + "/>\n";
  }

  void add(const geometry::Box& box) {
    body_ += "<rect" + attribute("x", box.topLeft.x) + attribute("y", box.topLeft.y) + attribute("width", box.width) +
             attribute("height", box.height) + (box.radius > 0 ? attribute("rx", box.radius) : "") +
             looks(box.fill, box.stroke) + "/>\n";
  }

  void add(const geometry::Text& text) {
    if (text.tone == Tone::none) return;
    WEND_CHECK(base::isUtf8(text.text));
    constexpr std::array kAnchors{"start", "middle", "end"};
    const std::string at = number(text.at.x) + " " + number(text.at.y);
    body_ += "<text" + attribute("x", text.at.x) + attribute("y", text.at.y) +
             attribute("font-family", "B612, sans-serif") + attribute("font-size", text.size) +
             (text.bold ? attribute("font-weight", "700") : "") +
             (text.align == geometry::Align::left ? "" : attribute("text-anchor", kAnchors[std::size_t(text.align)])) +
             (text.turned == 0 ? "" : attribute("transform", "rotate(" + number(text.turned) + " " + at + ")")) +
             attribute("fill", hex(inks_.of(text.tone))) + halo(text) + attribute("xml:space", "preserve") + ">" +
             escaped(text.text) + "</text>\n";
  }

  void add(const geometry::BeginClip& clip) {
    const std::string id = "clip" + std::to_string(++clips_);
    definitions_ +=
        "<clipPath" + attribute("id", id) + "><path" + attribute("d", pathData({clip.ring}, true)) + "/></clipPath>\n";
    body_ += "<g" + attribute("clip-path", "url(#" + id + ")") + ">\n";
    ++openClips_;
  }

  void add(const geometry::EndClip&) {
    WEND_CHECK(openClips_ > 0);
    --openClips_;
    body_ += "</g>\n";
  }

  std::string looks(const geometry::Fill& fill, const geometry::Stroke& stroke) {
    inks_.filled(fill);
    return fillLooks(fill) + strokeLooks(stroke);
  }

  std::string fillLooks(const geometry::Fill& fill) {
    if (fill.tone == Tone::none) return attribute("fill", "none");
    const std::string strength = fill.strength < 1 ? attribute("fill-opacity", fill.strength) : "";
    if (fill.pattern == Pattern::plain) return attribute("fill", hex(inks_.of(fill.tone))) + strength;
    return attribute("fill", "url(#" + patternId(fill) + ")") + strength;
  }

  std::string strokeLooks(const geometry::Stroke& stroke) const {
    if (stroke.tone == Tone::none || stroke.width <= 0) return "";
    std::string dashes;
    for (const double length : stroke.dash) dashes += (dashes.empty() ? "" : " ") + number(length);
    return attribute("stroke", hex(inks_.of(stroke.tone))) + attribute("stroke-width", stroke.width) +
           (stroke.cap == geometry::Cap::round ? attribute("stroke-linecap", "round") : "") +
           attribute("stroke-linejoin", "round") + (dashes.empty() ? "" : attribute("stroke-dasharray", dashes)) +
           (stroke.strength < 1 ? attribute("stroke-opacity", stroke.strength) : "");
  }

  std::string halo(const geometry::Text& text) const {
    if (text.halo == Tone::none) return "";
    return attribute("stroke", hex(inks_.of(text.halo))) +
           attribute("stroke-width", sheets::haloWidth(text.size, style_.unit)) +
           attribute("stroke-linejoin", "round") + attribute("paint-order", "stroke");
  }

  std::string patternId(const geometry::Fill& fill) {
    const std::string colour = hex(inks_.of(fill.tone));
    const std::string id = kPatternNames[std::size_t(fill.pattern)] + ("-" + colour.substr(1));
    if (definitions_.find(attribute("id", id)) == std::string::npos) definitions_ += patternText(fill, id, colour);
    return id;
  }

  std::string patternText(const geometry::Fill& fill, const std::string& id, const std::string& colour) const {
    const sheets::Tile tile = sheets::tileOf(fill.pattern);
    const Point origin = drawing_.patternOrigin;
    const double scale = sheets::unitsPerPx(style_.unit);
    const std::string move = "translate(" + number(origin.x) + " " + number(origin.y) + ")";
    return "<pattern" + attribute("id", id) + attribute("patternUnits", "userSpaceOnUse") +
           attribute("width", base::shortest(tile.width)) + attribute("height", base::shortest(tile.height)) +
           attribute("patternTransform", move + (scale == 1 ? "" : " scale(" + base::shortest(scale) + ")")) + ">" +
           tileMarks(tile, colour) + "</pattern>\n";
  }

  /// Marks that reach over the tile's edge are cut there, so the neighbours' parts are written too.
  static std::string tileMarks(const sheets::Tile& tile, const std::string& colour) {
    std::string marks;
    for (const auto& dot : tile.dots)
      marks += "<circle" + attribute("cx", dot.centre.x) + attribute("cy", dot.centre.y) + attribute("r", dot.radius) +
               attribute("fill", colour) + "/>";
    std::string data;
    for (const auto& stroke : tile.strokes)
      for (const int x : {-1, 0, 1})
        for (const int y : {-1, 0, 1}) data += pathData({moved(stroke, x * tile.width, y * tile.height)}, false);
    if (!data.empty())
      marks += "<path" + attribute("d", data) + attribute("fill", "none") + attribute("stroke", colour) +
               attribute("stroke-width", tile.strokeWidth) + attribute("stroke-linecap", "square") + "/>";
    return marks;
  }

  static std::vector<Point> moved(std::vector<Point> points, double x, double y) {
    for (Point& p : points) p = {p.x + x, p.y + y};
    return points;
  }

  const geometry::Drawing& drawing_;
  const SvgStyle& style_;
  sheets::Inks inks_;
  std::string definitions_, body_;
  int clips_ = 0, openClips_ = 0;
};

}  // namespace

std::string svgText(const geometry::Drawing& drawing, const SvgStyle& style) {
  return Writer(drawing, style).text();
}

}  // namespace wend::exchange
