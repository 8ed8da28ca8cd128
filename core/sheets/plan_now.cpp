// What is where now: the camera with its bodies, the frame's wedge with the sharp band in it, performers, crew, snags.
#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/labels.h"
#include "core/sheets/plan_chosen.h"
#include "core/sheets/plan_sun.h"
#include "core/sheets/plan_view.h"
#include "core/sheets/text_width.h"
#include "core/sheets/text_words.h"
#include "core/sight/wedge.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;
using answers::Instant;

namespace {

/// The words of a snag on the plan; all of them stand in the now panel and the list.
constexpr double kSnagWords = 150;

/// What lies under the legend is out of view, too.
bool outside(const PlanView& view, Point at) {
  return at.x < 0 || at.y < 0 || at.x > view.width || at.y > view.height - kLegendHeight;
}

class NowPainter {
 public:
  NowPainter(const Answers& answers, const Instant& instant, const PlanView& view, const PlanPicture& picture)
      : answers_(answers),
        plan_(answers.take->plan()),
        instant_(instant),
        view_(view),
        picture_(picture),
        drawing_(view.sheet()) {}

  /// What the frame holds of the ground: under the set, so that it covers no name.
  Drawing drawnWedges() {
    if (instant_.lens) drawWedges();
    return std::move(drawing_);
  }

  Layer drawn() {
    if (instant_.lens) drawBand();
    drawCamera();
    drawCrewBodies();
    drawPerformers();
    drawSnags();
    if (picture_.spot) drawSpot(*picture_.spot);
    nameShelters();
    return {std::move(drawing_), std::move(writing_)};
  }

 private:
  Point seen(Point p) const { return view_.toPicture(p); }
  /// A plan direction in the picture.
  static Vec way(double bearing) {
    const Vec d = direction(bearing);
    return {d.x, -d.y};
  }

  void line(std::vector<Point> points, Tone tone, double width, std::vector<double> dash = {}) {
    Path path;
    path.rings = {std::move(points)};
    path.stroke = {.tone = tone, .width = width, .dash = std::move(dash)};
    drawing_.add(path);
  }

  void drawWedges() {
    const auto eye = answers_.take->eyeAt(instant_.time, plan_.sightRules.margin);
    const sight::SceneAt now = answers_.take->scene().at(instant_.time);
    sight::WedgeSpec spec;
    spec.floor = answers_.take->people().floorAt(flat(instant_.camera.pupil.at));
    spec.top = spec.floor + plan_.sightRules.height;
    sight::Eye frame = *eye;
    frame.marginDegrees = 0;
    const sight::SeenWedge wedge = sight::seenWedge(now, frame, spec);
    drawWedge(wedge.direct, false);
    for (const auto& mirror : wedge.mirrors) drawWedge(mirror.ring, true);
    drawGuard();
  }

  void drawWedge(const Ring& outline, bool mirror) {
    if (outline.size() < 3) return;
    Path path;
    path.rings.emplace_back();
    for (const Point p : outline) path.rings[0].push_back(seen(p));
    path.closed = true;
    path.fill = {Tone::lit, Pattern::plain, mirror ? 0.35 : 0.5};
    path.stroke = {.tone = Tone::lens, .width = mirror ? 1.0 : 1.6, .dash = {}};
    if (mirror) path.stroke.dash = {8, 4};
    drawing_.add(path);
  }

  /// The guard of the frame: dots along both sides of the widened wedge.
  void drawGuard() {
    const Point at = flat(instant_.camera.pupil.at);
    const double half = instant_.lens->hfov / 2 + plan_.sightRules.margin;
    for (const double side : {-half, half}) {
      const Point end = at + direction(instant_.camera.pupil.bearing + side) * kGuardLength;
      line({seen(at), seen(end)}, Tone::ink2, 1.6, {0.1, 5});
    }
  }
  static constexpr double kGuardLength = 4;

