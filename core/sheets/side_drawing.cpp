#include "core/sheets/side_drawing.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/labels.h"
#include "core/sheets/text_tables.h"
#include "core/sheets/text_width.h"
#include "core/sheets/text_words.h"
#include "core/sheets/theme.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;
using answers::Instant;

namespace {

/// Px around what is drawn; with no title there is little room.
struct Margins {
  double left, right, above, below;
};
constexpr Margins kTitled{56, 56, 56, 48}, kUntitled{44, 14, 12, 28};
/// Px a metre at which people of a side elevation can be told from each other.
constexpr double kLegible = 45;
/// Metres under the lowest floor and over the lens that the picture shows at least.
constexpr double kUnder = 0.2, kOver = 1.2;
/// Of walls, metres: they end with the picture rather than make everything else small.
constexpr double kHighest = 3.2;

struct Heights {
  double low = 0, high = 0;
};

Heights heightsOf(const SideView& view) {
  Heights heights{0, view.lens + kOver};
  for (const auto& floor : view.floors) heights.low = std::min(heights.low, floor.height);
  for (const auto& person : view.people) heights.high = std::max(heights.high, person.top + 0.3);
  for (const auto& lamp : view.lamps) heights.high = std::max(heights.high, lamp.height + 0.3);
  for (const auto& thing : view.things) heights.high = std::max(heights.high, std::min(thing.top, kHighest));
  heights.low -= kUnder;
  return heights;
}

const Margins& marginsOf(const SidePicture& picture) {
  return picture.titled ? kTitled : kUntitled;
}
double roomAcross(const SidePicture& picture) {
  return picture.width - marginsOf(picture).left - marginsOf(picture).right;
}
double roomUp(const SidePicture& picture) {
  return picture.height - marginsOf(picture).above - marginsOf(picture).below;
}

class SidePainter {
 public:
  SidePainter(const Answers& answers, const Instant& instant, const SidePicture& picture)
      : plan_(answers.take->plan()),
        instant_(instant),
        unit_(unitOf(plan_)),
        view_(sideView(*answers.take, instant)),
        titled_(picture.titled),
        shown_(shownReach(view_, picture)),
        fit_(sideFit(view_, picture)),
        heights_(heightsOf(view_)) {
    drawing_.width = picture.width;
    drawing_.height = picture.height;
    drawing_.patternOrigin = fit_.origin;
  }

  Drawing drawn() {
    box({0, 0}, {drawing_.width, drawing_.height}, {Tone::window}, {});
    const Point low = px({-kBehind, heights_.low}), high = px({shown_, heights_.high});
    box({low.x, high.y}, {high.x, low.y}, {Tone::page}, {});
    drawing_.add(BeginClip{{{low.x, high.y}, {high.x, high.y}, {high.x, low.y}, {low.x, low.y}}});
    for (const auto& floor : view_.floors) drawFloor(floor);
    for (const auto& thing : view_.things)
      if (thing.near < shown_) drawThing(thing);
    drawEdges();
    for (const auto& graze : view_.grazes) drawGraze(graze);
    for (const auto& person : view_.people) drawPerson(person);
    for (const auto& lamp : view_.lamps)
      if (lamp.ahead < shown_) drawLamp(lamp);
    drawLens();
    drawing_.add(EndClip{});
    drawScales();
    if (titled_) drawTitle();
    placeLabels(drawing_, std::move(labels_));
    return std::move(drawing_);
  }

 private:
  Point px(Point metres) const { return fit_.toPicture(metres); }

  void box(Point topLeft, Point bottomRight, const Fill& fill, const Stroke& stroke) {
    drawing_.add(geometry::Box{.topLeft = topLeft,
                               .width = bottomRight.x - topLeft.x,
                               .height = bottomRight.y - topLeft.y,
                               .radius = 0,
                               .fill = fill,
                               .stroke = stroke});
  }

  void line(std::vector<Point> points, Tone tone, double width, std::vector<double> dash = {}) {
    Path path;
    path.rings = {std::move(points)};
    path.stroke = {.tone = tone, .width = width, .dash = std::move(dash)};
    drawing_.add(path);
  }

