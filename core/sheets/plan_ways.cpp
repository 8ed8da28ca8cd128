// The ways of camera, performers and crew: gone thin, to come full; a notch every second, a long one every five, a
// number every ten; a hold as a knot that widens with its seconds; chevrons where the operator walks backwards.
#include <algorithm>
#include <cmath>

#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/crew/walking.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/labels.h"
#include "core/sheets/plan_view.h"

namespace wend::sheets {

using namespace geometry;
using answers::Take;

namespace {

constexpr double kTolerance = 0.005;

/// Whether a stand is worth its seconds on the picture at t.
bool nearNow(const Span& stood, double t) {
  constexpr double kNear = 15;
  return std::abs(stood.from - t) < kNear || (stood.from <= t && t <= stood.until);
}

/// The seconds of a stand, over its place, or further up, where those of an earlier one are.
Label timesLabel(const Span& stood, Point at, bool chosen) {
  constexpr double kRow = 15;
  // Clear of the corners around what is chosen.
  const double up = chosen ? 25 : 14;
  return {.text = Text{.at = {at.x, at.y - up},
                       .text = base::fixed(stood.from, 1) + "\u2013" + base::fixed(stood.until, 1),
                       .size = 12,
                       .align = Align::centre,
                       .tone = Tone::ink,
                       .halo = Tone::page},
          .rank = chosen ? LabelRank::chosen : LabelRank::use,
          .anchor = LabelAnchor{.at = at, .clear = chosen ? 20.0 : 8.0, .reach = 48},
          .others = {{at.x, at.y - up - kRow}, {at.x, at.y - up - 2 * kRow}, {at.x, at.y + up + 10}}};
}

class WaysPainter {
 public:
  WaysPainter(const Take& take, const PlanView& view, const PlanPicture& picture)
      : take_(take), plan_(take.plan()), view_(view), picture_(picture), drawing_(view.sheet()) {}

  Layer drawn() {
    for (std::size_t i = 0; i < plan_.crew.size(); ++i)
      if (const auto* track = take_.people().crew(i)) drawCrewWay(*track);
    for (std::size_t i = 0; i < plan_.performers.size(); ++i)
      if (const auto* track = take_.people().performer(i)) {
        drawWay(*track, performerTone(i), 2, false);
        drawMarks(*track, performerTone(i), Chosen::Kind::performerMark, plan_.performers[i].id.text());
      }
    const motion::Track& camera = take_.people().camera();
    drawWay(camera, Tone::lens, 2.4, true);
    drawMarks(camera, Tone::lens, Chosen::Kind::cameraMark, "");
    for (const auto& beat : plan_.beats) drawBeat(beat, camera);
    return {std::move(drawing_), std::move(writing_)};
  }

 private:
  void stroke(std::vector<Point> line, const Stroke& stroke) {
    if (line.size() < 2) return;
    Path path;
    path.rings = {std::move(line)};
    path.stroke = stroke;
    drawing_.add(path);
  }

  void drawCrewWay(const motion::Track& track) {
    std::vector<Point> line;
    for (const auto& place : track.path(kTolerance)) line.push_back(view_.toPicture(place.place));
    stroke(std::move(line), {.tone = Tone::crew, .width = 1.25, .dash = {6, 5}});
  }

  /// The stretch of the way between two times, cut exactly at both.
  std::vector<Point> stretch(const motion::Track& track, double from, double until) const {
    std::vector<Point> line = {view_.toPicture(track.place(from))};
    for (const auto& place : track.path(kTolerance))
      if (place.t > from && place.t < until) line.push_back(view_.toPicture(place.place));
    line.push_back(view_.toPicture(track.place(until)));
    return line;
  }

