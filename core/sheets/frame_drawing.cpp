#include "core/sheets/frame_drawing.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/far_to_near.h"
#include "core/geometry/tolerance.h"
#include "core/plan/area_use.h"
#include "core/sheets/frame_overlay.h"
#include "core/sheets/glyphs.h"

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
      : answers_(answers), take_(*answers.take), plan_(take_.plan()), instant_(instant), pupil_(instant.camera.pupil) {
    drawing_.width = width;
    drawing_.height = height;
    fit_ = frameFit(instant, width, height, inset);
  }

  Drawing drawn() {
    ground(Tone::page);
    drawing_.add(BeginClip{frameRing()});
    ground(Tone::window);
    for (const auto& room : plan_.set.rooms) {
      level(room.outline, room.floor, Tone::raise);
      if (room.ceiling > pupil_.at.z && !room.openAbove) level(room.outline, room.ceiling, Tone::panel);
    }
    for (const auto& area : plan_.set.areas)
      if (plan::usedAs(area, plan::AreaUse::outside))
        level(answers::outlineOf(area.shape), area.floor.value_or(0), Tone::raise);
    drawFaces();
    drawing_.add(EndClip{});
    drawFrameOverlay(drawing_, fit_, answers_, instant_);
    return std::move(drawing_);
  }

 private:
  std::vector<Point> frameRing() const {
    return {fit_.toPicture({-1, 1}), fit_.toPicture({1, 1}), fit_.toPicture({1, -1}), fit_.toPicture({-1, -1})};
  }

  void ground(Tone tone) {
    drawing_.add(geometry::Box{.topLeft = {0, 0},
                               .width = drawing_.width,
                               .height = drawing_.height,
                               .radius = 0,
                               .fill = {tone},
                               .stroke = {}});
  }

  Point project(const InView& v) const {
    return fit_.toPicture({v.right / v.ahead / instant_.lens->half.h, v.up / v.ahead / instant_.lens->half.v});
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
        faces.push_back({prism.sheet, prism.base, prism.top, tone, pane, mirror});
      return;
    }
    if (prism.form == sight::Prism::Form::disc) {
      std::vector<Point> ring;
      for (int i = 0; i < 24; ++i) ring.push_back(prism.centre + direction(-15.0 * i) * prism.radius);
      return addFaces(ring, prism.base, prism.top, tone, pane, mirror, faces);
    }
    addFaces(pane ? take_.scene().corners(prism) : now.corners(prism), prism.base, prism.top, tone, pane, mirror,
             faces);
  }

  std::vector<Face> facesOf(const sight::SceneAt& now) const {
    std::vector<Face> faces;
    for (std::size_t i = 0; i < now.size(); ++i) addPrism(now, now.prism(i), false, faces);
    for (const auto& pane : take_.scene().glass()) addPrism(now, pane, true, faces);
    for (const auto& pane : now.parked())
      if (pane.surface == sight::Surface::glass) addPrism(now, pane, true, faces);
    for (const auto& piece : now.moving()) addMoving(piece, faces);
    return faces;
  }

  void addMoving(const sight::MovingPiece& piece, std::vector<Face>& faces) const {
    if (piece.closed) return addFaces(piece.points, piece.bottom, piece.top, Tone::raise, false, false, faces);
    if (piece.radius > 0) {
      std::vector<Point> ring;
      for (int i = 0; i < 24; ++i) ring.push_back(piece.points.front() + direction(-15.0 * i) * piece.radius);
      return addFaces(ring, piece.bottom, piece.top, Tone::raise, false, false, faces);
    }
    for (std::size_t i = 0; i + 1 < piece.points.size(); ++i)
      faces.push_back({{piece.points[i], piece.points[i + 1]}, piece.bottom, piece.top, Tone::raise, false, false});
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

  void drawPerson(const Person& person) {
    if (!person.performer) return drawCrewMember(instant_.crew[person.index]);
    const auto figure = take_.figureAt(person.index, instant_.time);
    const auto frameBox = figure ? optics::boxInFrame(*figure, pupil_, instant_.lens->half) : std::nullopt;
    if (!frameBox || frameBox->right < -1 || frameBox->left > 1) return;
    const double blur = instant_.performers[person.index].blur;
    const auto shape = figureShape(fit_, *frameBox, headShareOf(plan_.performers[person.index].stature, *figure));
    Stroke stroke{.tone = performerTone(person.index), .width = 2.4, .dash = {}};
    drawFigure(drawing_, shape, {Tone::page}, stroke);
    // Over the limit the outline doubles by as many px: soft looks soft.
    if (blur <= 1) return;
    stroke.width = std::min(2.4 + 2 * blur, 14.0);
    stroke.strength = 0.35;
    drawFigure(drawing_, shape, {}, stroke);
  }

  void drawCrewMember(const snags::CrewAt& crew) {
    if (!crew.seen) return;
    optics::Figure figure{geometry::at(crew.pos, crew.floor), crew.radius, crew.height * 0.93, crew.height};
    const auto frameBox = optics::boxInFrame(figure, pupil_, instant_.lens->half);
    if (!frameBox || frameBox->right < -1 || frameBox->left > 1) return;
    const auto shape = figureShape(fit_, *frameBox, headShareOf(crew.height, figure));
    drawFigure(drawing_, shape, {Tone::page}, {});
    drawFigure(drawing_, shape, {Tone::grain, Pattern::seen}, {.tone = Tone::ink, .width = 1.6, .dash = {4, 3}});
  }

  const Answers& answers_;
  const answers::Take& take_;
  const plan::Plan& plan_;
  const Instant& instant_;
  const Pose& pupil_;
  Drawing drawing_;
  FrameFit fit_;
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
