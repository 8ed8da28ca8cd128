/// The window onto the floor plan: which part of it, how large.
#pragma once

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"

namespace wend::sheets {

struct PlanView {
  geometry::Point centre;  ///< of the picture, in plan metres
  double pxPerMetre = 50;
  double width = 1200, height = 700;  ///< px

  geometry::Point toPicture(geometry::Point p) const {
    return {width / 2 + (p.x - centre.x) * pxPerMetre, height / 2 - (p.y - centre.y) * pxPerMetre};
  }
  geometry::Point toPlan(geometry::Point p) const {
    return {centre.x + (p.x - width / 2) / pxPerMetre, centre.y - (p.y - height / 2) / pxPerMetre};
  }
  geometry::Drawing sheet() const {
    return {.width = width, .height = height, .patternOrigin = toPicture({0, 0}), .shapes = {}};
  }
};

/// The whole set with a margin.
PlanView wholeSet(const answers::Take& take, double width, double height);

/// The part the take happens in: the ways of camera and performers.
PlanView wholeTake(const answers::Take& take, double width, double height);

/// What is chosen, in the words of the plan: a mark of somebody, or a thing by its id.
struct Chosen {
  enum class Kind { nothing, cameraMark, performerMark, crewMark, thing };
  Kind kind = Kind::nothing;
  std::string id;
  std::size_t mark = 0;
  bool operator==(const Chosen&) const = default;
};

/// The ground is one picture at a time.
enum class Ground { untilSeen, clearSpan, light, plain };

/// What to show of a take besides the set.
struct PlanPicture {
  double time = 0;
  Ground ground = Ground::untilSeen;
  geometry::Span span;  ///< for clearSpan
  Chosen chosen;
  std::optional<geometry::Point> spot;  ///< ground that was clicked
};

/// The ground of the moment, from bottom to top of the picture in these layers. The first depends on the view, the
/// plan and the time of the ground; the wedge on the instant; the set on view, plan and leaves; the ways on what is
/// chosen and the time.
geometry::Drawing groundLayer(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture);
geometry::Drawing wedgeLayer(const answers::Answers& answers, const answers::Instant& instant, const PlanView& view);
geometry::Drawing setLayer(const answers::Take& take, const PlanView& view, double t);
geometry::Drawing waysLayer(const answers::Take& take, const PlanView& view, const PlanPicture& picture);
/// The ways of found routes, each dashed more finely than a drawn one. Changes with the plan and view alone.
geometry::Drawing foundWaysLayer(const answers::Answers& answers, const PlanView& view);
geometry::Drawing nowLayer(const answers::Answers& answers, const answers::Instant& instant, const PlanView& view,
                           const PlanPicture& picture);

/// All of them, with the legend, scale bar and north: what `draw` and paper show.
geometry::Drawing planDrawing(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture);

/// Legend, scale bar and north arrow alone.
geometry::Drawing planLegend(const PlanView& view, const PlanPicture& picture, plan::LengthUnit unit);

}  // namespace wend::sheets
