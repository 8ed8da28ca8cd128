/// Labels on a crowded picture: all of them placed in one go, by rank, never over each other or over what must be seen.
///
/// Frame     px of the picture, y down.
/// Source    greedy placing by rank among candidate places around a point: common practice of map lettering, no source.
/// Cost      labels times candidates times boxes; some tenths of a millisecond for a hundred labels.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geometry/drawing.h"

namespace wend::sheets {

/// Who matters most when room is short.
enum class LabelRank {
  person = 0,    ///< who is where now
  chosen = 1,    ///< of the chosen thing
  playhead = 2,  ///< the numbers of the moment
  snag = 3,
  use = 4,   ///< shelters and marks that somebody is at
  name = 5,  ///< things of the set
  area = 6,  ///< rooms
  detail = 7
};

/// What a label tells of, so that it may stand elsewhere around it.
struct LabelAnchor {
  geometry::Point at;
  double clear = 6;  ///< px about it that its own sign takes
  double reach = 0;  ///< px further out that it may be moved, with a line back to it; 0 keeps it beside the sign
};

struct Label {
  geometry::Text text;  ///< where it stands best
  LabelRank rank = LabelRank::name;
  std::optional<LabelAnchor> anchor{};
  std::vector<geometry::Point> others{};  ///< places for `text.at` that are tried next, in this order
};

/// A box nothing may be written over.
struct Reserved {
  double left = 0, top = 0, right = 0, bottom = 0;
};

/// What the layers of a picture want written, and what they draw that may not be written over.
struct Writing {
  std::vector<Label> labels;
  std::vector<Reserved> reserved;
  void add(Writing more);
  /// A sign that reaches `half` px to every side of its middle.
  void keepFree(geometry::Point middle, double half);
};

/// A layer of a picture that is written on once all layers are there.
struct Layer {
  geometry::Drawing drawing;
  Writing writing;
};

/// Ensures   (1) no two placed labels overlap, none overlaps a reserved box or leaves the drawing; (2) places are given
///           out by rank, equal ranks in the order they came in, and a placed label never moves for a later one; what
///           finds no place is left out; (3) a label of a person in the drawing is left out only where every place in
///           its reach is taken by other people and reserved boxes; (4) lines back to an anchor cross no label and are
///           drawn under all of them; (5) the same labels are placed in the same way every time
void placeLabels(geometry::Drawing& drawing, std::vector<Label> labels, std::vector<Reserved> reserved = {});

/// The box of a text, after its advance widths.
Reserved boxOf(const geometry::Text& text);

bool overlap(const Reserved& a, const Reserved& b);

}  // namespace wend::sheets
