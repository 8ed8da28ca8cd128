// The set on the plan: floor against void, walls in poche, openings and leaves, pieces, mirrors, kerbs, names.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/labels.h"
#include "core/sheets/plan_view.h"
#include "core/sheets/text_width.h"
#include "core/sheets/text_words.h"

namespace wend::sheets {

using namespace geometry;
using answers::Take;

namespace {

/// What hides a standing person is hatched; lower things are outlines only.
constexpr double kHidesPerson = 1.6;

class SetPainter {
 public:
  SetPainter(const Take& take, const PlanView& view, double t)
      : take_(take), plan_(take.plan()), view_(view), now_(take.scene().at(t)), drawing_(view.sheet()) {}

  Layer drawn() {
    for (const auto& area : plan_.set.areas) drawStep(area);
    for (const auto& prism : take_.scene().prisms()) drawPrism(prism);
    for (const auto& pane : take_.scene().glass()) drawPane(pane);
    for (const auto& prism : now_.parked()) prism.surface == sight::Surface::glass ? drawPane(prism) : drawPrism(prism);
    for (const auto& piece : now_.moving()) drawMoving(piece);
    for (const auto& mirror : now_.mirrors()) drawMirror(mirror);
    for (const auto& leaf : now_.leaves()) drawLeaf(leaf);
    for (const auto& shelter : plan_.shelters) drawShelter(shelter);
    for (const auto& gear : plan_.gear) drawGear(gear);
    nameThings();
    return {std::move(drawing_), std::move(writing_)};
  }

 private:
  std::vector<Point> picture(std::span<const Point> points) const {
    std::vector<Point> ring;
    for (const Point p : points) ring.push_back(view_.toPicture(p));
    return ring;
  }

  void drawStep(const plan::Area& area) {
    if (!area.step) return;
    auto ring = picture(answers::outlineOf(area.shape));
    for (const double width : {5.0, 2.6}) {
      Path kerb;
      kerb.rings = {ring};
      kerb.closed = true;
      kerb.stroke = {.tone = width > 3 ? Tone::line2 : Tone::page, .width = width, .dash = {}};
      drawing_.add(kerb);
    }
  }

  static double heightAbove(const sight::Prism& prism) { return prism.bottom > 1.0 ? 0 : prism.top; }

  void drawPrism(const sight::Prism& prism) {
    if (prism.form == sight::Prism::Form::sheet) return drawSheet(prism);
    const bool wall = prism.source.owner == sight::Owner::wall;
    if (wall && prism.bottom > 1.0) return drawHeader(prism);
    const bool hides = heightAbove(prism) >= kHidesPerson;
    const Stroke edge{.tone = Tone::edge, .width = wall ? 1.25 : 1, .dash = {}};
    std::vector<Fill> fills = {{hides || wall ? Tone::wall : Tone::raise}};
    if (hides) fills.push_back({Tone::hatch, wall ? Pattern::hatchWall : Pattern::hatchTall});
    for (const Fill& fill : fills) drawFootprint(prism, fill, {});
    drawFootprint(prism, {}, edge);
  }

  void drawFootprint(const sight::Prism& prism, const Fill& fill, const Stroke& stroke) {
    if (prism.form == sight::Prism::Form::disc) {
      drawing_.add(Circle{view_.toPicture(prism.centre), prism.radius * view_.pxPerMetre, fill, stroke});
      return;
    }
    Path path;
    path.rings = {picture(take_.scene().corners(prism))};
    path.closed = true;
    path.fill = fill;
    path.stroke = stroke;
    drawing_.add(path);
  }

  /// On its way it hides nothing, and is drawn so.
  void drawMoving(const sight::MovingPiece& piece) {
    const Stroke dashed{.tone = Tone::edge, .width = 1.25, .dash = {5, 4}};
    if (piece.radius > 0) {
      drawing_.add(Circle{view_.toPicture(piece.points.front()), piece.radius * view_.pxPerMetre, {}, dashed});
      return;
    }
    Path path;
    path.rings = {picture(piece.points)};
    path.closed = piece.closed;
    path.stroke = dashed;
    drawing_.add(path);
  }

  /// The wall above a head: only its two faces, dashed.
  void drawHeader(const sight::Prism& prism) {
    drawFootprint(prism, {}, {.tone = Tone::line2, .width = 1, .dash = {4, 3}});
  }

