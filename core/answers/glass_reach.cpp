#include "core/answers/glass_reach.h"

#include <algorithm>
#include <limits>

#include "core/sight/eye_step.h"
#include "core/sight/mirror_leg.h"
#include "core/sight/mirror_plan.h"

namespace wend::answers {

using geometry::Segment;

namespace {

/// More than walls and glass are moved by to be cut into triangles.
constexpr double kSlack = 0.01;
constexpr double kOnLine = 1e-9;
/// Solids that come nearer to the face of a mirror than its skin lose to it (sight/mirror_leg.h); with what joining
/// walls may add.
constexpr double kOffGlass = 5 * sight::kMirrorSkin;

/// The edges of what hides everybody of those heights behind it. Without discs more is left to be asked, no less.
std::vector<Segment> wallsFor(const sight::SceneAt& now, double eye, sight::Heights bodies) {
  std::vector<Segment> walls;
  for (std::size_t i = 0; i < now.size(); ++i) {
    const sight::Prism& prism = now.prism(i);
    const geometry::Span ratios = sight::hidingRatios(eye, {prism.bottom, prism.top}, bodies);
    if (ratios.from > 1 || ratios.until < std::numeric_limits<double>::infinity()) continue;
    if (prism.form == sight::Prism::Form::sheet) walls.push_back(prism.sheet);
    if (prism.form != sight::Prism::Form::outline) continue;
    const auto corners = now.corners(prism);
    for (std::size_t k = 0; k < corners.size(); ++k) walls.push_back({corners[k], corners[(k + 1) % corners.size()]});
  }
  return walls;
}

/// What of the walls is further in front of the glass than its skin.
std::vector<Segment> offGlass(const std::vector<Segment>& walls, Segment face) {
  const geometry::Vec off = geometry::left(geometry::unit(face.b - face.a)) * kOffGlass;
  std::vector<Segment> before;
  for (const Segment& wall : walls)
    if (const auto part = sight::inFront(wall, {face.a + off, face.b + off})) before.push_back(*part);
  return before;
}

bool holds(Segment face, Segment part) {
  return geometry::dot(face.b - face.a, part.b - part.a) > 0 && geometry::distance(part.a, face) < kOnLine &&
         geometry::distance(part.b, face) < kOnLine;
}

/// What the parts of each pane cover of its line, all of them side by side.
std::vector<Segment> facesOf(const std::vector<TurnedGlass>& glass) {
  std::vector<Segment> faces;
  std::string pane;
  for (const TurnedGlass& part : glass) {
    const Segment foot = part.face.face;
    if (std::exchange(pane, part.pane) != part.pane) faces.push_back(foot);
    Segment& face = faces.back();
    const geometry::Vec along = foot.b - foot.a;
    if (geometry::dot(along, foot.a - face.a) < 0) face.a = foot.a;
    if (geometry::dot(along, foot.b - face.b) > 0) face.b = foot.b;
  }
  return faces;
}

}  // namespace

/// Looks through one length of glass past one set of walls.
struct GlassReach::View {
  std::vector<Segment> walls;
  Segment face;
  sight::Triangulation triangles;
  sight::SweptView view;
  sight::SweptRegion region;

  View(const std::vector<Segment>& around, Segment glass, const geometry::Extent& ground)
      : walls(around),
        face(glass),
        triangles(sight::wallsByMirror(offGlass(around, glass), glass, ground), sight::boxByMirror(ground, glass)),
        view(triangles) {}
};

GlassReach::GlassReach(const geometry::Grid& grid, double radius, sight::Heights heights)
    : heights_(heights), ground_(grid.extent()), raster_(grid, radius + kSlack), cells_(grid) {}

GlassReach::GlassReach(GlassReach&&) noexcept = default;
GlassReach::~GlassReach() = default;

GlassReach::View& GlassReach::viewOf(Segment face) {
  const auto found =
      std::ranges::find_if(views_, [&](const auto& view) { return holds(view->face, face) && view->walls == walls_; });
  return found != views_.end() ? **found : *views_.emplace_back(std::make_unique<View>(walls_, face, ground_));
}

void GlassReach::add(Segment face, const sight::Eye& eye) {
  const auto still = sight::eyeStep([&](double) { return std::optional(eye); }, {0, 1});
  View& view = viewOf(face);
  view.view.of(sight::imageOf(still->flat, view.face), view.region);
  sight::keepFront(view.region, view.face);
  raster_.add(view.region, cells_);
}

void GlassReach::look(const sight::SceneAt& now, const sight::Eye& eye, const std::vector<TurnedGlass>& glass) {
  cells_.clear(cells_.box());
  walls_ = wallsFor(now, eye.pupil.at.z, heights_);
  for (const Segment face : facesOf(glass)) add(face, eye);
}

}  // namespace wend::answers