  Label& label(Point at, const std::string& text, LabelRank rank, Align align = Align::left, Tone tone = Tone::ink2) {
    return labels_.emplace_back(Label{
        .text = Text{.at = at, .text = text, .size = type::kLabel, .align = align, .tone = tone, .halo = Tone::page},
        .rank = rank});
  }

  static constexpr double kRow = 15;

  void drawFloor(const SideFloor& floor) {
    const Point from = px({floor.along.from, floor.height}), until = px({floor.along.until, heights_.low});
    box(from, until, {Tone::wall}, {});
    line({from, px({floor.along.until, floor.height})}, Tone::edge, stroke::kWay);
    if (floor.ceiling)
      line({px({floor.along.from, *floor.ceiling}), px({floor.along.until, *floor.ceiling})}, Tone::line2,
           stroke::kTag);
  }

  std::string nameOfThing(const SideThing& thing) const {
    const double from = floorUnder(thing.near);
    const std::string heights = thing.bottom > from + 0.05
                                    ? shortLength(thing.bottom, unit_) + "\u2013" + shortLength(thing.top, unit_)
                                    : shortLength(thing.top, unit_);
    return snags::nameOf(plan_, thing.id) + " " + heights;
  }

  double floorUnder(double along) const {
    for (const auto& floor : view_.floors)
      if (floor.along.contains(along)) return floor.height;
    return 0;
  }

  void drawThing(const SideThing& thing) {
    const bool glass = thing.kind == SideThing::Kind::glass, wall = thing.kind == SideThing::Kind::wall;
    const Point low = px({thing.near, thing.bottom}), high = px({thing.far, thing.top});
    const Stroke edge{.tone = Tone::edge, .width = stroke::kTag, .dash = {}};
    if (high.x - low.x < 1.5) {
      line({low, {low.x, high.y}}, Tone::edge, glass ? stroke::kHairline : stroke::kWay);
      if (thing.kind == SideThing::Kind::mirror) ticks(low.x, high.y, low.y);
    } else if (glass) {
      box({low.x, high.y}, {high.x, low.y}, {}, {.tone = Tone::edge, .width = stroke::kHairline, .dash = {}});
    } else {
      box({low.x, high.y}, {high.x, low.y}, {wall ? Tone::wall : Tone::raise}, {});
      if (wall) box({low.x, high.y}, {high.x, low.y}, {Tone::hatch, Pattern::hatchWall}, {});
      box({low.x, high.y}, {high.x, low.y}, {}, edge);
    }
    const double y = std::max(high.y, px({0, heights_.high}).y + 4) + 14;
    label({high.x + 5, y}, nameOfThing(thing), wall ? LabelRank::detail : LabelRank::name);
  }

  /// Hatching behind a mirror.
  void ticks(double x, double top, double bottom) {
    Path path;
    for (double y = top + 4; y < bottom; y += 6) path.rings.push_back({{x + 2, y}, {x + 7, y - 4}});
    path.stroke = {.tone = Tone::edge, .width = stroke::kHairline, .dash = {}};
    drawing_.add(path);
  }

  Point alongSlope(double slope, double along) const { return px({along, view_.lens + slope * along}); }

  /// The frame's edges, and the axis between them.
  void drawEdges() {
    for (const double slope : {view_.upper, view_.lower})
      line({alongSlope(slope, 0), alongSlope(slope, view_.closedAt.value_or(view_.reach))}, Tone::lens, stroke::kWedge);
    const double axis = std::tan(radians(std::clamp(instant_.camera.pupil.tilt, -89.0, 89.0)));
    line({alongSlope(axis, 0), alongSlope(axis, view_.reach)}, Tone::line2, stroke::kHairline, {8, 4, 2, 4});
  }

  void drawGraze(const SideGraze& graze) {
    const double until = std::min(view_.reach, graze.floorFrom.value_or(view_.reach));
    line({px(graze.corner), alongSlope(graze.slope, until)}, Tone::ink2, stroke::kTag, {6, 4});
    if (!graze.floorFrom || *graze.floorFrom > shown_) return;
    const Point foot = alongSlope(graze.slope, *graze.floorFrom);
    label({foot.x, foot.y + 16}, "floor from " + lengthText(plan_, *graze.floorFrom), LabelRank::snag, Align::centre,
          Tone::ink);
  }