  void drawSheet(const sight::Prism& prism) {
    Path path;
    path.rings = {{view_.toPicture(prism.sheet.a), view_.toPicture(prism.sheet.b)}};
    path.stroke = {.tone = Tone::edge, .width = 2, .dash = {}};
    drawing_.add(path);
  }

  void drawLines(Point a, Point b, std::initializer_list<double> offsets, double width) {
    const Point from = view_.toPicture(a), to = view_.toPicture(b);
    if (distance(from, to) < 1) return;
    const Vec aside = left(unit(to - from));
    for (const double offset : offsets) {
      Path path;
      path.rings = {{from + aside * offset, to + aside * offset}};
      path.stroke = {.tone = Tone::edge, .width = width, .dash = {}, .cap = Cap::flat};
      drawing_.add(path);
    }
  }

  void drawPane(const sight::Prism& pane) {
    if (pane.form == sight::Prism::Form::sheet) return drawLines(pane.sheet.a, pane.sheet.b, {-2, 0, 2}, 1);
    drawFootprint(pane, {}, {.tone = Tone::edge, .width = 1, .dash = {}});
  }

  void drawMirror(const sight::Mirror& mirror) {
    drawLines(mirror.face.a, mirror.face.b, {-1.5, 1.5}, 1.25);
    const Point a = view_.toPicture(mirror.face.a), b = view_.toPicture(mirror.face.b);
    const Vec along = unit(b - a), behind = left(along);
    Path ticks;
    for (double s = 4; s < distance(a, b); s += 6) {
      const Point foot = a + along * s + behind * 2;
      ticks.rings.push_back({foot, foot + behind * 5 - along * 4});
    }
    ticks.stroke = {.tone = Tone::edge, .width = 1, .dash = {}};
    drawing_.add(ticks);
  }

  void drawLeaf(const sight::Leaf& leaf) {
    const plan::Opening& opening = plan_.set.openings[static_cast<std::size_t>(leaf.tag)];
    if (opening.fill == plan::OpeningFill::open) return;
    if (opening.fill == plan::OpeningFill::curtain) return drawCurtain(leaf.panel);
    if (opening.fill == plan::OpeningFill::glass && !opening.moves)
      return drawLines(leaf.panel.a, leaf.panel.b, {-2.5, 0, 2.5}, 1);
    Path path;
    path.rings = {{view_.toPicture(leaf.panel.a), view_.toPicture(leaf.panel.b)}};
    path.stroke = {.tone = opening.fill == plan::OpeningFill::glass ? Tone::edge : Tone::ink, .width = 3, .dash = {}};
    drawing_.add(path);
    if (opening.moves && opening.moves->kind == plan::LeafKind::swing) drawSwing(leaf, *opening.moves);
  }

  /// The dashed quarter of what the leaf sweeps, from where it hangs now.
  void drawSwing(const sight::Leaf& leaf, const plan::LeafMoves& moves) {
    const Vec arm = leaf.panel.b - leaf.panel.a;
    Path arc;
    arc.rings.emplace_back();
    const double sign = (moves.towards == plan::WallSide::left) == (moves.hinge == plan::LeafHinge::start) ? 1 : -1;
    for (int i = 0; i <= 12; ++i)
      arc.rings[0].push_back(view_.toPicture(leaf.panel.a + turned(arm, -sign * radians(90.0 * i / 12))));
    arc.stroke = {.tone = Tone::line2, .width = 1, .dash = {4, 4}};
    drawing_.add(arc);
  }

  void drawCurtain(Segment panel) {
    const Point a = view_.toPicture(panel.a), b = view_.toPicture(panel.b);
    const Vec along = unit(b - a), aside = left(along);
    Path scallop;
    scallop.rings.emplace_back();
    for (double s = 0; s <= distance(a, b); s += 1)
      scallop.rings[0].push_back(a + along * s + aside * (2.5 * std::sin(s * 0.55)));
    scallop.stroke = {.tone = Tone::edge, .width = 1.6, .dash = {}};
    drawing_.add(scallop);
  }

  void drawShelter(const plan::Shelter& shelter) {
    const Point c = view_.toPicture(shelter.pos);
    const double half = std::max(16.0, shelter.radius * view_.pxPerMetre);
    for (const double side : {-1.0, 1.0}) {
      const double x = c.x + side * half;
      Path bracket;
      bracket.rings = {{{x - side * 4, c.y - 11}, {x, c.y - 11}, {x, c.y + 11}, {x - side * 4, c.y + 11}}};
      bracket.stroke = {.tone = Tone::crew, .width = 1.6, .dash = {}};
      drawing_.add(bracket);
      writing_.reserved.push_back({x - 4, c.y - 12, x + 4, c.y + 12});
    }
  }

