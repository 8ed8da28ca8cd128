/// The window onto the floor plan: which part of it, how large.
#pragma once

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"
#include "core/sheets/labels.h"

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

/// The strip along the foot of the picture that the legend lies on, px.
inline constexpr double kLegendHeight = 30;

/// What the take needs: walls, shelters and gear, the ways of camera, performers and crew with their bodies, all
/// of it above the strip of the legend.
PlanView wholeTake(const answers::Take& take, double width, double height);

/// What is chosen, in the words of the plan: a mark of somebody, the camera, or a thing by its id, a snag by its key.
struct Chosen {
  enum class Kind { nothing, camera, cameraMark, performerMark, crewMark, thing };
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
/// chosen and the time. What they want written is placed together, by `labelsLayer`.
geometry::Drawing groundLayer(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture);
geometry::Drawing wedgeLayer(const answers::Answers& answers, const answers::Instant& instant, const PlanView& view);
Layer setLayer(const answers::Take& take, const PlanView& view, double t);
Layer waysLayer(const answers::Take& take, const PlanView& view, const PlanPicture& picture);
/// The ways of found routes, each dashed more finely than a drawn one, with a notch every second of a walk and the
/// seconds of each stand that is near the picture's time or whose person is chosen.
Layer foundWaysLayer(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture);
Layer nowLayer(const answers::Answers& answers, const answers::Instant& instant, const PlanView& view,
               const PlanPicture& picture);
/// The words of all layers, clear of each other, of people, flags and snags, of the legend and the north arrow.
geometry::Drawing labelsLayer(const PlanView& view, Writing writing);

/// Where the slab of a crew member stands who does not go along with the camera: at their drawn place, or where the
/// route leads that was found for them.
struct CrewSlab {
  std::size_t crew = 0;   ///< in the plan's order
  geometry::Point at;     ///< the slab's middle, px: beside performers and crew who are at the same place
  geometry::Point place;  ///< where they are, px
  double beyond = 0;      ///< metres outside the picture: the slab lies on its edge then
  bool dashed = false;    ///< walking, or where nobody has drawn them
};
std::vector<CrewSlab> crewSlabs(const answers::Answers& answers, const answers::Instant& instant, const PlanView& view);

/// A snag on the plan: those that run at a time or begin within five seconds after it, in the order of the snags.
struct SnagLozenge {
  const snags::Snag* snag = nullptr;  ///< of the answers
  geometry::Point at;                 ///< its middle, px
};
std::vector<SnagLozenge> snagLozenges(const answers::Answers& answers, double t, const PlanView& view);

/// All of them, with the legend, scale bar and north: what `draw` and paper show.
geometry::Drawing planDrawing(const answers::Answers& answers, const PlanView& view, const PlanPicture& picture);

/// Legend, scale bar and north arrow alone; `glass` where some ground shows in turned glass.
geometry::Drawing planLegend(const PlanView& view, const PlanPicture& picture, plan::LengthUnit unit,
                             bool glass = false);
bool groundShowsInGlass(const answers::Answers& answers);

}  // namespace wend::sheets
