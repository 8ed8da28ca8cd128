#include "ui/document/selection.h"

namespace wend::ui {
namespace {

bool inRange(int index, std::size_t count) {
  return index >= -1 && (index < 0 || std::size_t(index) < count);
}

std::size_t cornersOf(const plan::Footprint& shape) {
  if (const auto* outline = std::get_if<plan::Outline>(&shape)) return outline->points.size();
  if (const auto* line = std::get_if<plan::Line>(&shape)) return line->points.size();
  return 1;  // a disc's centre
}

std::size_t partsOf(const plan::Beat&) {
  return 0;
}
std::size_t partsOf(const plan::Room& room) {
  return room.outline.size();
}
std::size_t partsOf(const plan::Wall& wall) {
  return wall.points.size();
}
std::size_t partsOf(const plan::Opening& opening) {
  return opening.open.size();
}
std::size_t partsOf(const plan::Piece& piece) {
  return cornersOf(piece.shape);
}
std::size_t partsOf(const plan::Area& area) {
  return cornersOf(area.shape);
}
std::size_t partsOf(const plan::Prop& prop) {
  return prop.track.size();
}
std::size_t partsOf(const plan::Performer& performer) {
  return performer.marks.size();
}
std::size_t partsOf(const plan::Fixture& fixture) {
  return fixture.level.size();
}
std::size_t partsOf(const plan::Crew& crew) {
  return crew.marks.size();
}
std::size_t partsOf(const plan::Shelter&) {
  return 0;
}
std::size_t partsOf(const plan::Gear&) {
  return 0;
}
std::size_t partsOf(const plan::Cable& cable) {
  return cable.points.size();
}
std::size_t partsOf(const plan::Pole&) {
  return 0;
}
std::size_t partsOf(const plan::Link&) {
  return 0;
}

template <class T>
bool holds(const base::Table<T>& table, const Selection& selection) {
  const T* const entity = table.find(selection.id);
  return entity != nullptr && inRange(selection.index, partsOf(*entity));
}

bool equipmentExists(const plan::Plan& plan, const Selection& selection) {
  if (selection.kind == Kind::gear) return holds(plan.gear, selection);
  if (selection.kind == Kind::cable) return holds(plan.cables, selection);
  if (selection.kind == Kind::pole) return holds(plan.poles, selection);
  if (selection.kind == Kind::link) return holds(plan.links, selection);
  if (selection.kind == Kind::density) return inRange(selection.index, plan.camera.nd.size());
  const plan::Piece* piece = plan.set.pieces.find(selection.id);
  return piece && inRange(selection.index, piece->moved.size());
}

}  // namespace

bool exists(const plan::Plan& plan, const Selection& selection) {
  const int index = selection.index;
  switch (selection.kind) {
    case Kind::none:
    case Kind::snag:
    case Kind::sight:
    case Kind::sizes:
      return true;
    case Kind::beat:
      return holds(plan.beats, selection);
    case Kind::room:
      return holds(plan.set.rooms, selection);
    case Kind::wall:
      return holds(plan.set.walls, selection);
    case Kind::opening:
      return holds(plan.set.openings, selection);
    case Kind::piece:
      return holds(plan.set.pieces, selection);
    case Kind::area:
      return holds(plan.set.areas, selection);
    case Kind::underlay:
      return plan.set.underlay.has_value();
    case Kind::prop:
      return holds(plan.props, selection);
    case Kind::performer:
      return holds(plan.performers, selection);
    case Kind::camera:
      return inRange(index, plan.camera.marks.size());
    case Kind::aim:
      return inRange(index, plan.camera.aims.size());
    case Kind::lens:
      return plan.lens.has_value();
    case Kind::focus:
      return inRange(index, plan.focus.keys.size());
    case Kind::pull:
      return inRange(index, plan.focus.pulls.size());
    case Kind::zoom:
      return inRange(index, plan.zoom.keys.size());
    case Kind::iris:
      return inRange(index, plan.iris.keys.size());
    case Kind::fixture:
      return holds(plan.fixtures, selection);
    case Kind::crew:
      return holds(plan.crew, selection);
    case Kind::shelter:
      return holds(plan.shelters, selection);
    case Kind::gear:
    case Kind::cable:
    case Kind::pole:
    case Kind::link:
    case Kind::pieceMove:
    case Kind::density:
      return equipmentExists(plan, selection);
    case Kind::speech:
      return inRange(index, plan.speech.size());
    case Kind::handover:
      return inRange(index, plan.handovers.size());
  }
  return false;
}

}  // namespace wend::ui
