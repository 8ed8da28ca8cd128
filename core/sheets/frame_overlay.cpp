#include "core/sheets/frame_overlay.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/labels.h"
#include "core/sheets/text_width.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;
using answers::Instant;

namespace {

constexpr double kTagWidth = 104, kTagHeight = 40;
/// Somebody seen within so many seconds is announced.
constexpr double kSoon = 5;

class Overlay {
 public:
  Overlay(Drawing& drawing, const FrameFit& fit, const Answers& answers, const Instant& instant)
      : drawing_(drawing), fit_(fit), take_(*answers.take), plan_(take_.plan()), instant_(instant) {
    for (std::size_t i = 0; i < instant.performers.size(); ++i) addFace(i);
  }

  void draw() {
    box(1, {.tone = Tone::ink, .width = 1.6, .dash = {}});
    box(0.95, {.tone = Tone::ink3, .width = 1, .dash = {1, 4}});
    drawEyesAndHeadroom();
    const auto labels = crewLabels(plan_);
    for (std::size_t i = 0; i < instant_.crew.size(); ++i) drawCrewWords(instant_.crew[i], labels[i]);
    for (std::size_t i = 0; i < instant_.performers.size(); ++i)
      if (shown(instant_.performers[i])) drawTag(i);
  }

 private:
  double left() const { return fit_.centre.x - fit_.halfWidth; }
  double right() const { return fit_.centre.x + fit_.halfWidth; }
  double top() const { return fit_.centre.y - fit_.halfHeight; }
  double bottom() const { return fit_.centre.y + fit_.halfHeight; }

  static bool shown(const snags::PerformerAt& at) { return at.present && optics::shows(at.inFrame); }

  void addFace(std::size_t i) {
    const auto figure = shown(instant_.performers[i]) ? take_.figureAt(i, instant_.time) : std::nullopt;
    if (!figure) return;
    const auto frameBox = optics::boxInFrame(*figure, instant_.camera.pupil, instant_.lens->half);
    if (!frameBox) return;
    const FigureShape shape = figureShape(fit_, *frameBox, headShareOf(plan_.performers[i].stature, *figure));
    faces_.push_back({shape.faceLeft, shape.faceTop, shape.faceRight, shape.faceBottom});
  }

  void box(double share, const Stroke& stroke) {
    drawing_.add(Box{.topLeft = {fit_.centre.x - share * fit_.halfWidth, fit_.centre.y - share * fit_.halfHeight},
                     .width = 2 * share * fit_.halfWidth,
                     .height = 2 * share * fit_.halfHeight,
                     .radius = 0,
                     .fill = {},
                     .stroke = stroke});
  }
  void line(Point a, Point b, std::vector<double> dash = {}) {
    Path path;
    path.rings = {{a, b}};
    path.stroke = {.tone = Tone::ink2, .width = 1.25, .dash = std::move(dash)};
    drawing_.add(path);
  }

  static bool clear(const std::vector<Reserved>& boxes, const Reserved& place) {
    return std::none_of(boxes.begin(), boxes.end(), [&](const Reserved& other) { return overlap(other, place); });
  }
  bool free(const Reserved& place) const { return clear(faces_, place) && clear(taken_, place); }

  void word(Point at, const std::string& text, bool bold, Align align) {
    const double width = typeWidth(text, 12);
    const double x = align == Align::right ? at.x - width : align == Align::centre ? at.x - width / 2 : at.x;
    taken_.push_back({x - 3, at.y - 12, x + width + 3, at.y + 4});
    drawing_.add(
        Text{.at = at, .text = text, .size = 12, .bold = bold, .align = align, .tone = Tone::ink, .halo = Tone::page});
  }

  /// The line of the highest eyes in frame, and how much air is over that head.
  void drawEyesAndHeadroom() {
    const snags::PerformerAt* highest = nullptr;
    for (const auto& performer : instant_.performers)
      if (shown(performer) && (!highest || performer.frameTop > highest->frameTop)) highest = &performer;
    if (!highest || std::abs(highest->place.y) > 1) return;
    const double eyes = fit_.toPicture(highest->place).y;
    line({left(), eyes}, {right(), eyes}, {8, 6});
    drawHeadroom(*highest);
    for (const double share : {0.5, 0.62, 0.38, 0.75, 0.25}) {
      const Point at{left() + share * 2 * fit_.halfWidth, eyes - 5};
      if (!free({at.x - 20, at.y - 12, at.x + 20, at.y + 4})) continue;
      return word(at, "eyes", false, Align::centre);
    }
  }

  void drawHeadroom(const snags::PerformerAt& highest) {
    if (highest.frameTop > 1 || highest.frameTop < -1) return;
    const double head = fit_.toPicture({0, highest.frameTop}).y, x = right() - 18;
    line({x - 4, top()}, {x + 4, top()});
    line({x, top()}, {x, head});
    line({x - 4, head}, {x + 4, head});
    const double share = (1 - highest.frameTop) / 2 * 100;
    word({x - 8, std::max(top() + 18, (top() + head) / 2 + 4)}, "head " + base::fixed(share, 0) + " %", false,
         Align::right);
  }