  void arc(double distance, double width, Tone tone) {
    if (!std::isfinite(distance) || distance <= 0 || distance > 60) return;
    std::vector<Point> points;
    for (int i = -12; i <= 12; ++i) {
      const double bearing = instant_.camera.sensor.bearing + instant_.lens->hfov / 2 * i / 12;
      points.push_back(seen(flat(instant_.camera.sensor.at) + direction(bearing) * distance));
    }
    line(std::move(points), tone, width);
  }

  void arcLabel(double distance, const std::string& text, bool bold) {
    if (!std::isfinite(distance) || distance > 60) return;
    std::vector<Point> places;
    for (const double share : {0.8, -0.8, 0.5, -0.5, 0.95, -0.95}) {
      const double bearing = instant_.camera.sensor.bearing + instant_.lens->hfov / 2 * share;
      places.push_back(seen(flat(instant_.camera.sensor.at) + direction(bearing) * distance) + Vec{0, 4});
    }
    addLabel(places.front(), text, Tone::ink, LabelRank::playhead, bold).others = places;
  }

  void drawBand() {
    const auto& focus = instant_.focus;
    if (!focus.known) return;
    arc(focus.setBand.near, 2, Tone::sharp);
    arc(focus.setBand.far, 2, Tone::sharp);
    arc(focus.setDistance, 3.5, Tone::sharp);
    arcLabel(focus.setBand.near, snags::lengthText(plan_, focus.setBand.near), false);
    arcLabel(focus.setBand.far, snags::lengthText(plan_, focus.setBand.far), false);
    arcLabel(focus.setDistance, "set " + snags::lengthText(plan_, focus.setDistance), true);
    if (focus.wobble) drawWobble(*focus.wobble);
  }

  /// Along the ray to the subject, to scale, beside it: longer than the band is trouble.
  void drawWobble(double wobble) {
    const auto at = answers_.take->people().lookAt(
        answers_.take->subjects().firstOf(answers_.take->subjects().blendAt(instant_.time).after), instant_.time);
    if (!at) return;
    const Vec ray = flat(*at) - flat(instant_.camera.sensor.at);
    if (length(ray) < 0.1) return;
    const Vec along = unit(ray), aside = left(along) * (16 / view_.pxPerMetre);
    const Point a = seen(flat(*at) - along * wobble + aside), b = seen(flat(*at) + along * wobble + aside);
    line({a, b}, Tone::ink, 2);
    const Vec tick = distance(a, b) > 0.5 ? left(unit(b - a)) * 4 : Vec{0, 4};
    line({a + tick, a - tick}, Tone::ink, 1.6);
    line({b + tick, b - tick}, Tone::ink, 1.6);
  }

  void drawCamera() {
    constexpr double kWordApart = 21;
    const Pose& sensor = instant_.camera.sensor;
    std::optional<Point> before;
    for (const auto& body : plan_.camera.bodies) {
      const plan::Crew* crew = plan_.crew.find(body.crew);
      if (!crew) continue;
      const std::size_t i = plan_.crew.indexOf(body.crew);
      const Point at = seen(instant_.crew[i].pos);
      line({at, seen(flat(sensor.at))}, Tone::lens, 1.25);
      writing_.keepFree(at, 10);
      drawing_.add(
          Circle{at, crew->radius * view_.pxPerMetre, {Tone::page}, {.tone = Tone::lens, .width = 1.25, .dash = {}}});
      // Those who stand close behind one another keep their letters apart.
      Point word = at;
      if (before && distance(*before, at) < kWordApart)
        word = *before + (distance(*before, at) > 1 ? unit(at - *before) : Vec{0, 1}) * kWordApart;
      before = word;
      writing_.keepFree(word, 10);
      drawing_.add(Text{.at = {word.x, word.y + 4.3},
                        .text = labelsOfCrew_[i],
                        .size = 12,
                        .bold = true,
                        .align = Align::centre,
                        .tone = Tone::ink});
    }
    const Point at = seen(flat(sensor.at));
    const Vec ahead = way(sensor.bearing), aside = left(ahead);
    Path kite;
    kite.rings = {{at + ahead * 9, at + aside * 9, at - ahead * 12, at - aside * 9}};
    kite.closed = true;
    kite.fill = {Tone::page};
    kite.stroke = {.tone = Tone::lens, .width = 2, .dash = {}};
    drawing_.add(kite);
    writing_.keepFree(at, 12);
    line({at + ahead * 12 + aside * 8, at + ahead * 12 - aside * 8}, Tone::lens, 3);
    if (picture_.chosen.kind == Chosen::Kind::camera) drawChosen(drawing_, at, 18);
  }

