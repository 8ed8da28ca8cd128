#include "core/sheets/frame_drawing.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/geometry/far_to_near.h"
#include "core/geometry/tolerance.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/labels.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;
using answers::Instant;

namespace {

constexpr double kNear = 0.05;

/// A face of the set: upright over a segment, from bottom to top.
struct Face {
  Segment foot;
  double bottom = 0, top = 0;
  Tone tone = Tone::wall;
  bool pane = false, mirror = false;
};

class FramePainter {
 public:
  FramePainter(const Answers& answers, const Instant& instant, double width, double height, double inset)
      : take_(*answers.take), plan_(take_.plan()), instant_(instant), pupil_(instant.camera.pupil) {
    drawing_.width = width;
    drawing_.height = height;
    const FrameFit fit = frameFit(instant, width, height, inset);
    halfWidth_ = fit.halfWidth;
    halfHeight_ = fit.halfHeight;
    centre_ = fit.centre;
  }

  Drawing drawn() {
    box({Tone::page}, {}, 0);
    drawing_.add(BeginClip{frameRing()});
    box({Tone::window}, {}, 0);
    for (const auto& room : plan_.set.rooms) {
      level(room.outline, room.floor, Tone::raise);
      if (room.ceiling > pupil_.at.z) level(room.outline, room.ceiling, Tone::panel);
    }
    for (const auto& area : plan_.set.areas)
      if (std::find(area.use.begin(), area.use.end(), plan::AreaUse::outside) != area.use.end())
        level(answers::outlineOf(area.shape), area.floor.value_or(0), Tone::raise);
    drawFaces();
    drawing_.add(EndClip{});
    drawGuides();
    drawTags();
    return std::move(drawing_);
  }

 private:
  std::vector<Point> frameRing() const {
    return {{centre_.x - halfWidth_, centre_.y - halfHeight_},
            {centre_.x + halfWidth_, centre_.y - halfHeight_},
            {centre_.x + halfWidth_, centre_.y + halfHeight_},
            {centre_.x - halfWidth_, centre_.y + halfHeight_}};
  }

  void box(const Fill& fill, const Stroke& stroke, double grow) {
    drawing_.add(
        geometry::Box{.topLeft = {grow == 0 ? 0 : centre_.x - halfWidth_, grow == 0 ? 0 : centre_.y - halfHeight_},
                      .width = grow == 0 ? drawing_.width : 2 * halfWidth_,
                      .height = grow == 0 ? drawing_.height : 2 * halfHeight_,
                      .radius = 0,
                      .fill = fill,
                      .stroke = stroke});
  }

  Point project(const InView& v) const {
    return {centre_.x + v.right / v.ahead / instant_.lens->half.h * halfWidth_,
            centre_.y - v.up / v.ahead / instant_.lens->half.v * halfHeight_};
  }

  /// The part of a polygon of space in front of the lens, projected. Empty when nothing is.
  std::vector<Point> projected(const std::vector<Point3>& polygon) const {
    std::vector<Point> ring;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const InView a = pupil_.view(polygon[i]), b = pupil_.view(polygon[(i + 1) % polygon.size()]);
      if (a.ahead >= kNear) ring.push_back(project(a));
      if ((a.ahead >= kNear) == (b.ahead >= kNear)) continue;
      const double s = (kNear - a.ahead) / (b.ahead - a.ahead);
      ring.push_back(project({lerp(a.right, b.right, s), lerp(a.up, b.up, s), kNear}));
    }
    return ring;
  }

  void polygon(const std::vector<Point3>& corners, const Fill& fill, const Stroke& stroke) {
    auto ring = projected(corners);
    if (ring.size() < 3) return;
    Path path;
    path.rings = {std::move(ring)};
    path.closed = true;
    path.fill = fill;
    path.stroke = stroke;
    drawing_.add(path);
  }

  void level(const std::vector<Point>& outline, double z, Tone tone) {
    std::vector<Point3> corners;
    for (const Point p : outline) corners.push_back(geometry::at(p, z));
    polygon(corners, {tone}, {.tone = Tone::line2, .width = 1, .dash = {}});
  }