  void drawWay(const motion::Track& track, Tone tone, double width, bool numbers) {
    const double start = track.marks().front().at, end = take_.length();
    const double now = std::clamp(picture_.time, start, end);
    if (now > start) stroke(stretch(track, start, now), {.tone = tone, .width = 1.2, .dash = {}, .strength = 0.5});
    if (now < end) stroke(stretch(track, now, end), {.tone = tone, .width = width, .dash = {}});
    for (int second = static_cast<int>(std::ceil(start)); second <= end; ++second) notch(track, second, tone, numbers);
    if (numbers) chevrons(track);
  }

  void notch(const motion::Track& track, int second, Tone tone, bool numbers) {
    const auto direction = track.travelDirection(second);
    if (!direction || track.speed(second) < 0.05) return;
    const Point at = view_.toPicture(track.place(second));
    const Vec aside = left(Vec{direction->x, -direction->y});
    const double half = second % 5 == 0 ? 6 : 3;
    stroke(
        {at + aside * half, at - aside * half},
        {.tone = tone, .width = second % 5 == 0 ? 1.6 : 1, .dash = {}, .strength = second < picture_.time ? 0.5 : 1.0});
    if (!numbers || second % 10 != 0) return;
    writing_.labels.push_back({.text = Text{.at = at + aside * 14 + Vec{0, 4},
                                            .text = std::to_string(second),
                                            .size = 12,
                                            .align = Align::centre,
                                            .tone = Tone::ink2,
                                            .halo = Tone::page},
                               .rank = LabelRank::detail,
                               .others = {at - aside * 14 + Vec{0, 4}}});
  }

  void chevrons(const motion::Track& track) {
    for (double t = 0.5; t < take_.length(); t += 1) {
      const auto direction = track.travelDirection(t);
      if (!direction) continue;
      const double bearing = take_.view().sensorAt(t).bearing;
      if (crew::carryOf(track.speed(t), bearingOf(*direction), bearing) != crew::Carry::rear) continue;
      const Point at = view_.toPicture(track.place(t));
      const Vec along{direction->x, -direction->y}, aside = left(along);
      stroke({at + along * 4 + aside * 5, at - along * 3, at + along * 4 - aside * 5},
             {.tone = Tone::lens, .width = 1.6, .dash = {}});
    }
  }

  void drawMarks(const motion::Track& track, Tone tone, Chosen::Kind kind, const std::string& id) {
    for (std::size_t k = 0; k < track.marks().size(); ++k) {
      const motion::TrackMark& mark = track.marks()[k];
      const Point at = view_.toPicture(mark.pos);
      const double held = mark.until - mark.at;
      const bool chosen = picture_.chosen == Chosen{kind, id, k};
      if (chosen) drawChosen(drawing_, at, 18);
      if (kind == Chosen::Kind::performerMark)
        drawing_.add(Circle{
            .centre = at, .radius = 4, .fill = {Tone::page}, .stroke = {.tone = tone, .width = 1.6, .dash = {}}});
      else if (held > 0.05)
        knot(track, mark, at, held, tone);
      const Span stood{mark.at, mark.until};
      if (kind == Chosen::Kind::performerMark && (chosen || nearNow(stood, picture_.time)) && held > 0.05)
        writing_.labels.push_back(timesLabel(stood, at, chosen));
    }
  }

  /// An ellipse across the way, wider with the seconds stood.
  void knot(const motion::Track& track, const motion::TrackMark& mark, Point at, double held, Tone tone) {
    const auto direction = track.travelDirection(mark.until + 1e-3);
    const Vec along = direction ? Vec{direction->x, -direction->y} : Vec{1, 0};
    const Vec aside = left(along);
    const double half = std::min(5 + 0.9 * held, 24.0);
    Path ellipse;
    ellipse.rings.emplace_back();
    for (int i = 0; i < 24; ++i) {
      const double angle = radians(15.0 * i);
      ellipse.rings[0].push_back(at + along * (4.5 * std::cos(angle)) + aside * (half * std::sin(angle)));
    }
    ellipse.closed = true;
    ellipse.fill = {Tone::page};
    ellipse.stroke = {.tone = tone, .width = 1.6, .dash = {}};
    drawing_.add(ellipse);
  }

