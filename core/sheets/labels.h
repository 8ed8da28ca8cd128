/// Labels on a crowded plan: by priority, never over each other, dropped rather than shrunk.
#pragma once

#include <string>
#include <vector>

#include "core/geometry/drawing.h"

namespace wend::sheets {

enum class LabelRank { playhead = 0, chosen = 1, snag = 2, name = 3, detail = 4 };

struct Label {
  geometry::Text text;
  LabelRank rank = LabelRank::name;
};

/// A box nothing may be written over.
struct Reserved {
  double left = 0, top = 0, right = 0, bottom = 0;
};

/// Ensures   (1) no two placed labels overlap, none overlaps a reserved box; (2) a label of higher rank is never
///           dropped for one of lower; (3) equal ranks keep the order they came in; (4) widths are estimated at 0.56 em
///           a letter, near enough for a face whose digits are equally wide.
void placeLabels(geometry::Drawing& drawing, std::vector<Label> labels, std::vector<Reserved> reserved = {});

/// The estimated box of a text.
Reserved boxOf(const geometry::Text& text);

}  // namespace wend::sheets