  void addFaces(std::span<const Point> ring, double bottom, double top, Tone tone, bool pane, bool mirror,
                std::vector<Face>& faces) const {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Segment foot{ring[i], ring[(i + 1) % ring.size()]};
      if (distance(foot.a, foot.b) > 2 * kTouch) faces.push_back({foot, bottom, top, tone, pane, mirror});
    }
  }

  void addPrism(const sight::SceneAt& now, const sight::Prism& prism, bool pane, std::vector<Face>& faces) const {
    const bool mirror = prism.surface == sight::Surface::mirror;
    const bool wall = prism.source.owner == sight::Owner::wall;
    const Tone tone = wall ? Tone::wall : Tone::raise;
    if (prism.form == sight::Prism::Form::sheet) {
      if (distance(prism.sheet.a, prism.sheet.b) > 2 * kTouch)
        faces.push_back({prism.sheet, prism.bottom, prism.top, tone, pane, mirror});
      return;
    }
    if (prism.form == sight::Prism::Form::disc) {
      std::vector<Point> ring;
      for (int i = 0; i < 24; ++i) ring.push_back(prism.centre + direction(-15.0 * i) * prism.radius);
      return addFaces(ring, prism.bottom, prism.top, tone, pane, mirror, faces);
    }
    addFaces(pane ? take_.scene().corners(prism) : now.corners(prism), prism.bottom, prism.top, tone, pane, mirror,
             faces);
  }

  std::vector<Face> facesOf(const sight::SceneAt& now) const {
    std::vector<Face> faces;
    for (std::size_t i = 0; i < now.size(); ++i) addPrism(now, now.prism(i), false, faces);
    for (const auto& pane : take_.scene().glass()) addPrism(now, pane, true, faces);
    return faces;
  }

  /// Performers and crew stand among the faces in their order of depth.
  struct Person {
    bool performer;
    std::size_t index;
    Point pos;
  };

  std::vector<Person> people() const {
    std::vector<Person> list;
    for (std::size_t i = 0; i < instant_.performers.size(); ++i)
      if (instant_.performers[i].present) list.push_back({true, i, instant_.performers[i].pos});
    for (std::size_t i = 0; i < instant_.crew.size(); ++i)
      if (instant_.crew[i].present && !instant_.crew[i].carried) list.push_back({false, i, instant_.crew[i].pos});
    return list;
  }

  void drawFaces() {
    const sight::SceneAt now = take_.scene().at(instant_.time);
    const auto faces = facesOf(now);
    std::vector<Segment> feet;
    for (const auto& face : faces) feet.push_back(face.foot);
    const auto persons = people();
    std::vector<Point> places;
    for (const auto& person : persons) places.push_back(person.pos);
    for (const auto& piece : FarToNear(feet).from(flat(pupil_.at), places)) {
      if (piece.thing)
        drawPerson(persons[piece.index]);
      else
        drawFace(faces[piece.index], piece.face);
    }
  }

  void drawFace(const Face& face, Segment foot) {
    const std::vector<Point3> corners = {geometry::at(foot.a, face.bottom), geometry::at(foot.b, face.bottom),
                                         geometry::at(foot.b, face.top), geometry::at(foot.a, face.top)};
    // Facing the lens squarely is lighter than facing it at a slant: enough to read corners by.
    const Vec across = unit(foot.b - foot.a);
    const Vec away = unit(lerp(foot.a, foot.b, 0.5) - flat(pupil_.at));
    const bool square = std::abs(cross(across, away)) > 0.75;
    Fill fill{face.mirror ? Tone::lit : square ? Tone::lit : face.tone};
    if (face.pane) fill = {Tone::lit, Pattern::plain, 0.15};
    polygon(corners, fill, {.tone = Tone::edge, .width = 1.2, .dash = {}, .strength = face.pane ? 0.8 : 0.6});
  }

  /// Head and shoulders above a body as wide as the figure. Proportions of a figure 7.5 heads high: common practice in
  /// drawing, no source.
  std::vector<Point> silhouette(const optics::FrameBox& b) const {
    const double cx = (b.left + b.right) / 2, w = (b.right - b.left) / 2, h = b.top - b.bottom;
    std::vector<Point> ring;
    const auto add = [&](double x, double y) {
      ring.push_back({centre_.x + x * halfWidth_, centre_.y - y * halfHeight_});
    };
    const double headUp = h / 15, headAcross = std::min(0.6 * w, 0.76 * headUp * halfHeight_ / halfWidth_);
    const double headMiddle = b.top - headUp, shoulder = b.top - 2.5 * headUp;
    const auto addSide = [&](double sign) {
      const double corners[][2] = {
          {1, b.bottom}, {1, shoulder - 0.9 * headUp}, {0.72, shoulder - 0.1 * headUp}, {0.3, shoulder}};
      for (int i = 0; i < 4; ++i) {
        const auto& corner = corners[sign < 0 ? i : 3 - i];
        add(cx + sign * corner[0] * w, corner[1]);
      }
    };
    addSide(-1);
    for (int i = 0; i <= 12; ++i) {
      const double angle = radians(235 - 290.0 * i / 12);
      add(cx + headAcross * std::cos(angle), headMiddle + headUp * std::sin(angle));
    }
    addSide(1);
    return ring;
  }

  void drawPerson(const Person& person) {
    if (!person.performer) return drawCrewMember(instant_.crew[person.index]);
    const auto figure = take_.figureAt(person.index, instant_.time);
    const auto frameBox = figure ? optics::boxInFrame(*figure, pupil_, instant_.lens->half) : std::nullopt;
    if (!frameBox || frameBox->right < -1 || frameBox->left > 1) return;
    const double blur = instant_.performers[person.index].blur / plan_.focus.blurShare;
    Path path;
    path.rings = {silhouette(*frameBox)};
    path.closed = true;
    path.fill = {Tone::page};
    path.stroke = {.tone = performerTone(person.index), .width = 2.4, .dash = {}};
    drawing_.add(path);
    // Over the limit the outline doubles by as many px: soft looks soft.
    if (blur <= 1) return;
    path.fill = {};
    path.stroke.width = std::min(2.4 + 2 * blur, 14.0);
    path.stroke.strength = 0.35;
    drawing_.add(path);
  }

  void drawCrewMember(const snags::CrewAt& crew) {
    if (!crew.seen) return;
    optics::Figure figure{geometry::at(crew.pos, crew.floor), crew.radius, crew.height * 0.93, crew.height};
    const auto frameBox = optics::boxInFrame(figure, pupil_, instant_.lens->half);
    if (!frameBox || frameBox->right < -1 || frameBox->left > 1) return;
    Path path;
    path.rings = {silhouette(*frameBox)};
    path.closed = true;
    path.fill = {Tone::grain, Pattern::seen};
    path.stroke = {.tone = Tone::ink, .width = 1.6, .dash = {4, 3}};
    drawing_.add(path);
  }

  /// Frame edge, safe inset of 5 %, eyes line of the highest eyes in frame, headroom.
  void drawGuides() {
    box({}, {.tone = Tone::ink, .width = 1.6, .dash = {}}, 1);
    drawing_.add(geometry::Box{.topLeft = {centre_.x - 0.95 * halfWidth_, centre_.y - 0.95 * halfHeight_},
                               .width = 1.9 * halfWidth_,
                               .height = 1.9 * halfHeight_,
                               .radius = 0,
                               .fill = {},
                               .stroke = {.tone = Tone::ink3, .width = 1, .dash = {1, 4}}});
    const snags::PerformerAt* highest = nullptr;
    for (const auto& performer : instant_.performers)
      if (shown(performer) && (!highest || performer.frameTop > highest->frameTop)) highest = &performer;
    if (!highest || highest->frameTop > 1 || highest->frameTop < -1) return;
    const double eyes = centre_.y - highest->place.y * halfHeight_;
    line({{centre_.x - halfWidth_, eyes}, {centre_.x + halfWidth_, eyes}}, {8, 6});
    const double top = centre_.y - highest->frameTop * halfHeight_, edge = centre_.y - halfHeight_;
    const double x = centre_.x + halfWidth_ - 18;
    line({{x - 4, edge}, {x + 4, edge}}, {});
    line({{x, edge}, {x, top}}, {});
    line({{x - 4, top}, {x + 4, top}}, {});
    const double share = (1 - highest->frameTop) / 2 * 100;
    drawing_.add(Text{.at = {x - 8, std::max(edge + 16, (edge + top) / 2)},
                      .text = "head " + base::fixed(share, 0) + " %",
                      .size = 12,
                      .align = Align::right,
                      .tone = Tone::ink,
                      .halo = Tone::page});
  }

  static bool shown(const snags::PerformerAt& at) {
    return at.present && (at.inFrame == optics::Showing::whole || at.inFrame == optics::Showing::part);
  }

  void line(std::vector<Point> points, std::vector<double> dash) {
    Path path;
    path.rings = {std::move(points)};
    path.stroke = {.tone = Tone::ink2, .width = 1.25, .dash = std::move(dash)};
    drawing_.add(path);
  }

  void drawTags() {
    for (std::size_t i = 0; i < instant_.performers.size(); ++i)
      if (shown(instant_.performers[i])) drawTag(i);
  }

  /// Letter, blur dot, blur over the limit, exposure comb: on the figure's chest, inside the frame.
  void drawTag(std::size_t i) {
    const auto& at = instant_.performers[i];
    const double width = 96, height = 38;
    const double cx = centre_.x + std::clamp((at.frameLeft + at.frameRight) / 2, -1.0, 1.0) * halfWidth_;
    const double chest = at.frameTop - 0.38 * (at.frameTop - at.frameBottom);
    const double x = std::clamp(cx - width / 2, centre_.x - halfWidth_ + 4, centre_.x + halfWidth_ - width - 4);
    const double y =
        std::clamp(centre_.y - chest * halfHeight_, centre_.y - halfHeight_ + 4, centre_.y + halfHeight_ - height - 4);
    drawing_.add(geometry::Box{.topLeft = {x, y},
                               .width = width,
                               .height = height,
                               .radius = 4,
                               .fill = {Tone::page},
                               .stroke = {.tone = performerTone(i), .width = 1.25, .dash = {}}});
    drawPerformer(drawing_, {x, y}, i, performerLetter(plan_, i), 9);
    const double blur = at.blur / plan_.focus.blurShare;
    drawBlurDot(drawing_, {x + 20, y + 12}, blur);
    tagText({x + 32, y + 16}, (blur <= 1 ? "sharp " : "soft ") + base::fixed(std::min(blur, 99.0), 2));
    if (!at.offset) return tagText({x + 32, y + 32}, "light unknown");
    drawComb(drawing_, {x + 20, y + 29}, std::clamp(*at.offset, -1.0, 1.0));
    const std::string stops = units::stopsText(*at.offset);
    tagText({x + 32, y + 32}, stops == "0" ? "on the stop" : stops + " stop");
  }

  void tagText(Point at, const std::string& text) {
    drawing_.add(Text{.at = at, .text = text, .size = 12, .tone = Tone::ink});
  }

  const answers::Take& take_;
  const plan::Plan& plan_;
  const Instant& instant_;
  const Pose& pupil_;
  Drawing drawing_;
  Point centre_;
  double halfWidth_ = 1, halfHeight_ = 1;
};