  void drawBeat(const plan::Beat& beat, const motion::Track& camera) {
    const std::size_t number = plan_.beats.indexOf(beat.id.text()) + 1;
    // Beats at one place stack, the later on top.
    Point foot = view_.toPicture(camera.place(beat.time));
    while (std::any_of(flags_.begin(), flags_.end(), [&](Point other) {
      return std::abs(other.x - foot.x) < kFlagWidth && std::abs(other.y - foot.y) < kFlagHeight;
    }))
      foot.y -= kFlagHeight;
    flags_.push_back(foot);
    drawBeatFlag(drawing_, foot, std::to_string(number));
    writing_.reserved.push_back({foot.x - 1, foot.y - 19, foot.x + kFlagWidth, foot.y - 3});
  }

  static constexpr double kFlagWidth = 25, kFlagHeight = 15;

  const Take& take_;
  const plan::Plan& plan_;
  const PlanView& view_;
  const PlanPicture& picture_;
  std::vector<Point> flags_;  ///< the feet of those drawn
  Drawing drawing_;
  Writing writing_;
};

/// Routes nobody has drawn, with what is needed to follow them.
class FoundWaysPainter {
 public:
  FoundWaysPainter(const PlanView& view, const PlanPicture& picture)
      : view_(view), picture_(picture), drawing_(view.sheet()) {}

  Layer drawn(const answers::FoundRoutes& routes) {
    for (const auto& route : routes.people) {
      for (const auto& walk : route.walks) drawWalk(route, walk);
      for (const auto& stand : route.stands) drawStand(stand, picture_.chosen == Chosen{kThing, route.id, 0});
    }
    return {std::move(drawing_), std::move(writing_)};
  }

 private:
  static constexpr auto kThing = Chosen::Kind::thing;

  void drawWalk(const answers::FoundRoute& route, const answers::FoundWalk& walk) {
    Path path;
    path.rings.emplace_back();
    for (const auto& corner : walk.path) path.rings[0].push_back(view_.toPicture(corner.at));
    path.stroke = {.tone = Tone::crew, .width = 1.25, .dash = {2, 4}};
    drawing_.add(path);
    const Span span = walk.walk.span;
    for (int second = static_cast<int>(std::ceil(span.from)); second <= span.until; ++second) notch(route, second);
  }

  void notch(const answers::FoundRoute& route, int second) {
    const Vec way = route.at(second + kLook) - route.at(second - kLook);
    if (length(way) < kLook * kSlow) return;
    const Point at = view_.toPicture(route.at(second));
    const Vec aside = left(unit(Vec{way.x, -way.y})) * (second % 5 == 0 ? 6 : 3);
    Path line;
    line.rings = {{at + aside, at - aside}};
    line.stroke = {.tone = Tone::crew, .width = 1, .dash = {}, .strength = second < picture_.time ? 0.5 : 1.0};
    drawing_.add(line);
  }

  void drawStand(const answers::FoundStand& stand, bool chosen) {
    const Point at = view_.toPicture(stand.pos);
    drawing_.add(Circle{.centre = at,
                        .radius = 4,
                        .fill = {Tone::page},
                        .stroke = {.tone = Tone::crew, .width = 1.25, .dash = {2, 2}}});
    if (!chosen && !nearNow(stand.span, picture_.time)) return;
    writing_.labels.push_back(timesLabel(stand.span, at, chosen));
  }

  static constexpr double kLook = 0.1, kSlow = 0.1;

  const PlanView& view_;
  const PlanPicture& picture_;
  Drawing drawing_;
  Writing writing_;
};

}  // namespace

Layer waysLayer(const Take& take, const PlanView& view, const PlanPicture& picture) {
  return WaysPainter(take, view, picture).drawn();
}

Layer foundWaysLayer(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture) {
  if (!answers.routes) return {view.sheet(), {}};
  return FoundWaysPainter(view, picture).drawn(*answers.routes);
}

}  // namespace wend::sheets