  void drawCrewBodies() {
    for (const auto& slab : crewSlabs(answers_, instant_, view_)) {
      const auto& crew = instant_.crew[slab.crew];
      writing_.reserved.push_back({slab.at.x - 14, slab.at.y - 10, slab.at.x + 14, slab.at.y + 10});
      if (slab.beyond > 0) {
        drawEdgeArrow(slab, labelsOfCrew_[slab.crew]);
        continue;
      }
      if (crew.present && crew.seen) {
        const Point at = seen(crew.pos);
        drawing_.add(geometry::Box{.topLeft = {at.x - 17, at.y - 13},
                                   .width = 34,
                                   .height = 26,
                                   .radius = 8,
                                   .fill = {Tone::grain, Pattern::seen},
                                   .stroke = {.tone = Tone::ink, .width = 1.25, .dash = {}}});
      }
      if (distance(slab.at, slab.place) > kAside) drawPlaceOf(slab);
      drawCrew(drawing_, slab.at, labelsOfCrew_[slab.crew], slab.dashed);
      if (chosenPerson(crew.id)) drawChosen(drawing_, slab.at, 18);
    }
  }

  /// A slab that made room for another says where its person is.
  void drawPlaceOf(const CrewSlab& slab) {
    line({slab.place, slab.at}, Tone::crew, 1);
    drawing_.add(Circle{slab.place, 2.5, {Tone::crew}, {}});
  }
  static constexpr double kAside = 14;

  /// Chosen as a whole, or by one of their marks.
  bool chosenPerson(const std::string& id) const {
    const Chosen& chosen = picture_.chosen;
    return chosen.id == id && (chosen.kind == Chosen::Kind::thing || chosen.kind == Chosen::Kind::crewMark);
  }

  /// Nobody walks to a centimetre: tenths of a metre do.
  std::string beyondText(double metres) const {
    if (unitOf(plan_) == units::LengthUnit::feet) return snags::lengthText(plan_, metres);
    return base::fixed(metres, 1) + " m";
  }

  /// Slab on the edge with an arrow and how far beyond it its person is.
  void drawEdgeArrow(const CrewSlab& slab, const std::string& label) {
    const Point place = slab.at;
    drawCrew(drawing_, place, label, slab.dashed);
    if (chosenPerson(instant_.crew[slab.crew].id)) drawChosen(drawing_, place, 18);
    const Vec out = distance(slab.place, place) > 1 ? unit(slab.place - place) : Vec{0, 1};
    Path arrow;
    const Point tip = place + out * 18;
    arrow.rings = {{tip, tip - out * 6 + left(out) * 4, tip - out * 6 - left(out) * 4}};
    arrow.closed = true;
    arrow.fill = {Tone::crew};
    drawing_.add(arrow);
    addLabel({place.x + 17, place.y + 4}, beyondText(slab.beyond), Tone::ink2, LabelRank::person, false, Align::left)
        .anchor = LabelAnchor{.at = place, .clear = 15, .reach = kPersonReach};
  }

