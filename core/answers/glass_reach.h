/// The ground from which turned glass could be looked into at all: what walls leave of the fan of each pane, as the
/// cells worth asking about one by one.
///
/// Frame     plan metres, heights above the datum.
#pragma once

#include <memory>
#include <vector>

#include "core/answers/panes.h"
#include "core/sight/low_shadow.h"
#include "core/sight/region_raster.h"

namespace wend::answers {

class GlassReach {
 public:
  /// Bodies of that radius with their centres on cells of the grid; `heights` from the lowest floor to the highest
  /// crown.
  GlassReach(const geometry::Grid& grid, double radius, sight::Heights heights);
  GlassReach(GlassReach&&) noexcept;
  ~GlassReach();

  /// Looks anew, at an instant.
  /// Cost      triangles are cut anew where walls, or the length of turned glass, come up that were not there before.
  void look(const sight::SceneAt& now, const sight::Eye& eye, const std::vector<TurnedGlass>& glass);
  /// As looked at last.
  /// Ensures   holds every cell on which a body shows in some of the glass (`sight::bodySight`): only walls that hide
  ///           all of every body at any distance behind them count, and the glass of a pane as one.
  const sight::CellBits& cells() const { return cells_; }

 private:
  struct View;
  View& viewOf(geometry::Segment face);
  void add(geometry::Segment face, const sight::Eye& eye);

  sight::Heights heights_;
  geometry::Extent ground_;
  sight::RegionRaster raster_;
  sight::CellBits cells_;
  std::vector<geometry::Segment> walls_;
  std::vector<std::unique_ptr<View>> views_;
};

}  // namespace wend::answers