  static std::string besideText(const plan::Plan& plan, double aside) {
    if (std::abs(aside) < 0.05) return "";
    return ", " + lengthText(plan, std::abs(aside)) + (aside > 0 ? " right" : " left");
  }

  void drawPerson(const SidePerson& person) {
    const Tone tone = person.performer ? performerTone(person.index) : Tone::crew;
    const Point low = px({person.ahead - person.radius, person.floor});
    const Point high = px({person.ahead + person.radius, person.top});
    box({low.x, high.y}, {high.x, low.y}, {Tone::page, Pattern::plain, 0.6},
        {.tone = tone, .width = stroke::kWay, .dash = {}});
    const double middle = (low.x + high.x) / 2;
    if (person.eyes) {
      const double y = px({0, *person.eyes}).y;
      line({{low.x, y}, {high.x, y}}, tone, stroke::kTag, {3, 3});
      drawPerformer(drawing_, {middle, y + 22}, person.index, performerLetter(plan_, person.index), 11);
    } else {
      drawCrew(drawing_, {middle, high.y + 22}, crewLabels(plan_)[person.index], false);
    }
    const std::string height = person.eyes ? "eyes " + lengthText(plan_, *person.eyes) : lengthText(plan_, person.top);
    Label& told = label({middle, high.y - 6},
                        lengthText(plan_, std::abs(person.ahead)) + besideText(plan_, person.aside) + ", " + height,
                        LabelRank::chosen, Align::centre, Tone::ink);
    // People close behind one another are told in rows, higher up.
    for (const double up : {kRow, 2 * kRow, 3 * kRow}) told.others.push_back({middle, high.y - 6 - up});
  }

  void drawLamp(const SideLamp& lamp) {
    const Point at = px({lamp.ahead, lamp.height});
    line({at, {at.x, px({0, heights_.high}).y}}, Tone::line2, stroke::kHairline);
    drawing_.add(Circle{at, 5, {Tone::raise}, {.tone = Tone::edge, .width = stroke::kTag, .dash = {}}});
    label({at.x + 9, at.y + 4},
          snags::nameOf(plan_, lamp.id) + " " + shortLength(lamp.height, unit_) + besideText(plan_, lamp.aside),
          LabelRank::name);
  }

  void drawLens() {
    const Point at = px({0, view_.lens});
    const double tilt = radians(instant_.camera.pupil.tilt);
    const Vec along{std::cos(tilt), -std::sin(tilt)}, up{std::sin(tilt), std::cos(tilt)};
    Path body;
    body.rings = {{at, at - along * 18 + up * 8, at - along * 26, at - along * 18 - up * 8}};
    body.closed = true;
    body.fill = {Tone::page};
    body.stroke = {.tone = Tone::lens, .width = stroke::kWay, .dash = {}};
    drawing_.add(body);
    line({at + up * 9, at - up * 9}, Tone::lens, stroke::kChosen);
    label({at.x - 4, at.y - 16}, "lens " + lengthText(plan_, view_.lens), LabelRank::playhead, Align::right, Tone::ink);
  }

  /// Metres or feet ahead under the picture, heights beside it.
  void drawScales() {
    const bool feet = unit_ == units::LengthUnit::feet;
    const double one = feet ? units::kMetresPerFoot : 1, step = feet ? one : 0.5;
    const double bottom = px({0, heights_.low}).y, left = px({-kBehind, 0}).x;
    const int every = fit_.pxPerMetre * one >= 40 ? 1 : 5;
    const double written = sayCut(bottom);
    for (int n = 0; n * one <= shown_; n += every) {
      const double x = px({n * one, 0}).x;
      line({{x, bottom}, {x, bottom + 6}}, Tone::line2, stroke::kHairline);
      if (n == 0 || x + type::kLabel < written)
        scaleText({x, bottom + 20}, std::to_string(n) + (n == 0 ? feet ? " ft ahead" : " m ahead" : ""), Align::centre);
    }
    // As many heights are written as lie a line of type apart.
    double lowest = bottom + type::kLabel;
    for (double n = std::ceil(heights_.low / step); n * step <= heights_.high; ++n) {
      const double height = n * step, y = px({0, height}).y;
      line({{left - 6, y}, {left, y}}, Tone::line2, stroke::kHairline);
      if (lowest - y < type::kLabel + 4 || (!feet && fit_.pxPerMetre < 40 && height != std::floor(height))) continue;
      lowest = y;
      scaleText({left - 9, y + 4}, feet ? base::fixed(n, 0) + "'" : base::fixed(height, 1), Align::right);
    }
  }