  void drawGear(const plan::Gear& gear) {
    drawing_.add(Circle{view_.toPicture(gear.pos),
                        gear.radius * view_.pxPerMetre,
                        {Tone::raise},
                        {.tone = Tone::crew, .width = 1.25, .dash = {2, 3}}});
    const Point c = view_.toPicture(gear.pos);
    Label& label = addLabel({c.x, c.y + 4}, gear.name, Align::centre, Tone::ink3, LabelRank::detail);
    label.anchor = LabelAnchor{.at = c, .clear = gear.radius * view_.pxPerMetre};
  }

  Label& addLabel(Point at, const std::string& text, Align align, Tone tone, LabelRank rank, bool bold = false) {
    Text label{.at = at, .text = text, .size = 12, .bold = bold, .align = align, .tone = tone, .halo = Tone::page};
    return writing_.labels.emplace_back(Label{.text = std::move(label), .rank = rank});
  }

  static std::string upper(std::string text) {
    for (char& c : text)
      if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
  }

  std::string height(double metres) const { return shortLength(metres, unitOf(plan_)); }

  void nameThings() {
    for (const auto& room : plan_.set.rooms) nameRoom(room);
    for (const auto& piece : plan_.set.pieces) {
      if (piece.surface == plan::Surface::glass) continue;
      const auto outline = answers::outlineOf(piece.shape);
      const Extent extent = extentOf(outline);
      const Point c = view_.toPicture(lerp(extent.low, extent.high, 0.5));
      const bool line = std::holds_alternative<plan::Line>(piece.shape);
      const std::string heights = line ? height(piece.bottom) + "\u2013" + height(piece.top) : height(piece.top);
      Label& label = addLabel({c.x, c.y + (line ? 18 : 4)}, piece.name + " " + heights, Align::centre, Tone::ink2,
                              LabelRank::name);
      label.anchor = LabelAnchor{.at = c, .clear = 2, .reach = kNameReach};
    }
    for (const auto& gap : take_.scene().gaps()) nameOpening(gap);
  }

  /// In the upper left corner of the part in view, else elsewhere in the room, row by row.
  void nameRoom(const plan::Room& room) {
    const Extent extent = extentOf(room.outline);
    const Point high = view_.toPicture({extent.low.x, extent.high.y}),
                low = view_.toPicture({extent.high.x, extent.low.y});
    const std::string words = upper(room.name) + " " + height(room.ceiling);
    const double left = std::max(8.0, high.x + 8), top = std::max(18.0, high.y + 18);
    const double right = std::min(view_.width, low.x) - 8 - typeWidth(words, kSize);
    Label& label = addLabel({left, top}, words, Align::left, Tone::ink2, LabelRank::area, true);
    for (double y = top; y < std::min(view_.height, low.y) - 6; y += kRow)
      for (const double share : {0.0, 1.0, 0.5})
        if (right > left) label.others.push_back({lerp(left, right, share), y});
  }
  static constexpr double kSize = 12, kRow = 16, kNameReach = 36;

  void nameOpening(const sight::Gap& gap) {
    const plan::Opening& opening = plan_.set.openings[static_cast<std::size_t>(gap.tag)];
    const Point c = view_.toPicture(lerp(gap.course.front(), gap.course.back(), 0.5));
    std::string text = opening.name.empty() ? opening.id.text() : opening.name;
    for (const auto& key : opening.open)
      if (key.share > 0 && plan::secondsOf(plan_, key.time.at) > 0)
        text += " " + base::fixed(plan::secondsOf(plan_, key.time.at), 1);
    if (opening.sill > 0) text += " " + height(opening.sill) + "\u2013" + height(opening.head);
    Label& label = addLabel({c.x + 10, c.y - 8}, text, Align::left, Tone::ink, LabelRank::name);
    label.anchor = LabelAnchor{.at = c, .clear = 8, .reach = kNameReach};
  }

  const Take& take_;
  const plan::Plan& plan_;
  const PlanView& view_;
  sight::SceneAt now_;
  Drawing drawing_;
  Writing writing_;
};

}  // namespace

Layer setLayer(const Take& take, const PlanView& view, double t) {
  return SetPainter(take, view, t).drawn();
}

}  // namespace wend::sheets