  /// Crew in frame and crew about to be: which, and in how many seconds.
  void drawCrewWords(const snags::CrewAt& crew, const std::string& label) {
    const bool soon = !crew.seen && crew.nextSeen && *crew.nextSeen <= kSoon;
    if (!crew.present || crew.carried || (!crew.seen && !soon)) return;
    const optics::Figure figure{at(crew.pos, crew.floor), crew.radius, crew.height * 0.93, crew.height};
    const auto whole = optics::boxInFrame(figure, instant_.camera.pupil, instant_.lens->half);
    const auto inside = whole ? optics::cutToFrame(*whole) : std::nullopt;
    const std::string words = label + (crew.seen ? " in frame" : " in " + base::fixed(*crew.nextSeen, 1) + " s");
    if (!inside) return drawAtEdge(crew, words);
    const Point a = fit_.toPicture({inside->left, inside->top}), b = fit_.toPicture({inside->right, inside->bottom});
    if (soon)
      drawing_.add(Box{.topLeft = a,
                       .width = b.x - a.x,
                       .height = b.y - a.y,
                       .radius = 2,
                       .fill = {},
                       .stroke = {.tone = Tone::ink, .width = 1.6, .dash = {4, 3}}});
    placeWords({(a.x + b.x) / 2, a.y - 6}, words);
  }

  void drawAtEdge(const snags::CrewAt& crew, const std::string& words) {
    const bool onRight = instant_.camera.pupil.view(at(crew.pos, crew.floor + crew.height / 2)).right > 0;
    placeWords({onRight ? right() : left(), fit_.centre.y}, words);
  }

  /// Lozenge and words near `at`, inside the frame, moved down until nothing is under them; dropped when there is no
  /// place.
  void placeWords(Point at, const std::string& words) {
    const double width = 26 + typeWidth(words, 12);
    const double x = std::clamp(at.x - width / 2, left() + 6, std::max(left() + 6, right() - width - 6));
    for (double y = std::clamp(at.y, top() + 24, bottom() - 12); y < bottom() - 8; y += 20) {
      const Reserved place{x - 2, y - 16, x + width + 2, y + 8};
      if (!free(place)) continue;
      drawLozenge(drawing_, {x + 10, y - 4}, 10, snags::Severity::stops);
      word({x + 26, y}, words, true, Align::left);
      return taken_.push_back(place);
    }
  }

  static Reserved aroundTag(Point p) { return {p.x - 4, p.y - 4, p.x + kTagWidth + 2, p.y + kTagHeight + 2}; }

  /// The first place for a tag that covers no face and no other tag: on the chest, lower, beside, at the frame's foot,
  /// then anywhere, the nearest in the lowest row first. Where there is none, one that covers no other tag.
  Point tagPlace(const snags::PerformerAt& at) const {
    const double middle = fit_.toPicture({std::clamp((at.frameLeft + at.frameRight) / 2, -1.0, 1.0), 0}).x;
    const double chest = fit_.toPicture({0, at.frameTop - 0.36 * (at.frameTop - at.frameBottom)}).y;
    const double low = bottom() - kTagHeight - 6;
    const Point wishes[] = {{middle, chest},       {middle, chest + 44}, {middle, low},       {middle - 112, chest},
                            {middle + 112, chest}, {middle - 112, low},  {middle + 112, low}, {middle, top() + 6}};
    const auto held = [&](Point wish) {
      return Point{std::clamp(wish.x - kTagWidth / 2, left() + 6, std::max(left() + 6, right() - kTagWidth - 6)),
                   std::clamp(wish.y, top() + 6, std::max(top() + 6, low))};
    };
    for (const Point wish : wishes) {
      const Point p = held(wish);
      if (free(aroundTag(p))) return p;
    }
    for (const bool overFaces : {false, true})
      for (double y = low; y > top(); y -= kTagHeight / 4)
        for (double aside = 0; aside < 2 * fit_.halfWidth; aside += kTagWidth / 8)
          for (const double side : {-1.0, 1.0}) {
            const Point p = held({middle + side * aside, y});
            if (overFaces ? clear(taken_, aroundTag(p)) : free(aroundTag(p))) return p;
          }
    return held({middle, low});
  }

  /// Letter, blur dot, blur over the limit, exposure comb.
  void drawTag(std::size_t i) {
    const auto& at = instant_.performers[i];
    const Point p = tagPlace(at);
    taken_.push_back({p.x, p.y, p.x + kTagWidth, p.y + kTagHeight});
    drawing_.add(Box{.topLeft = p,
                     .width = kTagWidth,
                     .height = kTagHeight,
                     .radius = 4,
                     .fill = {Tone::page},
                     .stroke = {.tone = performerTone(i), .width = 1.25, .dash = {}}});
    drawPerformer(drawing_, p, i, performerLetter(plan_, i), 9);
    const double blur = at.blur;
    drawBlurDot(drawing_, {p.x + 22, p.y + 12}, blur);
    tagText({p.x + 36, p.y + 16}, (blur <= 1 ? "sharp " : "soft ") + base::fixed(std::min(blur, 99.0), 2));
    if (!at.offset) return tagText({p.x + 14, p.y + 33}, "light unknown");
    const double comb = std::clamp(*at.offset, -1.0, 1.0);
    drawComb(drawing_, {p.x + 20, p.y + (comb > 0.17 ? 34 : comb < -0.17 ? 24 : 29)}, comb);
    const std::string stops = units::stopsText(*at.offset);
    tagText({p.x + 36, p.y + 33}, stops == "0" ? "on stop" : stops + " stop");
  }

  void tagText(Point at, const std::string& text) {
    drawing_.add(Text{.at = at, .text = text, .size = 12, .tone = Tone::ink});
  }

  Drawing& drawing_;
  const FrameFit& fit_;
  const answers::Take& take_;
  const plan::Plan& plan_;
  const Instant& instant_;
  std::vector<Reserved> faces_, taken_;
};

}  // namespace

void drawFrameOverlay(Drawing& drawing, const FrameFit& fit, const Answers& answers, const Instant& instant) {
  Overlay(drawing, fit, answers, instant).draw();
}

}  // namespace wend::sheets