/// "A", "A and B", "A, B and C".
std::string listed(const std::vector<std::string>& names) {
  std::string words;
  for (std::size_t i = 0; i < names.size(); ++i)
    words += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return words;
}

}  // namespace

FrameFit frameFit(const Instant& instant, double width, double height, double inset) {
  const double aspect = instant.lens->half.h / instant.lens->half.v;
  const double across = std::min(width - 2 * inset, (height - 2 * inset) * aspect);
  return {{width / 2, height / 2}, across / 2, across / aspect / 2};
}

std::optional<std::size_t> performerAt(const Instant& instant, Point place) {
  std::optional<std::size_t> nearest;
  for (std::size_t i = 0; i < instant.performers.size(); ++i) {
    const auto& at = instant.performers[i];
    const bool here = at.present && place.x >= at.frameLeft && place.x <= at.frameRight && place.y >= at.frameBottom &&
                      place.y <= at.frameTop;
    if (!here || at.inFrame == optics::Showing::out) continue;
    if (!nearest || at.distances.flat < instant.performers[*nearest].distances.flat) nearest = i;
  }
  return nearest;
}

std::string frameInWords(const Answers& answers, const Instant& instant) {
  if (!instant.lens) return "No lens in the plan: nothing to see";
  std::vector<std::string> inFrame, hidden;
  for (std::size_t i = 0; i < instant.performers.size(); ++i) {
    const auto& at = instant.performers[i];
    if (!at.present || at.inFrame == optics::Showing::out) continue;
    (at.inFrame == optics::Showing::hidden ? hidden : inFrame).push_back(answers.take->plan().performers[i].name);
  }
  std::string words = inFrame.empty() ? "Nobody in frame" : listed(inFrame) + " in frame";
  if (!hidden.empty()) words += ", " + listed(hidden) + " hidden";
  return words;
}

Drawing frameDrawing(const Answers& answers, const Instant& instant, double width, double height, double inset) {
  if (!instant.lens) {
    Drawing drawing{.width = width, .height = height, .patternOrigin = {}, .shapes = {}};
    drawing.add(geometry::Box{
        .topLeft = {0, 0}, .width = width, .height = height, .radius = 0, .fill = {Tone::page}, .stroke = {}});
    drawing.add(Text{.at = {width / 2, height / 2},
                     .text = "no lens in the plan: nothing to see",
                     .size = 14,
                     .align = Align::centre,
                     .tone = Tone::ink2});
    return drawing;
  }
  return FramePainter(answers, instant, width, height, inset).drawn();
}

}  // namespace wend::sheets
