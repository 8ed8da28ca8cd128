/// Ground on which somebody who stands would show in glass that the light has turned into a mirror: what the maps of
/// sight say nothing of, for they know the set and its mirrors alone.
///
/// Frame     plan metres, seconds from the take's start.
/// Figures   glass is looked at every kGlassStep and counts as turned where it returns at least the threshold
///           "glass-mirror" of the brightness that comes through it (panes.h). Of a cell its centre is asked, as
///           `panesShowing` asks a spot: a person of that height, and of the radius of the plan's rules of sight, on
///           the floor there. Whoever is seen directly or in a mirror of the set at an instant shows in no pane then,
///           and of several panes the first one counts.
/// Stops     being a promise: between two looks, and beside a cell's centre, somebody may show who is not told of; glass
///           with unknown light on either side is told of nothing.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/answers/known_instants.h"
#include "core/geometry/spans.h"

namespace wend::answers {

struct GlassGround {
  /// A cell shows in a pane from the first look of the span to the last, one look in between left out at most.
  struct Showing {
    std::size_t cell = 0, pane = 0;
    geometry::Span span;
    bool operator==(const Showing&) const = default;
  };
  geometry::Grid grid;
  std::vector<std::string> panes;  ///< ids of openings and pieces
  std::vector<Showing> showings;   ///< by cell, then by time

  bool empty() const { return showings.empty(); }
  /// A byte a cell: 1 where a showing meets the span.
  std::vector<std::uint8_t> cellsDuring(geometry::Span span) const;

  /// What one pane shows of the ground.
  struct OfPane {
    std::string pane;
    geometry::Spans spans;  ///< in which it shows some of it
    std::size_t cells = 0;  ///< how much in all
  };
  /// Of those that show any, in the order of `panes`.
  std::vector<OfPane> byPane() const;
};

struct GlassQuestion {
  double height = 1.8;  ///< of the person, metres above the floor where they stand
  geometry::Span span;  ///< the plan's `late` is added before it and its `early` after it, as clearGroundOf does
  std::vector<std::uint8_t> wanted = {};  ///< a byte a cell of groundGrid: 1 where it is asked; empty: everywhere
};

/// `known` is the glass of the same take at every look, where somebody has found it already (KnownInstants).
///
/// Ensures   (1) the showings of a cell are those of `panesShowing` at its centre, cut to the looks in the span;
///           (2) the same on any number of threads; (3) nothing shows without a lens.
/// Fails     when cancelled: nothing.
/// Cost      `turnedGlass` at each look, and while some has turned the sight of a body for each cell that a pane's
///           plan reaches: tens of microseconds each. Looks at which eye, glass and set are as before are not asked
///           again.
std::optional<GlassGround> glassGroundOf(const Take& take, const GlassQuestion& question,
                                         const base::Cancel& cancel = {}, std::span<const GlassAt> known = {});

}  // namespace wend::answers