  /// Where the view goes on past the picture: a dashed edge, and how far it goes. Where those words begin, px.
  double sayCut(double bottom) {
    const double right = px({shown_, 0}).x;
    if (shown_ >= view_.reach) return std::numeric_limits<double>::infinity();
    line({{right, px({0, heights_.high}).y}, {right, bottom}}, Tone::ink2, stroke::kTag, {4, 4});
    const std::string words = "cut at " + lengthText(plan_, shown_) + " of " + lengthText(plan_, view_.reach);
    scaleText({right, bottom + 20}, words, Align::right);
    return right - typeWidth(words, type::kLabel);
  }

  void scaleText(Point at, const std::string& text, Align align) {
    drawing_.add(Text{.at = at, .text = text, .size = type::kLabel, .align = align, .tone = Tone::ink2});
  }

  void drawTitle() {
    const std::string words = "side at " + base::fixed(instant_.time, 1) + " s: " + sideWords(instant_);
    drawing_.add(Text{.at = {16, 26}, .text = words, .size = type::kBody, .bold = true, .tone = Tone::ink});
  }

  const plan::Plan& plan_;
  const Instant& instant_;
  units::LengthUnit unit_;
  SideView view_;
  bool titled_;
  double shown_;  ///< metres ahead
  SideFit fit_;
  Heights heights_;
  Drawing drawing_;
  std::vector<Label> labels_;
};

}  // namespace

double shownReach(const SideView& view, const SidePicture& picture) {
  // A cut that wins less than a quarter is not worth its words.
  constexpr double kPast = 1, kWorthIt = 1.25;
  const Heights heights = heightsOf(view);
  const double legible = std::min(kLegible, roomUp(picture) / (heights.high - heights.low));
  const double far = roomAcross(picture) / legible - kBehind;
  if (picture.titled || far >= view.reach) return view.reach;
  double last = kLeast - kPast;
  for (const auto& person : view.people) last = std::max(last, person.ahead);
  const double shown = std::max(far, last + kPast);
  return shown * kWorthIt < view.reach ? shown : view.reach;
}

SideFit sideFit(const SideView& view, const SidePicture& picture) {
  const Heights heights = heightsOf(view);
  const double room = roomUp(picture);
  SideFit fit;
  fit.pxPerMetre =
      std::min(roomAcross(picture) / (shownReach(view, picture) + kBehind), room / (heights.high - heights.low));
  // In the middle where the width is what limits.
  const double spare = room - (heights.high - heights.low) * fit.pxPerMetre;
  fit.origin = {marginsOf(picture).left + kBehind * fit.pxPerMetre,
                picture.height - marginsOf(picture).below - spare / 2 + heights.low * fit.pxPerMetre};
  return fit;
}

std::string sideWords(const Instant& instant) {
  return base::fixed(instant.lens->focal, 0) + " mm, " + base::fixed(instant.lens->vfov, 1) + "\u00b0 high, bearing " +
         base::fixed(unwrapped(instant.camera.pupil.bearing, 180), 0) + "\u00b0, tilt " +
         base::fixed(instant.camera.pupil.tilt, 1) + "\u00b0";
}

Drawing sideDrawing(const Answers& answers, const Instant& instant, const SidePicture& picture) {
  return SidePainter(answers, instant, picture).drawn();
}

std::optional<std::size_t> performerBeside(const SideView& view, const SidePicture& picture, Point at) {
  const SideFit fit = sideFit(view, picture);
  const SidePerson* nearest = nullptr;
  for (const SidePerson& person : view.people) {
    const Point low = fit.toPicture({person.ahead - person.radius, person.floor});
    const Point high = fit.toPicture({person.ahead + person.radius, person.top});
    const bool on = at.x >= low.x && at.x <= high.x && at.y >= high.y && at.y <= low.y;
    if (person.performer && on && (!nearest || person.ahead < nearest->ahead)) nearest = &person;
  }
  return nearest ? std::optional(nearest->index) : std::nullopt;
}

}  // namespace wend::sheets