  void drawPerformers() {
    for (std::size_t i = 0; i < instant_.performers.size(); ++i) {
      const auto& performer = instant_.performers[i];
      if (!performer.present) continue;
      const Point at = seen(performer.pos);
      if (const auto facing = facingOf(i)) line({at, at + way(*facing) * 20}, performerTone(i), 3);
      drawPerformer(drawing_, at, i, performerLetter(plan_, i), 11);
      if (picture_.chosen == Chosen{Chosen::Kind::thing, performer.id, 0}) drawChosen(drawing_, at, 18);
      if (outside(view_, at)) continue;
      writing_.keepFree(at, 12);
      addLabel({at.x + 16, at.y + 4}, plan_.performers[i].name, Tone::ink, LabelRank::person, true, Align::left)
          .anchor = LabelAnchor{.at = at, .clear = 14, .reach = kPersonReach};
    }
  }

  /// The bearing a performer faces: of travel while walking, else of the mark, else towards the lens is not guessed.
  std::optional<double> facingOf(std::size_t i) const {
    const motion::Track* track = answers_.take->people().performer(i);
    if (track->legAt(instant_.time)) {
      const auto direction = track->travelDirection(instant_.time);
      if (direction) return bearingOf(*direction);
    }
    return plan_.performers[i].marks[track->progress(instant_.time).mark].facing;
  }

  void drawSnags() {
    std::set<std::tuple<std::string, double, double>> told;
    for (const auto& lozenge : snagLozenges(answers_, instant_.time, view_)) {
      const snags::Snag& snag = *lozenge.snag;
      drawLozenge(drawing_, lozenge.at, 10, snag.severity);
      if (picture_.chosen == Chosen{Chosen::Kind::thing, snag.key, 0}) drawChosen(drawing_, lozenge.at, 14);
      writing_.keepFree(lozenge.at, 10);
      const std::string words = cutToWidth(snag.text.substr(0, snag.text.find(',')), 12, kSnagWords);
      // Seen directly and in a mirror are two snags of one place, told alike.
      if (!told.emplace(words, lozenge.at.x, lozenge.at.y).second) continue;
      addLabel({lozenge.at.x + 14, lozenge.at.y + 4}, words, Tone::ink, LabelRank::snag, false, Align::left).anchor =
          LabelAnchor{.at = lozenge.at, .clear = 12, .reach = kSnagReach};
    }
  }

  void drawSpot(Point spot) {
    const Point at = seen(spot);
    drawing_.add(
        Circle{at, plan_.sightRules.radius * view_.pxPerMetre, {}, {.tone = Tone::ink, .width = 1.6, .dash = {4, 3}}});
    line({{at.x - 5, at.y}, {at.x + 5, at.y}}, Tone::ink, 1.6);
    line({{at.x, at.y - 5}, {at.x, at.y + 5}}, Tone::ink, 1.6);
  }

  /// Each where somebody stands now before those that are empty.
  void nameShelters() {
    const auto slabs = crewSlabs(answers_, instant_, view_);
    for (const auto& shelter : plan_.shelters) {
      const Point c = seen(shelter.pos);
      const double half = std::max(16.0, shelter.radius * view_.pxPerMetre), word = typeWidth(shelter.id.text(), 12);
      const bool used =
          std::any_of(slabs.begin(), slabs.end(), [&](const auto& slab) { return distance(slab.place, c) <= half; });
      Label& label = addLabel({c.x + half + 7, c.y + 4}, shelter.id.text(), Tone::ink2,
                              used ? LabelRank::use : LabelRank::name, false, Align::left);
      label.others = {{c.x - half - 7 - word, c.y + 4}, {c.x - word / 2, c.y - 15}, {c.x - word / 2, c.y + 24}};
      label.anchor = LabelAnchor{.at = c, .clear = half, .reach = kShelterReach};
    }
  }

  Label& addLabel(Point at, const std::string& text, Tone tone, LabelRank rank, bool bold = false,
                  Align align = Align::centre) {
    Text label{.at = at, .text = text, .size = 12, .bold = bold, .align = align, .tone = tone, .halo = Tone::page};
    return writing_.labels.emplace_back(Label{.text = std::move(label), .rank = rank});
  }
  /// How far words are led away from what they tell of, px.
  static constexpr double kPersonReach = 240, kSnagReach = 96, kShelterReach = 48;

  const Answers& answers_;
  const plan::Plan& plan_;
  const Instant& instant_;
  const PlanView& view_;
  const PlanPicture& picture_;
  Drawing drawing_;
  std::vector<std::string> labelsOfCrew_ = crewLabels(plan_);
  Writing writing_;
};

}  // namespace

namespace {

/// The nearest place of its row, right before left, at which a slab covers no other and no performer.
Point besideOthers(Point at, const std::vector<CrewSlab>& slabs, const std::vector<Point>& figures, double width) {
  constexpr double kStep = 4, kSlabWide = 28, kSlabHigh = 18, kFigureWide = 25, kFigureHigh = 20;
  const auto covers = [](Point a, Point b, double wide, double high) {
    return std::abs(a.x - b.x) < wide && std::abs(a.y - b.y) < high;
  };
  const auto free = [&](Point p) {
    return p.x >= kSlabWide / 2 && p.x <= width - kSlabWide / 2 &&
           std::none_of(slabs.begin(), slabs.end(),
                        [&](const CrewSlab& other) { return covers(other.at, p, kSlabWide, kSlabHigh); }) &&
           std::none_of(figures.begin(), figures.end(),
                        [&](Point other) { return covers(other, p, kFigureWide, kFigureHigh); });
  };
  for (double aside = 0; aside < width; aside += kStep)
    for (const double x : {at.x + aside, at.x - aside})
      if (free({x, at.y})) return {x, at.y};
  return at;
}

}  // namespace

std::vector<CrewSlab> crewSlabs(const Answers& answers, const Instant& instant, const PlanView& view) {
  std::vector<CrewSlab> slabs;
  std::vector<Point> figures;
  for (const auto& performer : instant.performers)
    if (performer.present) figures.push_back(view.toPicture(performer.pos));
  for (std::size_t i = 0; i < instant.crew.size(); ++i) {
    const auto& crew = instant.crew[i];
    const auto* found = crew.present || !answers.routes ? nullptr : answers.routes->find(crew.id);
    const bool routed = found && found->found;
    if (crew.carried || !(crew.present || routed)) continue;
    CrewSlab slab{i, {}, view.toPicture(routed ? found->at(instant.time) : crew.pos), 0, crew.walking || routed};
    slab.at = slab.place;
    if (outside(view, slab.place)) {
      slab.at = {std::clamp(slab.place.x, 18.0, view.width - 18),
                 std::clamp(slab.place.y, 14.0, view.height - kLegendHeight - 14)};
      slab.beyond = distance(slab.place, slab.at) / view.pxPerMetre;
    }
    slab.at = besideOthers(slab.at, slabs, figures, view.width);
    slabs.push_back(slab);
  }
  return slabs;
}

std::vector<SnagLozenge> snagLozenges(const Answers& answers, double t, const PlanView& view) {
  std::vector<SnagLozenge> lozenges;
  if (!answers.snags) return lozenges;
  for (const auto& snag : *answers.snags) {
    if (!snag.pos || snag.accepted || snag.until < t || snag.from > t + 5) continue;
    const Point at = view.toPicture(*snag.pos) + Vec{0, -26};
    if (!outside(view, at)) lozenges.push_back({&snag, at});
  }
  return lozenges;
}

Drawing wedgeLayer(const Answers& answers, const Instant& instant, const PlanView& view) {
  const PlanPicture picture;
  return NowPainter(answers, instant, view, picture).drawnWedges();
}

Layer nowLayer(const Answers& answers, const Instant& instant, const PlanView& view, const PlanPicture& picture) {
  Layer layer = sunLayer(answers, instant, view);
  for (Layer over : {Layer{chosenLayer(answers.take->plan(), view, picture.chosen), {}},
                     NowPainter(answers, instant, view, picture).drawn()}) {
    for (auto& shape : over.drawing.shapes) layer.drawing.shapes.push_back(std::move(shape));
    layer.writing.add(std::move(over.writing));
  }
  return layer;
}

}  // namespace wend::sheets
